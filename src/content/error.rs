//! What can be wrong with a file of content.

use super::error_words::english;
use super::source_line::SourceLine;
use detent_simulation::controller::BoardFault;
use detent_simulation::interface::Component;
use detent_simulation::names;
use detent_training::bench::script::StepError;
use detent_training::lesson::CoursePart;
use detent_training::record::SystemReason;
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
    /// The line on which it is, where the file is a text.
    pub source_line: Option<Box<SourceLine>>,
}

impl ContentError {
    /// A problem of a file as a whole.
    pub fn of_file(file: &str, problem: Problem) -> ContentError {
        ContentError {
            file: file.to_owned(),
            line: 0,
            column: 0,
            field: String::new(),
            problem,
            source_line: None,
        }
    }
}

/// In English, for logs; [`Texts::content_error`](crate::Texts::content_error) says it in any language.
impl fmt::Display for ContentError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&english().content_error(self))
    }
}

impl std::error::Error for ContentError {}

/// One kind of mistake. Each says what to do about it.
#[derive(Clone, Debug, PartialEq)]
pub enum Problem {
    /// The disk or the system refused.
    Io(SystemReason),
    /// A folder, a device or a pipe.
    NoFile,
    /// Not one of the files in the program.
    NotBuiltIn(String),
    /// Neither a file nor one of the built-in jobs.
    NoScenario,
    /// Markdown that a handbook has no place for.
    BeyondHandbook,
    /// Nothing in it.
    Empty,
    /// Bytes that are no text.
    NotText,
    /// Far more bytes than any such file needs.
    TooLong {
        /// Largest size that is read.
        most: usize,
    },
    /// Brackets in brackets without end.
    TooDeep,
    /// Not RON, or not the RON that this field wants.
    Syntax(Box<ron::Error>),
    /// A field that must be there.
    MissingField(String),
    /// A field that nothing reads.
    UnknownField {
        /// As written.
        found: String,
        /// Fields that exist.
        expected: Box<Choices>,
    },
    /// A field given twice.
    RepeatedField(String),
    /// A name that an enumeration does not have.
    UnknownName {
        /// As written.
        found: String,
        /// Names that exist.
        expected: Box<Choices>,
    },
    /// `inf`, `NaN`, or too many digits.
    NotFinite(String),
    /// A number outside its range.
    OutOfRange {
        /// As read.
        found: f64,
        /// What is allowed.
        allowed: Allowed,
    },
    /// A whole number outside its range.
    IntegerRange(Box<WrongInteger>),
    /// A time in which nobody can do the job.
    TooLittleTime {
        /// As read, min.
        found: f64,
        /// The least that it takes, min.
        least: f64,
    },
    /// A budget that nobody can keep to.
    TooLittleMoney {
        /// As read, whole units.
        found: f64,
        /// The least that it costs, whole units.
        least: f64,
    },
    /// A part of the course with a gap or with two jobs at one place.
    CourseNumber {
        /// Part of the course.
        part: CoursePart,
        /// As written.
        found: u8,
        /// The number that comes next.
        expected: usize,
    },
    /// Something that must be unique.
    Repeated {
        /// The name or number.
        name: String,
        /// Where it stands first.
        first_line: usize,
    },
    /// An empty list or text.
    Nothing(Wanted),
    /// A failure mode that the catalogue lacks.
    UnknownMode(String),
    /// A draw's filter that takes no failure mode on its board.
    NothingToDraw,
    /// A part that the counter does not have.
    UnknownPart(String),
    /// A part for another component.
    UnfitPart(String),
    /// Parts that take each other's place.
    NoEnd(String),
    /// A board without a file.
    UnknownBoard {
        /// As written.
        found: String,
        /// Boards that exist.
        known: String,
    },
    /// A code that the board cannot show.
    UnknownCode {
        /// The board.
        board: String,
        /// The code.
        code: u8,
    },
    /// A supply that the board is not made for.
    WrongMains {
        /// The board.
        board: String,
    },
    /// A change outside the component that is said to fail.
    ForeignParam {
        /// The parameter.
        param: String,
        /// Where it belongs.
        owner: Component,
        /// What is said to fail.
        component: Component,
    },
    /// A parameter without a value.
    MissingParam(String),
    /// A line of a script that is neither a step nor an action.
    Step(Box<ron::Error>),
    /// A step of a script that no job has time for.
    NoTime(Box<StepError>),
    /// A job that the examination names and that there is not.
    NoJob(String),
    /// A name that something else in the library has.
    NameTaken(String),
    /// A board whose name is not that of its file.
    BoardName {
        /// As written.
        found: Box<str>,
        /// The name of its file.
        wanted: Box<str>,
    },
    /// An own part for a machine that is not the library's own.
    NotOwnBoard(String),
    /// No folder of this name.
    NoFolder,
    /// A link that leads out of the folder.
    LeadsOut,
    /// More than a library may hold.
    TooMuch {
        /// The most files.
        files: usize,
        /// The most bytes in all of them.
        bytes: usize,
    },
    /// A file of content where nothing reads it.
    Misplaced,
    /// Written by a later program.
    NewerLayout(u32),
    /// A learner's name with no letter or digit in it, or a longer one than there may be.
    NoName {
        /// The most characters.
        most: usize,
    },
    /// Something that a board cannot be said to do.
    NotSayable(NotSayable),
    /// A board that breaks a rule of boards.
    Board(Box<BoardFault>),
    /// A zip that is none, or not a safe one.
    Zip(ZipProblem),
    /// A course of a later format.
    NewerCourse {
        /// The format.
        format: u32,
        /// The version of the program that packed it; empty where it does not say.
        packed_with: String,
    },
    /// Files with mistakes that a later program, which packed them, may take.
    NewerProgram(String),
    /// No version: numbers with dots between.
    NoVersion(String),
    /// No SHA-256.
    NoSum,
    /// A file that is not as it was packed.
    NotAsPacked {
        /// What differs.
        difference: PackedDifference,
        /// Its path inside the course.
        path: String,
    },
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&english().problem(self))
    }
}

