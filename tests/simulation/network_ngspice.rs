//! The network solver against ngspice in batch mode, to one part in a million.
//!
//! Source: ngspice (Debian package `ngspice`), run here on the same circuits. Where a circuit comes
//! from a published example it is named beside its test. Where ngspice is missing these tests say
//! that they are skipped; with `CI=true` they fail instead.

use crate::spice::Deck;
use crate::spice::ladder::{self, Ladder};
use detent_simulation::plant::network::{Netlist, Network, Node};
use num_complex::Complex64;
use std::f64::consts::TAU;

const TOLERANCE: f64 = 1e-6;

#[track_caller]
fn agree(what: &str, ours: Complex64, ngspice: Complex64) {
    let off = (ours - ngspice).norm() / ngspice.norm();
    assert!(
        ngspice.norm() > 0.0,
        "{what}: ngspice has zero, which proves nothing"
    );
    assert!(
        off < TOLERANCE,
        "{what}: {ours} here, {ngspice} in ngspice, off by {off:e}"
    );
}

#[track_caller]
fn agree_dc(what: &str, ours: f64, ngspice: f64) {
    agree(
        what,
        Complex64::new(ours, 0.0),
        Complex64::new(ngspice, 0.0),
    );
}

/// Every node of a phasor network, written out by the solver's own exporter.
#[track_caller]
fn agree_everywhere(network: &Network<Complex64>, nodes: &[Node], hz: f64) {
    let names: Vec<String> = nodes
        .iter()
        .map(|n| format!("v({})", crate::spice::name(*n)))
        .collect();
    let vectors: Vec<&str> = names.iter().map(String::as_str).collect();
    let answers = Deck::from_ac(network, hz).solve_ac(hz, &vectors);
    for (node, vector) in nodes.iter().zip(&names) {
        agree(vector, network.voltage(*node), answers[vector]);
    }
}

fn ohms(ohms: f64) -> Complex64 {
    Complex64::new(1.0 / ohms, 0.0)
}

/// Admittance of a resistance and a reactance in series, Ω.
fn series(ohms: f64, reactance_ohms: f64) -> Complex64 {
    Complex64::new(ohms, reactance_ohms).inv()
}

/// A source of such low resistance that it stands for the ideal one of the SPICE text.
const STIFF_OHMS: f64 = 1e-9;

/// Two dividers joined by a resistor, 5 V. The literal numbers were had from ngspice by hand
/// beforehand, `set numdgt=7`.
#[test]
fn resistive_bridge() {
    if !crate::spice::available("resistive bridge") {
        return;
    }
    let mut netlist = Netlist::new();
    let (top, mid, p) = (netlist.node(), netlist.node(), netlist.node());
    let source = netlist.branch(top, Node::GROUND);
    let resistors = [
        (netlist.branch(top, mid), 10e3),
        (netlist.branch(mid, Node::GROUND), 4.7e3),
        (netlist.branch(top, p), 1e3),
        (netlist.branch(p, Node::GROUND), 2e3),
        (netlist.branch(p, mid), 3.3e3),
    ];
    let mut network = netlist.build::<f64>();
    network.set_admittance(source, 1.0 / STIFF_OHMS);
    network.set_emf(source, 5.0);
    for (branch, ohms) in resistors {
        network.set_admittance(branch, 1.0 / ohms);
    }
    network.solve();
    let deck = Deck::new(
        "V1 top 0 DC 5
         R1 top mid 10k
         R2 mid 0 4.7k
         R3 top p 1k
         R4 p 0 2k
         R5 p mid 3.3k",
    );
    let answers = deck.solve_dc(&["v(mid)", "v(p)", "i(v1)"]);
    agree_dc("v(mid)", network.voltage(mid), answers["v(mid)"]);
    agree_dc("v(mid) by hand", network.voltage(mid), 2.3728358);
    agree_dc("v(p)", network.voltage(p), answers["v(p)"]);
    agree_dc("v(p) by hand", network.voltage(p), 3.1719052);
    let supplied = network.current(resistors[0].0) + network.current(resistors[2].0);
    // ngspice counts a source's current from + through the source, so a delivering one is negative.
    agree_dc("i(v1)", -supplied, answers["i(v1)"]);
    agree_dc("i(v1) by hand", -supplied, -2.090811e-3);
    // The same network through the exporter.
    let exported = Deck::from_dc(&network).solve_dc(&["v(n2)", "v(n3)"]);
    agree_dc("mid, exported", network.voltage(mid), exported["v(n2)"]);
    agree_dc("p, exported", network.voltage(p), exported["v(n3)"]);
}

