//! Places in a text.

/// A place in a text, both counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct TextPosition {
    pub line: usize,
    /// In characters.
    pub column: usize,
}

impl TextPosition {
    /// Place of a byte offset; offsets behind the text are at its end.
    pub fn of_offset(text: &str, offset: usize) -> TextPosition {
        let before = text.get(..offset).unwrap_or(text);
        let line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
        TextPosition {
            line: before.bytes().filter(|byte| *byte == b'\n').count() + 1,
            column: before[line_start..].chars().count() + 1,
        }
    }
}
