//! The machine's own mains network, as it stands in a running plant, against ngspice.
//!
//! Source: ngspice (Debian package `ngspice`), run here on the network that the plant has just
//! solved, written out element by element. Every node's voltage and every load's current must agree
//! to one part in a million. Where ngspice is missing this says that it was skipped; with `CI=true`
//! it fails instead.

use crate::spice::Deck;
use crate::stage::{MAINS, Stage, drive};
use detent_simulation::interface::{Connector, Pin, Relay, Side, Terminal};
use detent_simulation::plant::Plant;
use detent_simulation::plant::mains::Circuit;
use detent_simulation::plant::network::Node;
use detent_simulation::units::Span;
use num_complex::Complex64;

const TOLERANCE: f64 = 1e-6;
/// What rounding alone may do: ten picovolts at a node, and a nanoampere where a current comes from
/// two nearly equal voltages over milliohms (see `Network::current`).
const ROUNDING_V: f64 = 1e-11;
const ROUNDING_A: f64 = 1e-9;

#[track_caller]
fn agree(what: &str, ours: Complex64, ngspice: Complex64, rounding: f64) {
    let off = (ours - ngspice).norm();
    assert!(
        off <= TOLERANCE * ngspice.norm() + rounding,
        "{what}: {ours} here, {ngspice} in ngspice, off by {off:e}"
    );
}

/// What ngspice says of a plant's present network: a voltage for each node.
struct Answer {
    mains: Circuit<Complex64>,
    volts: Vec<Complex64>,
}

impl Answer {
    fn of(plant: &Plant) -> Answer {
        let mains = plant.mains();
        let network = mains.network();
        let hz = plant.rating().hz;
        let names: Vec<String> = (1..=network.node_count())
            .map(|n| format!("v(n{n})"))
            .collect();
        let vectors: Vec<&str> = names.iter().map(String::as_str).collect();
        let answers = Deck::from_ac(network, hz).solve_ac(hz, &vectors);
        let mut volts = vec![Complex64::ZERO];
        volts.extend(names.iter().map(|name| answers[name]));
        Answer { mains, volts }
    }

    /// Current through the one element between two pins, from ngspice's voltages.
    #[track_caller]
    fn amps(&self, from: Pin, to: Pin) -> f64 {
        let node = |pin| self.mains.node(pin).expect("a pin on the mains side");
        let ends = [node(from), node(to)];
        let network = self.mains.network();
        let mut between = network.branches().filter(|(e, ..)| *e == ends);
        let (_, y, emf) = between.next().expect("an element between the pins");
        assert!(between.next().is_none(), "more than one element");
        let at = |n: Node| self.volts[n.index()];
        (y * (at(ends[0]) - at(ends[1]) - emf)).norm()
    }
}

const fn load(t: Terminal) -> Pin {
    Pin::Wire(t, Side::Load)
}

const fn board(t: Terminal) -> Pin {
    Pin::Wire(t, Side::Board)
}

/// Every node, and every load current that the plant reads from its network.
#[track_caller]
fn check(state: &str, plant: &Plant) {
    let answer = Answer::of(plant);
    let network = answer.mains.network();
    // The plant's pins carry the names of what a probe can touch; other nodes have a number.
    let mut nodes = 0;
    for pin in Pin::all() {
        if let Some(node) = answer.mains.node(pin) {
            let what = format!("{state}: {pin}");
            agree(
                &what,
                network.voltage(node),
                answer.volts[node.index()],
                ROUNDING_V,
            );
        }
    }
    for (index, volts) in answer.volts.iter().enumerate().skip(1) {
        let node = network
            .branches()
            .flat_map(|(ends, ..)| ends)
            .find(|n| n.index() == index);
        if let Some(node) = node {
            agree(
                &format!("{state}: node {index}"),
                network.voltage(node),
                *volts,
                ROUNDING_V,
            );
            nodes += 1;
        }
    }
    // Two have no element: on the board the capacitor's pins are the motor's.
    assert_eq!(nodes + 2, network.node_count());
    let amps = plant.amps();
    for (what, ours, from, to) in [
        (
            "cold valve",
            amps.cold,
            load(Terminal::Cold1),
            load(Terminal::Cold2),
        ),
        (
            "hot valve",
            amps.hot,
            load(Terminal::Hot1),
            load(Terminal::Hot2),
        ),
        (
            "pump",
            amps.pump,
            // In the wire: what leaks to ground through the winding's insulation flows there too.
            Pin::Wire(Terminal::Pump1, Side::Harness),
            load(Terminal::Pump1),
        ),
        (
            "clutch-actuator",
            amps.clutch,
            load(Terminal::Clutch1),
            load(Terminal::Clutch2),
        ),
        (
            "lock",
            amps.lock,
            load(Terminal::LockCoil1),
            load(Terminal::LockCoil2),
        ),
        (
            "motor",
            amps.motor,
            board(Terminal::MotorCommon),
            board(Terminal::CordNeutral),
        ),
        ("line", amps.line, Pin::FuseIn, Pin::FuseOut),
    ] {
        let ngspice = answer.amps(from, to);
        let (ours, ngspice) = (Complex64::new(ours, 0.0), Complex64::new(ngspice, 0.0));
        agree(
            &format!("{state}: {what} current"),
            ours,
            ngspice,
            ROUNDING_A,
        );
    }
    println!(
        "{state:<40} {nodes} nodes agree; line {:.4} A, motor {:.4} A",
        amps.line, amps.motor
    );
}

