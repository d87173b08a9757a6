//! `detent replay`: do a recorded attempt again and compare.

use super::Failure;
use detent_content::{RedoError, Redone, Shelf, disk, redo};
use detent_training::record::read_attempt;
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub(super) struct ReplayArgs {
    /// The attempt's file.
    attempt: PathBuf,
    /// The scenario, when it is no longer where the attempt says.
    #[arg(long)]
    scenario: Option<String>,
}

pub(super) fn check(args: &ReplayArgs) -> Result<(), Failure> {
    let name = args.attempt.to_string_lossy().into_owned();
    let attempt = read_attempt(&name, &disk::read_bytes(&args.attempt)?)?;
    let shelf = Shelf::builtin()?;
    let titled = shelf.scenario(args.scenario.as_ref().unwrap_or(&attempt.header.scenario))?;
    let Redone { state, score, .. } =
        redo(&shelf, &titled, &name, &attempt).map_err(|error| match error {
            RedoError::Differs { .. } => Failure::Failed(error.to_string()),
            RedoError::Record(error) => Failure::Record(error),
            RedoError::SetUp(error) => Failure::SetUp(error),
        })?;
    let end = if attempt.footer.is_some() {
        "same state and score"
    } else {
        "unfinished; every action could be done"
    };
    println!("{name}: {} actions, {end}", attempt.actions.len());
    println!(
        "state {state}\nscore {:.1} of {:.1}",
        score.total(),
        score.of()
    );
    Ok(())
}
