//! `detent replay`: do a recorded attempt again and compare.

use super::Failure;
use super::output::Output;
use detent_content::{ContentLibrary, ReplayError, ReplayedAttempt, disk, replay_attempt};
use detent_training::record::{Answer, Seal, read_attempt};
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub(super) struct ReplayArgs {
    /// The attempt's file.
    attempt: PathBuf,
    /// The scenario, when it is neither where the attempt says nor beside it nor built in.
    #[arg(long)]
    scenario: Option<String>,
}

pub(super) fn check(args: &ReplayArgs) -> Result<(), Failure> {
    let name = args.attempt.to_string_lossy().into_owned();
    let attempt = read_attempt(&name, &disk::attempt_bytes(&args.attempt)?)?;
    let content_library = ContentLibrary::builtin()?;
    let scenario_source = match &args.scenario {
        Some(scenario) => content_library.scenario_named(scenario, &args.attempt, &attempt)?,
        None => content_library.scenario_of(&args.attempt, &attempt)?,
    };
    let ReplayedAttempt { score, .. } =
        replay_attempt(&content_library, &scenario_source, &name, &attempt).map_err(|error| {
            match error {
                ReplayError::Differs { file, divergence } => Failure::Differs { file, divergence },
                ReplayError::Record(error) => Failure::Record(error),
                ReplayError::SetUp(error) => Failure::SetUp(error),
            }
        })?;
    let mut out = Output::of("the result");
    let actions = attempt.actions.len();
    // What an attempt should say is told only where it says it already.
    let Some(footer) = &attempt.footer else {
        return out.line(format!(
            "{name}: {actions} actions, unfinished; every action could be done"
        ));
    };
    out.line(format!("{name}: {actions} actions, same state and score"))?;
    out.line(match attempt.seal {
        Seal::Holds | Seal::Broken => "the digest is that of its lines",
        Seal::Without => {
            "an older format: without a digest, what was changed cannot always be seen"
        }
    })?;
    out.line(match footer.answer {
        Answer::Shown { .. } => "the answer was shown after the report",
        Answer::Withheld => "no report that concludes anything: the answer was not shown",
    })?;
    out.line(format!("state {}", footer.state))?;
    match footer.answer {
        Answer::Shown { .. } => {
            out.line(format!("score {:.1} of {:.1}", score.total(), score.of()))
        }
        Answer::Withheld => Ok(()),
    }
}
