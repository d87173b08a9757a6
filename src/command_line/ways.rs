//! `detent best --course`: what each way of working costs at every built-in job.

use super::Failure;
use super::job::Job;
use super::output::Output;
use detent_content::{ContentLibrary, ScenarioSource, Texts};
use detent_training::bench::Bench;
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{Hidden, Scenario, set_up};
use detent_training::reason::{WAIT_PER_HOUR, expected};
use rayon::prelude::*;
use std::path::PathBuf;

/// The scripted expert is sent to the causes that are at least this likely, by their share.
const LIKELY: f64 = 0.02;

/// One line for each scenario: what is expected of each way of working, and what it costs on the hidden
/// fault.
pub(super) fn course(
    content_library: &ContentLibrary,
    texts: &Texts,
    folder: Option<&PathBuf>,
) -> Result<(), Failure> {
    let mut out = Output::standard();
    let columns = [
        "best-optimum",
        "best-expert",
        "best-code-buyer",
        "best-control-swapper",
    ];
    let mut heading = format!("{:<24}", texts.get("best-scenario"));
    for column in columns {
        heading += &format!(" {:>22}", texts.get(column));
    }
    out.line(heading)?;
    out.line(texts.get("best-columns"))?;
    for scenario_source in &content_library.scenarios()? {
        let job = Job::of(
            content_library,
            scenario_source,
            scenario_source.scenario.seed,
            folder,
            texts,
        )?;
        out.line(line(content_library, scenario_source, &job)?)?;
    }
    Ok(())
}

fn line(
    content_library: &ContentLibrary,
    scenario_source: &ScenarioSource,
    job: &Job<'_>,
) -> Result<String, Failure> {
    // Every way begins with reading the codes and ends with the report.
    let (_, report) = job.repair_costs.report();
    let (_, look) = job.repair_costs.first_look();
    let always = report + if job.codes.is_empty() { 0.0 } else { look };
    let shares = job.belief.shares();
    let [best, buyer, swapper] = job.ways()?;
    let cell = |costs: &[f64]| {
        let here = job.truth.map(|t| always + costs[t]);
        (always + expected(&shares, costs), here)
    };
    let mut text = format!("{:<24}", format!("{}.ron", scenario_source.stem()));
    let least = always + job.plan()?.lower;
    let cells = [
        cell(&best),
        expert(content_library, scenario_source, &shares)?,
        cell(&buyer),
        cell(&swapper),
    ];
    for (n, (mean, here)) in cells.into_iter().enumerate() {
        let here = here.map_or_else(|| "—".to_owned(), |here| format!("{here:.0}"));
        let cell = match n {
            0 => format!("{mean:.1} (≥ {least:.1}) / {here}"),
            _ => format!("{mean:.1} / {here}"),
        };
        text += &format!(" {cell:>22}");
    }
    Ok(text)
}

/// The scripted expert's bill: its mean over the likely causes, and on the hidden fault.
fn expert(
    content_library: &ContentLibrary,
    scenario_source: &ScenarioSource,
    shares: &[f64],
) -> Result<(f64, Option<f64>), Failure> {
    let likely: Vec<(usize, f64)> = (shares.iter().copied().enumerate())
        .filter(|(_, share)| *share >= LIKELY)
        .collect();
    let sent = likely.par_iter().map(|(n, share)| {
        let mode = n
            .checked_sub(1)
            .map(|n| &content_library.catalogue.modes[n]);
        let fault = mode.map_or(Hidden::Nothing, |m| Hidden::Named(m.id.clone()));
        let scenario = Scenario {
            fault,
            ..scenario_source.scenario.clone()
        };
        Ok((*share, bill(content_library, scenario_source, &scenario)?))
    });
    let bills: Vec<(f64, f64)> = sent.collect::<Result<_, Failure>>()?;
    let weight: f64 = bills.iter().map(|(share, _)| share).sum();
    let sum: f64 = bills.iter().map(|(share, bill)| share * bill).sum();
    Ok((
        sum / weight,
        Some(bill(
            content_library,
            scenario_source,
            &scenario_source.scenario,
        )?),
    ))
}

fn bill(
    content_library: &ContentLibrary,
    scenario_source: &ScenarioSource,
    scenario: &Scenario,
) -> Result<f64, Failure> {
    let bench: Bench = set_up(
        scenario,
        &content_library.library(scenario),
        scenario_source.scenario.seed,
    )?;
    let done = work(Persona::Expert, scenario, bench).map_err(|error| Failure::Expert {
        scenario: scenario_source.file.clone(),
        error,
    })?;
    Ok(done.bill() + WAIT_PER_HOUR * done.waited_hours())
}
