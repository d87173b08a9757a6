//! The meter as it is used: ghosts on open wires, continuity, hands on the probes, capacitance, and what
//! goes wrong with the instrument itself.

use crate::stage::Stage;
use detent_simulation::interface::{Component, Connector, Pin};
use detent_simulation::plant::mains::{STRAY_EARTH_FARADS, STRAY_LINE_FARADS};
use detent_simulation::plant::{Param, Probes};
use detent_simulation::units::Span;
use detent_training::bench::{
    Action, Bench, Caution, Display, Grip, Incident, MeterMode, Reading, Refusal, meter,
};
use detent_training::lesson::Mains;

fn pin(name: &str) -> Pin {
    name.parse().expect("a pin")
}

fn probe(mode: MeterMode, red: &str, black: &str, grip: Grip) -> Action {
    Action::Probe {
        mode,
        red: pin(red),
        black: pin(black),
        grip,
    }
}

#[track_caller]
fn act(bench: &mut Bench, action: Action) {
    (bench.act(&action)).unwrap_or_else(|refusal| panic!("{action:?}: {refusal}"));
}

/// The reading that this gives in the notebook.
#[track_caller]
fn read(bench: &mut Bench, mode: MeterMode, red: &str, black: &str, grip: Grip) -> Reading {
    act(bench, probe(mode, red, black, grip));
    bench.notebook().last().expect("it was noted").clone()
}

#[track_caller]
fn value(reading: &Reading) -> f64 {
    match reading.shown {
        Display::Value(value) => value,
        other => panic!("{other:?} in {reading:?}"),
    }
}

/// Plug out, charges bled, panels off.
fn dead(mut bench: Bench) -> Bench {
    for action in [Action::Unplug, Action::OpenCabinet, Action::Discharge] {
        act(&mut bench, action);
    }
    bench
}

/// Plugged in with the panels off and the cold valve's plug pulled, so that nothing holds its wires.
fn with_an_open_wire(stage: &Stage, mains: Mains) -> Bench {
    let mut bench = dead(stage.bench(mains, None, 4));
    act(
        &mut bench,
        Action::Pull(Connector::Load(Component::InletCold)),
    );
    act(&mut bench, Action::Plug);
    bench.wait(Span::from_s(3));
    bench
}

/// Independent arithmetic, no published result: the wire hangs between the line by its stray capacitance
/// (with the open switch's leak beside it) and the cabinet, with the meter across it.
fn ghost_v(volts: f64, hz: f64, input_ohms: f64, switch_ohms: f64) -> f64 {
    let w = 2.0 * std::f64::consts::PI * hz;
    let up = (1.0 / switch_ohms, w * STRAY_LINE_FARADS);
    let down = (1.0 / input_ohms, w * STRAY_EARTH_FARADS);
    volts * libm::hypot(up.0, up.1) / libm::hypot(up.0 + down.0, up.1 + down.1)
}

#[test]
fn an_open_wire_shows_a_ghost_that_a_low_input_resistance_takes_away() {
    let stage = Stage::new();
    for (mains, volts, hz, by_hand) in [
        // With 60 pF up, 60 pF down, 10 MΩ across and 100 MΩ of open switch: worked out on paper.
        (Mains::V120Hz60, 120.0, 60.0, 24.9),
        (Mains::V230Hz50, 230.0, 50.0, 42.2),
    ] {
        let mut bench = with_an_open_wire(&stage, mains);
        let (wire, neutral) = ("inlet-cold.1@harness", "cord.2@board");
        let ghost = read(&mut bench, MeterMode::VoltsAc, wire, neutral, Grip::Clips);
        let switch = stage.sound(mains).get(Param::RelayColdOpenOhms);
        let divider = ghost_v(volts, hz, meter::INPUT_OHMS, switch);
        assert!((divider - by_hand).abs() < 0.1, "{divider}");
        let seen = value(&ghost);
        let error = meter::accuracy(MeterMode::VoltsAc, divider);
        println!("{mains:?}: {seen} V, the divider says {divider:.2} V");
        assert!(
            (seen - divider).abs() < error + 0.01 * divider,
            "{seen} {divider}"
        );

        let loaded = read(&mut bench, MeterMode::VoltsLowZ, wire, neutral, Grip::Clips);
        assert!(value(&loaded) < 0.1, "{loaded:?}");
        // What really carries voltage keeps it.
        for mode in [MeterMode::VoltsAc, MeterMode::VoltsLowZ] {
            let line = read(&mut bench, mode, "cord.1@board", neutral, Grip::Clips);
            assert!((value(&line) / volts - 1.0).abs() < 0.03, "{line:?}");
        }
        // A wire with its load on has no ghost.
        let held = read(
            &mut bench,
            MeterMode::VoltsAc,
            "inlet-hot.1",
            neutral,
            Grip::Clips,
        );
        assert!(value(&held) < 0.1, "{held:?}");
    }
}

