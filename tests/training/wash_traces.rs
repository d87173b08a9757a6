//! The customer's wash as a timeline is the wash that the customer ran.
//!
//! The time of each trace: `cargo test -p detent-training --test training wash_traces -- --nocapture`.

use crate::bare_scenario::scenario;
use crate::stage::{MAINS, Stage};
use detent_content::ContentLibrary;
use detent_simulation::controller::PhaseKind;
use detent_simulation::interface::Relays;
use detent_simulation::units::{Span, TICKS_PER_S, Time};
use detent_training::lesson::{
    Hidden, MOST_SAMPLES, Scenario, WashEnd, WashSample, WashTrace, prepare, set_up, start_wash,
    wash_trace,
};
use detent_training::reason::evidence::{End, Outcome};
use rayon::prelude::*;
use std::time::Instant;

fn trace(content_library: &ContentLibrary, scenario: &Scenario) -> WashTrace {
    let library = content_library.library(scenario);
    wash_trace(library, scenario, scenario.seed).expect("it can be set up")
}

/// The trace ends in the machine that the technician finds, with its codes, and tells its end as the
/// reasoning does.
fn check_end(content_library: &ContentLibrary, name: &str, scenario: &Scenario) {
    let trace = trace(content_library, scenario);
    let library = content_library.library(scenario);
    let bench = set_up(scenario, &library, scenario.seed).expect("it can be set up");
    let machine = bench.machine();
    assert_eq!(
        trace.samples.last(),
        Some(&WashSample::of(machine)),
        "{name}"
    );
    let codes = &machine.control().memory().codes;
    let fresh: Vec<u8> = (codes.iter().filter(|c| c.cycles_ago == 0))
        .map(|c| c.code)
        .collect();
    let stored: Vec<u8> = trace.stored.iter().rev().map(|s| s.code).collect();
    assert_eq!(stored, fresh, "{name}");
    assert_eq!(trace.stale, scenario.stale_codes, "{name}");
    let outcome = Outcome::of_wash(&bench);
    let ends: &[WashEnd] = match outcome.end {
        End::Finished => &[WashEnd::Finished],
        End::NotAskedFor => &[WashEnd::NeverStarted],
        End::Dark => &[WashEnd::NeverStarted, WashEnd::WentDark],
        End::Open => &[
            WashEnd::NeverStarted,
            WashEnd::CalledOff,
            WashEnd::StillRunning,
            WashEnd::WentDark,
        ],
        End::Stopped => {
            assert!(
                matches!(trace.end, WashEnd::Stopped(_)),
                "{name}: {trace:?}"
            );
            return;
        }
    };
    assert!(
        ends.contains(&trace.end),
        "{name}: {:?} for {outcome:?}",
        trace.end
    );
}

#[test]
fn every_built_in_wash_ends_as_the_technician_finds_it() {
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    let sources = content_library.scenarios().expect("they are sound");
    assert!(sources.len() > 20, "{}", sources.len());
    (sources.par_iter())
        .for_each(|source| check_end(&content_library, &source.file, &source.scenario));
}

#[test]
fn a_trace_replays_bit_for_bit_in_a_bounded_number_of_samples() {
    let content_library = ContentLibrary::builtin().expect("the built-in content is sound");
    for name in ["drain-code", "exam-120-v-dial"] {
        let source = content_library.scenario(name).expect("it is built in");
        let began = Instant::now();
        let first = trace(&content_library, &source.scenario);
        println!(
            "{name}: {} samples, {:?}",
            first.samples.len(),
            began.elapsed()
        );
        let second = trace(&content_library, &source.scenario);
        assert_eq!(first, second, "{name}");
        assert!(first.samples.len() <= MOST_SAMPLES, "{name}");
        assert_eq!(first.samples[0].time, Time::ZERO, "{name}");
        let steps: Vec<u64> = (first.samples.windows(2))
            .map(|pair| pair[1].time.since(pair[0].time).0)
            .collect();
        let (last, others) = steps.split_last().expect("several samples");
        assert!(
            others.iter().all(|step| step == &others[0]),
            "{name}: {others:?}"
        );
        assert!(
            others[0].is_multiple_of(TICKS_PER_S) && *last <= others[0],
            "{name}"
        );
    }
}

/// Highest level, fastest basket and greatest current while the program is in this phase.
fn greatest(trace: &WashTrace, phase: PhaseKind) -> [f64; 3] {
    (trace.samples.iter().filter(|s| s.phase == Some(phase))).fold([0.0; 3], |most, s| {
        [
            most[0].max(s.level_mm),
            most[1].max(s.basket_rpm.abs()),
            most[2].max(s.mains_current_a),
        ]
    })
}

