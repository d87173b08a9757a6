//! An attempt, and reading it back from bytes.

use super::PART;
use super::chain::{Chain, sha256_hex};
use super::error::{Damage, RecordError};
use super::ron_text::{self, Misfit, Outline};
use crate::bench::cost::LONGEST_JOB;
use crate::bench::{Action, Bench};
use crate::lesson::Score;
use detent_simulation::units::{Span, Time};
use ron::extensions::Extensions;
use serde::{Deserialize, Serialize};

/// Newest format of the file that this program reads and writes. Format 1 had no digest and always told the score; it is
/// still read and replayed. Format 3 carries its scenario with it, format 4 the first visit to the machine; each is
/// written only where it does.
pub const FORMAT: u32 = 4;
/// The format of a first visit whose scenario was drawn.
const FORMAT_WITH_SCENARIO: u32 = 3;
/// The format of an attempt whose scenario is a file of its own.
const FORMAT_WITHOUT_SCENARIO: u32 = 2;
/// The first format whose end carries a digest.
const SEALED_FORMAT: u32 = 2;

/// Largest file of an attempt, bytes. The longest job at ten deeds in each second, a knob turned without
/// rest, makes 40 bytes a deed and so 69 million; nobody's hands come near it.
pub const LONGEST_ATTEMPT_BYTES: usize = 72 << 20;

/// Largest first visit that a second one carries, bytes: it leaves as much again for the second.
pub const LONGEST_FIRST_VISIT_BYTES: usize = LONGEST_ATTEMPT_BYTES / 2;

/// Latest moment in an attempt: what was begun in the longest job may be done and reported within an
/// hour. It keeps a damaged file from asking for a replay without end.
pub const LATEST: Time = Time(LONGEST_JOB.saturating_add(Span::from_s(3600)).0);

/// First line of the file.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Header {
    /// Format of the file.
    pub format: u32,
    /// Version of the program that recorded it.
    pub program: String,
    /// Name of the scenario's file.
    pub scenario: String,
    /// SHA-256 of the scenario's text, lower-case hexadecimal.
    pub scenario_sha256: String,
    /// Seed of every random draw.
    pub seed: u64,
    /// The scenario's text, where the scenario was drawn and is in no file.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scenario_text: Option<String>,
    /// The whole file of the first visit, where this is the second one after the customer called back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub first_visit: Option<String>,
}

impl Header {
    /// The header for an attempt at this scenario by this program.
    pub fn new(scenario: &str, scenario_text: &str, seed: u64) -> Header {
        Header {
            format: FORMAT_WITHOUT_SCENARIO,
            program: env!("CARGO_PKG_VERSION").to_owned(),
            scenario: scenario.to_owned(),
            scenario_sha256: sha256_hex(scenario_text.as_bytes()),
            seed,
            scenario_text: None,
            first_visit: None,
        }
    }

    /// The same with the scenario's text in it: for a variant, which is in no file.
    pub fn with_scenario(scenario: &str, scenario_text: &str, seed: u64) -> Header {
        Header {
            format: FORMAT_WITH_SCENARIO,
            scenario_text: Some(scenario_text.to_owned()),
            ..Header::new(scenario, scenario_text, seed)
        }
    }

    /// The header for the second visit after the finished attempt whose file is called `file` and holds `first`.
    ///
    /// # Errors
    /// What is wrong with that attempt; [`Damage::SecondVisit`] when it is a second visit itself.
    pub fn of_second_visit(file: &str, first: &[u8]) -> Result<Header, RecordError> {
        let attempt = read(file, first, Place::FirstVisit)?;
        Ok(Header {
            format: FORMAT,
            program: env!("CARGO_PKG_VERSION").to_owned(),
            // What was read is UTF-8.
            first_visit: Some(String::from_utf8_lossy(first).into_owned()),
            ..attempt.header
        })
    }

    /// Whether both are of the same machine at the same job.
    fn is_same_job(&self, other: &Header) -> bool {
        (&self.scenario, &self.scenario_sha256, self.seed)
            == (&other.scenario, &other.scenario_sha256, other.seed)
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

/// The end of an attempt. In the file a digest of all lines stands behind it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Footer {
    /// When the attempt ended.
    pub at: Time,
    /// Hash of the machine's state at that moment, hexadecimal.
    pub state: String,
    /// Whether the answer was shown.
    pub answer: Answer,
}

/// Whether the hidden fault, the codes and the score were shown: only to whoever has handed in a report
/// that comes to a conclusion.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Answer {
    /// Nothing was shown.
    Withheld,
    /// It was shown.
    Shown {
        /// Total of the score, points.
        score: f64,
    },
}

