//! Why a command ended without doing its work.

use detent_content::attempt_file::AttemptFileError;
use detent_content::{AttemptSourceError, ContentError};
use detent_training::bench::script::StepError;
use detent_training::lesson::SetUpError;
use detent_training::practice::TargetError;
use detent_training::reason::{PathError, PlanError, PosteriorError};
use detent_training::record::{Divergence, RecordError};
use std::io;
use std::process::ExitCode;

/// Why a command ended without doing its work.
#[derive(Debug, thiserror::Error)]
pub(super) enum Failure {
    /// A file that cannot be used.
    #[error(transparent)]
    Content(#[from] ContentError),
    /// An attempt that cannot be read.
    #[error(transparent)]
    Record(#[from] RecordError),
    /// The scenario of an attempt cannot be found.
    #[error(transparent)]
    AttemptSource(#[from] AttemptSourceError),
    /// The scenario cannot be set up.
    #[error(transparent)]
    SetUp(#[from] SetUpError),
    /// The output cannot be written.
    #[error("cannot write {0}: {1}; check the folder and the free space")]
    Write(String, io::Error),
    /// The attempt cannot be kept.
    #[error(transparent)]
    Attempt(#[from] AttemptFileError),
    /// Nothing can be planned.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// A job cannot be thought over.
    #[error(transparent)]
    Path(#[from] PathError),
    /// Nothing can be believed.
    #[error(transparent)]
    Posterior(#[from] PosteriorError),
    /// A step of a script could not be done.
    #[error("{script}:{line}: {error}{}", kept_in(.kept))]
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
    #[error("{file}: {divergence}")]
    Differs {
        /// The attempt.
        file: String,
        /// Where.
        divergence: Divergence,
    },
    /// The scripted expert cannot do the job.
    #[error("{scenario}: the scripted expert cannot do it: {error}")]
    Expert {
        /// The scenario.
        scenario: String,
        /// Why.
        error: StepError,
    },
    /// No such language.
    #[error("no language \"{0}\": use en or es")]
    NoLanguage(String),
    /// No such board.
    #[error("no board \"{name}\": the boards are {known}")]
    NoBoard {
        /// As written.
        name: String,
        /// Boards that exist.
        known: String,
    },
    /// The board is not made for this supply.
    #[error("board \"{0}\" is not made for 230 V, 50 Hz: leave --v230 out")]
    NotThisSupply(String),
    /// No practice aims at this.
    #[error(transparent)]
    Target(#[from] TargetError),
    /// The attempt to go on with was made with another seed.
    #[error("{file}: was begun with seed {seed}; leave --seed out")]
    OtherSeed {
        /// The attempt.
        file: String,
        /// Its seed.
        seed: u64,
    },
    /// The window could not be opened, in its own words.
    #[error("{0}")]
    Window(String),
    /// There is no window in this program.
    #[error(
        "this program was built without its window: build it with `cargo build --release`, or use a command (see --help)"
    )]
    NoWindow,
}

fn kept_in(part: &Option<String>) -> String {
    part.as_ref().map_or_else(String::new, |part| {
        format!("; what was done before is kept in {part}: --resume goes on from there")
    })
}

impl Failure {
    /// 1 where the work itself failed, 2 where it could not begin.
    pub fn exit_code(&self) -> ExitCode {
        ExitCode::from(match self {
            Failure::Step { .. } | Failure::Differs { .. } | Failure::Expert { .. } => 1,
            Failure::Content(_)
            | Failure::Record(_)
            | Failure::AttemptSource(_)
            | Failure::SetUp(_)
            | Failure::Write(..)
            | Failure::Attempt(_)
            | Failure::Plan(_)
            | Failure::Path(_)
            | Failure::Posterior(_)
            | Failure::NoLanguage(_)
            | Failure::NoBoard { .. }
            | Failure::NotThisSupply(_)
            | Failure::Target(_)
            | Failure::OtherSeed { .. }
            | Failure::Window(_)
            | Failure::NoWindow => 2,
        })
    }
}
