//! `detent replay`: do a recorded attempt again and compare.

use super::Failure;
use crate::content::{Shelf, disk};
use crate::lesson::{judge, set_up};
use crate::record::{compare, read_attempt, replay};
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
    attempt.check_scenario(&name, &titled.text)?;
    let mut bench = set_up(
        &titled.scenario,
        &shelf.library(&titled.scenario),
        attempt.header.seed,
    )?;
    let failed = |error: crate::record::Divergence| Failure::Failed(format!("{name}: {error}"));
    replay(&mut bench, &attempt).map_err(failed)?;
    let state = bench.machine().state_hash();
    let score = judge(&titled.scenario, &bench);
    compare(&attempt, &state, score.total()).map_err(failed)?;
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
