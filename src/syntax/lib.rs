//! RON texts with every byte kept.
//!
//! A [`Document`] is a tree that holds the whole text: comments, blanks, order, raw strings, extensions.
//! What is changed is changed in the text and read again, so that all other bytes stay as they were.
//! This room knows nothing of washers; what a value means is for whoever reads it with serde.
//!
//! Paths are written as in Rust: `codes[3].code`, `common[BeltGripNm]` for a map's key, `pair.1` for a
//! place in a tuple, and nothing for the whole. A step that a pair of brackets with one value does not
//! have is looked for in that value: `fault[0]` is `"a"` in `fault: DrawFrom(["a", "b"])`. The value in
//! `fault: Named("x")` is at `fault.0`, the whole of it at `fault`.

pub mod document;
pub mod edit;
pub mod error;
pub mod kind;
pub mod lexer;
pub mod parser;
mod path;
pub mod position;