/// The names that may stand in a place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choices {
    /// All, or of many the ones that are written most alike.
    pub names: Vec<String>,
    /// How many there are.
    pub of: usize,
}

names! {
    /// What is asked of boards and cannot be said of them. Its text is `file-not-sayable-{name}`, with the nearest that can.
    NotSayable {
        /// Letters for a number or a code.
        Letters = "letters",
        /// A turn to a position, from wherever the knob stands.
        TurnTo = "turn-to",
        /// A lamp of several colors.
        TwoColors = "two-colors",
    }
}

names! {
    /// The range of a number, or the form of a field. Its text is `file-allowed-{name}`.
    Allowed {
        /// How long a class is open, min.
        ClassMinutes = "class-minutes",
        /// How long until a class opens, min.
        OpeningMinutes = "opening-minutes",
        /// Questions in a round of a drill.
        Questions = "questions",
        /// Learners in a class.
        Seats = "seats",
        /// A time on the wall for an examination, min.
        ExaminationMinutes = "examination-minutes",
        /// A time for fitting a part, min.
        FittingMinutes = "fitting-minutes",
        /// A time for a job, min.
        JobMinutes = "job-minutes",
        /// A sum of money.
        Money = "money",
        /// The sum that a job may cost.
        Budget = "budget",
        /// A wait for a part, h.
        WaitHours = "wait-hours",
        /// A share.
        Share = "share",
        /// A chance.
        Chance = "chance",
        /// How common a failure mode is.
        Weight = "weight",
        /// The bound of a weight in a draw.
        WeightBound = "weight-bound",
        /// A factor by which a parameter changes.
        Factor = "factor",
        /// The bound above which a fault shows.
        Bound = "bound",
        /// How long a fault stays or stays away, s.
        Spell = "spell",
        /// A resistance, Ω.
        Resistance = "resistance",
        /// The layout of a profile.
        Layout = "layout",
        /// The share of right answers that practice aims at.
        Target = "target",
        /// A moment, s since 1970.
        Moment = "moment",
        /// A moment as a table of answers writes it.
        WrittenMoment = "written-moment",
        /// How long an answer took, s.
        AnswerSeconds = "answer-seconds",
        /// Seconds without a limit.
        Seconds = "seconds",
        /// Milliseconds.
        Milliseconds = "milliseconds",
        /// A number that lamps show.
        LampNumber = "lamp-number",
        /// A code of a board.
        Code = "code",
        /// How worn a dial is.
        Wear = "wear",
        /// Points of one kind.
        Points = "points",
        /// Points of all kinds.
        PointsTogether = "points-together",
        /// Yes or no as a table of answers writes it.
        RightOrWrong = "right-or-wrong",
        /// A skill.
        Skill = "skill",
    }
}

names! {
    /// How a file differs from what was packed. Its text is `file-packed-{name}`.
    PackedDifference {
        /// It is not listed.
        Added = "added",
        /// It has other bytes.
        Changed = "changed",
        /// It is listed and not there.
        Gone = "gone",
    }
}

names! {
    /// Why a zip is refused. Its text is `file-zip-{name}`.
    ZipProblem {
        /// A path from the top of a disk.
        Absolute = "absolute",
        /// A backslash in a path.
        Backslash = "backslash",
        /// A colon in a path, as behind the letter of a drive.
        Drive = "drive",
        /// A file that only a password opens.
        Encrypted = "encrypted",
        /// A link, a device or a pipe.
        Link = "link",
        /// A name longer than some systems take.
        LongName = "long-name",
        /// A way of packing that is not read.
        Method = "method",
        /// Characters that some systems do not take in a name.
        NameCharacters = "name-characters",
        /// No manifest at the top.
        NoManifest = "no-manifest",
        /// No zip at all.
        NoZip = "no-zip",
        /// A file that becomes far larger than it is packed.
        Ratio = "ratio",
        /// A name that is a device on some systems.
        Reserved = "reserved",
        /// Two files that are one on some systems.
        SameName = "same-name",
        /// One part of several.
        SeveralParts = "several-parts",
        /// A file that is not as long as is listed.
        Size = "size",
        /// A file of a kind that no course has.
        Strange = "strange",
        /// A zip that contradicts itself, or with more in the file than the zip.
        Torn = "torn",
        /// More than a zip can hold.
        Unpackable = "unpackable",
        /// A path that leads upward, or with an empty name in it.
        Upward = "upward",
        /// The form for more than 4 GiB.
        Zip64 = "zip64",
    }
}

names! {
    /// What to do where nothing stands. Its text is `file-wanted-{name}`.
    Wanted {
        /// A step of a guide.
        Step = "step",
        /// A part on the counter.
        Part = "part",
        /// A text.
        Text = "text",
        /// A sentence in both languages.
        BothLanguages = "both-languages",
        /// A failure mode to draw.
        FailureMode = "failure-mode",
        /// A failure mode in the catalogue.
        Catalogue = "catalogue",
        /// The name of a failure mode.
        ModeName = "mode-name",
        /// No cure by hand.
        NoHands = "no-hands",
        /// What cures a failure mode.
        Cure = "cure",
        /// A parameter that a fault changes.
        Change = "change",
        /// A job in an examination.
        Job = "job",
        /// A job or a drill of a class.
        JobOrDrill = "job-or-drill",
        /// A board of the library's own.
        OwnBoard = "own-board",
    }
}
