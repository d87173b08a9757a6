//! The program: the command line, and the window if it was built with one.

#[cfg(target_family = "wasm")]
fn main() {
    // The page calls what the window exports.
    use detent_window as _;
}

#[cfg(not(target_family = "wasm"))]
fn main() -> std::process::ExitCode {
    use detent_command_line::{OpenWindow, run};

    #[cfg(feature = "window")]
    const WINDOW: Option<OpenWindow> = Some(detent_window::run);
    #[cfg(not(feature = "window"))]
    const WINDOW: Option<OpenWindow> = None;

    run(WINDOW)
}