/// 169.7056 V peak at 60 Hz across 20 Ω, 0.1 H and 30 µF. The literal numbers were had from ngspice
/// by hand beforehand, `set numdgt=7`.
#[test]
fn series_resonant_circuit() {
    if !crate::spice::available("series R, L, C at 60 Hz") {
        return;
    }
    let omega = TAU * 60.0;
    let mut netlist = Netlist::new();
    let (top, after_r, after_l) = (netlist.node(), netlist.node(), netlist.node());
    let source = netlist.branch(top, Node::GROUND);
    let r = netlist.branch(top, after_r);
    let l = netlist.branch(after_r, after_l);
    let c = netlist.branch(after_l, Node::GROUND);
    let mut network = netlist.build::<Complex64>();
    network.set_admittance(source, ohms(STIFF_OHMS));
    network.set_emf(source, Complex64::new(169.7056, 0.0));
    network.set_admittance(r, ohms(20.0));
    network.set_admittance(l, series(0.0, omega * 0.1));
    network.set_admittance(c, Complex64::new(0.0, omega * 30e-6));
    network.solve();
    let deck = Deck::new(
        "V1 top 0 DC 0 AC 169.7056
         R1 top a 20
         L1 a b 0.1
         C1 b 0 30u",
    );
    let answers = deck.solve_ac(60.0, &["v(a)", "v(b)", "i(v1)"]);
    agree("v(a)", network.voltage(after_r), answers["v(a)"]);
    agree("v(b)", network.voltage(after_l), answers["v(b)"]);
    let across_c = network.voltage(after_l).norm();
    agree_dc("v(b) by hand", across_c, 275.21956);
    agree("i(v1)", -network.current(r), answers["i(v1)"]);
    agree_dc("i(v1) by hand", network.current(r).norm(), 3.1126599);
}

/// Split-phase motor at standstill: 220 V 60 Hz, main winding 3.5 + j2.5 Ω, auxiliary winding
/// 8.6 + j2.5 Ω with 182.43 µF, for 90° between the currents (an examination question for electrical
/// engineers and its answer, read in a secondary source; its phases by ngspice are −35.538° and +54.463°).
#[test]
fn split_phase_motor() {
    if !crate::spice::available("split-phase motor") {
        return;
    }
    let (omega, farads) = (TAU * 60.0, 182.43e-6);
    let mut netlist = Netlist::new();
    let (line, after_c) = (netlist.node(), netlist.node());
    let source = netlist.branch(line, Node::GROUND);
    let main = netlist.branch(line, Node::GROUND);
    let capacitor = netlist.branch(line, after_c);
    let auxiliary = netlist.branch(after_c, Node::GROUND);
    let mut network = netlist.build::<Complex64>();
    network.set_admittance(source, ohms(0.1));
    network.set_emf(source, Complex64::new(220.0, 0.0));
    network.set_admittance(main, series(3.5, 2.5));
    network.set_admittance(capacitor, Complex64::new(0.0, omega * farads));
    network.set_admittance(auxiliary, series(8.6, 2.5));
    network.solve();
    let mut deck = Deck::new(
        "V1 s 0 DC 0 AC 220
         Rs s line 0.1
         Vmain line m 0
         Rmain m m2 3.5
         Vaux line c 0
         Caux c a 182.43u
         Raux a a2 8.6",
    );
    deck.line(format_args!("Lmain m2 0 {:e}", 2.5 / omega));
    deck.line(format_args!("Laux a2 0 {:e}", 2.5 / omega));
    let answers = deck.solve_ac(60.0, &["v(line)", "v(a)", "i(vmain)", "i(vaux)"]);
    agree("v(line)", network.voltage(line), answers["v(line)"]);
    agree("v(a)", network.voltage(after_c), answers["v(a)"]);
    agree("main winding", network.current(main), answers["i(vmain)"]);
    agree(
        "auxiliary winding",
        network.current(capacitor),
        answers["i(vaux)"],
    );
    let lead = network.current(auxiliary).arg() - network.current(main).arg();
    assert!(
        (lead.to_degrees() - 90.0).abs() < 0.01,
        "{} °",
        lead.to_degrees()
    );
}

/// 40 nodes with resistors, inductors and capacitors, over a band of frequencies.
#[test]
fn mixed_ladder() {
    if !crate::spice::available("40-node ladder") {
        return;
    }
    let mut ladder = Ladder::new();
    let names: Vec<String> = (1..=ladder::NODES).map(|n| format!("v(n{n})")).collect();
    let vectors: Vec<&str> = names.iter().map(String::as_str).collect();
    for hz in [50.0, 60.0, 400.0, 1500.0] {
        ladder.tune(TAU * hz);
        ladder.network.solve();
        let answers = ladder::deck().solve_ac(hz, &vectors);
        for (node, vector) in ladder.nodes.iter().zip(&names) {
            agree(
                &format!("{vector} at {hz} Hz"),
                ladder.network.voltage(*node),
                answers[vector],
            );
        }
    }
}

