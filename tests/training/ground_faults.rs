//! Insulation that has failed to the cabinet: the outlet's residual current device trips, and an insulation tester
//! finds the component where an ohmmeter does not.

use crate::stage::{MAINS, Stage};
use detent_simulation::interface::{Component, Connector, Pin};
use detent_simulation::plant::motor::rms;
use detent_simulation::plant::{FailureMode, Op, Param, Presence};
use detent_simulation::units::Span;
use detent_training::bench::{
    Action, Bench, Caution, Display, Finding, Grip, Incident, MeterMode, Reading, Refusal,
};
use detent_training::lesson::{Mains, survey};

/// Lowest insulation that passes, MΩ. IEC 60364-6 for circuits of up to 500 V and IEC 60335-1 for motors, from memory.
const PASSES_MEGOHMS: f64 = 1.0;

/// Each fault, its component, a point to measure it from, and the connector that takes it off the control.
const LEAKS: [(&str, Component, &str, Component); 3] = [
    (
        "drain-pump.winding-to-ground",
        Component::DrainPump,
        "drain-pump.1",
        Component::DrainPump,
    ),
    (
        "motor.winding-to-ground",
        Component::Motor,
        "motor.1",
        Component::Motor,
    ),
    (
        "filter.line-to-ground",
        Component::Filter,
        "fuse.out",
        Component::Cord,
    ),
];

#[track_caller]
fn act(bench: &mut Bench, action: Action) {
    (bench.act(&action)).unwrap_or_else(|refusal| panic!("{action:?}: {refusal}"));
}

fn probe(mode: MeterMode, red: &str) -> Action {
    Action::Probe {
        mode,
        red: red.parse().expect("a pin"),
        black: Pin::PlugEarth,
        grip: Grip::Clips,
    }
}

#[track_caller]
fn read(bench: &mut Bench, mode: MeterMode, red: &str) -> Reading {
    act(bench, probe(mode, red));
    bench.notebook().last().expect("it was noted").clone()
}

/// Whether a reading passes, in MΩ from this setting.
fn passes(reading: &Reading) -> bool {
    let per_megohm = if reading.mode == MeterMode::Ohms {
        1e6
    } else {
        1.0
    };
    match reading.shown {
        Display::OverRange => true,
        Display::Value(value) => value >= PASSES_MEGOHMS * per_megohm,
        Display::Dead => panic!("the meter works: {reading:?}"),
    }
}

fn dead(bench: &mut Bench) {
    for action in [Action::Unplug, Action::OpenCabinet, Action::Discharge] {
        act(bench, action);
    }
}

/// Ohm's law from the outlet through the filter's insulation to ground; the rest of the way is ohms beside kilohms.
#[test]
fn what_leaks_is_mains_voltage_over_insulation() {
    let stage = Stage::new();
    for mains in MAINS {
        let mut bench = stage.bench(mains, Some("filter.line-to-ground"), 1);
        bench.machine_mut().step();
        let leaks_a = rms(bench.machine().plant().mains().residual_current());
        let expected_a = mains.rating().volts / 5e3;
        assert!(
            (leaks_a / expected_a - 1.0).abs() < 0.01,
            "{leaks_a} A, {expected_a} A"
        );
    }
}

#[test]
fn a_leak_trips_the_outlet_as_soon_as_its_load_is_switched_on_and_again_after_a_reset() {
    let stage = Stage::new();
    for mains in MAINS {
        for (id, ..) in LEAKS {
            let mut bench = stage.bench(mains, Some(id), 1);
            bench.wait(Span::from_s(5));
            let at_once = id == "filter.line-to-ground";
            assert_eq!(bench.view().outlet_tripped, at_once, "{id} idle");
            survey::wash(&mut bench);
            assert!(bench.view().outlet_tripped, "{id} in the wash");
            assert!(bench.machine().control().memory().codes.is_empty(), "{id}");
            act(&mut bench, Action::Inspect(Component::Supply));
            let found = bench.found().last().expect("it was noted");
            assert_eq!(found.findings, [Finding::OutletTripped]);
            act(&mut bench, Action::ResetOutlet);
            assert_eq!(bench.view().outlet_tripped, at_once, "{id} after the reset");
            survey::wash(&mut bench);
            assert!(bench.view().outlet_tripped, "{id} in the second wash");
        }
    }
}