impl Footer {
    /// The end of the attempt on this bench, worth `score`.
    pub fn of(bench: &Bench, score: &Score) -> Footer {
        let score = score.total();
        let answer = match bench.report() {
            Some(report) if report.concludes() => Answer::Shown { score },
            _ => Answer::Withheld,
        };
        Footer {
            at: bench.now(),
            state: bench.machine().state_hash(),
            answer,
        }
    }
}

/// Last line of the file.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct SealedFooter {
    at: Time,
    state: String,
    answer: Answer,
    digest: String,
}

/// Last line of a file of format 1.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct UnsealedFooter {
    at: Time,
    state: String,
    score: f64,
}

/// Whether the lines of a finished attempt are those that were recorded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seal {
    /// There is no digest: the attempt is not finished, or of format 1.
    Without,
    /// The digest at the end is that of the lines.
    Holds,
    /// It is another: a line was changed, added or taken away.
    Broken,
}

/// A recorded attempt.
#[derive(Clone, Debug, PartialEq)]
pub struct Attempt {
    /// What was attempted.
    pub header: Header,
    /// The first visit, where this is the second one.
    pub first_visit: Option<Box<Attempt>>,
    /// What was done, in order.
    pub actions: Vec<Timed>,
    /// The end, when the attempt was finished.
    pub footer: Option<Footer>,
    /// Whether the lines are those that were recorded.
    pub seal: Seal,
    /// The last line was torn, as by a killed program, and was left out.
    pub torn: bool,
    /// Bytes up to the end of the last whole line: where a resumed log goes on.
    pub whole_bytes: usize,
    /// Digest of the whole lines, for going on.
    pub(super) chain: Chain,
}

impl Attempt {
    /// The moment of the last line.
    pub fn last(&self) -> Time {
        let action = self.actions.last().map_or(Time::ZERO, |timed| timed.at);
        self.footer.as_ref().map_or(action, |footer| footer.at)
    }

