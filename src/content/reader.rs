//! The way from bytes to a checked value that every reader takes.

use super::error::{ContentError, Problem};
use crate::record::ron_text::{self, Misfit, Outline, Spot};
use serde::de::DeserializeOwned;

/// Largest file that is read; the largest of ours is a hundredth of it.
pub(super) const LONGEST_BYTES: usize = 4 << 20;

/// Something a check found: the path of the field, and what is wrong with it.
pub type Finding<P = Problem> = (String, P);

/// Read a value and hold it against its own rules, each finding given as path and message. For
/// types that check themselves, as a board does:
///
/// ```ignore
/// read_checked(file, bytes, |board: &Board| {
///     board.check().iter().map(|p| (p.field.clone(), p.to_string())).collect()
/// })
/// ```
///
/// # Errors
/// Every finding, in the order of the file; at least one.
pub fn read_checked<T: DeserializeOwned>(
    file: &str,
    bytes: &[u8],
    check: impl Fn(&T) -> Vec<Finding<String>>,
) -> Result<T, Vec<ContentError>> {
    let page = Page::open(file, bytes).map_err(|error| vec![error])?;
    let value = page.parse().map_err(|error| vec![error])?;
    let findings = check(&value).into_iter();
    let findings = findings.map(|(path, message)| (path, Problem::Rule(message)));
    page.judge_all(value, findings.collect())
}

/// A file's name with its text.
pub(super) struct Page<'a> {
    file: &'a str,
    text: &'a str,
}

impl<'a> Page<'a> {
    pub fn open(file: &'a str, bytes: &'a [u8]) -> Result<Page<'a>, ContentError> {
        let problem = if bytes.len() > LONGEST_BYTES {
            Problem::TooLong {
                bytes: bytes.len(),
                most: LONGEST_BYTES,
            }
        } else {
            match std::str::from_utf8(bytes) {
                Ok(text) if text.trim().is_empty() => Problem::Empty,
                Ok(text) => return Ok(Page { file, text }),
                Err(error) => {
                    let sound = &bytes[..error.valid_up_to()];
                    let line = sound.iter().filter(|b| **b == b'\n').count() + 1;
                    let spot = Spot { line, column: 1 };
                    return Err(error_at(file, spot, String::new(), Problem::NotText));
                }
            }
        };
        let spot = Spot { line: 1, column: 1 };
        Err(error_at(file, spot, String::new(), problem))
    }

    /// The text.
    pub fn text(&self) -> &'a str {
        self.text
    }

    /// The value in the text. No number in it is infinite or not a number.
    pub fn parse<T: DeserializeOwned>(&self) -> Result<T, ContentError> {
        let value = ron_text::parse(self.text).map_err(|misfit| {
            let Misfit { spot, field, error } = misfit;
            error_at(self.file, spot, field, problem_of(error))
        })?;
        match Outline::of(self.text).not_finite() {
            None => Ok(value),
            Some((field, spot, number)) => {
                let problem = Problem::NotFinite(number.to_owned());
                Err(error_at(self.file, spot, field, problem))
            }
        }
    }

    /// Line of the value at a path.
    pub fn line(&self, path: &str) -> usize {
        Outline::of(self.text).spot(path).line
    }

    /// The value when nothing was found, else the finding that stands first in the file.
    pub fn judge<T>(&self, value: T, findings: Vec<Finding>) -> Result<T, ContentError> {
        self.judge_all(value, findings)
            .map_err(|mut errors| errors.swap_remove(0))
    }

    fn judge_all<T>(&self, value: T, findings: Vec<Finding>) -> Result<T, Vec<ContentError>> {
        if findings.is_empty() {
            return Ok(value);
        }
        let outline = Outline::of(self.text);
        let mut errors: Vec<ContentError> = findings
            .into_iter()
            .map(|(field, problem)| error_at(self.file, outline.spot(&field), field, problem))
            .collect();
        errors.sort_by_key(|error| (error.line, error.column));
        Err(errors)
    }
}

fn error_at(file: &str, spot: Spot, field: String, problem: Problem) -> ContentError {
    ContentError {
        file: file.to_owned(),
        line: spot.line,
        column: spot.column,
        field,
        problem,
    }
}

fn problem_of(error: ron::Error) -> Problem {
    use ron::Error as E;
    match error {
        E::MissingStructField { field, .. } => Problem::MissingField(field.to_owned()),
        E::DuplicateStructField { field, .. } => Problem::RepeatedField(field.to_owned()),
        E::NoSuchStructField {
            expected, found, ..
        } => Problem::UnknownField {
            found,
            expected: expected.join(", "),
        },
        E::NoSuchEnumVariant {
            expected, found, ..
        } => Problem::UnknownName {
            found,
            expected: expected.join(", "),
        },
        E::ExceededRecursionLimit => Problem::TooDeep,
        other => Problem::Syntax(other.to_string()),
    }
}

/// Findings for every name that was used before: `path(n)` is the path of the n-th.
pub(super) fn repeated<N: PartialEq + ToString>(
    page: &Page<'_>,
    names: &[N],
    path: impl Fn(usize) -> String,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (index, name) in names.iter().enumerate() {
        if let Some(first) = names[..index].iter().position(|n| n == name) {
            let problem = Problem::Repeated {
                name: name.to_string(),
                first_line: page.line(&path(first)),
            };
            findings.push((path(index), problem));
        }
    }
    findings
}