#[test]
fn a_ghost_is_too_weak_to_blow_the_meters_fuse() {
    let mut bench = with_an_open_wire(&Stage::new(), Mains::V120Hz60);
    let (wire, neutral) = ("inlet-cold.1@harness", "cord.2@board");
    act(
        &mut bench,
        probe(MeterMode::Ohms, wire, neutral, Grip::Clips),
    );
    assert!(bench.events().is_empty(), "{:?}", bench.events());
    act(
        &mut bench,
        probe(MeterMode::Continuity, "cord.1@board", neutral, Grip::Clips),
    );
    assert_eq!(
        bench.events().first().map(|e| e.what),
        Some(Incident::OhmsOnLive)
    );
    let blown = read(
        &mut bench,
        MeterMode::Microfarads,
        wire,
        neutral,
        Grip::Clips,
    );
    assert_eq!(blown.shown, Display::Dead);
    assert!(!blown.meter_sound && !blown.rules_out.contains(&true));
}

#[test]
fn continuity_beeps_through_a_wire_and_not_through_a_winding() {
    let stage = Stage::new();
    let mut bench = dead(stage.bench(Mains::V120Hz60, None, 4));
    act(
        &mut bench,
        Action::Pull(Connector::Load(Component::LidLock)),
    );
    let wire = read(
        &mut bench,
        MeterMode::Continuity,
        "drain-pump.1@board",
        "drain-pump.1",
        Grip::Clips,
    );
    assert!(wire.beeped() && value(&wire) < 1.0, "{wire:?}");
    // 120 Ω: a way through, but no short one.
    let winding = read(
        &mut bench,
        MeterMode::Continuity,
        "lid-lock.1",
        "lid-lock.2",
        Grip::Clips,
    );
    assert!(
        !winding.beeped() && (value(&winding) - 120.0).abs() < 5.0,
        "{winding:?}"
    );
    let open = read(
        &mut bench,
        MeterMode::Continuity,
        "lid-lock.3",
        "lid-lock.4",
        Grip::Clips,
    );
    assert!(
        !open.beeped() && open.shown == Display::OverRange,
        "{open:?}"
    );
}

#[test]
fn fingers_on_the_tips_spoil_high_resistances_alone() {
    let stage = Stage::new();
    let mut bench = dead(stage.bench(Mains::V120Hz60, None, 4));
    for component in [Component::LidLock, Component::Thermistor] {
        act(&mut bench, Action::Pull(Connector::Load(component)));
    }
    let mut ohms =
        |red: &str, black: &str, grip| read(&mut bench, MeterMode::Ohms, red, black, grip).shown;
    let (open, held) = (
        ohms("lid-lock.3", "lid-lock.4", Grip::Clips),
        ohms("lid-lock.3", "lid-lock.4", Grip::Fingers),
    );
    assert_eq!(open, Display::OverRange);
    // The open contact (1 GΩ here) in parallel with the body: 470 kΩ · 1 GΩ / (470 kΩ + 1 GΩ).
    let parallel = 470e3 * 1e9 / (470e3 + 1e9);
    let Display::Value(body) = held else {
        panic!("{held:?}")
    };
    assert!((body / parallel - 1.0).abs() < 0.02, "{body} {parallel}");
    // A thermistor of 12.5 kΩ reads 12.2 kΩ: 2.6 % low, by the same rule.
    let (Display::Value(clips), Display::Value(fingers)) = (
        ohms("thermistor.1", "thermistor.2", Grip::Clips),
        ohms("thermistor.1", "thermistor.2", Grip::Fingers),
    ) else {
        panic!("the thermistor has a resistance")
    };
    let rule = clips * 470e3 / (clips + 470e3);
    assert!(
        fingers < clips && (fingers / rule - 1.0).abs() < 0.02,
        "{clips} {fingers}"
    );
    // A winding of 120 Ω shows no difference.
    let pair = [Grip::Clips, Grip::Fingers].map(|grip| ohms("lid-lock.1", "lid-lock.2", grip));
    assert!(
        !meter::differ(MeterMode::Ohms, pair[0], pair[1]),
        "{pair:?}"
    );
}

