//! The program as its users start it: command line, window and page.

mod best;
mod browser;
mod jobs;
#[cfg(feature = "window")]
mod pictures;
#[path = "../stage/mod.rs"]
mod stage;
