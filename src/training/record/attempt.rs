//! An attempt, and reading it back from bytes.

use super::PART;
use super::error::{Damage, RecordError};
use super::ron_text::{self, Misfit, Outline};
use crate::bench::Action;
use detent_simulation::units::{Span, Time};
use ron::extensions::Extensions;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};

/// Newest format of the file that this program reads and writes.
pub const FORMAT: u32 = 1;

/// Latest moment in an attempt: thirty days of machine time. It keeps a damaged file from asking
/// for a replay without end.
pub const LATEST: Time = Time(Span::from_s(30 * 24 * 3600).0);

/// First line of the file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Header {
    /// Format of the file, [`FORMAT`] when written here.
    pub format: u32,
    /// Version of the program that recorded it.
    pub program: String,
    /// Name of the scenario's file.
    pub scenario: String,
    /// SHA-256 of the scenario's text, lower-case hexadecimal.
    pub scenario_sha256: String,
    /// Seed of every random draw.
    pub seed: u64,
}

impl Header {
    /// The header for an attempt at this scenario by this program.
    pub fn new(scenario: &str, scenario_text: &str, seed: u64) -> Header {
        Header {
            format: FORMAT,
            program: env!("CARGO_PKG_VERSION").to_owned(),
            scenario: scenario.to_owned(),
            scenario_sha256: sha256_hex(scenario_text.as_bytes()),
            seed,
        }
    }
}

/// One action with its moment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Timed {
    /// When it was done.
    pub at: Time,
    /// What was done.
    #[serde(rename = "do")]
    pub action: Action,
}

/// Last line of a finished file.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Footer {
    /// When the attempt ended.
    pub at: Time,
    /// Hash of the machine's state at that moment, hexadecimal.
    pub state: String,
    /// Total of the score, points.
    pub score: f64,
}

/// A recorded attempt.
#[derive(Clone, Debug, PartialEq)]
pub struct Attempt {
    /// What was attempted.
    pub header: Header,
    /// What was done, in order.
    pub actions: Vec<Timed>,
    /// The end, when the attempt was finished.
    pub footer: Option<Footer>,
    /// The last line was torn, as by a killed program, and was left out.
    pub torn: bool,
    /// Bytes up to the end of the last whole line: where a resumed log goes on.
    pub whole_bytes: usize,
}

impl Attempt {
    /// The moment of the last line.
    pub fn last(&self) -> Time {
        let action = self.actions.last().map_or(Time::ZERO, |timed| timed.at);
        self.footer.as_ref().map_or(action, |footer| footer.at)
    }

    /// Refuse a scenario whose text is not the one that was attempted. `file` names the attempt.
    ///
    /// # Errors
    /// [`Damage::ScenarioChanged`].
    pub fn check_scenario(&self, file: &str, scenario_text: &str) -> Result<(), RecordError> {
        if sha256_hex(scenario_text.as_bytes()) == self.header.scenario_sha256 {
            return Ok(());
        }
        Err(RecordError {
            file: file.to_owned(),
            line: 1,
            field: "scenario_sha256".to_owned(),
            problem: Damage::ScenarioChanged {
                scenario: self.header.scenario.clone(),
            },
        })
    }
}

/// SHA-256 as lower-case hexadecimal digits.
pub fn sha256_hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes)
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

