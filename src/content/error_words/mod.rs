//! Errors in words, in any language. Each type has one exhaustive function, so that a new case does not compile
//! until it has its text. `Display` of the errors of this room says the same in English.

mod attempts;
mod authoring;
mod boards;
mod edits;
mod files;
mod reasoning;

use super::text::{Language, Texts};

/// The texts in which errors are shown where no language is known, as in logs. Read anew each time: that is rare.
pub(super) fn english() -> Texts {
    Texts::load(Language::En)
}
