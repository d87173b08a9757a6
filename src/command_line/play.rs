//! `detent play`: a script on a scenario, without a window.

use super::print::Look;
use super::{Failure, print};
use detent_content::attempt_file::AttemptWriter;
use detent_content::{Language, Shelf, disk, read_script};
use detent_simulation::units::Span;
use detent_training::bench::Bench;
use detent_training::bench::script::Step;
use detent_training::lesson::{judge, set_up};
use detent_training::record::{Footer, Header};
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub(super) struct PlayArgs {
    /// Scenario: a file, or the name of a built-in one.
    scenario: String,
    /// Script: one step or action a line.
    script: PathBuf,
    /// Seed of the random draws (default: the scenario's own).
    #[arg(long)]
    seed: Option<u64>,
    /// Print JSON.
    #[arg(long)]
    json: bool,
    /// Keep the attempt in this file, for `detent replay`.
    #[arg(long)]
    save: Option<PathBuf>,
}

pub(super) fn play(args: &PlayArgs, language: Language) -> Result<(), Failure> {
    let shelf = Shelf::builtin()?;
    let titled = shelf.scenario(&args.scenario)?;
    let name = args.script.to_string_lossy();
    let steps = read_script(&name, &disk::read_bytes(&args.script)?)?;
    let seed = args.seed.unwrap_or(titled.scenario.seed);
    let mut bench = set_up(&titled.scenario, &shelf.library(&titled.scenario), seed)?;
    let mut log = match &args.save {
        Some(path) => Some(AttemptWriter::create(
            path,
            &Header::new(&titled.file, &titled.text, seed),
        )?),
        None => None,
    };
    let mut kept = 0;
    let mut looks = Vec::new();
    for (line, step) in &steps {
        let done = match step {
            Step::Watch { s } => {
                watch(&mut bench, Span::from_s(*s), &mut looks);
                Ok(())
            }
            step => step.run(&mut bench),
        };
        if *step == Step::Look {
            looks.push((bench.now(), bench.machine().outputs().lamps));
        }
        if let Some(log) = &mut log {
            kept = keep(log, &bench, kept)?;
        }
        done.map_err(|error| Failure::Failed(format!("{name}:{line}: {error}")))?;
    }
    let score = judge(&titled.scenario, &bench);
    let footer = Footer {
        at: bench.now(),
        state: bench.machine().state_hash(),
        score: score.total(),
    };
    if let Some(log) = log {
        log.finish(&footer)?;
    }
    if args.json {
        print::outcome_json(&titled, seed, &bench, &score, &looks)
    } else {
        let review = match bench.report() {
            Some(_) => shelf.review((&titled.scenario, seed), &bench, &score)?,
            None => None,
        };
        print::outcome(
            &titled,
            seed,
            (&bench, &score),
            &looks,
            review.as_ref(),
            language,
        )
    }
}

/// Notes the lamps at once and whenever they change.
fn watch(bench: &mut Bench, span: Span, looks: &mut Vec<Look>) {
    let mut last = None;
    for _ in 0..span.0 {
        let lamps = bench.machine().outputs().lamps;
        if last != Some(lamps) {
            looks.push((bench.now(), lamps));
            last = Some(lamps);
        }
        bench.step();
    }
}

/// Appends the actions that are not yet in the log.
fn keep(log: &mut AttemptWriter, bench: &Bench, kept: usize) -> Result<usize, Failure> {
    for (at, action) in bench.history().starting_at(kept).iter() {
        log.push(at, action)?;
    }
    Ok(bench.history().len())
}
