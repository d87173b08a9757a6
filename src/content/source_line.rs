//! The line of a file on which an error is, for showing it beside the words.

use detent_syntax::kind::SyntaxKind;
use detent_syntax::lexer;
use detent_training::record::ron_text::TextPosition;
use std::ops::Range;

/// Most characters of a line that are shown.
const MOST_CHARACTERS: usize = 100;

/// Characters that are shown before the mark of a line that is longer.
const BEFORE: usize = 40;

/// A line of a file, or the stretch of a long one around an error. It is what stands in the file: control
/// characters are still in it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SourceLine {
    /// Without its end.
    pub text: String,
    /// What is meant, in bytes of the text; empty where something is missing.
    pub marked: Range<usize>,
}

impl SourceLine {
    /// The line of a text at a position; none where the text has no such line.
    pub fn of(text: &str, position: TextPosition) -> Option<SourceLine> {
        let line = text.split('\n').nth(position.line.checked_sub(1)?)?;
        let line = line.trim_end_matches('\r');
        let mut places = line.char_indices().map(|(at, _)| at);
        let start = places.nth(position.column.checked_sub(1)?);
        let start = start.unwrap_or(line.len());
        let end = start + meant(&line[start..]);
        if line.chars().count() <= MOST_CHARACTERS {
            return Some(SourceLine {
                text: line.to_owned(),
                marked: start..end,
            });
        }
        let skipped = (position.column - 1).saturating_sub(BEFORE);
        let mut places = line.char_indices().map(|(at, _)| at).skip(skipped);
        let from = places.next().unwrap_or(start);
        let to = places.nth(MOST_CHARACTERS - 2).unwrap_or(line.len());
        let mut cut = String::new();
        if from > 0 {
            cut.push('…');
        }
        let shift = cut.len();
        cut.push_str(&line[from..to]);
        let marked = start - from + shift..end.min(to) - from + shift;
        if to < line.len() {
            cut.push('…');
        }
        Some(SourceLine { text: cut, marked })
    }
}

/// Length of what stands first: one word, number, text or bracket; nothing where a blank comes first.
fn meant(rest: &str) -> usize {
    match lexer::tokens(rest).next() {
        Some(token) if token.kind == SyntaxKind::Blank => 0,
        Some(token) => token.length,
        None => 0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, line: usize, column: usize, marked: &str) {
        let position = TextPosition { line, column };
        let source = SourceLine::of(text, position).expect("there is such a line");
        assert_eq!(&source.text[source.marked.clone()], marked);
        assert!(source.text.chars().count() <= MOST_CHARACTERS + 1);
    }

    #[test]
    fn what_is_meant_is_marked() {
        let text = "(\r\n    title: \"é, )\",\r\n    seed: 7\n)";
        check(text, 1, 1, "(");
        check(text, 2, 12, "\"é, )\"");
        check(text, 3, 11, "7");
        check(text, 3, 12, "");
        check(text, 3, 99, "");
        check(text, 3, 4, "");
        assert_eq!(
            SourceLine::of(text, TextPosition { line: 5, column: 1 }),
            None
        );
        assert_eq!(
            SourceLine::of(text, TextPosition { line: 0, column: 0 }),
            None
        );
    }

    #[test]
    fn of_a_long_line_the_stretch_around_is_shown() {
        let line = format!("{}\"here\"{}", "é ".repeat(500), " é".repeat(500));
        check(&line, 1, 1001, "\"here\"");
        check(&line, 1, 1, "é");
        check(&line, 1, 2006, "é");
        let long = format!("[\"{}\"]", "é".repeat(300));
        check(&long, 1, 2, &format!("\"{}", "é".repeat(97)));
    }
}
