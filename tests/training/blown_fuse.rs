//! A blown line fuse has a cause, and blows again until that is mended.

use crate::stage::{MAINS, Stage, act};
use detent_simulation::interface::{Component, Pin, Side, Terminal};
use detent_simulation::units::Span;
use detent_training::bench::{Action, Bench, Display, Finding, Grip, Incident, MeterMode};
use detent_training::lesson::Mains;

const CAUSE: &str = "filter.capacitor-shorted";

fn fuse_blown(bench: &Bench) -> bool {
    bench.machine().plant().supply().fuse_blown
}

fn fit(number: &str) -> [Action; 2] {
    [
        Action::Order(number.to_owned()),
        Action::Fit(number.to_owned()),
    ]
}

/// The plug goes in for ten seconds.
fn power(bench: &mut Bench) {
    act(bench, [Action::CloseCabinet, Action::Plug]);
    bench.wait(Span::from_s(10));
    act(bench, [Action::Unplug, Action::OpenCabinet]);
}

/// Unplugged and open, after the fuse has blown.
fn opened(stage: &Stage, mains: Mains) -> Bench {
    let mut bench = stage.bench(mains, Some(CAUSE), 1);
    bench.wait(Span::from_s(5));
    assert!(fuse_blown(&bench), "{mains:?}");
    act(&mut bench, [Action::Unplug, Action::OpenCabinet]);
    bench
}

/// Common practice, no source.
#[test]
fn a_new_fuse_alone_blows_again_and_one_after_the_cause_holds() {
    let stage = Stage::new();
    for mains in MAINS {
        let mut bench = opened(&stage, mains);
        act(&mut bench, fit("P-0301"));
        assert!(!fuse_blown(&bench));
        power(&mut bench);
        assert!(fuse_blown(&bench));
        act(&mut bench, [Action::Inspect(Component::LineFuse)]);
        let found = bench.found().last().expect("it was noted");
        assert_eq!(found.findings, [Finding::FuseWireGone]);
        act(&mut bench, fit("P-0401"));
        act(&mut bench, fit("P-0301"));
        power(&mut bench);
        assert!(!fuse_blown(&bench));
        assert_eq!(bench.machine().plant().supply().fuses_blown, 2);
        let wrong = bench.events().iter().any(|e| e.what == Incident::WrongPart);
        assert!(!wrong, "a fuse that has blown is renewed");
        // One filter and one fuse were needed; the other fuse is the shop's loss.
        let price = |number: &str| bench.part(number).expect("it is sold").price;
        assert!((bench.needed_parts() - price("P-0401") - price("P-0301")).abs() < 1e-9);
        assert!((bench.spent() - bench.needed_parts() - price("P-0301")).abs() < 1e-9);
    }
}

/// The ohmmeter finds the short before a fuse goes in, and the open fuse does not speak against it.
#[test]
fn an_ohmmeter_finds_the_short_behind_the_fuse() {
    let stage = Stage::new();
    for mains in MAINS {
        let mut bench = opened(&stage, mains);
        let place = |id: &str| {
            let mut modes = bench.modes().iter();
            modes.position(|m| m.id == id).expect("in the catalogue")
        };
        let (cause, fuse) = (place(CAUSE), place("line-fuse.blown"));
        let neutral = Pin::Wire(Terminal::CordNeutral, Side::Load);
        let probe = |red, black| Action::Probe {
            mode: MeterMode::Ohms,
            red,
            black,
            grip: Grip::Clips,
        };
        act(&mut bench, [probe(Pin::FuseIn, Pin::FuseOut)]);
        let reading = bench.notebook().last().expect("it was noted");
        assert_eq!(reading.shown, Display::OverRange);
        assert!(!reading.rules_out[cause] && !reading.rules_out[fuse]);
        act(&mut bench, [probe(Pin::FuseOut, neutral)]);
        let reading = bench.notebook().last().expect("it was noted");
        assert!(
            matches!(reading.shown, Display::Value(ohms) if ohms < 1.0),
            "{reading:?}"
        );
        assert!(!reading.rules_out[cause] && reading.rules_out[fuse]);
    }
}