/// Two windings at speed: each induces in the other, unlike in size and sign. In SPICE the induced
/// voltages are current-controlled sources, so the impedance matrix Z stands there and its inverse
/// in the solver.
#[test]
fn windings_at_speed_couple_one_way_unlike_the_other() {
    if !crate::spice::available("non-reciprocal two-port") {
        return;
    }
    let omega = TAU * 60.0;
    let (za, zb) = (Complex64::new(5.2, 31.0), Complex64::new(6.1, 29.5));
    // Voltage per ampere that each winding induces in the other, real: in phase with the current.
    let (zab, zba) = (17.3, -18.1);
    let determinant = za * zb - zab * zba;
    let y = [
        [zb / determinant, Complex64::new(-zab, 0.0) / determinant],
        [Complex64::new(-zba, 0.0) / determinant, za / determinant],
    ];
    let mut netlist = Netlist::new();
    let (line, a, b, common) = (
        netlist.node(),
        netlist.node(),
        netlist.node(),
        netlist.node(),
    );
    let source = netlist.branch(line, Node::GROUND);
    let feed = netlist.branch(line, a);
    let capacitor = netlist.branch(a, b);
    let back = netlist.branch(common, Node::GROUND);
    let motor = netlist.two_port(a, common, b, common);
    let mut network = netlist.build::<Complex64>();
    network.set_admittance(source, ohms(0.3));
    network.set_emf(source, Complex64::new(120.0, 0.0));
    network.set_admittance(feed, ohms(0.05));
    network.set_admittance(capacitor, Complex64::new(0.0, omega * 45e-6));
    network.set_admittance(back, ohms(0.02));
    network.set_two_port(motor, y);
    network.solve();
    let mut deck = Deck::new(
        "V1 s 0 DC 0 AC 120
         Rs s line 0.3
         Rfeed line a 0.05
         Crun a b 45u
         Vprobea a a1 0
         Ra a1 a2 5.2
         Ha a3 common vprobeb 17.3
         Vprobeb b b1 0
         Rb b1 b2 6.1
         Hb b3 common vprobea -18.1
         Rback common 0 0.02",
    );
    deck.line(format_args!("La a2 a3 {:e}", 31.0 / omega));
    deck.line(format_args!("Lb b2 b3 {:e}", 29.5 / omega));
    let vectors = [
        "v(line)",
        "v(a)",
        "v(b)",
        "v(common)",
        "i(vprobea)",
        "i(vprobeb)",
    ];
    let answers = deck.solve_ac(60.0, &vectors);
    for (node, vector) in [line, a, b, common].into_iter().zip(vectors) {
        agree(vector, network.voltage(node), answers[vector]);
    }
    let [into_a, into_b] = network.two_port_current(motor);
    agree("winding a", into_a, answers["i(vprobea)"]);
    agree("winding b", into_b, answers["i(vprobeb)"]);
    // The exporter's controlled sources are another way to write the same motor.
    agree_everywhere(&network, &[line, a, b, common], 60.0);
}

/// Supply, wires of milliohms and contacts that are open at a gigaohm: one load switched on, one
/// off, and a live-looking pin behind two open contacts.
#[test]
fn open_switches_beside_wires() {
    if !crate::spice::available("gigaohms beside milliohms") {
        return;
    }
    let mut netlist = Netlist::new();
    let nodes: Vec<Node> = (0..7).map(|_| netlist.node()).collect();
    let [line, bus, coil_on, open_pin, coil_off, floating, loose] = nodes[..] else {
        unreachable!("seven nodes were made")
    };
    let omega = TAU * 50.0;
    let source = netlist.branch(line, Node::GROUND);
    let values = [
        (netlist.branch(line, bus), ohms(5e-3)),
        (netlist.branch(bus, coil_on), ohms(20e-3)),
        (
            netlist.branch(coil_on, Node::GROUND),
            series(900.0, omega * 2.5),
        ),
        (netlist.branch(bus, open_pin), ohms(1e9)),
        (netlist.branch(open_pin, coil_off), ohms(8e-3)),
        (
            netlist.branch(coil_off, Node::GROUND),
            series(900.0, omega * 2.5),
        ),
        (netlist.branch(bus, floating), ohms(1e9)),
        (netlist.branch(floating, loose), ohms(2e9)),
        (netlist.branch(loose, Node::GROUND), ohms(1e9)),
    ];
    let mut network = netlist.build::<Complex64>();
    network.set_admittance(source, ohms(0.25));
    network.set_emf(source, Complex64::new(325.269, 0.0));
    for (branch, y) in values {
        network.set_admittance(branch, y);
    }
    network.solve();
    let mut deck = Deck::new(
        "V1 s 0 DC 0 AC 325.269
         Rs s line 0.25
         Rwire1 line bus 5m
         Rwire2 bus on 20m
         Ron on on2 900
         Lon on2 0 2.5
         Ropen1 bus pin 1g
         Rwire3 pin off 8m
         Roff off off2 900
         Loff off2 0 2.5
         Ropen2 bus floating 1g
         Ropen3 floating loose 2g
         Ropen4 loose 0 1g",
    );
    deck.leaks(["line", "bus", "on", "pin", "off", "floating", "loose"]);
    let names = ["line", "bus", "on", "pin", "off", "floating", "loose"].map(|n| format!("v({n})"));
    let answers = deck.solve_ac(50.0, &names.each_ref().map(String::as_str));
    for (node, vector) in nodes.iter().zip(&names) {
        agree(vector, network.voltage(*node), answers[vector]);
    }
    agree_everywhere(&network, &nodes, 50.0);
}
