//! What can be wrong with a text, or with a change to one.

use super::position::TextPosition;

/// Text that is not RON.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("line {}, column {}: {kind}", position.line, position.column)]
pub struct SyntaxError {
    pub position: TextPosition,
    /// Byte at which it was noticed.
    pub offset: usize,
    pub kind: SyntaxErrorKind,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum SyntaxErrorKind {
    #[error("the character \"{}\" does not belong here", .0.escape_default())]
    UnexpectedCharacter(char),
    #[error("a text is not closed with double quotes")]
    UnclosedString,
    #[error("a comment that begins with \"/*\" is not closed")]
    UnclosedComment,
    #[error("\"{0}\" is not closed")]
    UnclosedBracket(char),
    #[error("\"{open}\" is closed by \"{close}\"")]
    MismatchedBracket { open: char, close: char },
    #[error("expected a single character in single quotes")]
    WrongCharacter,
    #[error(
        "no character is written like this; behind a backslash comes n, r, t, u, x, another backslash or a quote"
    )]
    WrongEscape,
    #[error("no number is written like this")]
    WrongNumber,
    #[error("an attribute is #![enable(…)], #![type = \"…\"] or #![schema = \"…\"]")]
    WrongAttribute,
    #[error("expected a value")]
    ExpectedValue,
    #[error("expected a comma")]
    ExpectedComma,
    #[error("expected a colon")]
    ExpectedColon,
    #[error("fields with a name and without one do not go together")]
    MixedFields,
    #[error("nesting too deep; no file of this program needs that, remove some brackets")]
    TooDeep,
    #[error("there is more text behind the end")]
    BehindValue,
}

/// A change that cannot be made; the text is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum EditError {
    #[error("there is nothing at \"{0}\"")]
    NoSuchPath(String),
    #[error("what is at \"{0}\" has no fields")]
    NotAStruct(String),
    #[error("what is at \"{0}\" is no list")]
    NotAList(String),
    #[error("what is at \"{0}\" is no map")]
    NotAMap(String),
    #[error("\"{0}\" is there already; change it instead")]
    AlreadyThere(String),
    #[error("\"{0}\" is no name of a field; use letters, digits and _")]
    NotAName(String),
    #[error("there are {count} items; none can be put at {index}")]
    NoSuchIndex { index: usize, count: usize },
    #[error("the whole cannot be removed")]
    Whole,
    /// What was to be put in is not one value; the place is in that text.
    #[error("this is no value: {}", .0.kind)]
    NotAValue(SyntaxError),
    /// The text with the change would not be RON; the place is in that text.
    #[error("the file could not be read any more: {}", .0.kind)]
    Unreadable(SyntaxError),
}
