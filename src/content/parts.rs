//! The parts counter's list.

use super::error::{ContentError, Problem};
use super::reader::{Page, repeated};
use crate::bench::Part;
use serde::{Deserialize, Serialize};

/// Every part that can be bought.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Parts {
    /// The parts, in the order in which the counter shows them.
    pub parts: Vec<Part>,
}

impl Parts {
    /// The part of this number.
    pub fn part(&self, number: &str) -> Option<&Part> {
        self.parts.iter().find(|part| part.number == number)
    }
}

/// Read the list of parts.
///
/// # Errors
/// The first mistake in the file.
pub fn read_parts(file: &str, bytes: &[u8]) -> Result<Parts, ContentError> {
    let page = Page::open(file, bytes)?;
    let list: Parts = page.parse()?;
    let numbers: Vec<&str> = list.parts.iter().map(|p| p.number.as_str()).collect();
    let mut findings = repeated(&page, &numbers, |n| format!("parts[{n}].number"));
    if list.parts.is_empty() {
        let problem = Problem::Nothing("list at least one part");
        findings.push(("parts".to_owned(), problem));
    }
    for (n, part) in list.parts.iter().enumerate() {
        let mut found =
            |field: &str, problem| findings.push((format!("parts[{n}].{field}"), problem));
        for (field, text) in [("number", &part.number), ("name_key", &part.name_key)] {
            if text.trim().is_empty() {
                found(field, Problem::Nothing("write it"));
            }
        }
        for (field, number) in [("price", part.price), ("wait_hours", part.wait_hours)] {
            if number < 0.0 {
                let allowed = "0 or more";
                found(
                    field,
                    Problem::OutOfRange {
                        found: number,
                        allowed,
                    },
                );
            }
        }
    }
    page.judge(list, findings)
}