#[test]
fn fingers_on_live_metal_are_a_shock_and_clips_are_none() {
    let stage = Stage::new();
    for (grip, shocks) in [(Grip::Fingers, 1), (Grip::Clips, 0)] {
        let mut bench = dead(stage.bench(Mains::V120Hz60, None, 4));
        act(&mut bench, Action::Plug);
        bench.wait(Span::from_s(3));
        let action = probe(MeterMode::VoltsAc, "cord.1", "cord.2", grip);
        let caution = bench.caution(&action);
        act(&mut bench, action);
        let seen = bench.events().iter().filter(|e| e.what == Incident::Shock);
        assert_eq!(seen.count(), shocks, "{grip:?}");
        assert_eq!(
            caution == Some(Caution::TouchLive),
            shocks == 1,
            "{caution:?}"
        );
    }
    // The bulk capacitor is still charged when the plug is just out.
    let mut bench = stage.bench(Mains::V120Hz60, None, 4);
    bench.wait(Span::from_s(3));
    act(&mut bench, Action::OpenCabinet);
    act(&mut bench, Action::Unplug);
    let action = probe(MeterMode::VoltsDc, "bulk.plus", "bulk.minus", Grip::Fingers);
    assert_eq!(bench.caution(&action), Some(Caution::StoredCharge));
    act(&mut bench, action);
    let last = bench.events().last().map(|event| event.what);
    assert_eq!(last, Some(Incident::TouchedCharge));
}

/// The insulation tester's 500 V through two hands hurt, and no more: such a tester gives no more than 15 mA (IEC
/// 61557-2, from memory). Clips, or a tester with a broken lead, and nobody feels a thing.
#[test]
fn an_insulation_tester_held_in_the_fingers_stings() {
    let stage = Stage::new();
    for (grip, stings) in [(Grip::Fingers, true), (Grip::Clips, false)] {
        let mut bench = dead(stage.bench(Mains::V120Hz60, None, 4));
        act(&mut bench, Action::Pull(Connector::Load(Component::Motor)));
        let action = probe(MeterMode::Insulation, "motor.1", "plug.earth", grip);
        let in_hand = Some(Caution::InsulationInHand);
        assert_eq!(bench.caution(&action) == in_hand, stings);
        act(&mut bench, action);
        let felt: Vec<Incident> = bench.events().iter().map(|e| e.what).collect();
        assert_eq!(felt, vec![Incident::TesterShock; usize::from(stings)]);
        assert!(felt.iter().all(|what| !what.fails_the_job()));
    }
}

#[test]
fn the_run_capacitor_is_measured_once_its_plug_is_off() {
    let stage = Stage::new();
    for (mains, fault, expected) in [
        (Mains::V120Hz60, None, Some(45.0)),
        (Mains::V230Hz50, None, Some(14.7)),
        (Mains::V120Hz60, Some("run-capacitor.open"), Some(0.0)),
        (Mains::V120Hz60, Some("run-capacitor.shorted"), None),
    ] {
        let mut bench = dead(stage.bench(mains, fault, 4));
        let mode = MeterMode::Microfarads;
        let (red, black) = ("run-capacitor.1", "run-capacitor.2");
        // Both motor windings lie across it: no capacitance to be read.
        let wired = read(&mut bench, mode, red, black, Grip::Clips);
        act(
            &mut bench,
            Action::Pull(Connector::Load(Component::RunCapacitor)),
        );
        let alone = read(&mut bench, mode, red, black, Grip::Clips);
        match expected {
            Some(microfarads) => {
                let error = meter::accuracy(mode, microfarads);
                assert!(
                    (value(&alone) - microfarads).abs() <= error,
                    "{fault:?}: {alone:?}"
                );
            }
            None => assert_eq!(alone.shown, Display::OverRange),
        }
        if fault.is_none() {
            assert!(meter::differ(mode, wired.shown, alone.shown), "{wired:?}");
        }
    }
}

#[test]
fn a_broken_lead_shows_dead_what_is_live_until_it_is_changed() {
    let stage = Stage::new();
    let library = stage.library(Mains::V120Hz60);
    let mut setup = library.setup(Mains::V120Hz60.rating(), Vec::new(), 4);
    setup.lead_open = true;
    let mut bench = Bench::new(setup);
    bench.wait(Span::from_s(3));
    act(&mut bench, Action::OpenCabinet);
    let live = read(
        &mut bench,
        MeterMode::VoltsAc,
        "cord.1",
        "cord.2",
        Grip::Clips,
    );
    assert_eq!(live.shown, Display::Value(0.0), "the trap");
    assert!(!live.meter_sound && !live.rules_out.contains(&true));
    act(&mut bench, Action::TestMeter);
    assert!(!bench.meter_tests().first().expect("tried").is_good());
    act(&mut bench, Action::ReplaceLeads);
    act(&mut bench, Action::TestMeter);
    assert!(bench.meter_tests().last().expect("tried").is_good());
    let live = read(
        &mut bench,
        MeterMode::VoltsAc,
        "cord.1",
        "cord.2",
        Grip::Clips,
    );
    assert!((value(&live) - 120.0).abs() < 3.0);
}

