//! Tests of the lossless RON tree.
#![expect(
    clippy::disallowed_methods,
    reason = "the tests read the project's own files"
)]

mod edits;
mod files;
mod grammar;
mod random_edits;
