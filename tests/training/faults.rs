//! Every fault of the catalogue, run through the whole machine: which codes the control raises by
//! itself, and that a meter at some pin, or a look at some component, tells the fault from all
//! others that look alike.
//!
//! The table of it: `cargo test -p detent-training --test training faults -- --nocapture`.

use crate::stage::Stage;
use detent_simulation::controller::ControlMode;
use detent_simulation::interface::Component;
use detent_simulation::plant::Presence;
use detent_simulation::units::Span;
use detent_training::bench::MilestoneKind;
use detent_training::lesson::Mains;
use detent_training::lesson::survey::{self, Row};
use rayon::prelude::*;

/// Faults before the control's own supply, or in it: it cannot say anything.
const DARK: [&str; 4] = [
    "cord.open-line",
    "line-fuse.blown",
    "filter.open-choke",
    "board.supply-dead",
];
/// Faults that the control has no way to notice: it must be seen or measured that they are there.
const SILENT: [&str; 6] = [
    "supply.loose-outlet",
    "cord.weak-joint",
    "harness.motor-common-burnt",
    "dial.worn",
    "lid-lock.lid-switch-open",
    "board.bleeder-open",
];
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

#[track_caller]
fn check_catalogue(stage: &Stage, mains: Mains) {
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
        } else if SILENT.contains(&id) {
            if !silent {
                wrong.push(format!("{id}: raises {:?} after all", row.codes));
            }
            if survey::tell(&row.looks, &sound).is_none() {
                wrong.push(format!("{id}: raises nothing and shows nothing"));
            }
        } else if silent {
            wrong.push(format!("{id}: the control raises nothing"));
        } else if row.mode.presence != Presence::Steady
            && survey::in_time(&library, mains.rating(), &row.mode).is_empty()
        {
            wrong.push(format!("{id}: raises nothing in a customer's washes"));
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
    for stage in Stage::every() {
        for mains in &stage.board().mains {
            check_catalogue(&stage, *mains);
        }
    }
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
