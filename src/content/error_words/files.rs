//! Words for what can be wrong with files.

use crate::answers_csv::{AnswersCsvError, AnswersCsvProblem};
use crate::course_file::{COURSE_FORMAT, PROGRAM_VERSION};
use crate::error::{Choices, ContentError, Problem};
use crate::profile_file::ProfileError;
use crate::reader::choices;
use crate::text::{Texts, Value};
use detent_training::record::SystemReason;
use detent_training::record::ron_text::WrongInteger;
use std::io::ErrorKind;

impl Texts {
    /// A file that cannot be used: file, line, field, what is wrong and what to do.
    pub fn content_error(&self, error: &ContentError) -> String {
        let problem = self.problem(&error.problem);
        placed(&error.file, error.line as u64, &error.field, &problem)
    }

    /// What is wrong with a file or one of its fields.
    pub fn problem(&self, problem: &Problem) -> String {
        let name = |key: &str, name: &str| self.with(key, &[("name", name.into())]);
        let parser = |key: &str, error: &ron::Error| {
            self.with(key, &[("problem", self.ron_error(error).into())])
        };
        match problem {
            Problem::Io(reason) => {
                let reason = self.system_reason(reason);
                self.with("file-problem-io", &[("reason", reason.into())])
            }
            Problem::NoFile => self.get("file-problem-no-file"),
            Problem::NotBuiltIn(known) => self.with(
                "file-problem-not-built-in",
                &[("known", known.as_str().into())],
            ),
            Problem::NoScenario => self.get("file-problem-no-scenario"),
            Problem::BeyondHandbook => self.get("file-problem-beyond-handbook"),
            Problem::Empty => self.get("file-problem-empty"),
            Problem::NotText => self.get("file-problem-not-text"),
            Problem::TooLong { most } => {
                self.with("file-problem-too-long", &[("most", number(most))])
            }
            Problem::TooDeep => self.get("file-problem-too-deep"),
            Problem::Syntax(error) => parser("file-problem-syntax", error),
            Problem::MissingField(field) => name("file-problem-missing-field", field),
            Problem::UnknownField { found, expected } => self.with(
                "file-problem-unknown-field",
                &[
                    ("found", found.as_str().into()),
                    ("expected", self.choices(expected).into()),
                ],
            ),
            Problem::RepeatedField(field) => name("file-problem-repeated-field", field),
            Problem::UnknownName { found, expected } if expected.names.is_empty() => {
                name("file-problem-unknown-name-alone", found)
            }
            Problem::UnknownName { found, expected } => self.with(
                "file-problem-unknown-name",
                &[
                    ("found", found.as_str().into()),
                    ("expected", self.choices(expected).into()),
                ],
            ),
            Problem::NotFinite(found) => self.with(
                "file-problem-not-finite",
                &[("found", found.as_str().into())],
            ),
            Problem::OutOfRange { found, allowed } => {
                let allowed = self.get(&format!("file-allowed-{allowed}"));
                self.with(
                    "file-problem-out-of-range",
                    &[("found", number(found)), ("allowed", allowed.into())],
                )
            }
            Problem::IntegerRange(range) => self.wrong_integer(range),
            Problem::TooLittleTime { found, least } => self.with(
                "file-problem-too-little-time",
                &[
                    ("found", number(found)),
                    ("least", number(format!("{least:.1}"))),
                ],
            ),
            Problem::TooLittleMoney { found, least } => self.with(
                "file-problem-too-little-money",
                &[
                    ("found", number(found)),
                    ("least", number(format!("{least:.0}"))),
                ],
            ),
            Problem::CourseNumber {
                part,
                found,
                expected,
            } => self.with(
                "file-problem-course-number",
                &[
                    ("part", part.name().into()),
                    ("found", number(found)),
                    ("expected", number(expected)),
                ],
            ),
            Problem::Repeated { name, first_line } => self.with(
                "file-problem-repeated",
                &[("name", name.as_str().into()), ("line", number(first_line))],
            ),
            Problem::Nothing(wanted) => {
                let wanted = self.get(&format!("file-wanted-{wanted}"));
                self.with("file-problem-nothing", &[("wanted", wanted.into())])
            }
            Problem::UnknownMode(id) => name("file-problem-unknown-mode", id),
            Problem::NothingToDraw => self.get("file-problem-nothing-to-draw"),
            Problem::UnknownPart(part) => name("file-problem-unknown-part", part),
            Problem::UnfitPart(part) => name("file-problem-unfit-part", part),
            Problem::NoEnd(part) => name("file-problem-no-end", part),
            Problem::UnknownBoard { found, known } => self.with(
                "file-problem-unknown-board",
                &[
                    ("found", found.as_str().into()),
                    ("known", known.as_str().into()),
                ],
            ),
            Problem::UnknownCode { board, code } => self.with(
                "file-problem-unknown-code",
                &[
                    ("board", board.as_str().into()),
                    ("code", number(format!("{code:02}"))),
                ],
            ),
            Problem::WrongMains { board } => name("file-problem-wrong-mains", board),
            Problem::ForeignParam {
                param,
                owner,
                component,
            } => self.with(
                "file-problem-foreign-param",
                &[
                    ("param", param.as_str().into()),
                    ("owner", owner.name().into()),
                    ("component", component.name().into()),
                ],
            ),
            Problem::MissingParam(param) => name("file-problem-missing-param", param),
            Problem::Step(error) => parser("file-problem-step", error),
            Problem::NoTime(error) => self.step_error(error),
            Problem::NoJob(job) => name("file-problem-no-job", job),
            Problem::NameTaken(taken) => name("file-problem-name-taken", taken),
            Problem::BoardName { found, wanted } => self.with(
                "file-problem-board-name",
                &[
                    ("found", found.as_ref().into()),
                    ("wanted", wanted.as_ref().into()),
                ],
            ),
            Problem::NotOwnBoard(board) => name("file-problem-not-own-board", board),
            Problem::NoFolder => self.get("file-problem-no-folder"),
            Problem::LeadsOut => self.get("file-problem-leads-out"),
            Problem::TooMuch { files, bytes } => self.with(
                "file-problem-too-much",
                &[("files", number(files)), ("bytes", number(bytes))],
            ),
            Problem::Misplaced => self.get("file-problem-misplaced"),
            Problem::NewerLayout(layout) => {
                self.with("file-problem-newer-layout", &[("layout", number(layout))])
            }
            Problem::NoName { most } => {
                self.with("file-problem-no-name", &[("most", number(most))])
            }
            Problem::NotSayable(what) => self.get(&format!("file-not-sayable-{what}")),
            Problem::Board(fault) => self.board_fault(fault),
            Problem::Zip(problem) => self.get(&format!("file-zip-{problem}")),
            Problem::NewerCourse {
                format,
                packed_with,
            } => {
                let key = match packed_with.is_empty() {
                    true => "file-problem-newer-course",
                    false => "file-problem-newer-course-packed-with",
                };
                let args = [
                    ("format", number(format)),
                    ("most", number(COURSE_FORMAT)),
                    ("version", packed_with.as_str().into()),
                ];
                self.with(key, &args)
            }
            Problem::NewerProgram(version) => {
                let args = [
                    ("version", version.as_str().into()),
                    ("own", PROGRAM_VERSION.into()),
                ];
                self.with("file-problem-newer-program", &args)
            }
            Problem::NoVersion(found) => self.with(
                "file-problem-no-version",
                &[("found", found.as_str().into())],
            ),
            Problem::NoSum => self.get("file-problem-no-sum"),
            Problem::NotAsPacked { difference, path } => self.with(
                &format!("file-packed-{difference}"),
                &[("path", path.as_str().into())],
            ),
        }
    }

