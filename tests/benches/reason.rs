//! What reasoning takes: making a board's table, taking in one piece of evidence, choosing the next
//! action, by number of hypotheses.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "a benchmark looks at the clock"
)]

#[path = "../stage/mod.rs"]
mod stage;

use detent_simulation::plant::FailureMode;
use detent_training::lesson::technician::{Persona, work};
use detent_training::lesson::{judge, set_up};
use detent_training::reason::evidence::{self, Outcome, Table};
use detent_training::reason::{Course, Posterior, RepairCosts};
use divan::Bencher;
use rayon::prelude::*;
use stage::{MAINS, Stage};
use std::hint::black_box;
use std::time::Instant;

/// Failure modes that stand beside the sound machine.
const MODES: [usize; 3] = [10, 30, 91];
/// Beliefs that the search may look at, as the command line has it.
const WORK: u32 = 4000;

fn main() {
    divan::main();
    cache_report();
    action_report();
    review_report();
}

/// The catalogue's first modes.
fn first(stage: &Stage, modes: usize) -> Vec<FailureMode> {
    stage.content_library().catalogue.modes[..modes].to_vec()
}

fn table(stage: &Stage, modes: &[FailureMode]) -> Table {
    let library = detent_training::lesson::Library {
        modes,
        ..stage.library(MAINS[0])
    };
    let rating = MAINS[0].rating();
    let points = evidence::points(&library, rating);
    let seen = (0..=modes.len())
        .into_par_iter()
        .map(|n| evidence::observe(&library, rating, &points, n))
        .collect();
    Table::of(&library, rating, points, seen)
}

fn repair_costs(stage: &Stage, modes: &[FailureMode], table: &Table) -> RepairCosts {
    let library = detent_training::lesson::Library {
        modes,
        ..stage.library(MAINS[0])
    };
    RepairCosts::of(&library, table, true)
}

/// Every end of a wash that some hypothesis brings about.
fn outcomes(table: &Table) -> Vec<Outcome> {
    let mut all: Vec<Outcome> = table.seen.iter().flat_map(|s| s.washes.clone()).collect();
    all.sort();
    all.dedup();
    all
}

#[divan::bench(args = MODES)]
fn posterior_update(bencher: Bencher, modes: usize) {
    let stage = Stage::new();
    let modes = first(&stage, modes);
    let table = table(&stage, &modes);
    let prior = Posterior::from_weights(&evidence::prior(&modes)).expect("weights");
    let outcome = outcomes(&table)[0].clone();
    bencher.bench_local(|| {
        let mut belief = prior.clone();
        belief
            .update(&table.wash(black_box(&outcome)))
            .expect("a floor");
        belief
    });
}

/// Before anything is known: the hardest choice there is.
#[divan::bench(args = MODES, sample_count = 20)]
fn next_action(bencher: Bencher, modes: usize) {
    let stage = Stage::new();
    let modes = first(&stage, modes);
    let repair_costs = repair_costs(&stage, &modes, &table(&stage, &modes));
    let course = Course::begin(&evidence::prior(&modes));
    bencher.bench_local(|| {
        repair_costs
            .problem
            .plan(black_box(&course), WORK)
            .expect("sound")
    });
}

fn cache_report() {
    for stage in Stage::every() {
        let began = Instant::now();
        let made = table(&stage, &stage.content_library().catalogue.modes);
        let bytes = made.to_bytes(&[0; 32]).len();
        println!(
            "{}: table of {} hypotheses and {} readings in {:.1} s on {} cores, {bytes} bytes",
            stage.board().id,
            made.seen.len(),
            made.points.len(),
            began.elapsed().as_secs_f64(),
            rayon::current_num_threads()
        );
    }
}

/// The longest choice after any end of the customer's wash, and the whole catalogue.
fn action_report() {
    let stage = Stage::new();
    let modes = stage.content_library().catalogue.modes.clone();
    let table = table(&stage, &modes);
    let repair_costs = repair_costs(&stage, &modes, &table);
    let (mut longest_s, mut exact, mut total_s) = (0.0_f64, 0, 0.0);
    let outcomes = outcomes(&table);
    for outcome in &outcomes {
        let began = Instant::now();
        let mut belief = Posterior::from_weights(&evidence::prior(&modes)).expect("weights");
        belief.update(&table.wash(outcome)).expect("a floor");
        let course = Course::begin(&belief.shares());
        let plan = repair_costs.problem.plan(&course, WORK).expect("sound");
        let took_s = began.elapsed().as_secs_f64();
        longest_s = longest_s.max(took_s);
        total_s += took_s;
        exact += usize::from(plan.is_exact());
    }
    println!(
        "update and next action after {} ends of a wash: mean {:.1} ms, longest {:.1} ms (limit 50 ms), {exact} exact; {} tests, {} repairs",
        outcomes.len(),
        total_s * 1e3 / outcomes.len() as f64,
        longest_s * 1e3,
        repair_costs.problem.tests.len(),
        repair_costs.problem.repairs.len()
    );
}

/// Thinking a finished job over, for the expert's attempt at every job.
fn review_report() {
    let stage = Stage::new();
    let content_library = stage.content_library();
    let (mut longest_s, mut total_s, mut jobs) = (0.0_f64, 0.0, 0);
    for scenario_source in content_library.scenarios().expect("sound scenarios") {
        let scenario = &scenario_source.scenario;
        let bench =
            set_up(scenario, &content_library.library(scenario), scenario.seed).expect("sound");
        let done = work(Persona::Expert, scenario, bench).expect("the expert can");
        let score = judge(scenario, &done);
        let began = Instant::now();
        let review = content_library.review((scenario, scenario.seed), &done, &score);
        let took_s = began.elapsed().as_secs_f64();
        assert!(matches!(review, Ok(Some(_))), "{}", scenario_source.file);
        longest_s = longest_s.max(took_s);
        total_s += took_s;
        jobs += 1;
    }
    println!(
        "thinking over {jobs} finished jobs: mean {:.0} ms, longest {:.0} ms",
        total_s * 1e3 / f64::from(jobs),
        longest_s * 1e3
    );
}
