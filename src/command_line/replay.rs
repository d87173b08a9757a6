//! `detent replay`: do a recorded attempt again and compare.

use super::output::Output;
use super::{Failure, LibraryFolder};
use detent_content::{Language, ReplayedAttempt, Texts, Value, disk, replay_attempt};
use detent_training::record::{Answer, Attempt, Seal, read_attempt};
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub(super) struct ReplayArgs {
    attempt: PathBuf,
    #[arg(long)]
    scenario: Option<String>,
}

pub(super) fn check(
    args: &ReplayArgs,
    library: &LibraryFolder,
    language: Language,
) -> Result<(), Failure> {
    let name = args.attempt.to_string_lossy().into_owned();
    let attempt = read_attempt(&name, &disk::attempt_bytes(&args.attempt)?)?;
    let content_library = library.open()?;
    let scenario_source = match &args.scenario {
        Some(scenario) => content_library.scenario_named(scenario, &args.attempt, &attempt)?,
        None => content_library.scenario_of(&args.attempt, &attempt)?,
    };
    let ReplayedAttempt { score, .. } =
        replay_attempt(&content_library, &scenario_source, &name, &attempt)?;
    let mut out = Output::standard();
    let texts = Texts::load(language);
    let actions = |attempt: &Attempt| [("actions", Value::from(attempt.actions.len()))];
    let key = match attempt.footer {
        Some(_) => "cli-replay-same",
        None => "cli-replay-unfinished",
    };
    out.line(format!("{name}: {}", texts.with(key, &actions(&attempt))))?;
    if let Some(first) = &attempt.first_visit {
        out.line(texts.with("cli-replay-second-visit", &actions(first)))?;
    }
    // What an attempt should say is told only where it says it already.
    let Some(footer) = &attempt.footer else {
        return Ok(());
    };
    out.line(texts.get(match attempt.seal {
        Seal::Holds | Seal::Broken => "cli-replay-sealed",
        Seal::Without => "cli-replay-without-seal",
    }))?;
    out.line(texts.get(match footer.answer {
        Answer::Shown { .. } => "cli-replay-shown",
        Answer::Withheld => "cli-replay-withheld",
    }))?;
    out.line(format!("{} {}", texts.get("cli-state"), footer.state))?;
    match footer.answer {
        Answer::Shown { .. } => {
            let (score, of) = (score.total(), score.of());
            let points = texts.digits(format!("{score:.1} / {of:.1}"));
            out.line(format!("{} {points}", texts.get("cli-score")))
        }
        Answer::Withheld => Ok(()),
    }
}