    /// A whole number outside the range of its field.
    pub fn wrong_integer(&self, wrong: &WrongInteger) -> String {
        self.with(
            "file-problem-integer-range",
            &[
                ("found", wrong.found.as_str().into()),
                ("least", number(wrong.least)),
                ("most", number(wrong.most)),
            ],
        )
    }

    /// The names that may stand somewhere: all, or of many the nearest.
    fn choices(&self, choices: &Choices) -> String {
        let names = choices.names.join(", ");
        if choices.names.len() == choices.of {
            return names;
        }
        let args = [("names", names.into()), ("of", number(choices.of))];
        self.with("file-nearest", &args)
    }

    /// Why the system did not do what was asked: what is common in our words, the rest in its own.
    pub fn system_reason(&self, reason: &SystemReason) -> String {
        let key = match reason.kind {
            ErrorKind::NotFound => "file-system-not-found",
            ErrorKind::PermissionDenied => "file-system-denied",
            ErrorKind::AlreadyExists => "file-system-already-there",
            ErrorKind::IsADirectory => "file-system-folder",
            ErrorKind::NotADirectory => "file-system-no-folder",
            ErrorKind::StorageFull | ErrorKind::QuotaExceeded => "file-system-full",
            ErrorKind::ReadOnlyFilesystem => "file-system-read-only",
            ErrorKind::BrokenPipe => "file-system-nobody-reads",
            // The standard library has many kinds and adds more.
            _ => {
                let said = reason.text.as_str().into();
                return self.with("file-system-other", &[("said", said)]);
            }
        };
        self.get(key)
    }

