//! What can be wrong with a file of content.

use detent_simulation::interface::Component;
use detent_training::lesson::CoursePart;
use detent_training::record::ron_text::WrongInteger;
use std::fmt;

/// A file that cannot be used, and where it goes wrong.
#[derive(Clone, Debug, PartialEq)]
pub struct ContentError {
    /// Name of the file as it was given.
    pub file: String,
    /// Line, from 1; 0 when the file could not be read at all.
    pub line: usize,
    /// Column in characters, from 1; 0 when the file could not be read at all.
    pub column: usize,
    /// Path of the field, such as `codes[3].code`; empty when the file as a whole is meant.
    pub field: String,
    /// What is wrong.
    pub problem: Problem,
}

impl fmt::Display for ContentError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:", self.file)?;
        if self.line > 0 {
            write!(f, "{}:", self.line)?;
        }
        if !self.field.is_empty() {
            write!(f, " {}:", self.field)?;
        }
        write!(f, " {}", self.problem)
    }
}

impl std::error::Error for ContentError {}

/// One kind of mistake. Each says what to do about it.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum Problem {
    /// The disk or the system refused.
    #[error("cannot be read: {0}; check the name and your permission to read it")]
    Io(String),
    /// A folder, a device or a pipe.
    #[error("is a folder or a device, not a file; give the name of a file")]
    NoFile,
    /// Not one of the files in the program.
    #[error("is not built into this program; give a file's path, or one of: {0}")]
    NotBuiltIn(String),
    /// Neither a file nor one of the built-in jobs.
    #[error(
        "there is no such file, and no built-in scenario of that name: `detent scenarios` lists them"
    )]
    NoScenario,
    /// Nothing in it.
    #[error("the file is empty; copy one of the same kind and change it")]
    Empty,
    /// Bytes that are no text.
    #[error("these bytes are not UTF-8 text; choose another file, or save this one as UTF-8")]
    NotText,
    /// Far more bytes than any such file needs.
    #[error(
        "the file is longer than the {most} bytes that such a file may have; choose another file"
    )]
    TooLong {
        /// Largest size that is read.
        most: usize,
    },
    /// Brackets in brackets without end.
    #[error("nesting too deep; no file of this program needs that, remove some brackets")]
    TooDeep,
    /// Not RON, or not the RON that this field wants.
    #[error("{0}; correct the value or the punctuation here")]
    Syntax(String),
    /// A field that must be there.
    #[error("the field \"{0}\" is missing; add it")]
    MissingField(String),
    /// A field that nothing reads.
    #[error("there is no field \"{found}\" here; use one of: {expected}")]
    UnknownField {
        /// As written.
        found: String,
        /// Fields that exist.
        expected: String,
    },
    /// A field given twice.
    #[error("the field \"{0}\" is here twice; remove one")]
    RepeatedField(String),
    /// A name that an enumeration does not have.
    #[error("there is no \"{found}\" here; use one of: {expected}")]
    UnknownName {
        /// As written.
        found: String,
        /// Names that exist.
        expected: String,
    },
    /// `inf`, `NaN`, or too many digits.
    #[error("{0} is not a finite number; write an ordinary number")]
    NotFinite(String),
    /// A number outside its range.
    #[error("{found} is out of range; write {allowed}")]
    OutOfRange {
        /// As read.
        found: f64,
        /// What is allowed, in words.
        allowed: &'static str,
    },
    /// A whole number outside its range.
    #[error(transparent)]
    IntegerRange(Box<WrongInteger>),
    /// A time in which nobody can do the job.
    #[error(
        "nobody can do this job in {found} min: report and repair alone take {least:.1} min; allow more"
    )]
    TooLittleTime {
        /// As read, min.
        found: f64,
        /// The least that it takes, min.
        least: f64,
    },
    /// A budget that nobody can keep to.
    #[error(
        "nobody can do this job for {found}: parts and the least work cost {least:.0}; allow more"
    )]
    TooLittleMoney {
        /// As read, whole units.
        found: f64,
        /// The least that it costs, whole units.
        least: f64,
    },
    /// A part of the course with a gap or with two jobs at one place.
    #[error(
        "job {found} of course part {part} is where job {expected} belongs; number them from 1 without gaps"
    )]
    CourseNumber {
        /// Part of the course.
        part: CoursePart,
        /// As written.
        found: u8,
        /// The number that comes next.
        expected: usize,
    },
    /// Something that must be unique.
    #[error("\"{name}\" is already used in line {first_line}; give it another name")]
    Repeated {
        /// The name or number.
        name: String,
        /// Where it stands first.
        first_line: usize,
    },
    /// An empty list or text.
    #[error("this is empty; {0}")]
    Nothing(&'static str),
    /// A failure mode that the catalogue lacks.
    #[error("no failure mode is called \"{0}\"; see assets/catalogue.ron")]
    UnknownMode(String),
    /// A part that the counter does not have.
    #[error("no part has the number \"{0}\"; see assets/parts.ron")]
    UnknownPart(String),
    /// A part for another component.
    #[error("part \"{0}\" is for another component; name one for this one")]
    UnfitPart(String),
    /// Parts that take each other's place.
    #[error("supersession loop at part \"{0}\"; the newest part must not be superseded")]
    NoEnd(String),
    /// A board without a file.
    #[error("no board is called \"{found}\"; the boards are: {known}")]
    UnknownBoard {
        /// As written.
        found: String,
        /// Boards that exist.
        known: String,
    },
    /// A code that the board cannot show.
    #[error("board \"{board}\" has no code {code:02}; see its list of codes")]
    UnknownCode {
        /// The board.
        board: String,
        /// The code.
        code: u8,
    },
    /// A supply that the board is not made for.
    #[error("board \"{board}\" is not made for this supply; see `mains` in its file")]
    WrongMains {
        /// The board.
        board: String,
    },
    /// A change outside the component that is said to fail.
    #[error(
        "{param} belongs to {owner}, but the failing component is {component}; change one of its own parameters"
    )]
    ForeignParam {
        /// The parameter.
        param: String,
        /// Where it belongs.
        owner: Component,
        /// What is said to fail.
        component: Component,
    },
    /// A parameter without a value.
    #[error("{0} has no value; add it here or under `common`")]
    MissingParam(String),
    /// A line of a script that is neither a step nor an action.
    #[error(
        "{0}; write a step (Turn, Point, Tap, Hold, PowerDown, Look, Watch, Wait, Rest, Until) or an action (Plug, Unplug, Probe…): README shows examples"
    )]
    Step(String),
    /// A rule of the type that was read, in its own words.
    #[error("{0}")]
    Rule(String),
}
