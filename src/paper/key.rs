//! The answer to one job: what is wrong, what it shows, the planner's way, and the points.

use super::PaperError;
use super::document::{Sheet, facts};
use super::draft::{BODY, Cell, Draft, TableShape};
use detent_content::{ContentLibrary, Texts, Words, builtin};
use detent_simulation::plant::FailureMode;
use detent_training::bench::Bench;
use detent_training::lesson::{Dimension, judge, set_up};
use detent_training::practice::drill::proof::{HistoryStep, Shown};
use detent_training::reason::evidence::{End, Outcome, Signature, Table};
use detent_training::reason::{PathStep, PlanStep, Probe, RepairCosts, Review};

pub(super) fn key(
    draft: &mut Draft,
    content_library: &ContentLibrary,
    sheet: &Sheet<'_>,
) -> Result<(), PaperError> {
    let (texts, source) = (sheet.texts, sheet.job.source);
    let scenario = &source.scenario;
    let bench = set_up(scenario, &sheet.library, sheet.job.seed)?;
    let outcome = Outcome::of_wash(&bench);
    draft.heading(2, sheet.said(&scenario.title), 120.0);
    let mut told = vec![
        (texts.get("paper-sheet"), sheet.named()),
        (texts.get("paper-file"), source.file.clone()),
        (
            texts.get("paper-machine"),
            texts.get(&sheet.library.board.name),
        ),
        (
            texts.get("paper-goal"),
            sheet.said(&scenario.goal).to_owned(),
        ),
        (texts.get("paper-fault"), faults(texts, bench.hidden())),
        (texts.get("best-codes"), codes(sheet, &outcome)),
    ];
    if outcome.end == End::NotAskedFor {
        told.push((texts.get("paper-wash"), texts.get("best-not-asked-for")));
    }
    told.push((texts.get("paper-points"), points(sheet)));
    facts(draft, &texts.get("paper-answer-key"), told);
    let score = judge(scenario, &bench);
    let review = content_library.review((scenario, sheet.job.seed), &bench, &score)?;
    let table = builtin::table(&sheet.library, scenario.mains.rating());
    draft.heading(3, &texts.get("review-best"), 60.0);
    match (review, table) {
        (Some(review), Some(table)) => {
            draft.paragraph(&texts.get("paper-way-intro"), BODY);
            way(draft, sheet, &bench, (&review, &table));
        }
        _ => draft.paragraph(&texts.get("review-none"), BODY),
    }
    Ok(())
}

fn faults(texts: &Texts, hidden: &[FailureMode]) -> String {
    let told: Vec<String> = (hidden.iter())
        .map(|mode| {
            format!(
                "{} ({})",
                texts.mode(&mode.id),
                texts.component(mode.component)
            )
        })
        .collect();
    match told.is_empty() {
        true => texts.get("mode-nothing"),
        false => told.join("; "),
    }
}

fn codes(sheet: &Sheet<'_>, outcome: &Outcome) -> String {
    let told: Vec<String> = (outcome.codes.iter())
        .map(|code| match sheet.library.board.monitor_of(*code) {
            Some(monitor) => {
                let says = sheet.texts.get(&format!("monitor-{monitor}"));
                format!("{code:02}: {says}")
            }
            None => format!("{code:02}"),
        })
        .collect();
    match told.is_empty() {
        true => "—".to_owned(),
        false => told.join("; "),
    }
}

fn points(sheet: &Sheet<'_>) -> String {
    let points = &sheet.job.source.scenario.points;
    let told = Dimension::ALL.iter().map(|side| {
        let name = sheet.texts.get(&format!("dimension-{side}"));
        let points = sheet.texts.digits(points.of(*side).to_string());
        format!("{name} {points}")
    });
    told.collect::<Vec<_>>().join(" · ")
}

/// The planner's way: each step, what it shows on this machine, and time and money so far.
fn way(draft: &mut Draft, sheet: &Sheet<'_>, bench: &Bench, (review, table): (&Review, &Table)) {
    let texts = sheet.texts;
    let words = Words::of(
        (&review.repair_costs, &review.modes),
        texts,
        bench.counter(),
        Some(sheet.library.board),
    );
    let place = |mode: &FailureMode| {
        let same = sheet.library.modes.iter().position(|m| m.id == mode.id);
        same.map_or(0, |n| n + 1)
    };
    let mut truths = bench.hidden().iter().map(place);
    let mut truth = truths.next().unwrap_or_default();
    let heads = [
        "paper-step",
        "paper-shows",
        "paper-minutes-so-far",
        "paper-money-so-far",
    ];
    let heads = heads.map(|key| texts.get(key));
    let about = texts.get("review-best");
    let shape = TableShape {
        about: &about,
        columns: &[0.45, 0.31, 0.11, 0.13],
        heads: &heads,
        row: 15.5,
        row_heads: true,
    };
    let mut rows = Vec::new();
    for stop in &review.best {
        let shows = match &stop.deed {
            PathStep::Planned(PlanStep::Test(test)) => {
                shows(texts, (table, truth), &review.repair_costs.probes[*test])
            }
            PathStep::Planned(PlanStep::Repair(repair)) => {
                if cures(&review.repair_costs, *repair, truth) {
                    // Several faults are taken one after the other.
                    truth = truths.next().unwrap_or(truth);
                }
                String::new()
            }
            _ => String::new(),
        };
        rows.push(vec![
            Cell::Text(words.deed(&stop.deed)),
            Cell::Text(shows),
            Cell::Text(texts.digits(format!("{:.1}", stop.minutes))),
            Cell::Text(texts.whole_money(stop.money)),
        ]);
    }
    draft.table(&shape, &rows);
}

fn cures(repair_costs: &RepairCosts, repair: usize, truth: usize) -> bool {
    repair_costs.problem.repairs[repair].cures.contains(&truth)
}

/// What a test shows most often with a hypothesis.
fn shows(texts: &Texts, (table, truth): (&Table, usize), probe: &Probe) -> String {
    let seen = &table.seen[truth];
    let often = |a: &&Signature, b: &&Signature| a.share.total_cmp(&b.share);
    let Some(sight) = seen.sights.iter().max_by(often) else {
        return String::new();
    };
    let shown = match probe {
        Probe::Read(point) => {
            let place = table.points.iter().position(|p| p == point);
            match place.and_then(|n| sight.shown[n]) {
                Some(shown) => Shown::Reading(shown),
                None => return texts.get("paper-not-possible"),
            }
        }
        Probe::Inspect(component) => Shown::Findings(sight.findings[component.index()].clone()),
        Probe::BucketTest(pipe) => Shown::Bucket(sight.buckets[pipe.index()]),
        Probe::Recalibrate => {
            return match seen.recalibrations.first() {
                Some(Some(outcome)) => {
                    texts.proof_step(&HistoryStep::Recalibrated(outcome.clone()), &[])
                }
                Some(None) | None => texts.get("paper-not-possible"),
            };
        }
    };
    texts.proof_shows(probe, &shown)
}
