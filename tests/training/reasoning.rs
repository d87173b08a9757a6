//! The reasoning room on the whole catalogue of one board: does the evidence that the simulator gives
//! point to the fault, and is the plan better than bad habits?

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "the time for one action is bounded, and each hypothesis has a machine of its own"
)]

use crate::stage::{MAINS, Stage};
use detent_content::{builtin, table_file};
use detent_simulation::controller::{EntryError, Outcome as GestureOutcome, Tries, Try};
use detent_simulation::interface::{Component, Connector};
use detent_simulation::plant::Presence;
use detent_simulation::units::uniform;
use detent_training::bench::{Action, Display, Grip, MeterMode, meter};
use detent_training::lesson::set_up;
use detent_training::reason::evidence::{self, Outcome, Table};
use detent_training::reason::{
    ControlSuspicion, Course, HandRecord, Posterior, RepairCosts, best_costs, code_buyer,
    control_swapper, expected, order_costs,
};
use rand::SeedableRng;
use rayon::prelude::*;
use std::sync::LazyLock;
use std::time::Instant;

/// As the command line has it.
const WORK: u32 = 4000;

static STAGE: LazyLock<Stage> = LazyLock::new(Stage::new);
static TABLE: LazyLock<Table> = LazyLock::new(|| {
    let (library, rating) = (STAGE.library(MAINS[0]), MAINS[0].rating());
    let points = evidence::points(&library, rating);
    let seen = (0..=library.modes.len())
        .into_par_iter()
        .map(|n| evidence::observe(&library, rating, &points, n))
        .collect();
    Table::of(&library, rating, points, seen)
});

#[test]
fn the_tables_that_the_program_brings_are_of_this_content() {
    for stage in Stage::every() {
        for mains in &stage.board().mains {
            let (library, rating) = (stage.library(*mains), mains.rating());
            let board = &stage.board().id;
            let shipped = builtin::table(&library, rating);
            let shipped = shipped.unwrap_or_else(|| {
                panic!("make them again: cargo run --release --no-default-features -- best --tables assets/tables ({board})")
            });
            if board == &STAGE.board().id && *mains == MAINS[0] {
                assert!(shipped == *TABLE, "{board}: not what the simulator shows");
            }
        }
    }
}

fn prior() -> Posterior {
    let modes = &STAGE.content_library().catalogue.modes;
    Posterior::from_weights(&evidence::prior(modes)).expect("weights")
}

fn outcomes() -> Vec<Outcome> {
    let mut all: Vec<Outcome> = TABLE.seen.iter().flat_map(|s| s.washes.clone()).collect();
    all.sort();
    all.dedup();
    all
}

