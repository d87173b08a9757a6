//! A round of a drill as text, one RON value in each line:
//!
//! ```text
//! DetentDrill(format:1,program:"0.1.0",skill:LampReading,questions:10,seed:7)
//! (at:1790000000,took_ms:4210,given:Number(42))
//! End(right:8,digest:"07ab…")
//! ```
//!
//! It holds what was given, so that whoever has the same content can mark it again. Moments are those of the clock where
//! it was done; nobody else can tell whether that was right.

use super::attempt::{Seal, is_end, is_hex, line_options, read_line};
use super::chain::sha256_hex;
use super::error::{Damage, RecordError};
use crate::practice::drill::{Given, MOST_QUESTIONS};
use crate::practice::{Moment, Skill};
use serde::{Deserialize, Serialize};

/// Newest format that this program reads and writes.
const DRILL_FORMAT: u32 = 1;
/// How the first line of a round begins, and that of no attempt at a job.
pub const DRILL_ROUND_BEGINS: &str = "DetentDrill";
/// How the last line begins.
const FOOTER: &str = "End";
/// Largest round, bytes: each answer a try at a gesture of as many deeds as are kept.
pub const LONGEST_ROUND_BYTES: usize = 4 << 20;

/// First line of a round.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DrillHeader {
    /// Format of the text.
    pub format: u32,
    /// Version of the program that recorded it.
    pub program: String,
    /// The skill.
    pub skill: Skill,
    /// Questions that the round has.
    pub questions: usize,
    /// Seed that they follow from.
    pub seed: u64,
}

impl DrillHeader {
    /// Of a round with this program.
    pub fn new(skill: Skill, questions: usize, seed: u64) -> DrillHeader {
        DrillHeader {
            format: DRILL_FORMAT,
            program: env!("CARGO_PKG_VERSION").to_owned(),
            skill,
            questions,
            seed,
        }
    }
}

/// An answer with its moment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct DrillAnswer {
    /// When it was given, by the clock where it was done.
    pub at: Moment,
    /// From the question to the answer, ms.
    pub took_ms: u32,
    /// What was given.
    pub given: Given,
}

/// The last line.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct DrillEnd {
    right: usize,
    digest: String,
}

/// A round that was recorded.
#[derive(Clone, Debug, PartialEq)]
pub struct DrillRecord {
    /// Which.
    pub header: DrillHeader,
    /// Answers, in order.
    pub answers: Vec<DrillAnswer>,
    /// Right answers, as the end says; none while it lacks.
    pub right: Option<usize>,
    /// Whether the lines are those that were recorded.
    pub seal: Seal,
}

/// A round as it is being recorded: its whole text so far.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DrillText {
    text: String,
}

impl DrillText {
    /// Begins one.
    ///
    /// # Errors
    /// It cannot be put into words.
    pub fn begin(header: &DrillHeader) -> Result<DrillText, ron::Error> {
        let line = line_options().to_string(header)?;
        Ok(DrillText {
            text: format!("{DRILL_ROUND_BEGINS}{line}\n"),
        })
    }

    /// Goes on with the whole lines of one that was broken off.
    pub fn go_on(text: &str) -> DrillText {
        let whole = text.rfind('\n').map_or(0, |end| end + 1);
        DrillText {
            text: text[..whole].to_owned(),
        }
    }

    /// Adds an answer.
    ///
    /// # Errors
    /// It cannot be put into words.
    pub fn push(&mut self, answer: &DrillAnswer) -> Result<(), ron::Error> {
        self.text.push_str(&line_options().to_string(answer)?);
        self.text.push('\n');
        Ok(())
    }

    /// Adds the end.
    ///
    /// # Errors
    /// It cannot be put into words.
    pub fn end(&mut self, right: usize) -> Result<(), ron::Error> {
        let digest = digest(&self.text, right);
        let line = line_options().to_string(&DrillEnd { right, digest })?;
        self.text.push_str(&format!("{FOOTER}{line}\n"));
        Ok(())
    }

