//! The program: everything is in the library.

#[cfg(target_family = "wasm")]
fn main() {
    // The page calls what the library exports.
    use detent as _;
}

#[cfg(not(target_family = "wasm"))]
fn main() -> std::process::ExitCode {
    use detent::cli::{OpenWindow, run};

    #[cfg(feature = "window")]
    const WINDOW: Option<OpenWindow> = Some(detent::app::run);
    #[cfg(not(feature = "window"))]
    const WINDOW: Option<OpenWindow> = None;

    run(WINDOW)
}
