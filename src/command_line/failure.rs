//! Why a command ended without doing its work, and its words for it.

use detent_content::attempt_file::AttemptFileError;
use detent_content::{
    AnswersCsvError, AttemptSourceError, ContentError, JobVariantError, ReplayError, SourceLine,
    Texts, Value,
};
use detent_paper::PaperError;
use detent_training::bench::Refusal;
use detent_training::bench::script::StepError;
use detent_training::lesson::SetUpError;
use detent_training::practice::TargetError;
use detent_training::practice::fit::TooFew;
use detent_training::reason::{PathError, PlanError, PosteriorError};
use detent_training::record::{Divergence, RecordError};
use std::io;
use std::process::ExitCode;

/// Why a command ended without doing its work.
#[derive(Debug)]
pub(super) enum Failure {
    /// What another room of the program reports.
    Reported(Box<Reported>),
    /// Standard output cannot be written.
    Output(io::Error),
    /// A file cannot be written.
    Write(String, io::Error),
    /// A step of a script could not be done.
    Step {
        /// The script.
        script: String,
        /// Line of the step.
        line: usize,
        /// Why.
        error: StepError,
        /// The unfinished attempt with what was done before, if it is kept.
        kept: Option<String>,
    },
    /// A replay goes another way than the recording.
    Differs {
        /// The attempt.
        file: String,
        /// Where.
        divergence: Divergence,
    },
    /// The scripted expert cannot do the job.
    Expert {
        /// The scenario.
        scenario: String,
        /// Why.
        error: StepError,
    },
    /// A check found something.
    Check {
        /// Errors.
        errors: usize,
        /// Warnings.
        warnings: usize,
    },
    /// An own library with mistakes.
    Library(Vec<ContentError>),
    /// No such language.
    NoLanguage(String),
    /// No such board.
    NoBoard {
        /// As written.
        name: String,
        /// Boards that exist.
        known: String,
    },
    /// No paper of this size.
    NoPaper(String),
    /// A document cannot be made.
    Paper(String, PaperError),
    /// Two scenarios have one file name.
    SameFile(String),
    /// The board is not made for this supply.
    NotThisSupply(String),
    /// The attempt to go on with was made with another seed.
    OtherSeed {
        /// The attempt.
        file: String,
        /// Its seed.
        seed: u64,
    },
    /// So many cannot be drawn.
    Count {
        /// As asked for.
        found: u64,
        /// The most that can.
        most: u64,
    },
    /// Nothing can be written to this folder.
    Folder(String, io::Error),
    /// There is a file of this name already.
    AlreadyThere(String),
    /// A file of this name is there, and nothing is written over it.
    NeverOver(String),
    /// The job has fewer variants than asked for.
    FewVariants {
        /// Found.
        found: usize,
        /// Asked for.
        wanted: u64,
    },
    /// There is no learner's profile in this folder.
    NoLearners(String),
    /// Nobody calls back after this attempt.
    NoCallBack(String),
    /// The window could not be opened, in its own words.
    Window(String),
    /// There is no window in this program.
    NoWindow,
    /// The system names no folder for data.
    #[cfg(feature = "class")]
    NoDataFolder,
    /// A class cannot have so many seats.
    #[cfg(feature = "class")]
    Seats {
        /// As asked for.
        found: u64,
        /// The most that it can have.
        most: u64,
    },
    /// A round of a drill cannot have so many questions.
    #[cfg(feature = "class")]
    Questions {
        /// As asked for.
        found: u64,
        /// The most that it can have.
        most: u64,
    },
    /// A drill was named twice.
    #[cfg(feature = "class")]
    DrillTwice(detent_training::practice::Skill),
    /// A class cannot be served.
    #[cfg(feature = "class")]
    Class(detent_class::ClassError),
}

