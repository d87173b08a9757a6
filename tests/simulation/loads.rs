//! Load tests from service mode, one at a time: what a technician sees, hears and measures while the
//! control drives one load and, where that needs it, the lid lock.

use crate::stage::Stage;
use detent_simulation::controller::Routine;
use detent_simulation::interface::Component;
use detent_simulation::machine::Sound;
use detent_simulation::plant::Param;
use detent_simulation::units::Span;
use detent_training::bench::{Action, Bench, Display, Grip, MeterMode};
use detent_training::lesson::Mains;
use detent_training::lesson::survey::{enter_service, start_routine};
use std::collections::BTreeSet;

/// The routine, the loads that carry current in it (water and motor only behind a locked lid), what is
/// heard, and where the clamp goes.
const TESTS: [(Routine, &[Component], Sound, &str); 6] = [
    (
        Routine::TestCold,
        &[Component::LidLock, Component::InletCold],
        Sound::WaterRush,
        "inlet-cold.1",
    ),
    (
        Routine::TestHot,
        &[Component::LidLock, Component::InletHot],
        Sound::WaterRush,
        "inlet-hot.1",
    ),
    (
        Routine::TestPump,
        &[Component::DrainPump],
        Sound::PumpHum,
        "drain-pump.1",
    ),
    (
        Routine::TestClutch,
        &[Component::ClutchActuator],
        Sound::ClutchActuatorTick,
        "clutch-actuator.1",
    ),
    (
        Routine::TestLock,
        &[Component::LidLock],
        Sound::LockHeld,
        "lid-lock.1",
    ),
    (
        Routine::TestMotorA,
        &[Component::LidLock, Component::Motor],
        Sound::AgitatorSwish,
        "motor.3",
    ),
];

#[test]
fn each_load_is_driven_alone_heard_and_measured() {
    for stage in Stage::every() {
        for mains in &stage.board().mains {
            each_load(&stage, *mains);
        }
    }
}

fn each_load(stage: &Stage, mains: Mains) {
    for (routine, driven, sound, wire) in TESTS {
        let mut bench = stage.bench(mains, None, 4);
        bench.wait(Span::from_s(3));
        bench.act(&Action::OpenCabinet).expect("it is closed");
        assert!(enter_service(&mut bench));
        assert!(start_routine(&mut bench, routine), "it is in the menu");
        let (mut carried, mut heard) = (BTreeSet::new(), BTreeSet::new());
        let mut most_a: f64 = 0.0;
        let mut watch = |bench: &Bench| {
            let machine = bench.machine();
            for (load, amps) in machine.plant().amps().each() {
                // Less is the leak of an open switch.
                if amps > 0.005 {
                    carried.insert(load);
                }
                if load == *driven.last().expect("one is driven") {
                    most_a = most_a.max(amps);
                }
            }
            heard.extend(machine.view().sounds.iter());
        };
        for _ in 0..800 {
            bench.step();
            watch(&bench);
        }
        assert_eq!(
            carried,
            driven.iter().copied().collect(),
            "{mains:?} {routine}"
        );
        assert!(heard.contains(&sound), "{mains:?} {routine}: {heard:?}");
        let mut read_a: f64 = 0.0;
        for _ in 0..4 {
            let pin = wire.parse().expect("a pin");
            let clamp = Action::Probe {
                mode: MeterMode::AmpsClamp,
                red: pin,
                black: pin,
                grip: Grip::Clips,
            };
            bench.act(&clamp).expect("the panels are off");
            if let Some(Display::Value(amps)) = bench.notebook().last().map(|r| r.shown) {
                read_a = read_a.max(amps);
            }
        }
        println!("{mains:?} {routine}: {read_a} A on the clamp, {most_a:.3} A at most");
        assert!(
            read_a > 0.0 && read_a < 1.1 * most_a + 0.05,
            "{routine}: {read_a} {most_a}"
        );
        if routine == Routine::TestLock {
            // Common practice, no source: an actuator that holds a lid lock for the length of a program takes
            // 5 to 10 W once warm.
            let coil_ohms = bench.machine().plant().params().get(Param::LockCoilOhms);
            let held_w = most_a * most_a * coil_ohms;
            assert!((5.0..=10.0).contains(&held_w), "{mains:?}: {held_w} W");
        }
    }
}
