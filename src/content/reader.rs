//! The way from bytes to a checked value that every reader takes.

use super::error::{Choices, ContentError, NotSayable, Problem};
use super::source_line::SourceLine;
use detent_syntax::document::Document;
use detent_syntax::position;
use detent_training::record::ron_text::{self, Misfit, Outline, Places, TextPosition};
use serde::de::DeserializeOwned;
use std::cell::OnceCell;
use std::collections::BTreeMap;

/// Largest file that is read; the largest of ours is a hundredth of it.
pub(super) const LONGEST_BYTES: usize = 1 << 20;

/// A text without the mark that some editors put in front of it.
pub(super) fn without_mark(text: &str) -> &str {
    text.strip_prefix(BYTE_ORDER_MARK).unwrap_or(text)
}

/// What some editors put in front of a text; it says nothing here.
const BYTE_ORDER_MARK: char = '\u{feff}';

/// Something a check found: the path of the field, and what is wrong with it.
pub type Finding = (String, Problem);

/// Read a value and hold it against its own rules, for types that check themselves, as a board does.
///
/// # Errors
/// Every finding, in the order of the file; at least one.
pub fn read_checked<T: DeserializeOwned>(
    file: &str,
    bytes: &[u8],
    check: impl Fn(&T) -> Vec<Finding>,
) -> Result<T, Vec<ContentError>> {
    let page = Page::open(file, bytes).map_err(|error| vec![error])?;
    let value = page.parse().map_err(|error| vec![error])?;
    let findings = check(&value);
    page.judge_all(value, findings)
}

/// A file's name with its text.
pub(super) struct Page<'a> {
    file: &'a str,
    text: &'a str,
    places: OnceCell<Places<'a>>,
}

impl<'a> Page<'a> {
    pub fn open(file: &'a str, bytes: &'a [u8]) -> Result<Page<'a>, ContentError> {
        Page::open_longer(file, bytes, LONGEST_BYTES)
    }

    /// For a file that grows with use, of at most so many bytes.
    pub fn open_longer(
        file: &'a str,
        bytes: &'a [u8],
        most: usize,
    ) -> Result<Page<'a>, ContentError> {
        let problem = if bytes.len() > most {
            Problem::TooLong { most }
        } else {
            match std::str::from_utf8(bytes) {
                Ok(text) if text.trim_start_matches(BYTE_ORDER_MARK).trim().is_empty() => {
                    Problem::Empty
                }
                Ok(text) => {
                    let text = without_mark(text);
                    let places = OnceCell::new();
                    return Ok(Page { file, text, places });
                }
                Err(error) => {
                    let sound = &bytes[..error.valid_up_to()];
                    let line = sound.iter().filter(|b| **b == b'\n').count() + 1;
                    let position = TextPosition { line, column: 1 };
                    return Err(error_at(
                        file,
                        "",
                        position,
                        String::new(),
                        Problem::NotText,
                    ));
                }
            }
        };
        let position = TextPosition { line: 1, column: 1 };
        Err(error_at(file, "", position, String::new(), problem))
    }

    /// The text.
    pub fn text(&self) -> &'a str {
        self.text
    }

    /// The value in the text. No number in it is infinite or not a number.
    pub fn parse<T: DeserializeOwned>(&self) -> Result<T, ContentError> {
        let value = ron_text::parse(&ron_text::options(), self.text).map_err(|misfit| {
            let Misfit {
                position,
                field,
                error,
                range,
            } = misfit;
            let problem = range.map_or_else(|| problem_of(error), Problem::IntegerRange);
            error_at(self.file, self.text, position, field, problem)
        })?;
        match Outline::of(self.text).not_finite() {
            None => Ok(value),
            Some((field, position, number)) => {
                let problem = Problem::NotFinite(number.to_owned());
                Err(error_at(self.file, self.text, position, field, problem))
            }
        }
    }

    fn places(&self) -> &Places<'a> {
        self.places.get_or_init(|| Outline::of(self.text).places())
    }

    /// Line of the value at a path.
    pub fn line(&self, path: &str) -> usize {
        self.places().position(path).line
    }

    /// The value when nothing was found, else the finding that stands first in the file.
    pub fn judge<T>(&self, value: T, findings: Vec<Finding>) -> Result<T, ContentError> {
        self.judge_all(value, findings).map_err(first)
    }

    /// The value when nothing was found, else every finding in the order of the file.
    pub fn judge_all<T>(&self, value: T, findings: Vec<Finding>) -> Result<T, Vec<ContentError>> {
        if findings.is_empty() {
            return Ok(value);
        }
        let places = self.places();
        let mut errors: Vec<ContentError> = findings
            .into_iter()
            .map(|(field, problem)| {
                let position = match problem {
                    Problem::Repeated { .. } => places.last_position(&field),
                    _ => places.position(&field),
                };
                error_at(self.file, self.text, position, field, problem)
            })
            .collect();
        errors.sort_by_key(|error| (error.line, error.column));
        Err(errors)
    }
}

/// The mistake that stands first in a file, of at least one.
pub(super) fn first(mut errors: Vec<ContentError>) -> ContentError {
    errors.swap_remove(0)
}

/// The tree of a text that the reader takes.
///
/// # Errors
/// The tree does not take it: should the two ever differ, it is told as what it is.
pub(super) fn document_of(file: &str, text: &str) -> Result<Document, ContentError> {
    Document::parse(text).map_err(|error| {
        let unread = Problem::Syntax(Box::new(ron::Error::Message(error.to_string())));
        error_at(
            file,
            text,
            text_position(error.position),
            String::new(),
            unread,
        )
    })
}