/// What a washer does in each phase: common practice, no source.
#[test]
fn a_sound_machine_fills_washes_drains_and_spins_to_its_end() {
    for stage in Stage::every() {
        for mains in MAINS {
            let board = stage.board();
            if !board.mains.contains(&mains) {
                continue;
            }
            let what = format!("{}, {mains:?}", board.id);
            let trace = trace(
                stage.content_library(),
                &scenario(&board.id, mains, Hidden::Nothing),
            );
            assert_eq!(trace.end, WashEnd::Finished, "{what}");
            assert_eq!(
                (&trace.stored[..], &trace.stale[..]),
                (&[][..], &[][..]),
                "{what}"
            );
            // The phases come in the order of the first program; one that is over at once can fall between samples.
            let mut seen: Vec<PhaseKind> = trace.samples.iter().filter_map(|s| s.phase).collect();
            seen.dedup();
            let mut program = board.programs[0].phases.iter().map(|phase| phase.kind());
            for phase in &seen {
                assert!(
                    program.any(|kind| kind == *phase),
                    "{what}: {phase} in {seen:?}"
                );
            }
            // Water comes while it fills and goes while it drains.
            for (n, phase) in seen
                .iter()
                .enumerate()
                .filter(|(_, p)| **p == PhaseKind::Fill)
            {
                let levels = levels_in(&trace, n);
                assert!(levels.1 > levels.0 + 20.0, "{what}: {phase} {n} {levels:?}");
            }
            for (n, phase) in seen
                .iter()
                .enumerate()
                .filter(|(_, p)| **p == PhaseKind::Drain)
            {
                let levels = levels_in(&trace, n);
                assert!(levels.1 < levels.0 - 20.0, "{what}: {phase} {n} {levels:?}");
            }
            let [agitate, spin] =
                [PhaseKind::Agitate, PhaseKind::Spin].map(|p| greatest(&trace, p));
            assert!(
                agitate[0] > 100.0 && agitate[1] < 60.0,
                "{what}: {agitate:?}"
            );
            assert!(spin[1] > 300.0, "{what}: {spin:?}");
            let locked = |s: &WashSample| s.locked || s.basket_rpm.abs() < 60.0;
            assert!(trace.samples.iter().all(locked), "{what}");
            let last = trace.samples.last().expect("samples");
            assert!(
                last.level_mm < 20.0 && last.basket_rpm.abs() < 1.0,
                "{what}: {last:?}"
            );
        }
    }
}

/// Level at the beginning and at the end of the n-th run of one phase.
fn levels_in(trace: &WashTrace, n: usize) -> (f64, f64) {
    let in_phases: Vec<&WashSample> = (trace.samples.iter())
        .filter(|s| s.phase.is_some())
        .collect();
    let run = in_phases
        .chunk_by(|a, b| a.phase == b.phase)
        .nth(n)
        .expect("so many runs");
    (run[0].level_mm, run[run.len() - 1].level_mm)
}

/// The same machine is run again beside the trace: where the control drives nothing, the machine draws no
/// more than the control's own supply does.
#[test]
fn more_current_than_the_controls_own_flows_only_while_something_is_driven() {
    let stage = Stage::new();
    let scenario = scenario(&stage.board().id, MAINS[0], Hidden::Nothing);
    let trace = trace(stage.content_library(), &scenario);
    let library = stage.content_library().library(&scenario);
    let mut bench = prepare(&scenario, &library, scenario.seed).expect("it can be set up");
    start_wash(&mut bench);
    let standby_a = (trace.samples.iter().filter(|s| s.phase.is_none()))
        .map(|s| s.mains_current_a)
        .fold(0.0, f64::max);
    let (mut idle, mut driven) = (0, 0);
    for sample in trace
        .samples
        .iter()
        .filter(|s| s.time > bench.now())
        .copied()
        .collect::<Vec<_>>()
    {
        bench.wait(Span(sample.time.since(bench.now()).0 - 1));
        let relays = bench.machine().outputs().relays;
        bench.wait(Span(1));
        assert_eq!(WashSample::of(bench.machine()), sample);
        if relays == Relays::NONE {
            idle += 1;
            assert!(
                sample.mains_current_a <= standby_a,
                "{sample:?} {standby_a}"
            );
        } else {
            driven += usize::from(sample.mains_current_a > 2.0 * standby_a);
        }
    }
    println!(
        "{standby_a} A; {idle} samples with nothing driven, {driven} with more than twice that"
    );
    assert!(idle > 50 && driven > 500, "{idle} {driven}");
}