/// What other rooms of the program report.
#[derive(Debug, thiserror::Error)]
pub(super) enum Reported {
    /// A file that cannot be used.
    #[error(transparent)]
    Content(#[from] ContentError),
    /// An attempt that cannot be read.
    #[error(transparent)]
    Record(#[from] RecordError),
    /// The scenario of an attempt cannot be found.
    #[error(transparent)]
    AttemptSource(#[from] AttemptSourceError),
    /// A file of answers that cannot be used.
    #[error(transparent)]
    Answers(#[from] AnswersCsvError),
    /// Too few answers to fit anything to.
    #[error(transparent)]
    TooFew(#[from] TooFew),
    /// The scenario cannot be set up.
    #[error(transparent)]
    SetUp(#[from] SetUpError),
    /// The attempt cannot be kept.
    #[error(transparent)]
    Attempt(#[from] AttemptFileError),
    /// Nothing can be planned.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// A job cannot be thought over.
    #[error(transparent)]
    Path(#[from] PathError),
    /// No variants of a job can be drawn.
    #[error(transparent)]
    Variant(#[from] JobVariantError),
    /// Nothing can be believed.
    #[error(transparent)]
    Posterior(#[from] PosteriorError),
    /// No practice aims at this.
    #[error(transparent)]
    Target(#[from] TargetError),
}

impl<E: Into<Reported>> From<E> for Failure {
    fn from(error: E) -> Failure {
        Failure::Reported(Box::new(error.into()))
    }
}

impl From<ReplayError> for Failure {
    fn from(error: ReplayError) -> Failure {
        match error {
            ReplayError::Differs { file, divergence } => Failure::Differs { file, divergence },
            ReplayError::Record(error) => error.into(),
            ReplayError::SetUp(error) => error.into(),
        }
    }
}

/// So many of so many at most, for a text.
fn of_most(found: u64, most: u64) -> [(&'static str, Value<'static>); 2] {
    let number = |number: u64| Value::from(number.to_string());
    [("found", number(found)), ("most", number(most))]
}

impl Failure {
    /// In the words of a language.
    pub fn words(&self, texts: &Texts) -> String {
        let quoted = |key: &str, name: &str, value: &str| texts.with(key, &[(name, value.into())]);
        let system = |error: &io::Error| texts.system_reason(&error.into());
        match self {
            Failure::Reported(error) => reported(error, texts),
            Failure::Output(error) => quoted("cli-error-output", "reason", &system(error)),
            Failure::Write(file, error) => texts.with(
                "cli-error-write",
                &[
                    ("file", file.as_str().into()),
                    ("reason", system(error).into()),
                ],
            ),
            Failure::Step {
                script,
                line,
                error,
                kept,
            } => {
                let told = format!("{script}:{line}: {}", step(error, texts));
                match kept {
                    Some(part) => format!("{told} {}", quoted("cli-error-kept", "file", part)),
                    None => told,
                }
            }
            Failure::Differs { file, divergence } => {
                format!("{file}: {}", texts.divergence(divergence))
            }
            Failure::Expert { scenario, error } => {
                let told = texts.get("cli-error-expert");
                format!("{scenario}: {told} {}", step(error, texts))
            }
            Failure::Check { errors, warnings } => texts.with(
                "cli-error-check",
                &[
                    ("errors", errors.to_string().into()),
                    ("warnings", warnings.to_string().into()),
                ],
            ),
            Failure::Library(errors) => {
                let told: Vec<String> = errors.iter().map(|e| texts.content_error(e)).collect();
                told.join("\n")
            }
            Failure::NoLanguage(code) => quoted("cli-error-no-language", "language", code),
            Failure::NoPaper(name) => quoted("cli-error-no-paper", "paper", name),
            Failure::Paper(file, error) => {
                let reason = match error {
                    PaperError::SetUp(error) => texts.set_up_error(error),
                    PaperError::Path(error) => texts.path_error(error),
                    PaperError::Refused(why) => why.clone(),
                };
                texts.with(
                    "cli-error-paper",
                    &[("file", file.as_str().into()), ("reason", reason.into())],
                )
            }
            Failure::SameFile(file) => quoted("cli-error-same-file", "file", file),
            Failure::NoBoard { name, known } => texts.with(
                "cli-error-no-board",
                &[
                    ("board", name.as_str().into()),
                    ("known", known.as_str().into()),
                ],
            ),
            Failure::NotThisSupply(board) => quoted("cli-error-not-this-supply", "board", board),
            Failure::OtherSeed { file, seed } => {
                let told = quoted("cli-error-other-seed", "seed", &seed.to_string());
                format!("{file}: {told}")
            }
            Failure::Count { found, most } => {
                texts.with("cli-error-count", &of_most(*found, *most))
            }
            Failure::Folder(folder, error) => texts.with(
                "cli-error-folder",
                &[
                    ("folder", folder.as_str().into()),
                    ("reason", system(error).into()),
                ],
            ),
            Failure::AlreadyThere(file) => quoted("cli-error-already-there", "file", file),
            Failure::NeverOver(file) => quoted("cli-error-never-over", "file", file),
            Failure::FewVariants { found, wanted } => {
                let args = [
                    ("found", Value::from(found.to_string())),
                    ("wanted", Value::from(wanted.to_string())),
                ];
                texts.with("cli-error-few-variants", &args)
            }
            Failure::NoLearners(folder) => quoted("cli-error-no-learners", "folder", folder),
            Failure::NoCallBack(file) => {
                format!("{file}: {}", texts.get("cli-error-no-call-back"))
            }
            Failure::Window(told) => told.clone(),
            #[cfg(feature = "class")]
            Failure::NoDataFolder => texts.get("cli-error-no-data-folder"),
            #[cfg(feature = "class")]
            Failure::Seats { found, most } => {
                texts.with("cli-class-error-seats", &of_most(*found, *most))
            }
            #[cfg(feature = "class")]
            Failure::Questions { found, most } => {
                texts.with("cli-class-error-questions", &of_most(*found, *most))
            }
            #[cfg(feature = "class")]
            Failure::DrillTwice(skill) => texts.with(
                "cli-class-error-drill-twice",
                &[("drill", skill.name().into())],
            ),
            #[cfg(feature = "class")]
            Failure::Class(error) => super::class::words(error, texts),
            Failure::NoWindow => texts.get("cli-error-no-window"),
        }
    }

    /// The line of a file that is to blame, and its number.
    pub fn source_line(&self) -> Option<(usize, &SourceLine)> {
        let Failure::Reported(reported) = self else {
            return None;
        };
        let error = match &**reported {
            Reported::Content(error)
            | Reported::AttemptSource(AttemptSourceError::Content(error))
            | Reported::Variant(JobVariantError::Content(error)) => error,
            Reported::Record(_)
            | Reported::AttemptSource(_)
            | Reported::Answers(_)
            | Reported::TooFew(_)
            | Reported::SetUp(_)
            | Reported::Attempt(_)
            | Reported::Plan(_)
            | Reported::Path(_)
            | Reported::Variant(_)
            | Reported::Posterior(_)
            | Reported::Target(_) => return None,
        };
        Some((error.line, error.source_line.as_deref()?))
    }

    /// 1 where the work itself failed, 2 where it could not begin.
    pub fn exit_code(&self) -> ExitCode {
        ExitCode::from(match self {
            Failure::Step { .. } | Failure::Differs { .. } | Failure::Expert { .. } => 1,
            Failure::FewVariants { .. } | Failure::Check { .. } => 1,
            Failure::Reported(_)
            | Failure::Output(_)
            | Failure::Write(..)
            | Failure::Library(_)
            | Failure::NoLanguage(_)
            | Failure::NoPaper(_)
            | Failure::Paper(..)
            | Failure::SameFile(_)
            | Failure::NoBoard { .. }
            | Failure::NotThisSupply(_)
            | Failure::OtherSeed { .. }
            | Failure::Count { .. }
            | Failure::Folder(..)
            | Failure::AlreadyThere(_)
            | Failure::NeverOver(_)
            | Failure::NoLearners(_)
            | Failure::NoCallBack(_)
            | Failure::Window(_)
            | Failure::NoWindow => 2,
            #[cfg(feature = "class")]
            Failure::NoDataFolder
            | Failure::Seats { .. }
            | Failure::Questions { .. }
            | Failure::DrillTwice(_)
            | Failure::Class(_) => 2,
        })
    }
}

/// What another room of the program reports.
fn reported(error: &Reported, texts: &Texts) -> String {
    match error {
        Reported::Content(error) => texts.content_error(error),
        Reported::Record(error) => texts.record_error(error),
        Reported::AttemptSource(error) => texts.attempt_source_error(error),
        Reported::Answers(error) => texts.answers_csv_error(error),
        Reported::TooFew(error) => texts.too_few(error),
        Reported::SetUp(error) => texts.set_up_error(error),
        Reported::Attempt(error) => texts.attempt_file_error(error),
        Reported::Plan(error) => texts.plan_error(error),
        Reported::Path(error) => texts.path_error(error),
        Reported::Variant(error) => texts.job_variant_error(error),
        Reported::Posterior(error) => texts.posterior_error(error),
        Reported::Target(error) => texts.target_error(error),
    }
}

/// Why a step of a script could not be done, and which command shows what there is.
fn step(error: &StepError, texts: &Texts) -> String {
    match error {
        StepError::Refused(refusal) => {
            let told = texts.refusal(refusal);
            let see = match refusal {
                Refusal::NoButton(_) => Some("cli-see-sheet"),
                Refusal::NoCause(_) => Some("cli-see-faults"),
                Refusal::NoPart(_) | Refusal::DoesNotFit(_) => Some("cli-see-parts"),
                Refusal::CabinetClosed
                | Refusal::LidClosed
                | Refusal::NeedsPart(_)
                | Refusal::LidLocked
                | Refusal::NoConnector(_)
                | Refusal::NotInHand(_)
                | Refusal::Finished
                | Refusal::NoReading(_)
                | Refusal::NoLook(_)
                | Refusal::NothingToHold
                | Refusal::PlugInOutlet
                | Refusal::NotNoted(_)
                | Refusal::NoHints
                | Refusal::AlreadySo => None,
            };
            match see {
                Some(see) => format!("{told} {}", texts.get(see)),
                None => told,
            }
        }
        StepError::NoPosition(_) => {
            let told = texts.step_error(error);
            format!("{told} {}", texts.get("cli-see-sheet"))
        }
        StepError::NeverCame { .. } | StepError::TooLong | StepError::StepTooLong(_) => {
            texts.step_error(error)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use detent_content::Language;
    use detent_simulation::interface::Button;
    use detent_simulation::units::Span;
    use detent_training::bench::script::Condition;

    fn step_failed(error: StepError, kept: Option<&str>) -> Failure {
        Failure::Step {
            script: "a.script".to_owned(),
            line: 7,
            error,
            kept: kept.map(str::to_owned),
        }
    }

    fn denied() -> io::Error {
        io::Error::other("denied")
    }

    /// What a library says that is not there.
    fn library_error() -> ContentError {
        let opened = detent_content::ContentLibrary::open(Some("no/such-library".as_ref()));
        opened
            .err()
            .and_then(|mut errors| errors.pop())
            .expect("no such folder")
    }

    /// Failures with what their words must name, in any language.
    fn failures() -> Vec<(Failure, &'static [&'static str])> {
        vec![
            (Failure::Output(denied()), &["denied"]),
            (
                Failure::Write("out/a.table".to_owned(), denied()),
                &["out/a.table", "denied"],
            ),
            (
                step_failed(Refusal::LidLocked.into(), None),
                &["a.script:7: "],
            ),
            (
                step_failed(Refusal::NoButton(Button::More).into(), Some("a.part")),
                &["a.script:7: ", "detent sheet", "a.part", "--resume"],
            ),
            (
                step_failed(Refusal::NoCause("belt.gone".to_owned()).into(), None),
                &["belt.gone", "detent faults"],
            ),
            (
                step_failed(Refusal::NoPart("P-9999".to_owned()).into(), None),
                &["P-9999", "detent parts"],
            ),
            (
                step_failed(StepError::NoPosition(99), None),
                &["99", "detent sheet"],
            ),
            (
                step_failed(
                    StepError::NeverCame {
                        what: Condition::Dark,
                        limit_s: 30,
                    },
                    None,
                ),
                &["30", "Dark", "limit_s"],
            ),
            (step_failed(StepError::TooLong, None), &["48 h"]),
            (
                step_failed(StepError::StepTooLong(Span::from_s(49 * 3600)), None),
                &["49 h", "48 h"],
            ),
            (
                Failure::Expert {
                    scenario: "a.ron".to_owned(),
                    error: Refusal::LidClosed.into(),
                },
                &["a.ron: "],
            ),
            (Failure::NoLanguage("xx".to_owned()), &["xx", "en", "es"]),
            (
                Failure::NoBoard {
                    name: "no-such".to_owned(),
                    known: "arc-dial, key-pad".to_owned(),
                },
                &["no-such", "arc-dial, key-pad"],
            ),
            (
                Failure::NotThisSupply("lone-lamp".to_owned()),
                &["lone-lamp", "230 V", "--v230"],
            ),
            (
                Failure::OtherSeed {
                    file: "a.attempt".to_owned(),
                    seed: 41,
                },
                &["a.attempt: ", "41", "--seed"],
            ),
            (Failure::NoPaper("a5".to_owned()), &["a5", "a4", "letter"]),
            (
                Failure::Paper(
                    "jobs/a-key.pdf".to_owned(),
                    PaperError::Refused("no title".to_owned()),
                ),
                &["jobs/a-key.pdf", "no title"],
            ),
            (
                Failure::SameFile("out/a-key.pdf".to_owned()),
                &["out/a-key.pdf"],
            ),
            (
                Failure::Count {
                    found: 0,
                    most: 10_000,
                },
                &["0", "10000"],
            ),
            (
                Failure::Folder("no/such".to_owned(), denied()),
                &["no/such", "denied"],
            ),
            (
                Failure::AlreadyThere("jobs/a.ron".to_owned()),
                &["jobs/a.ron", "--seed"],
            ),
            (Failure::NeverOver("a.ron".to_owned()), &["a.ron"]),
            (
                Failure::Check {
                    errors: 3,
                    warnings: 5,
                },
                &["3", "5"],
            ),
            (
                Failure::Library(vec![library_error()]),
                &["no/such-library"],
            ),
            (
                Failure::FewVariants {
                    found: 3,
                    wanted: 24,
                },
                &["3", "24", "--survey"],
            ),
            (
                Failure::NoLearners("no/such".to_owned()),
                &["no/such", ".learner"],
            ),
            (
                Failure::NoCallBack("a.attempt".to_owned()),
                &["a.attempt: "],
            ),
            (Failure::NoWindow, &["--help"]),
        ]
    }

    #[test]
    fn every_failure_of_a_command_is_told_in_each_language_with_what_it_is_about() {
        let [english, spanish] = [Language::En, Language::Es].map(Texts::load);
        for (failure, named) in failures() {
            let told = [&english, &spanish].map(|texts| failure.words(texts));
            assert_ne!(told[0], told[1], "{failure:?}");
            for told in told {
                assert!(!told.contains(['‹', '{']), "{told}");
                for name in named {
                    assert!(told.contains(name), "{name} is not in: {told}");
                }
            }
        }
    }
}