/// Locks the lid and drives the motor for a while: agitator coupled, tub dry.
fn run_motor(plant: &mut Plant, way: Relay, span: Span) {
    drive(plant, &[Relay::Lock], Span::from_s(1));
    assert!(
        plant.bolted(),
        "the lock has to hold before the motor can run"
    );
    drive(plant, &[Relay::Lock, way], span);
}

#[test]
fn the_live_network_agrees_with_ngspice_in_every_kind_of_state() {
    if !crate::spice::available("the machine's network") {
        return;
    }
    let stage = Stage::new();
    for mains in MAINS {
        let rating = mains.rating();
        let named = |state: &str| format!("{} V {} Hz, {state}", rating.volts, rating.hz);
        let start = Span::from_s(2);

        let mut plant = stage.plant(mains);
        drive(&mut plant, &[], start);
        check(&named("idle"), &plant);

        drive(&mut plant, &[Relay::Cold], start);
        assert!(plant.amps().cold > 0.01);
        check(&named("cold valve on"), &plant);

        drive(
            &mut plant,
            &[Relay::Cold, Relay::Hot, Relay::Pump, Relay::Clutch],
            start,
        );
        assert!(plant.pump_turning());
        check(&named("both valves, pump and clutch actuator on"), &plant);

        let mut plant = stage.plant(mains);
        run_motor(&mut plant, Relay::MotorA, Span(1));
        // The plant solves first and turns the motor afterwards.
        assert!(plant.drive().speed_step.abs() < 8, "{:?}", plant.drive());
        check(&named("motor A at standstill"), &plant);

        drive(&mut plant, &[Relay::Lock, Relay::MotorA], Span::from_s(4));
        assert!(plant.drive().motor_rad_s > 100.0, "{:?}", plant.drive());
        check(&named("motor A at speed"), &plant);

        let mut plant = stage.plant(mains);
        run_motor(&mut plant, Relay::MotorB, Span::from_s(4));
        assert!(plant.drive().motor_rad_s < -100.0);
        check(&named("motor B at speed"), &plant);
    }
}

#[test]
fn the_live_network_agrees_with_ngspice_when_something_is_wrong() {
    if !crate::spice::available("the faulty machine's network") {
        return;
    }
    let stage = Stage::new();
    for mains in MAINS {
        let rating = mains.rating();
        let named = |state: &str| format!("{} V {} Hz, {state}", rating.volts, rating.hz);
        let faulty = |id: &str| {
            let mut plant = stage.plant(mains);
            plant.inject_fault(stage.mode(id));
            plant
        };

        let mut plant = faulty("drain-pump.seized");
        drive(&mut plant, &[Relay::Pump], Span::from_s(2));
        assert!(!plant.pump_turning() && plant.amps().pump > 0.3);
        check(&named("pump seized"), &plant);

        for id in [
            "motor.open-winding-a",
            "run-capacitor.open",
            "run-capacitor.shorted",
            "motor.shorted-turns",
        ] {
            let mut plant = faulty(id);
            run_motor(&mut plant, Relay::MotorA, Span::from_s(1));
            check(&named(id), &plant);
        }

        let mut plant = faulty("inlet-cold.open-winding");
        drive(&mut plant, &[Relay::Cold], Span::from_s(2));
        assert!(plant.amps().cold < 1e-3);
        check(&named("cold valve winding open"), &plant);

        let mut plant = faulty("cord.open-line");
        drive(&mut plant, &[Relay::Pump], Span::from_s(2));
        check(&named("cord open"), &plant);

        let mut plant = stage.plant(mains);
        let pump = Connector::Load(detent_simulation::interface::Component::DrainPump);
        plant.set_connector(&pump, &[], true);
        drive(&mut plant, &[Relay::Pump], Span::from_s(2));
        check(&named("pump connector pulled"), &plant);
    }
}

/// The check itself must be able to fail: a network that differs by two parts in a million is told.
#[test]
fn a_network_that_differs_a_little_is_told_apart() {
    if !crate::spice::available("the sensitivity of the comparison") {
        return;
    }
    let stage = Stage::new();
    let mains = MAINS[0];
    let mut plant = stage.plant(mains);
    drive(&mut plant, &[Relay::Cold], Span::from_s(2));
    let mut params = stage.sound(mains).clone();
    let coil = detent_simulation::plant::Param::ColdCoilOhms;
    params.set(coil, params.get(coil) * (1.0 + 5e-6));
    let mut other = crate::stage::plant(&params, mains.rating());
    drive(&mut other, &[Relay::Cold], Span::from_s(2));
    let ngspice = Answer::of(&other).amps(load(Terminal::Cold1), load(Terminal::Cold2));
    let off = (plant.amps().cold / ngspice - 1.0).abs();
    assert!(off > TOLERANCE, "off by {off:e} only");
}