/// What is read off the display stands in the notebook to the last digit, before and after it is written down.
#[test]
fn the_display_shows_what_stands_in_the_notebook() {
    let stage = Stage::new();
    for seed in 0..12 {
        let mut bench = dead(stage.bench(Mains::V120Hz60, None, seed));
        for (mode, red, black) in [
            (MeterMode::VoltsDc, "bulk.plus", "bulk.minus"),
            (MeterMode::Ohms, "drain-pump.1", "drain-pump.2"),
        ] {
            let noted = read(&mut bench, mode, red, black, Grip::Clips);
            let shown = bench.meter_shows().expect("the probes lie there");
            assert_eq!(
                shown.written(mode),
                noted.shown.written(mode),
                "seed {seed}"
            );
        }
    }
}

#[test]
fn a_held_display_is_written_down_as_it_stands_and_proves_nothing() {
    let stage = Stage::new();
    let mut bench = dead(stage.bench(Mains::V120Hz60, None, 4));
    assert_eq!(bench.act(&Action::HoldDisplay), Err(Refusal::NothingToHold));
    let first = read(
        &mut bench,
        MeterMode::Ohms,
        "drain-pump.1",
        "drain-pump.2",
        Grip::Clips,
    );
    act(&mut bench, Action::HoldDisplay);
    assert_eq!(bench.view().held, Some(MeterMode::Ohms));
    act(&mut bench, Action::LiftProbes);
    let held = bench.meter_shows().expect("it stays");
    assert!(!meter::differ(MeterMode::Ohms, held, first.shown));
    let stale = read(
        &mut bench,
        MeterMode::Ohms,
        "inlet-hot.1",
        "inlet-hot.2",
        Grip::Clips,
    );
    assert_eq!(stale.shown, held);
    assert!(!stale.meter_sound && !stale.rules_out.contains(&true));
    act(&mut bench, Action::ReleaseDisplay);
    let fresh = read(
        &mut bench,
        MeterMode::Ohms,
        "inlet-hot.1",
        "inlet-hot.2",
        Grip::Clips,
    );
    assert!((value(&fresh) - 780.0).abs() < 20.0 && fresh.meter_sound);
}

/// A display that follows its probes shows what probes put on anew would, whatever happens meanwhile.
#[test]
fn a_display_that_follows_shows_what_a_new_look_would() {
    let stage = Stage::new();
    let mut bench = stage.bench(Mains::V120Hz60, None, 4);
    let mut follower = meter::Follower::default();
    let (cold, line) = (("inlet-cold.1", "inlet-cold.2"), ("cord.1", "cord.2"));
    let rail = ("pressure-sensor.1", "pressure-sensor.2");
    let bulk = ("bulk.plus", "bulk.minus");
    let mut shown = Vec::new();
    for (action, mode, (red, black), grip) in [
        (Action::OpenCabinet, MeterMode::VoltsAc, line, Grip::Clips),
        (Action::OpenLid, MeterMode::VoltsAc, line, Grip::Clips),
        (Action::CloseLid, MeterMode::VoltsDc, rail, Grip::Clips),
        (Action::Unplug, MeterMode::VoltsDc, bulk, Grip::Clips),
        (Action::Discharge, MeterMode::VoltsDc, rail, Grip::Clips),
        (Action::BailOut, MeterMode::Ohms, cold, Grip::Clips),
        (Action::OpenLid, MeterMode::Ohms, cold, Grip::Fingers),
        (
            Action::Pull(Connector::Load(Component::InletCold)),
            MeterMode::Ohms,
            cold,
            Grip::Fingers,
        ),
        (Action::CloseLid, MeterMode::Microfarads, cold, Grip::Clips),
        (Action::Plug, MeterMode::Hertz, line, Grip::Clips),
    ] {
        act(&mut bench, action);
        let (red, black) = (pin(red), pin(black));
        for _ in 0..50 {
            bench.step();
            let plant = bench.machine().plant();
            let new = meter::ideal(&plant.probed(), mode, &mut Probes::on(red, black), grip);
            assert_eq!(follower.shows(plant, (mode, red, black), grip), new);
            shown.push(new);
        }
    }
    shown.dedup();
    assert!(shown.len() > 8, "{shown:?}");
}
