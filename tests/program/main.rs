//! The program as its users start it: command line, window and page.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "tests open files, run programs, share what is slow to make, and print"
)]

mod best;
mod browser;
mod calls;
mod check;
#[cfg(feature = "class")]
mod class;
mod course;
mod files;
mod guided_walk;
mod jobs;
mod learners;
mod library;
mod paper;
#[cfg(feature = "window")]
mod pictures;
mod printed_json;
mod reference;
#[path = "../schema/mod.rs"]
mod schema;
#[path = "../stage/mod.rs"]
mod stage;
mod tutorial;
mod variants;