    /// Text that is not the RON that was wanted: what is common in our words, the rest in the parser's.
    pub fn ron_error(&self, error: &ron::Error) -> String {
        use ron::Error as E;
        let key = match error {
            E::Eof => "file-ron-end",
            E::ExpectedArray => "file-ron-list",
            E::ExpectedArrayEnd => "file-ron-list-end",
            E::ExpectedBoolean => "file-ron-boolean",
            E::ExpectedChar => "file-ron-character",
            E::ExpectedComma => "file-ron-comma",
            E::ExpectedFloat => "file-ron-number",
            E::ExpectedInteger => "file-ron-whole-number",
            E::IntegerOutOfBounds => "file-ron-integer-bounds",
            E::ExpectedOption => "file-ron-option",
            E::ExpectedMap => "file-ron-map",
            E::ExpectedMapColon => "file-ron-colon",
            E::ExpectedMapEnd => "file-ron-map-end",
            E::ExpectedStructLike | E::ExpectedNamedStructLike(_) => "file-ron-bracket",
            E::ExpectedStructLikeEnd | E::ExpectedOptionEnd => "file-ron-bracket-end",
            E::ExpectedUnit => "file-ron-unit",
            E::ExpectedString => "file-ron-text",
            E::ExpectedStringEnd => "file-ron-text-end",
            // A number with a decimal comma ends there, and the digits behind it are no name.
            E::SuggestRawIdentifier(found) if found.starts_with(|c: char| c.is_ascii_digit()) => {
                "file-ron-decimal-point"
            }
            E::ExpectedIdentifier | E::SuggestRawIdentifier(_) => "file-ron-name",
            E::UnclosedBlockComment => "file-ron-comment-end",
            E::TrailingCharacters => "file-ron-more",
            E::ExceededRecursionLimit => "file-problem-too-deep",
            E::UnexpectedChar(found) => {
                let found = found.escape_default().to_string();
                return self.with("file-ron-unexpected", &[("found", found.into())]);
            }
            E::ExpectedDifferentStructName { expected, found } => {
                let args = [
                    ("expected", (*expected).into()),
                    ("found", found.as_str().into()),
                ];
                return self.with("file-ron-other-name", &args);
            }
            E::ExpectedDifferentLength { found, .. } => {
                return self.with("file-ron-length", &[("found", number(found))]);
            }
            E::NoSuchEnumVariant {
                expected, found, ..
            } => {
                return self.problem(&Problem::UnknownName {
                    expected: Box::new(choices(expected, found)),
                    found: found.clone(),
                });
            }
            E::NoSuchStructField {
                expected, found, ..
            } => {
                return self.problem(&Problem::UnknownField {
                    expected: Box::new(choices(expected, found)),
                    found: found.clone(),
                });
            }
            E::MissingStructField { field, .. } => {
                return self.with("file-ron-missing-field", &[("name", (*field).into())]);
            }
            E::DuplicateStructField { field, .. } => {
                return self.with("file-ron-repeated-field", &[("name", (*field).into())]);
            }
            // The library names more and may add to them.
            other => {
                let said = other.to_string().into();
                return self.with("file-ron-other", &[("said", said)]);
            }
        };
        self.get(key)
    }

    /// A table of answers that cannot be used.
    pub fn answers_csv_error(&self, error: &AnswersCsvError) -> String {
        let (column, told) = match &error.problem {
            AnswersCsvProblem::NoTable(said) => {
                let args = [("said", said.as_str().into())];
                ("", self.with("file-answers-no-table", &args))
            }
            AnswersCsvProblem::NoColumn(name) => {
                let args = [("name", (*name).into())];
                ("", self.with("file-answers-no-column", &args))
            }
            AnswersCsvProblem::Field {
                column,
                found,
                allowed,
            } => {
                let allowed = self.get(&format!("file-allowed-{allowed}"));
                let args = [
                    ("found", found.as_str().into()),
                    ("allowed", allowed.into()),
                ];
                (*column, self.with("file-answers-field", &args))
            }
        };
        placed(&error.file, error.line, column, &told)
    }

    /// A learner's profile that is not read or not kept.
    pub fn profile_error(&self, error: &ProfileError) -> String {
        match error {
            ProfileError::Content(error) => self.content_error(error),
            ProfileError::Refused { file, reason } => self.not_written(file, reason),
            ProfileError::Changed(file) => placed(file, 0, "", &self.get("file-profile-changed")),
            ProfileError::NoName => self.get("file-profile-no-name"),
            ProfileError::Taken(name) => {
                self.with("file-profile-taken", &[("name", name.as_str().into())])
            }
        }
    }

    /// A file that could not be written.
    pub(super) fn not_written(&self, file: &str, reason: &SystemReason) -> String {
        let reason = self.system_reason(reason);
        let told = self.with("file-not-written", &[("reason", reason.into())]);
        placed(file, 0, "", &told)
    }
}

/// `file:line: field: what is wrong`, without a line that is 0 and a field that is empty.
pub(super) fn placed(file: &str, line: u64, field: &str, problem: &str) -> String {
    let mut told = format!("{file}:");
    if line > 0 {
        told.push_str(&format!("{line}:"));
    }
    if !field.is_empty() {
        told.push_str(&format!(" {field}:"));
    }
    format!("{told} {problem}")
}

/// A number as a file writes it, with a decimal point in every language.
pub(super) fn number(number: impl ToString) -> Value<'static> {
    number.to_string().into()
}
