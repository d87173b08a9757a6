//! Every fault of the catalogue, run through the whole machine: which codes the control raises by
//! itself, and that a meter at some pin, or a look at some component, tells the fault from all
//! others that look alike.
//!
//! The table of it: `cargo test -p detent-training --test training faults -- --nocapture`.

use crate::stage::Stage;
use detent_simulation::controller::{ControlMode, GestureStep, Monitor};
use detent_simulation::interface::{Button, Component};
use detent_simulation::plant::Presence;
use detent_simulation::units::Span;
use detent_training::bench::MilestoneKind;
use detent_training::lesson::Mains;
use detent_training::lesson::survey::{self, Row};
use rayon::prelude::*;
use std::collections::BTreeMap;

/// Faults before the control's own supply, or in it: it cannot say anything.
const DARK: [&str; 5] = [
    "filter.capacitor-shorted",
    "cord.open-line",
    "line-fuse.blown",
    "filter.open-choke",
    "board.supply-dead",
];
/// Faults that trip the outlet as soon as what they are in has mains: the control goes out with all the rest.
const TRIPS: [&str; 3] = [
    "filter.line-to-ground",
    "drain-pump.winding-to-ground",
    "motor.winding-to-ground",
];
/// Faults that the control has no way to notice: it must be seen or measured that they are there.
const SILENT: [&str; 9] = [
    "supply.polarity-reversed",
    "supply.no-ground",
    "supply.extension-cord",
    "supply.loose-outlet",
    "cord.weak-joint",
    "harness.motor-common-burnt",
    "dial.worn",
    "lid-lock.lid-switch-open",
    "board.bleeder-open",
];
/// Faults that keep everybody out of service mode, where the board's gesture needs what failed. The wash is as before,
/// and nothing but the hand tells.
const KEEPS_OUT: [&str; 3] = [
    "board.stop-button-dead",
    "board.service-mode-lost",
    "dial.encoder-dead",
];

/// Whether this board's gesture needs what such a fault takes away.
fn is_kept_out(stage: &Stage, id: &str) -> bool {
    let gesture = &stage.board().gesture;
    gesture.steps.iter().any(|step| match id {
        "board.stop-button-dead" => matches!(
            step,
            GestureStep::Press {
                button: Button::Stop,
                ..
            } | GestureStep::Hold {
                button: Button::Stop,
                ..
            }
        ),
        "dial.encoder-dead" => matches!(step, GestureStep::Turn { .. }),
        _ => true,
    })
}

/// All rows, shared out over the processor's cores.
fn rows(stage: &Stage, mains: Mains) -> Vec<Row> {
    let library = stage.library(mains);
    let modes = library.modes.par_iter();
    modes
        .map(|mode| survey::row(&library, mains.rating(), mode))
        .collect()
}

fn dark(stage: &Stage, mains: Mains, id: &str) -> bool {
    let mut bench = stage.bench(mains, Some(id), 1);
    bench.wait(Span::from_s(30));
    let machine = bench.machine();
    machine.control().control_status().mode == ControlMode::Off
        && machine.outputs().lamps == Default::default()
}

/// What raises a code less often than this need not be listed for it, share.
const LISTED_FROM: f64 = 0.05;

/// How often each component raises each code: the weights of its faults that do.
type Likelihoods = BTreeMap<(Monitor, Component), f64>;

#[track_caller]
fn check_catalogue(stage: &Stage, mains: Mains, likelihoods: &mut Likelihoods) {
    let library = stage.library(mains);
    let sound = survey::looks(&library, mains.rating(), None);
    assert_eq!(sound.findings, [], "a sound machine shows nothing");
    let rows = rows(stage, mains);
    assert_eq!(rows.len(), stage.content_library().catalogue.modes.len());
    println!("\n{} {mains:?}", stage.board().id);
    for line in survey::table(&rows) {
        println!("{line}");
    }
    let mut wrong = Vec::new();
    for row in &rows {
        let id = row.mode.id.as_str();
        let silent = row.codes.is_empty();
        if DARK.contains(&id) {
            if !silent || !dark(stage, mains, id) {
                wrong.push(format!("{id}: the machine should stay dark"));
            }
        } else if TRIPS.contains(&id) {
            let mut bench = stage.bench(mains, Some(id), 1);
            survey::wash(&mut bench);
            if !silent || !bench.view().outlet_tripped {
                wrong.push(format!("{id}: raises {:?}, or trips nothing", row.codes));
            }
        } else if SILENT.contains(&id) {
            if !silent {
                wrong.push(format!("{id}: raises {:?} after all", row.codes));
            }
            if survey::tell(&row.looks, &sound).is_none() {
                wrong.push(format!("{id}: raises nothing and shows nothing"));
            }
        } else if KEEPS_OUT.contains(&id) {
            let mut bench = stage.bench(mains, Some(id), 1);
            bench.wait(Span::from_s(3));
            if !silent || survey::enter_service(&mut bench) == is_kept_out(stage, id) {
                wrong.push(format!(
                    "{id}: raises {:?}, or lets in or out whom it should not",
                    row.codes
                ));
            }
        } else if silent {
            wrong.push(format!("{id}: the control raises nothing"));
        } else if row.mode.presence != Presence::Steady
            && survey::in_time(&library, mains.rating(), &row.mode).is_empty()
        {
            wrong.push(format!("{id}: raises nothing in a customer's washes"));
        }
    }
    for row in &rows {
        for (_, monitor) in &row.codes {
            *(likelihoods.entry((*monitor, row.mode.component))).or_default() += row.mode.weight;
        }
    }
    let mut pairs = 0;
    for (n, a) in rows.iter().enumerate() {
        for b in rows.iter().skip(n + 1).filter(|b| survey::share_code(a, b)) {
            pairs += 1;
            if survey::telling(a, b).is_none() {
                wrong.push(format!(
                    "{} and {}: nothing tells them apart",
                    a.mode.id, b.mode.id
                ));
            }
        }
    }
    println!("{} faults, {pairs} pairs with a code in common", rows.len());
    assert!(pairs > 0);
    let board = &stage.board().id;
    assert!(wrong.is_empty(), "{board} {mains:?}:\n{}", wrong.join("\n"));
}