#[test]
fn a_sound_machine_trips_nothing_and_nor_does_one_without_ground() {
    let stage = Stage::new();
    for mains in MAINS {
        let mut bench = stage.bench(mains, None, 1);
        survey::wash(&mut bench);
        assert!(!bench.view().outlet_tripped);
        assert_eq!(bench.act(&Action::ResetOutlet), Err(Refusal::AlreadySo));
        // Nothing flows where there is no way back: the cabinet is live instead.
        let mut bench = stage.bench(mains, Some("filter.line-to-ground"), 1);
        let no_ground = FailureMode {
            id: "no-ground".to_owned(),
            component: Component::Supply,
            weight: 1.0,
            cured_by: String::new(),
            by_hand: false,
            changes: vec![(Param::OutletGroundOhms, Op::Set(1e8))],
            presence: Presence::Steady,
        };
        bench.machine_mut().plant_mut().inject_fault(&no_ground);
        bench.wait(Span::from_s(5));
        assert!(!bench.view().outlet_tripped);
    }
}

#[test]
fn an_insulation_tester_finds_the_component_and_an_ohmmeter_does_not() {
    let stage = Stage::new();
    for mains in MAINS {
        for (id, leaking, ..) in LEAKS {
            let mut bench = stage.bench(mains, Some(id), 1);
            dead(&mut bench);
            // The whole machine at its plug, panels on or off: something leaks.
            let blades = ["plug.line", "plug.neutral"];
            let whole = blades.map(|red| read(&mut bench, MeterMode::Insulation, red));
            assert!(!whole.iter().all(passes), "{id}: {whole:?}");
            for (_, component, red, plug) in LEAKS {
                act(&mut bench, Action::Pull(Connector::Load(plug)));
                let reading = read(&mut bench, MeterMode::Insulation, red);
                assert_eq!(passes(&reading), component != leaking, "{id}: {reading:?}");
                let ohms = read(&mut bench, MeterMode::Ohms, red);
                assert!(passes(&ohms), "{id}: {ohms:?}");
                act(&mut bench, Action::Seat(Connector::Load(plug)));
            }
            assert!(bench.events().is_empty());
        }
    }
}

#[test]
fn a_new_part_ends_the_leak_and_the_outlet_holds() {
    let stage = Stage::new();
    for (id, component, ..) in LEAKS {
        let mut bench = stage.bench(Mains::V120Hz60, Some(id), 1);
        survey::wash(&mut bench);
        bench.machine_mut().replace(component);
        act(&mut bench, Action::Unplug);
        act(&mut bench, Action::ResetOutlet);
        act(&mut bench, Action::Plug);
        bench.wait(Span::from_s(3));
        survey::wash(&mut bench);
        assert!(!bench.view().outlet_tripped, "{id}");
    }
}

/// Common practice, no source: dead machine, what is tested off the control, fingers off the tips.
#[test]
fn an_insulation_tester_is_for_a_dead_machine_and_for_what_is_off_the_control() {
    let stage = Stage::new();
    let tester = |red| probe(MeterMode::Insulation, red);
    let mut bench = stage.bench(Mains::V120Hz60, None, 1);
    bench.wait(Span::from_s(5));
    assert_eq!(
        bench.act(&tester("plug.neutral")),
        Err(Refusal::PlugInOutlet)
    );
    act(&mut bench, Action::OpenCabinet);
    let across = Action::Probe {
        mode: MeterMode::Insulation,
        red: "inlet-cold.1@board".parse().expect("a pin"),
        black: "fuse.out".parse().expect("a pin"),
        grip: Grip::Clips,
    };
    assert_eq!(bench.caution(&across), Some(Caution::OhmsLive));
    let across = Action::Probe {
        mode: MeterMode::Insulation,
        red: "fuse.out".parse().expect("a pin"),
        black: "cord.2".parse().expect("a pin"),
        grip: Grip::Clips,
    };
    act(&mut bench, across);
    let what: Vec<Incident> = bench.events().iter().map(|event| event.what).collect();
    assert!(what.contains(&Incident::OhmsOnLive), "{what:?}");

    let mut bench = stage.bench(Mains::V120Hz60, None, 1);
    dead(&mut bench);
    for (_, _, red, plug) in LEAKS {
        assert_eq!(
            bench.caution(&tester(red)),
            Some(Caution::InsulationOnControl)
        );
        act(&mut bench, Action::Pull(Connector::Load(plug)));
        assert_eq!(bench.caution(&tester(red)), None, "{red}");
        act(&mut bench, Action::Seat(Connector::Load(plug)));
    }
    assert_eq!(bench.caution(&tester("plug.neutral")), None);
}