    /// The line of the end.
    pub(super) fn end_line(&self) -> usize {
        self.actions.len() + 2
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

/// Read an attempt. A file whose name ends in `.part` may lack its end, and its last line may be
/// torn; in any other file both are damage.
///
/// # Errors
/// The first damage, with its line and field.
pub fn read_attempt(file: &str, bytes: &[u8]) -> Result<Attempt, RecordError> {
    let unfinished = file.ends_with(PART);
    read(file, bytes, Place::File { unfinished })
}

/// Where an attempt stands.
#[derive(Clone, Copy)]
enum Place {
    /// In a file of its own.
    File {
        /// It may lack its end.
        unfinished: bool,
    },
    /// In the first line of the second visit.
    FirstVisit,
}

impl Place {
    /// Largest attempt here, bytes.
    fn most_bytes(self) -> usize {
        match self {
            Place::File { .. } => LONGEST_ATTEMPT_BYTES,
            Place::FirstVisit => LONGEST_FIRST_VISIT_BYTES,
        }
    }
}

fn read(file: &str, bytes: &[u8], place: Place) -> Result<Attempt, RecordError> {
    let error = |line: usize, field: &str, problem: Damage| RecordError {
        file: file.to_owned(),
        line,
        field: field.to_owned(),
        problem,
    };
    let most = place.most_bytes();
    if bytes.len() > most {
        return Err(error(1, "", Damage::TooLong { most }));
    }
    let text = bytes.strip_prefix(BYTE_ORDER_MARK).unwrap_or(bytes);
    let mark = bytes.len() - text.len();
    let bytes = text;
    if bytes.is_empty() {
        return Err(error(1, "", Damage::Empty));
    }
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
    let first_visit = match (&header.first_visit, place) {
        (None, _) => None,
        (Some(_), Place::FirstVisit) => {
            return Err(error(1, FIRST_VISIT, Damage::SecondVisit));
        }
        (Some(text), Place::File { .. }) => {
            let first = read_first_visit(file, text, &header);
            Some(Box::new(
                first.map_err(|problem| error(1, FIRST_VISIT, problem))?,
            ))
        }
    };
    let mut chain = Chain::begin(first);
    let mut seal = Seal::Without;
    let mut actions: Vec<Timed> = Vec::new();
    let mut footer: Option<Footer> = None;
    let mut before = Time::ZERO;
    for (index, line) in rest.iter().enumerate() {
        let number = index + 2;
        if footer.is_some() {
            return Err(error(number, "", Damage::AfterEnd));
        }
        let at = if is_end(line) {
            let (end, digest) = read_footer(line, header.format)
                .map_err(|(field, problem)| error(number, &field, problem))?;
            if let Some(digest) = digest {
                let same = seal_of(&mut chain, &end).is_ok_and(|sound| sound == digest);
                seal = if same { Seal::Holds } else { Seal::Broken };
            }
            let at = end.at;
            footer = Some(end);
            at
        } else {
            let timed: Timed =
                read_line(line).map_err(|(field, problem)| error(number, &field, problem))?;
            let at = timed.at;
            chain.link(line);
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
    let may_lack_its_end = matches!(place, Place::File { unfinished: true });
    if footer.is_none() && !may_lack_its_end {
        let line = lines.len() + usize::from(torn);
        return Err(error(line, "", Damage::Truncated));
    }
    Ok(Attempt {
        header,
        first_visit,
        actions,
        footer,
        seal,
        torn,
        whole_bytes: mark + whole_bytes,
        chain,
    })
}

/// The field that holds the first visit.
const FIRST_VISIT: &str = "first_visit";

/// The first visit that the second one of this `header` carries.
fn read_first_visit(file: &str, text: &str, header: &Header) -> Result<Attempt, Damage> {
    let first = read(file, text.as_bytes(), Place::FirstVisit);
    let first = first.map_err(|RecordError { line, problem, .. }| Damage::InFirstVisit {
        line,
        problem: Box::new(problem),
    })?;
    if !first.header.is_same_job(header) {
        return Err(Damage::OtherFirstVisit);
    }
    Ok(first)
}

/// What some editors put in front of a text, in UTF-8.
const BYTE_ORDER_MARK: &[u8] = b"\xef\xbb\xbf";

/// The digest that belongs behind this end.
fn seal_of(chain: &mut Chain, footer: &Footer) -> Result<String, ron::Error> {
    chain.link(&line_options().to_string(footer)?);
    Ok(chain.hex())
}

/// The last line of a file of this format, without its line break.
pub(super) fn footer_line(
    format: u32,
    chain: &mut Chain,
    footer: &Footer,
) -> Result<String, ron::Error> {
    let Footer { at, state, answer } = footer.clone();
    let body = if format < SEALED_FORMAT {
        let score = match answer {
            Answer::Shown { score } => score,
            Answer::Withheld => 0.0,
        };
        line_options().to_string(&UnsealedFooter { at, state, score })?
    } else {
        let digest = seal_of(chain, footer)?;
        line_options().to_string(&SealedFooter {
            at,
            state,
            answer,
            digest,
        })?
    };
    Ok(format!("{FOOTER}{body}"))
}

/// How a line is read and written: a time is its bare number of ticks.
pub(super) fn line_options() -> ron::Options {
    ron_text::options().with_default_extension(Extensions::UNWRAP_NEWTYPES)
}

/// How the first line begins.
pub(super) const HEADER: &str = "DetentAttempt";
/// How the last line begins.
pub(super) const FOOTER: &str = "End";

/// Whether this line of an attempt is its end.
pub fn is_end(line: &str) -> bool {
    line.starts_with(FOOTER)
}

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
    if let Some(text) = &header.scenario_text
        && sha256_hex(text.as_bytes()) != header.scenario_sha256
    {
        return Err(("scenario_text".to_owned(), Damage::OtherText));
    }
    Ok(header)
}

/// The end, and the digest where the format has one.
fn read_footer(line: &str, format: u32) -> Result<(Footer, Option<String>), Damaged> {
    let body = line.strip_prefix(FOOTER).unwrap_or(line);
    let (footer, digest) = if format < SEALED_FORMAT {
        let UnsealedFooter { at, state, score } = read_line(body)?;
        let answer = Answer::Shown { score };
        (Footer { at, state, answer }, None)
    } else {
        let SealedFooter {
            at,
            state,
            answer,
            digest,
        } = read_line(body)?;
        (Footer { at, state, answer }, Some(digest))
    };
    let hashes = [("state", Some(&footer.state)), ("digest", digest.as_ref())];
    for (field, hash) in hashes {
        if let Some(hash) = hash.filter(|hash| !is_hex(hash)) {
            return Err((field.to_owned(), Damage::NotAHash(hash.clone())));
        }
    }
    Ok((footer, digest))
}

pub(super) fn is_hex(text: &str) -> bool {
    !text.is_empty()
        && text.len() <= 128
        && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
}

pub(super) fn read_line<T: serde::de::DeserializeOwned>(line: &str) -> Result<T, Damaged> {
    let value = ron_text::parse(&line_options(), line).map_err(|misfit| {
        let Misfit {
            field,
            error,
            range,
            ..
        } = misfit;
        let problem = match (range, error) {
            (Some(range), _) => Damage::IntegerRange(range),
            (None, ron::Error::NoSuchEnumVariant { found, .. }) => Damage::UnknownAction(found),
            (None, other) => Damage::Line(Box::new(other)),
        };
        (field, problem)
    })?;
    match Outline::of(line).not_finite() {
        Some((field, _, number)) => Err((field, Damage::NotFinite(number.to_owned()))),
        None => Ok(value),
    }
}
