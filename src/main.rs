//! The program: everything is in the library.

use detent::cli::{OpenWindow, run};

#[cfg(feature = "window")]
const WINDOW: Option<OpenWindow> = Some(detent::app::run);
#[cfg(not(feature = "window"))]
const WINDOW: Option<OpenWindow> = None;

fn main() -> std::process::ExitCode {
    run(WINDOW)
}