/// Read an attempt. A file whose name ends in `.part` may lack its end, and its last line may be
/// torn; in any other file both are damage.
///
/// # Errors
/// The first damage, with its line and field.
pub fn read_attempt(file: &str, bytes: &[u8]) -> Result<Attempt, RecordError> {
    let error = |line: usize, field: &str, problem: Damage| RecordError {
        file: file.to_owned(),
        line,
        field: field.to_owned(),
        problem,
    };
    if bytes.is_empty() {
        return Err(error(1, "", Damage::Empty));
    }
    let unfinished = file.ends_with(PART);
    let whole_bytes = bytes
        .iter()
        .rposition(|b| *b == b'\n')
        .map_or(0, |at| at + 1);
    let torn = whole_bytes < bytes.len();

    let mut lines = Vec::new();
    for (index, line) in bytes[..whole_bytes]
        .split_inclusive(|b| *b == b'\n')
        .enumerate()
    {
        let text = std::str::from_utf8(line).map_err(|_| {
            let problem = if index == 0 {
                Damage::Foreign
            } else {
                Damage::NotText
            };
            error(index + 1, "", problem)
        })?;
        lines.push(text.trim_end_matches(['\n', '\r']));
    }
    let Some((first, rest)) = lines.split_first() else {
        let ours = bytes.starts_with(HEADER.as_bytes()) || HEADER.as_bytes().starts_with(bytes);
        let problem = if ours {
            Damage::Truncated
        } else {
            Damage::Foreign
        };
        return Err(error(1, "", problem));
    };

    let header = read_header(first).map_err(|(field, problem)| error(1, &field, problem))?;
    let mut actions: Vec<Timed> = Vec::new();
    let mut footer: Option<Footer> = None;
    let mut before = Time::ZERO;
    for (index, line) in rest.iter().enumerate() {
        let number = index + 2;
        if footer.is_some() {
            return Err(error(number, "", Damage::AfterEnd));
        }
        let at = if line.starts_with(FOOTER) {
            let end =
                read_footer(line).map_err(|(field, problem)| error(number, &field, problem))?;
            let at = end.at;
            footer = Some(end);
            at
        } else {
            let timed: Timed =
                read_line(line).map_err(|(field, problem)| error(number, &field, problem))?;
            let at = timed.at;
            actions.push(timed);
            at
        };
        if at < before {
            let found = at;
            return Err(error(number, "at", Damage::TimeBackwards { before, found }));
        }
        if at > LATEST {
            return Err(error(number, "at", Damage::TooLate(at)));
        }
        before = at;
    }
    if torn && footer.is_some() {
        return Err(error(lines.len() + 1, "", Damage::AfterEnd));
    }
    if footer.is_none() && !unfinished {
        let line = lines.len() + usize::from(torn);
        return Err(error(line, "", Damage::Truncated));
    }
    Ok(Attempt {
        header,
        actions,
        footer,
        torn,
        whole_bytes,
    })
}

/// How a line is read and written: a time is its bare number of ticks.
pub(super) fn line_options() -> ron::Options {
    ron_text::options().with_default_extension(Extensions::UNWRAP_NEWTYPES)
}

/// How the first line begins.
pub(super) const HEADER: &str = "DetentAttempt";
/// How the last line begins.
pub(super) const FOOTER: &str = "End";

/// The one field that every format keeps.
#[derive(Deserialize)]
struct AnyFormat {
    format: u32,
}

type Damaged = (String, Damage);

fn read_header(line: &str) -> Result<Header, Damaged> {
    let Some(body) = line.strip_prefix(HEADER).filter(|b| b.starts_with('(')) else {
        return Err((String::new(), Damage::Foreign));
    };
    let whole = |problem| ("format".to_owned(), problem);
    let AnyFormat { format } = read_line(body)?;
    if format > FORMAT {
        let (found, known) = (format, FORMAT);
        return Err(whole(Damage::NewerFormat { found, known }));
    }
    if format == 0 {
        return Err(whole(Damage::NoSuchFormat(format)));
    }
    let header: Header = read_line(body)?;
    if header.scenario_sha256.len() != 64 || !is_hex(&header.scenario_sha256) {
        let problem = Damage::NotAHash(header.scenario_sha256);
        return Err(("scenario_sha256".to_owned(), problem));
    }
    Ok(header)
}

fn read_footer(line: &str) -> Result<Footer, Damaged> {
    let footer: Footer = read_line(line.strip_prefix(FOOTER).unwrap_or(line))?;
    if !is_hex(&footer.state) {
        return Err(("state".to_owned(), Damage::NotAHash(footer.state)));
    }
    Ok(footer)
}

fn is_hex(text: &str) -> bool {
    !text.is_empty()
        && text.len() <= 128
        && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
}

fn read_line<T: serde::de::DeserializeOwned>(line: &str) -> Result<T, Damaged> {
    let value =
        ron_text::parse(&line_options(), line).map_err(|Misfit { field, error, .. }| {
            let problem = match error {
                ron::Error::NoSuchEnumVariant { found, .. } => Damage::UnknownAction(found),
                other => Damage::Line(other.to_string()),
            };
            (field, problem)
        })?;
    match Outline::of(line).not_finite() {
        Some((field, _, number)) => Err((field, Damage::NotFinite(number.to_owned()))),
        None => Ok(value),
    }
}
