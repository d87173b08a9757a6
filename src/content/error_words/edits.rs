//! Words for a text that is no RON, and for a change to one that cannot be made.

use super::files::number;
use crate::text::Texts;
use detent_syntax::error::{EditError, SyntaxErrorKind};

impl Texts {
    /// What is wrong with a text that is no RON.
    pub fn syntax_error(&self, kind: SyntaxErrorKind) -> String {
        let key = match kind {
            SyntaxErrorKind::UnexpectedCharacter(found) => {
                let found = found.escape_default().to_string();
                return self.with("file-ron-unexpected", &[("found", found.into())]);
            }
            SyntaxErrorKind::UnclosedBracket(open) => {
                return self.with(
                    "file-ron-bracket-open",
                    &[("open", open.to_string().into())],
                );
            }
            SyntaxErrorKind::MismatchedBracket { open, close } => {
                let (open, close) = (open.to_string().into(), close.to_string().into());
                let args = [("open", open), ("close", close)];
                return self.with("file-ron-bracket-mismatch", &args);
            }
            SyntaxErrorKind::UnclosedString => "file-ron-text-end",
            SyntaxErrorKind::UnclosedComment => "file-ron-comment-end",
            SyntaxErrorKind::WrongCharacter => "file-ron-character",
            SyntaxErrorKind::WrongEscape => "file-ron-escape",
            SyntaxErrorKind::WrongNumber => "file-ron-number-form",
            SyntaxErrorKind::WrongAttribute => "file-ron-attribute",
            SyntaxErrorKind::ExpectedValue => "file-ron-value",
            SyntaxErrorKind::ExpectedComma => "file-ron-comma",
            SyntaxErrorKind::ExpectedColon => "file-ron-colon",
            SyntaxErrorKind::MixedFields => "file-ron-mixed",
            SyntaxErrorKind::TooDeep => "file-problem-too-deep",
            SyntaxErrorKind::BehindValue => "file-ron-more",
        };
        self.get(key)
    }

    /// Why a file cannot be changed in this way.
    pub fn edit_error(&self, error: &EditError) -> String {
        let name = |key: &str, name: &str| self.with(key, &[("name", name.into())]);
        let problem = |key: &str, kind: SyntaxErrorKind| {
            self.with(key, &[("problem", self.syntax_error(kind).into())])
        };
        match error {
            EditError::NoSuchPath(path) => name("file-edit-no-path", path),
            EditError::NotAStruct(path) => name("file-edit-no-struct", path),
            EditError::NotAList(path) => name("file-edit-no-list", path),
            EditError::NotAMap(path) => name("file-edit-no-map", path),
            EditError::AlreadyThere(there) => name("file-edit-already-there", there),
            EditError::NotAName(written) => name("file-edit-no-name", written),
            EditError::NoSuchIndex { index, count } => self.with(
                "file-edit-no-index",
                &[("index", number(index)), ("count", number(count))],
            ),
            EditError::Whole => self.get("file-edit-whole"),
            EditError::NotAValue(error) => problem("file-edit-no-value", error.kind),
            EditError::Unreadable(error) => problem("file-edit-unreadable", error.kind),
        }
    }
}
