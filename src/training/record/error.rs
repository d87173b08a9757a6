//! What can be wrong with an attempt file.

use super::ron_text::WrongInteger;
use detent_simulation::units::Time;
use std::fmt;

/// An attempt file that cannot be used, and where it goes wrong.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordError {
    /// Name of the file as it was given.
    pub file: String,
    /// Line, from 1.
    pub line: usize,
    /// Path of the field, or empty when the line or the file as a whole is meant.
    pub field: String,
    /// What is wrong.
    pub problem: Damage,
}

impl fmt::Display for RecordError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}: ", self.file, self.line)?;
        if !self.field.is_empty() {
            write!(f, "{}: ", self.field)?;
        }
        write!(f, "{}", self.problem)
    }
}

impl std::error::Error for RecordError {}

/// One kind of damage.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Damage {
    /// Nothing in it.
    #[error("the file is empty; no attempt was recorded in it")]
    Empty,
    /// The first line is not ours.
    #[error("this is not an attempt of Detent; choose a file that Detent recorded")]
    Foreign,
    /// Bytes that are no text.
    #[error("these bytes are not UTF-8 text; restore the file from a copy")]
    NotText,
    /// Made by a later program.
    #[error(
        "the attempt has format {found} and this program reads up to {known}; use a newer Detent"
    )]
    NewerFormat {
        /// Format of the file.
        found: u32,
        /// Newest format known here.
        known: u32,
    },
    /// A format number that never was.
    #[error("no Detent wrote format {0}; restore the file from a copy")]
    NoSuchFormat(u32),
    /// A round of a drill that nobody can ask for.
    #[error("no round of a drill has {questions} questions; restore the file from a copy")]
    NoSuchRound {
        /// Questions that it is said to have.
        questions: usize,
    },
    /// An action that this program does not know.
    #[error(
        "no action or part of one is called \"{0}\"; the line was changed, restore the file from a copy"
    )]
    UnknownAction(String),
    /// A line that is not the RON it should be.
    #[error("{0}; the line was changed, restore the file from a copy")]
    Line(Box<ron::Error>),
    /// A whole number outside its range.
    #[error("{0}; the line was changed, restore the file from a copy")]
    IntegerRange(Box<WrongInteger>),
    /// A number that is none.
    #[error("{0} is not a finite number; restore the file from a copy")]
    NotFinite(String),
    /// The scenario that the attempt carries is not the one that was attempted.
    #[error("this is not the scenario that was attempted; restore the file from a copy")]
    OtherText,
    /// The first visit that a second one carries is damaged.
    #[error("in the first visit, line {line}: {problem}")]
    InFirstVisit {
        /// Line in the first visit, from 1.
        line: usize,
        /// What is wrong.
        problem: Box<Damage>,
    },
    /// The first visit that a second one carries was to another machine.
    #[error("the first visit that it carries was to another machine; restore the file from a copy")]
    OtherFirstVisit,
    /// A second visit where only a first one can stand.
    #[error(
        "this is a second visit already, and no attempt holds a third; choose the attempt of a first visit"
    )]
    SecondVisit,
    /// Something that should be hexadecimal and is not.
    #[error("\"{0}\" is not a hash in hexadecimal digits; restore the file from a copy")]
    NotAHash(String),
    /// An action before the one above it.
    #[error(
        "goes back from {before} to {found}; actions stand in the order in which they were done"
    )]
    TimeBackwards {
        /// Time of the line above.
        before: Time,
        /// Time of this line.
        found: Time,
    },
    /// A time no attempt lasts to.
    #[error("tick {} lies beyond the longest attempt; restore the file from a copy", .0.0)]
    TooLate(Time),
    /// Larger than any attempt gets.
    #[error(
        "the file is longer than {most} bytes, and no job makes so long an attempt; choose another file"
    )]
    TooLong {
        /// Largest size that is read.
        most: usize,
    },
    /// A finished file without its end.
    #[error(
        "the file ends without its last line, so part of the attempt is lost; restore it from a copy"
    )]
    Truncated,
    /// Lines behind the end.
    #[error("there is more behind the last line; delete what follows `End(…)`")]
    AfterEnd,
    /// Recorded with another text of the scenario.
    #[error(
        "the attempt was recorded with another text of {scenario}; replay it with the scenario as it was"
    )]
    ScenarioChanged {
        /// Scenario file named in the attempt.
        scenario: String,
    },
}