/// A place in a text that the tree has found.
pub(super) fn text_position(found: position::TextPosition) -> TextPosition {
    TextPosition {
        line: found.line,
        column: found.column,
    }
}

/// An error at a place in a text, which is empty where the file is none.
pub(super) fn error_at(
    file: &str,
    text: &str,
    position: TextPosition,
    field: String,
    problem: Problem,
) -> ContentError {
    let source_line = SourceLine::of(text, position).filter(|line| !line.text.is_empty());
    ContentError {
        file: file.to_owned(),
        line: position.line,
        column: position.column,
        field,
        problem,
        source_line: source_line.map(Box::new),
    }
}

fn problem_of(error: ron::Error) -> Problem {
    use ron::Error as E;
    if let E::NoSuchStructField {
        expected, found, ..
    }
    | E::NoSuchEnumVariant {
        expected, found, ..
    } = &error
        && let Some(asked) = not_sayable(found, expected)
    {
        return Problem::NotSayable(asked);
    }
    match error {
        E::MissingStructField { field, .. } => Problem::MissingField(field.to_owned()),
        E::DuplicateStructField { field, .. } => Problem::RepeatedField(field.to_owned()),
        E::NoSuchStructField {
            expected, found, ..
        } => Problem::UnknownField {
            expected: Box::new(choices(expected, &found)),
            found,
        },
        E::NoSuchEnumVariant {
            expected, found, ..
        } => Problem::UnknownName {
            expected: Box::new(choices(expected, &found)),
            found,
        },
        E::ExceededRecursionLimit => Problem::TooDeep,
        other => Problem::Syntax(Box::new(other)),
    }
}

/// What of a board that cannot be said a name asks for, where these may stand: people who describe a machine expect them.
fn not_sayable(found: &str, expected: &[&str]) -> Option<NotSayable> {
    let found = found.to_lowercase().replace('_', "");
    let asks = |words: &[&str]| words.iter().any(|word| found.contains(word));
    let among = |names: &[&str]| names.iter().any(|name| expected.contains(name));
    let of_step = among(&["PowerUp", "detents"]);
    let of_lamps = among(&["Weights", "NumberAnd", "lock_lamp", "blinks", "digit_ms"]);
    let of_code = among(&["monitor"]) && among(&["code"]);
    if of_step
        && asks(&[
            "turnto", "goto", "moveto", "setto", "until", "position", "target",
        ])
    {
        Some(NotSayable::TurnTo)
    } else if of_lamps && asks(&["color", "colour", "amber", "blue", "green", "red", "yellow"]) {
        Some(NotSayable::TwoColors)
    } else if (of_lamps || of_code) && asks(&["letter", "text", "alpha", "shown"]) {
        Some(NotSayable::Letters)
    } else {
        None
    }
}

/// Most names that a message lists.
const MOST_CHOICES: usize = 12;

/// The names that may be meant: all, or of many the ones that are written most alike.
pub(super) fn choices(expected: &[&str], found: &str) -> Choices {
    let of = expected.len();
    let owned = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect();
    if of <= MOST_CHOICES {
        return Choices {
            names: owned(expected),
            of,
        };
    }
    let mut nearest: Vec<(usize, &str)> = expected
        .iter()
        .map(|name| (letters_to_change(found, name), *name))
        .collect();
    nearest.sort();
    let names: Vec<&str> = nearest.iter().take(3).map(|(_, name)| *name).collect();
    Choices {
        names: owned(&names),
        of,
    }
}

/// How many letters must be put in, taken out or changed to make `a` into `b` (Levenshtein).
fn letters_to_change(a: &str, b: &str) -> usize {
    // A name much longer than any of ours is far from all of them; there is no need to count.
    if a.len() > 64 {
        return a.len();
    }
    let mut row: Vec<usize> = (0..=b.chars().count()).collect();
    for (i, in_a) in a.chars().enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, in_b) in b.chars().enumerate() {
            let change = diagonal + usize::from(in_a != in_b);
            diagonal = row[j + 1];
            row[j + 1] = change.min(diagonal + 1).min(row[j] + 1);
        }
    }
    row.last().copied().unwrap_or(0)
}

/// Findings for every name that was used before: `path(n)` is the path of the n-th.
pub(super) fn repeated(
    page: &Page<'_>,
    names: &[&str],
    path: impl Fn(usize) -> String,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    let mut first: BTreeMap<&str, usize> = BTreeMap::new();
    for (index, name) in names.iter().enumerate() {
        let first = *first.entry(name).or_insert(index);
        if first != index {
            let problem = Problem::Repeated {
                name: (*name).to_owned(),
                first_line: page.line(&path(first)),
            };
            findings.push((path(index), problem));
        }
    }
    findings
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_are_counted_as_in_the_textbook_example() {
        // "kitten" to "sitting" takes three; common in textbooks, from memory.
        assert_eq!(letters_to_change("kitten", "sitting"), 3);
        assert_eq!(letters_to_change("", "abc"), 3);
        assert_eq!(letters_to_change("año", "ano"), 1);
    }

    #[test]
    fn of_many_names_the_nearest_are_offered() {
        let few = ["Right", "Left"];
        assert_eq!(choices(&few, "Up").names, few);
        let many = [
            "LoadKg", "a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "PumpFree",
        ];
        let offered = choices(&many, "LoadLb");
        assert_eq!((offered.names[0].as_str(), offered.of), ("LoadKg", 13));
        assert_eq!(offered.names.len(), 3);
    }
}
