//! A run proves a repair where it came to what was repaired. That one which did not can end with the fault still in the
//! machine is tried on the machine; that a technician runs what shows the fault is common practice, no source.

use crate::stage::{Stage, act};
use detent_simulation::controller::ControlMode;
use detent_simulation::interface::{Button, Component};
use detent_simulation::units::Span;
use detent_training::bench::script::ScriptStep;
use detent_training::bench::{Action, Bench, MilestoneKind, RunGap, RunProof};
use detent_training::lesson::{Dimension, LossKind, Mains, judge, survey};

const MAINS: Mains = Mains::V120Hz60;

/// Runs the program of this name with what lies in the basket; true when it ran to its end.
fn run(bench: &mut Bench, name: &str) -> bool {
    let programs = &bench.machine().board().programs;
    let program = programs.iter().find(|program| program.name == name);
    let to = program.expect("a program of this board").position;
    let began = bench.now();
    for step in [
        ScriptStep::Point { to, every_ms: 200 },
        ScriptStep::Tap(Button::Start),
        ScriptStep::Wait { s: 2 },
    ] {
        step.run(bench).expect("the panel has it");
    }
    while bench.machine().control().control_status().mode == ControlMode::Program {
        bench.wait(Span::from_s(1));
    }
    // The lid is released.
    bench.wait(Span::from_s(10));
    bench.passed(MilestoneKind::ProgramFinished, began)
}

fn empty_basket(bench: &mut Bench) {
    act(
        bench,
        [Action::OpenLid, Action::UnloadBasket, Action::CloseLid],
    );
}

/// Cures the machine's one fault, by hand where hands will do, and leaves it as the customer uses it.
fn repair(stage: &Stage, bench: &mut Bench, fault: &str) {
    let mode = stage.mode(fault);
    let cure = if mode.by_hand {
        vec![Action::PutRight(mode.component)]
    } else {
        let part = mode.cured_by.clone();
        vec![Action::Order(part.clone()), Action::Fit(part)]
    };
    act(
        bench,
        [
            Action::Unplug,
            Action::OpenLid,
            Action::OpenCabinet,
            Action::Discharge,
        ],
    );
    if mode.component != Component::Taps {
        act(bench, [Action::ShutTaps]);
    }
    act(bench, cure);
    if mode.component != Component::Taps {
        act(bench, [Action::PutRight(Component::Taps)]);
    }
    act(
        bench,
        [Action::CloseCabinet, Action::CloseLid, Action::Plug],
    );
    bench.wait(Span::from_s(3));
    assert_eq!(bench.machine().plant().faults().count(), 0, "{fault}");
}

/// What the judge holds against the runs.
fn lost(stage: &Stage, bench: &Bench) -> Vec<LossKind> {
    let source = stage.content_library().scenario("drain-code");
    let score = judge(&source.expect("built in").scenario, bench);
    let lost = score.dimensions[Dimension::Proof.index()].lost.iter();
    let kinds = lost.map(|lost| lost.loss.kind());
    kinds
        .filter(|kind| [LossKind::NoProvingRun, LossKind::RunFallsShort].contains(kind))
        .collect()
}

#[test]
fn a_run_that_did_not_come_to_what_was_repaired_hides_the_fault_and_proves_nothing() {
    let stage = Stage::new();
    for (fault, program, laundry, gap) in [
        (
            "inlet-cold.blocked-screen",
            "program-empty-and-spin",
            true,
            RunGap::Water,
        ),
        (
            "drain-pump.fouled",
            "program-empty-and-spin",
            true,
            RunGap::Water,
        ),
        (
            "drain-hose.too-deep",
            "program-empty-and-spin",
            true,
            RunGap::Water,
        ),
        (
            "inlet-hot.open-winding",
            "program-rinse-and-spin",
            true,
            RunGap::HotWater,
        ),
        ("taps.hot-shut", "program-gentle", true, RunGap::HotWater),
        ("belt.slipping", "program-gentle", true, RunGap::FullSpeed),
        ("pickup.gap-wide", "program-gentle", true, RunGap::FullSpeed),
        ("laundry.uneven", "program-short", false, RunGap::Laundry),
        ("laundry.overload", "program-short", false, RunGap::Laundry),
        ("floor.not-level", "program-short", false, RunGap::Laundry),
    ] {
        let came = || stage.called_to(MAINS, &[fault]);
        // With the fault in it the machine comes to the end of this run, and of a whole wash it does not.
        let mut hidden = came();
        if !laundry {
            empty_basket(&mut hidden);
        }
        assert!(run(&mut hidden, program), "{fault} shows in {program}");
        assert!(!survey::proving_run(&mut came()), "{fault} does not show");

        let mut bench = came();
        repair(&stage, &mut bench, fault);
        assert_eq!(bench.run_proof(), RunProof::NoRun, "{fault}");
        assert_eq!(lost(&stage, &bench), [LossKind::NoProvingRun], "{fault}");
        if !laundry {
            empty_basket(&mut bench);
        }
        assert!(run(&mut bench, program), "{fault} is mended");
        assert_eq!(bench.run_proof(), RunProof::FallsShort(gap), "{fault}");
        assert_eq!(lost(&stage, &bench), [LossKind::RunFallsShort], "{fault}");
        assert!(survey::proving_run(&mut bench), "{fault} is mended");
        assert_eq!(bench.run_proof(), RunProof::Complete, "{fault}");
        assert_eq!(lost(&stage, &bench), [], "{fault}");
    }
}

/// An empty basket is no fault of the proof where what was repaired is the same with laundry and without.
#[test]
fn an_empty_run_proves_what_does_not_depend_on_the_laundry() {
    let stage = Stage::new();
    for fault in [
        "inlet-cold.blocked-screen",
        "drain-pump.fouled",
        "belt.slipping",
    ] {
        let mut bench = stage.called_to(MAINS, &[fault]);
        empty_basket(&mut bench);
        assert!(
            !run(&mut bench, "program-short"),
            "{fault} shows when empty"
        );
        let mut bench = stage.called_to(MAINS, &[fault]);
        repair(&stage, &mut bench, fault);
        empty_basket(&mut bench);
        assert!(run(&mut bench, "program-short"), "{fault} is mended");
        assert_eq!(bench.run_proof(), RunProof::Complete, "{fault}");
    }
}

/// Where nothing was repaired, the whole machine is shown; and the short program of every board shows it.
#[test]
fn a_machine_that_needed_no_repair_is_shown_whole() {
    let stage = Stage::new();
    let mut bench = stage.called_to(MAINS, &[]);
    assert_eq!(bench.run_proof(), RunProof::NoRun);
    assert!(run(&mut bench, "program-rinse-and-spin"));
    assert_eq!(bench.run_proof(), RunProof::FallsShort(RunGap::HotWater));
    for stage in Stage::every() {
        let mut bench = stage.called_to(stage.board().mains[0], &[]);
        assert!(survey::proving_run(&mut bench), "{}", stage.board().id);
        assert_eq!(
            bench.run_proof(),
            RunProof::Complete,
            "{}",
            stage.board().id
        );
    }
}