    /// All of it so far.
    pub fn text(&self) -> &str {
        &self.text
    }
}

/// The digest behind these lines and this end.
fn digest(lines: &str, right: usize) -> String {
    sha256_hex(format!("{lines}{right}").as_bytes())
}

/// Whether a text is a round of a drill, and no attempt at a job.
pub fn is_drill_round(text: &str) -> bool {
    text.trim_start_matches('\u{feff}')
        .starts_with(DRILL_ROUND_BEGINS)
}

/// Reads a round. Where it may be `unfinished`, its end may lack, and so may that of its last line.
///
/// # Errors
/// The first damage, with its line and field.
pub fn read_drill_round(
    file: &str,
    text: &str,
    unfinished: bool,
) -> Result<DrillRecord, RecordError> {
    let error = |line: usize, field: &str, problem: Damage| RecordError {
        file: file.to_owned(),
        line,
        field: field.to_owned(),
        problem,
    };
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.is_empty() {
        return Err(error(1, "", Damage::Empty));
    }
    if text.len() > LONGEST_ROUND_BYTES {
        let most = LONGEST_ROUND_BYTES;
        return Err(error(1, "", Damage::TooLong { most }));
    }
    let whole = text.rfind('\n').map_or(0, |end| end + 1);
    let (whole, torn) = text.split_at(whole);
    let mut lines = whole.split_inclusive('\n').enumerate();
    let Some((_, first)) = lines.next() else {
        return Err(error(1, "", Damage::Truncated));
    };
    let header = read_header(first).map_err(|(field, problem)| error(1, &field, problem))?;
    let (mut answers, mut end, mut so_far) = (Vec::new(), None, first.len());
    for (index, line) in lines {
        let number = index + 1;
        let wrong = |(field, problem): (String, Damage)| error(number, &field, problem);
        if end.is_some() {
            return Err(error(number, "", Damage::AfterEnd));
        }
        if is_end(line) {
            let found = read_end(line).map_err(wrong)?;
            let holds = found.digest == digest(&whole[..so_far], found.right);
            end = Some((found.right, holds));
        } else {
            let answer: DrillAnswer = read_line(line.trim_end()).map_err(wrong)?;
            if answers.len() >= header.questions {
                return Err(error(number, "", Damage::AfterEnd));
            }
            answers.push(answer);
        }
        so_far += line.len();
    }
    let last = whole.lines().count();
    if !torn.is_empty() && end.is_some() {
        return Err(error(last + 1, "", Damage::AfterEnd));
    }
    let is_whole = end.is_some() && answers.len() == header.questions;
    if !is_whole && (end.is_some() || !unfinished) {
        return Err(error(last, "", Damage::Truncated));
    }
    Ok(DrillRecord {
        header,
        answers,
        right: end.map(|(right, _)| right),
        seal: match end {
            None => Seal::Without,
            Some((_, true)) => Seal::Holds,
            Some((_, false)) => Seal::Broken,
        },
    })
}

/// The one field that every format keeps.
#[derive(Deserialize)]
struct AnyFormat {
    format: u32,
}

fn read_header(line: &str) -> Result<DrillHeader, (String, Damage)> {
    let Some(body) = line.trim_end().strip_prefix(DRILL_ROUND_BEGINS) else {
        return Err((String::new(), Damage::Foreign));
    };
    let format = |problem| ("format".to_owned(), problem);
    let AnyFormat { format: found } = read_line(body)?;
    if found > DRILL_FORMAT {
        let known = DRILL_FORMAT;
        return Err(format(Damage::NewerFormat { found, known }));
    }
    if found == 0 {
        return Err(format(Damage::NoSuchFormat(found)));
    }
    let header: DrillHeader = read_line(body)?;
    if !(1..=MOST_QUESTIONS).contains(&header.questions) {
        let problem = Damage::NoSuchRound {
            questions: header.questions,
        };
        return Err(("questions".to_owned(), problem));
    }
    Ok(header)
}

