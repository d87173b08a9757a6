//! The readers of files, and the files that come with the program.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "tests open files, run programs, share what is slow to make, and print"
)]

mod attempt_file;
mod courses;
mod error_texts;
mod file_schema;
mod files;
mod one_field;
mod rust_files;
#[path = "../schema/mod.rs"]
mod schema;
mod sources;
mod spoiled;
mod text_keys;
mod texts;
