//! Files that the pages ask for.

/// Content type and bytes of a file, by its path on the server.
pub fn asset(path: &str) -> Option<(&'static str, &'static [u8])> {
    const SCRIPT: &str = "text/javascript; charset=utf-8";
    Some(match path {
        "/class/board.js" => (SCRIPT, include_bytes!("board.js")),
        "/class/gradebook.js" => (SCRIPT, include_bytes!("gradebook.js")),
        "/class/icon.svg" => (
            "image/svg+xml",
            include_bytes!("../../../assets/web/icon.svg"),
        ),
        "/class/page.js" => (SCRIPT, include_bytes!("page.js")),
        "/class/projector.js" => (SCRIPT, include_bytes!("projector.js")),
        "/class/sign_in.js" => (SCRIPT, include_bytes!("sign_in.js")),
        "/class/style.css" => ("text/css; charset=utf-8", include_bytes!("style.css")),
        _ => return None,
    })
}
