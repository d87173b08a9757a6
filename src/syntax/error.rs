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
    #[error("{0:?} does not belong here")]
    UnexpectedCharacter(char),
    #[error("the string is never closed")]
    UnclosedString,
    #[error("the comment is never closed")]
    UnclosedComment,
    #[error("the bracket {0} is never closed")]
    UnclosedBracket(char),
    #[error("the bracket {open} is closed by {close}")]
    MismatchedBracket { open: char, close: char },
    #[error("a character in single quotes is one character or one escape")]
    WrongCharacter,
    #[error("no escape is written like this")]
    WrongEscape,
    #[error("no number is written like this")]
    WrongNumber,
    #[error("an attribute is #![enable(…)], #![type = \"…\"] or #![schema = \"…\"]")]
    WrongAttribute,
    #[error("a value is missing")]
    ExpectedValue,
    #[error("a comma is missing")]
    ExpectedComma,
    #[error("a colon is missing")]
    ExpectedColon,
    #[error("fields with and without a name do not go together")]
    MixedFields,
    #[error("brackets in brackets, more than {} deep", super::parser::DEEPEST)]
    TooDeep,
    #[error("something stands behind the value")]
    BehindValue,
}

/// A change that cannot be made; the text is as it was.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum EditError {
    #[error("nothing is at {0}")]
    NoSuchPath(String),
    #[error("what is at {0} is no struct")]
    NotAStruct(String),
    #[error("what is at {0} is no list")]
    NotAList(String),
    #[error("what is at {0} is no map")]
    NotAMap(String),
    #[error("{0} is there already")]
    AlreadyThere(String),
    #[error("{0:?} is no name of a field")]
    NotAName(String),
    #[error("no item can be put at {index}: there are {count}")]
    NoSuchIndex { index: usize, count: usize },
    #[error("the whole cannot be removed")]
    Whole,
    /// What was to be put in is not one value; the place is in that text.
    #[error("not a value: {0}")]
    NotAValue(SyntaxError),
    /// The text with the change would not be RON; the place is in that text.
    #[error("the text would not be readable any more: {0}")]
    Unreadable(SyntaxError),
}