#[test]
fn everything_that_a_fault_shows_points_to_it() {
    let mut rng = rand_chacha::ChaCha8Rng::seed_from_u64(3);
    let mut wrong = Vec::new();
    for (n, seen) in TABLE.seen.iter().enumerate() {
        let mode = n
            .checked_sub(1)
            .map(|n| &STAGE.content_library().catalogue.modes[n]);
        let name = mode.map_or("nothing", |m| m.id.as_str());
        // As it is found most of the time.
        let most = seen
            .sights
            .iter()
            .max_by(|a, b| a.share.total_cmp(&b.share));
        let sight = most.expect("at least one");
        // A wash in which it did something, if it does.
        let told = seen.washes.iter().find(|w| !w.codes.is_empty());
        let mut belief = prior();
        belief
            .update(&TABLE.wash(told.unwrap_or(&seen.washes[0])))
            .expect("a floor");
        // How a recalibration ends, or that nobody gets in to begin one.
        belief
            .update(&TABLE.recalibration(&seen.recalibrations[0]))
            .expect("a floor");
        for (point, shown) in sight.shown.iter().enumerate() {
            if let Some(ideal) = shown {
                let draw = 2.0 * uniform(&mut rng) - 1.0;
                let shown = meter::noisy(*ideal, TABLE.points[point].mode, draw);
                belief
                    .update(&TABLE.reading(point, shown))
                    .expect("a floor");
            }
        }
        for component in Component::ALL {
            let found = &sight.findings[component.index()];
            belief
                .update(&TABLE.findings(*component, found))
                .expect("a floor");
        }
        let (first, share) = belief.ranked()[0];
        // One that comes and goes may show no more than its code.
        let comes_and_goes =
            mode.is_some_and(|m| matches!(m.presence, Presence::Intermittent { .. }));
        if first != n && !comes_and_goes {
            wrong.push(format!("{name}: {share:.3} for hypothesis {first}"));
        }
        let own = belief.shares()[n];
        if own < if comes_and_goes { 1e-3 } else { 0.5 } {
            wrong.push(format!("{name}: only {own:.4}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn after_every_wash_the_plan_is_fast_and_beats_bad_habits() {
    let library = STAGE.library(MAINS[0]);
    let repair_costs = RepairCosts::of(&library, &TABLE, true);
    assert_eq!(repair_costs.problem.check(), Ok(()));
    for outcome in outcomes() {
        let began = Instant::now();
        let mut belief = prior();
        belief.update(&TABLE.wash(&outcome)).expect("a floor");
        let shares = belief.shares();
        let course = Course::begin(&shares);
        let plan = repair_costs.problem.plan(&course, WORK).expect("sound");
        let took_s = began.elapsed().as_secs_f64();
        // 50 ms in a release build; this one is slower and shares its cores.
        assert!(took_s < 2.0, "{took_s} s for {outcome:?}");
        assert!(plan.lower <= plan.upper, "{outcome:?}");

        let best = best_costs(&repair_costs.problem, &course, WORK / 10).expect("sound");
        let best = expected(&shares, &best);
        let (board, parts) = (library.board, library.parts);
        let habits = [code_buyer, control_swapper].map(|habit| {
            let order = habit(&repair_costs, board, parts, &outcome.codes, &shares);
            expected(&shares, &order_costs(&repair_costs.problem, &order))
        });
        println!(
            "{outcome:?}: {best:.1} ({:.1} to {:.1}), by the code {:.1}, control first {:.1}",
            plan.lower, plan.upper, habits[0], habits[1]
        );
        assert!(plan.lower <= best * (1.0 + 1e-9), "{outcome:?}");
        assert!(
            best < habits[0] && best < habits[1],
            "{outcome:?}: {best} {habits:?}"
        );
    }
}

#[test]
fn a_reading_at_the_bench_finds_the_open_winding() {
    let scenario_source = STAGE
        .content_library()
        .scenario("drain-code")
        .expect("built in");
    let library = STAGE.content_library().library(&scenario_source.scenario);
    let mut bench = set_up(
        &scenario_source.scenario,
        &library,
        scenario_source.scenario.seed,
    )
    .expect("it fits");
    let mut belief = prior();
    belief
        .update(&TABLE.wash(&Outcome::of_wash(&bench)))
        .expect("a floor");
    let truth = 1 + library
        .modes
        .iter()
        .position(|m| m.id == "drain-pump.open-winding")
        .expect("there");
    assert!(belief.shares()[truth] < 0.3, "a code alone does not tell");
    let pump = Connector::Load(Component::DrainPump);
    let (red, black) = ("drain-pump.1", "drain-pump.2");
    let (mode, grip) = (MeterMode::Ohms, Grip::Clips);
    let (red, black) = (red.parse().expect("a pin"), black.parse().expect("a pin"));
    let probe = Action::Probe {
        mode,
        red,
        black,
        grip,
    };
    for action in [
        Action::Unplug,
        Action::OpenCabinet,
        Action::Discharge,
        Action::Pull(pump),
        probe,
    ] {
        bench.act(&action).expect("possible");
    }
    let shown = bench.notebook().first().expect("a reading").shown;
    assert_eq!(shown, Display::OverRange);
    let likely = evidence::reading_here(&bench, (mode, red, black, grip), shown);
    belief.update(&likely).expect("a floor");
    assert_eq!(belief.ranked()[0].0, truth);
    assert!(belief.shares()[truth] > 0.9, "{:?}", belief.ranked()[0]);
    // A look at the hose tells nothing new of the pump.
    let found = evidence::finding_here(&bench, Component::DrainHose, &[]);
    belief.update(&found).expect("a floor");
    assert_eq!(belief.ranked()[0].0, truth);
}

#[test]
fn a_table_is_made_alike_and_read_back_and_refused_when_it_is_not_ours() {
    let (library, rating) = (STAGE.library(MAINS[0]), MAINS[0].rating());
    let n = 1 + library
        .modes
        .iter()
        .position(|m| m.id == "harness.lock-return-loose")
        .expect("there");
    assert_eq!(
        evidence::observe(&library, rating, &TABLE.points, n),
        TABLE.seen[n]
    );

    let key = evidence::key(&library, rating);
    let folder = tempfile::tempdir().expect("a folder");
    let path = table_file::path(&folder.path().join("new"), "board", rating.volts);
    assert_eq!(table_file::load(&path, &key), None);
    table_file::save(&path, &key, &TABLE).expect("it can be written");
    assert_eq!(table_file::load(&path, &key).as_ref(), Some(&*TABLE));
    let files = std::fs::read_dir(folder.path().join("new")).expect("made");
    assert_eq!(files.count(), 1, "no temporary file is left");

    let mut board = library.board.clone();
    board.codes[0].code += 1;
    let other = detent_training::lesson::Library {
        board: &board,
        ..library
    };
    let other = evidence::key(&other, rating);
    assert_ne!(other, key);
    assert_eq!(table_file::load(&path, &other), None);

    let whole = TABLE.to_bytes(&key);
    assert_eq!(
        Table::from_bytes(&whole, &other),
        Err(evidence::TableError::Stale)
    );
    for place in [70, whole.len() - 1] {
        let mut bytes = whole.clone();
        bytes[place] ^= 1;
        assert_eq!(
            Table::from_bytes(&bytes, &key),
            Err(evidence::TableError::Damaged)
        );
    }
    for length in [0, 40, 64, whole.len() - 1] {
        let short = Table::from_bytes(&whole[..length], &key);
        assert_eq!(short, Err(evidence::TableError::Damaged), "{length}");
    }
}

#[test]
fn doubt_grows_with_failures_that_are_not_the_hands_own_and_ends_with_a_try_that_gets_in() {
    let attempt = |outcome| Try {
        began_s: 0,
        lines: Vec::new(),
        outcome,
    };
    let (step, by_ms) = (0, 300);
    let skipped = attempt(GestureOutcome::Broken(EntryError::TooFewDetents {
        step,
        got: 2,
        want: 3,
    }));
    let late = attempt(GestureOutcome::Broken(EntryError::Late { step, by_ms }));
    let entered = attempt(GestureOutcome::Entered);
    let in_hold = attempt(GestureOutcome::InHold);
    let modes = &STAGE.content_library().catalogue.modes;
    let of_hand = |tries: &[Try], hand: HandRecord| {
        ControlSuspicion::of(Tries::from(tries), 0.0, modes, hand).expect("fixed risks")
    };
    let control_suspicion = |tries: &[Try]| of_hand(tries, HandRecord::default());
    let odds = control_suspicion(&[late, skipped.clone(), skipped.clone()]).log_odds;
    assert!(odds[0] < 0.0, "few controls are bad: {odds:?}");
    // Whoever was too late learns nothing about the control.
    assert_eq!(odds[0], odds[1]);
    // A control in a fault hold lets nobody in, and is none the worse for it.
    let with_hold = control_suspicion(&[in_hold, skipped.clone(), skipped.clone()]);
    assert_eq!(with_hold.log_odds[..], [odds[0], odds[2], odds[3]]);
    // A newcomer gets in with one try in four: each failure makes the odds a third greater.
    assert!(
        (odds[2] - odds[1] - (4.0_f64 / 3.0).ln()).abs() < 1e-9,
        "{odds:?}"
    );
    assert!(
        (odds[3] - odds[2] - (4.0_f64 / 3.0).ln()).abs() < 1e-9,
        "{odds:?}"
    );
    // Common practice, no source: after about twenty failed tries the control is suspect.
    let [newcomer, practised] = control_suspicion(&[]).needed;
    println!("suspect after {newcomer} tries of a newcomer, {practised} of a practised hand");
    assert!((18..=22).contains(&newcomer), "{newcomer}");
    assert!((2..=5).contains(&practised), "{practised}");
    let failed = vec![skipped.clone(); newcomer];
    let suspicion = control_suspicion(&failed);
    let suspect = |log_odds: &f64| *log_odds >= suspicion.upper;
    let first = suspicion.log_odds.iter().position(suspect);
    assert_eq!(first, Some(newcomer));
    assert_eq!(suspicion.needed_of_hand, newcomer);
    // The more often a hand got in before, the fewer tries it takes; a clumsy one is told when anybody is.
    let told = |entered, tries| {
        let suspicion = of_hand(&failed, HandRecord { entered, tries });
        let suspect = |log_odds: &f64| *log_odds >= suspicion.upper;
        let first = suspicion.log_odds.iter().position(suspect);
        assert_eq!(
            first,
            Some(suspicion.needed_of_hand),
            "{entered} of {tries}"
        );
        suspicion.needed_of_hand
    };
    let needed = [(0, 0), (3, 5), (10, 15), (18, 20)].map(|(entered, tries)| told(entered, tries));
    println!("suspect after {needed:?} tries of hands with ever better records");
    assert!(
        needed.is_sorted_by(|more, fewer| more > fewer),
        "{needed:?}"
    );
    assert!((2..=5).contains(&needed[3]), "{needed:?}");
    assert_eq!(told(0, 20), newcomer);
    assert!(
        !control_suspicion(std::slice::from_ref(&skipped)).cleared
            && control_suspicion(&[skipped, entered]).cleared
    );
}