fn read_end(line: &str) -> Result<DrillEnd, (String, Damage)> {
    let line = line.trim_end();
    let end: DrillEnd = read_line(line.strip_prefix(FOOTER).unwrap_or(line))?;
    if !is_hex(&end.digest) {
        return Err(("digest".to_owned(), Damage::NotAHash(end.digest)));
    }
    Ok(end)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answer(read: u8) -> DrillAnswer {
        DrillAnswer {
            at: Moment(1_790_000_000),
            took_ms: 4_210,
            given: Given::Number(read),
        }
    }

    fn whole() -> String {
        let header = DrillHeader::new(Skill::LampReading, 3, u64::MAX);
        let mut text = DrillText::begin(&header).expect("words");
        for read in [42, 7, 99] {
            text.push(&answer(read)).expect("words");
        }
        text.end(2).expect("words");
        text.text().to_owned()
    }

    #[test]
    fn what_was_written_is_read_back_the_same() {
        let text = whole();
        assert!(is_drill_round(&text));
        let read = read_drill_round("a.round", &text, false).expect("just written");
        assert_eq!(
            read,
            DrillRecord {
                header: DrillHeader::new(Skill::LampReading, 3, u64::MAX),
                answers: [42, 7, 99].map(answer).to_vec(),
                right: Some(2),
                seal: Seal::Holds,
            }
        );
        let with_mark = format!("\u{feff}{text}");
        assert_eq!(read_drill_round("a.round", &with_mark, false), Ok(read));
    }

    #[test]
    fn a_round_that_was_cut_anywhere_goes_on_behind_its_last_whole_line() {
        let text = whole();
        let head = text.find('\n').expect("a header") + 1;
        for cut in head..text.len() {
            let cut_off = &text[..cut];
            assert!(read_drill_round("a.round", cut_off, false).is_err());
            let read = read_drill_round("a.round", cut_off, true).expect("a part may be torn");
            let mut again = DrillText::go_on(cut_off);
            for missing in [42, 7, 99].into_iter().skip(read.answers.len()) {
                again.push(&answer(missing)).expect("words");
            }
            again.end(2).expect("words");
            assert_eq!(again.text(), text, "cut at {cut}");
        }
    }

    #[test]
    fn every_damage_is_told_with_its_line() {
        let text = whole();
        let tell = |text: &str| match read_drill_round("a.round", text, false) {
            Ok(read) => format!("{:?}", read.seal),
            Err(error) => error.to_string(),
        };
        for (from, to, told) in [
            ("Number(7)", "Number(8)", "Broken"),
            ("right:2", "right:3", "Broken"),
            ("Number(7)", "Colour(7)", "a.round:3"),
            ("Number(7)", "Number(7000)", "a.round:3: given"),
            ("format:1", "format:2", "a.round:1: format"),
            ("format:1", "format:0", "a.round:1: format"),
            ("questions:3", "questions:0", "a.round:1: questions"),
            ("questions:3", "questions:51", "a.round:1: questions"),
            ("questions:3", "questions:4", "a.round:5"),
            ("questions:3", "questions:2", "a.round:4"),
            ("LampReading", "Whistling", "a.round:1: skill"),
            ("DetentDrill", "DetentAttempt", "a.round:1"),
            ("digest:\"", "digest:\"X", "a.round:5: digest"),
        ] {
            let damaged = text.replacen(from, to, 1);
            assert_ne!(damaged, text, "{from}");
            assert!(tell(&damaged).contains(told), "{to}: {}", tell(&damaged));
        }
        assert!(tell("").contains("a.round:1"));
        assert!(tell(&format!("{text}x\n")).contains("a.round:6"));
        assert!(tell(&format!("{text}x")).contains("a.round:6"));
    }
}