#[test]
fn the_catalogue_is_wide() {
    let stage = Stage::new();
    let modes = &stage.content_library().catalogue.modes;
    let failing = |c: &&Component| modes.iter().any(|m| m.component == **c);
    let components = Component::ALL.iter().filter(failing).count();
    println!("{} faults of {components} components", modes.len());
    assert!(modes.len() >= 60 && components >= 20);
}

#[test]
fn every_fault_raises_a_code_and_can_be_told_apart_on_every_board_and_supply() {
    let mut wrong = Vec::new();
    for stage in Stage::every() {
        let mut likelihoods = Likelihoods::new();
        for mains in &stage.board().mains {
            check_catalogue(&stage, *mains, &mut likelihoods);
        }
        wrong.extend(misplaced_suspects(&stage, &likelihoods));
    }
    assert!(wrong.is_empty(), "as it should be:\n{}", wrong.join("\n"));
}

/// The board's own sheet lists the suspects of each code by how often they raise it on this very board, all that raise
/// it in one case in twenty. What raises it in no simulated wash stands behind them, and the control last of all: it is
/// proved by ruling out the rest (common practice, no source).
fn misplaced_suspects(stage: &Stage, likelihoods: &Likelihoods) -> Vec<String> {
    let mut wrong = Vec::new();
    for entry in &stage.board().sheet {
        let of = |component: &Component| {
            let key = (entry.monitor, *component);
            likelihoods.get(&key).copied().unwrap_or(0.0)
        };
        let total: f64 = Component::ALL.iter().map(of).sum();
        let missing = (Component::ALL.iter())
            .filter(|c| of(c) >= LISTED_FROM * total && !entry.suspects.contains(c));
        let mut expected = entry.suspects.clone();
        expected.extend(missing.filter(|_| total > 0.0));
        expected.sort_by(|a, b| {
            let last = |c: &Component| *c == Component::Board;
            last(a).cmp(&last(b)).then(of(b).total_cmp(&of(a)))
        });
        if expected != entry.suspects {
            let (board, monitor) = (&stage.board().id, entry.monitor);
            wrong.push(format!("{board} {monitor:?} {expected:?}"));
        }
    }
    wrong
}

#[track_caller]
fn check_sound(stage: &Stage, mains: Mains) {
    for seed in 1..=3 {
        let mut bench = stage.bench(mains, None, seed);
        survey::wash(&mut bench);
        let kinds: Vec<_> = bench.milestones().iter().map(|l| l.kind).collect();
        assert_eq!(
            kinds,
            [
                MilestoneKind::ProgramStarted,
                MilestoneKind::ProgramFinished
            ],
            "{mains:?}, seed {seed}"
        );
        let minutes = bench.now().seconds() / 60.0;
        assert!((30.0..75.0).contains(&minutes), "a wash of {minutes} min");
        assert!(bench.machine().control().memory().codes.is_empty());
        assert_eq!(bench.machine().plant().water().floor_l, 0.0);

        let mut bench = stage.bench(mains, None, seed);
        bench.wait(Span::from_s(3));
        survey::empty_basket(&mut bench);
        let began = bench.now();
        assert!(
            survey::recalibrate(&mut bench),
            "service mode can be entered"
        );
        assert!(bench.passed(MilestoneKind::CalibrationPassed, began));
        let took_s = bench.now().since(began).seconds();
        // Two to three minutes of recalibration, and the gesture and the menu before it.
        assert!(
            (110.0..200.0).contains(&took_s),
            "recalibration took {took_s} s"
        );
        assert!(bench.machine().control().memory().codes.is_empty());
    }
}

#[test]
fn every_sound_machine_washes_and_recalibrates_without_a_code() {
    for stage in Stage::every() {
        for mains in &stage.board().mains {
            check_sound(&stage, *mains);
        }
    }
}
