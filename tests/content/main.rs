//! The readers of files, and the files that come with the program.

mod attempt_file;
mod files;
mod text_keys;
mod texts;
