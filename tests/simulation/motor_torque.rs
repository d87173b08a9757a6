//! Currents and torque of the capacitor-run motor over its whole range of speed, against another theory than
//! the model's own.
//!
//! The model splits the field in two that revolve (`plant/motor`). Here nothing revolves: two windings and two
//! short-circuited rotor circuits stand at right angles, coupled by transformer action along each axis and by
//! speed across it, as in P. C. Krause, O. Wasynczuk and S. D. Sudhoff, *Analysis of Electric Machinery*
//! (stationary reference frame; from memory). The four equations are solved by faer's LU.

use crate::stage::{MAINS, Stage, drive, plant};
use detent_simulation::interface::{Pin, Rating, Relay, Side, Terminal};
use detent_simulation::plant::mains::{motor_circuit, speed_of};
use detent_simulation::plant::motor::MotorCircuit;
use detent_simulation::plant::network::{Netlist, Node};
use detent_simulation::plant::{Param, Plant};
use detent_simulation::units::{Span, TICK_S};
use detent_training::lesson::Mains;
use faer::Mat;
use faer::linalg::solvers::Solve;
use num_complex::Complex64;
use std::f64::consts::TAU;

/// Pole pairs of the motor.
const POLE_PAIRS: f64 = 2.0;

fn real(value: f64) -> Complex64 {
    Complex64::new(value, 0.0)
}

fn imaginary(value: f64) -> Complex64 {
    Complex64::new(0.0, value)
}

/// The motor as inductances and resistances along two standing axes. The motor turns from the winding whose
/// current leads to the one whose current lags; in direction A that is from winding B to winding A, so B is the
/// first axis here and A the second.
struct TwoAxes {
    ohms: [f64; 2],
    rotor_ohms: f64,
    omega: f64,
    /// Whole reactance of a winding, of a rotor circuit, and what they share, Ω at this supply.
    winding: f64,
    rotor: f64,
    shared: f64,
}

impl TwoAxes {
    fn of(circuit: &MotorCircuit) -> TwoAxes {
        // The parameters are stated at 60 Hz; a reactance grows with frequency.
        let grown = circuit.supply_hz / 60.0;
        let shared = circuit.magnet_ohms * grown;
        TwoAxes {
            ohms: [circuit.b_ohms, circuit.a_ohms],
            rotor_ohms: circuit.rotor_ohms,
            omega: TAU * circuit.supply_hz,
            winding: circuit.leak_ohms * grown + shared,
            rotor: circuit.rotor_leak_ohms * grown + shared,
            shared,
        }
    }

    /// Currents of windings B and A and of the two rotor circuits at `speed` as a fraction of synchronous, with
    /// these voltages across the windings behind these impedances.
    fn currents(
        &self,
        speed: f64,
        volts: [Complex64; 2],
        before: [Complex64; 2],
    ) -> [Complex64; 4] {
        let x = imaginary(self.shared);
        let rotor = Complex64::new(self.rotor_ohms, self.rotor);
        let (across, across_own) = (real(speed * self.shared), real(speed * self.rotor));
        let nothing = Complex64::ZERO;
        let winding = |axis: usize| Complex64::new(self.ohms[axis], self.winding) + before[axis];
        let rows = [
            [winding(0), nothing, x, nothing],
            [nothing, winding(1), nothing, x],
            // A rotor that turns past an axis cuts what stands on the other one.
            [x, across, rotor, across_own],
            [-across, x, -across_own, rotor],
        ];
        let matrix = Mat::from_fn(4, 4, |row, column| rows[row][column]);
        let right = Mat::from_fn(4, 1, |row, _| if row < 2 { volts[row] } else { nothing });
        let solved = matrix.partial_piv_lu().solve(&right);
        std::array::from_fn(|at| solved[(at, 0)])
    }

    /// The rotor's currents that go with these winding currents, B and A.
    fn rotor_currents(&self, speed: f64, windings: [Complex64; 2]) -> [Complex64; 2] {
        let rotor = Complex64::new(self.rotor_ohms, self.rotor);
        let across = real(speed * self.rotor);
        let x = imaginary(self.shared);
        let cut = real(speed * self.shared);
        let induced = [
            -(x * windings[0] + cut * windings[1]),
            -(x * windings[1] - cut * windings[0]),
        ];
        let determinant = rotor * rotor + across * across;
        [
            (rotor * induced[0] - across * induced[1]) / determinant,
            (rotor * induced[1] + across * induced[0]) / determinant,
        ]
    }

    /// Mean torque, N·m: pole pairs times the shared inductance times the cross product of the currents.
    fn torque_nm(&self, windings: [Complex64; 2], rotor: [Complex64; 2]) -> f64 {
        let mean = |one: Complex64, other: Complex64| (one * other.conj()).re;
        POLE_PAIRS * self.shared / self.omega
            * (mean(windings[1], rotor[0]) - mean(windings[0], rotor[1]))
    }
}

/// Winding currents A and B and torque by the simulation: its network with the motor in it, and a source, A on it
/// directly, B through the run capacitor, or the other way round.
fn simulated(
    circuit: &MotorCircuit,
    speed: f64,
    volts: f64,
    capacitor: Complex64,
    through_b: bool,
) -> ([Complex64; 2], f64) {
    let mut netlist = Netlist::new();
    let (line, far) = (netlist.node(), netlist.node());
    let source = netlist.branch(line, Node::GROUND);
    let run = netlist.branch(line, far);
    let (a, b) = if through_b { (line, far) } else { (far, line) };
    let motor = netlist.two_port(a, Node::GROUND, b, Node::GROUND);
    let mut network = netlist.build::<Complex64>();
    network.set_admittance(source, real(1e9));
    network.set_emf(source, real(volts));
    network.set_admittance(run, capacitor.inv());
    network.set_two_port(motor, circuit.admittance(speed));
    network.solve();
    let [into_a, into_b] = network.two_port_current(motor);
    ([into_a, into_b], circuit.torque_nm(speed, into_a, into_b))
}

#[test]
fn currents_and_torque_over_speed_are_those_of_two_standing_axes() {
    let stage = Stage::new();
    for mains in MAINS {
        let Rating { volts, hz, .. } = mains.rating();
        let p = stage.sound(mains);
        for winding_c in [20, 120] {
            let circuit = motor_circuit(p, mains.rating(), winding_c);
            let axes = TwoAxes::of(&circuit);
            let capacitor = Complex64::new(
                p.get(Param::CapEsrOhms),
                -1.0 / (TAU * hz * p.get(Param::CapFarads)),
            );
            let mut most_nm: f64 = 0.0;
            let mut standing_nm = [0.0; 2];
            for (side, through_b) in [true, false].into_iter().enumerate() {
                for percent in (-150_i32..=150)
                    .step_by(5)
                    .filter(|percent| percent.abs() != 100)
                {
                    let speed = f64::from(percent) / 100.0;
                    let (windings, nm) = simulated(&circuit, speed, volts, capacitor, through_b);
                    let before = if through_b {
                        [capacitor, Complex64::ZERO]
                    } else {
                        [Complex64::ZERO, capacitor]
                    };
                    let [b, a, first, second] =
                        axes.currents(speed, [real(volts), real(volts)], before);
                    let expected_nm = axes.torque_nm([b, a], [first, second]);
                    let off = (windings[0] - a).norm() + (windings[1] - b).norm();
                    assert!(
                        off < 1e-7 * (a.norm() + b.norm()),
                        "{mains:?} at {speed}: {windings:?}, by two axes {a} and {b}"
                    );
                    assert!(
                        (nm - expected_nm).abs() < 1e-7 * (1.0 + expected_nm.abs()),
                        "{mains:?} at {speed}: {nm} N·m, by two axes {expected_nm}"
                    );
                    most_nm = most_nm.max(expected_nm.abs());
                    if percent == 0 {
                        standing_nm[side] = expected_nm;
                    }
                }
            }
            println!(
                "{mains:?}, {winding_c} °C: {standing_nm:.3?} N·m standing, {most_nm:.2} at most"
            );
            // The capacitor's side decides which way it starts.
            assert!(standing_nm[0] > 0.3 && standing_nm[1] < -0.3);
        }
    }
}

/// Starting torque is as the product of the two currents and the sine of the angle between them (any textbook on
/// split-phase motors); the factor is twice the rotor's resistance as the stator sees it, over synchronous speed.
#[test]
fn a_standing_rotor_is_turned_by_the_sine_between_the_currents() {
    let circuit = motor_circuit(
        Stage::new().sound(Mains::V120Hz60),
        Mains::V120Hz60.rating(),
        20,
    );
    let (x, r, l) = (
        circuit.magnet_ohms,
        circuit.rotor_ohms,
        circuit.rotor_leak_ohms,
    );
    let seen_ohms = r * x * x / (r * r + (x + l) * (x + l));
    let synchronous_rad_s = TAU * 60.0 / POLE_PAIRS;
    for (a, b, degrees) in [(9.0, 4.0, 90.0), (6.0, 6.0, 30.0), (3.0, 8.0, -75.0_f64)] {
        let lead = degrees.to_radians();
        let expected_nm = 2.0 * seen_ohms * a * b * lead.sin() / synchronous_rad_s;
        let nm = circuit.torque_nm(0.0, real(a), Complex64::from_polar(b, lead));
        assert!((nm / expected_nm - 1.0).abs() < 1e-9, "{nm} {expected_nm}");
    }
}

/// Worked example in A. E. Fitzgerald, C. Kingsley and S. D. Umans, *Electric Machinery*, chapter 9, on one winding
/// alone: 110 V, 60 Hz, four poles, 2.02 + j2.79 Ω, j66.8 Ω, 4.12 + j2.12 Ω, 24 W in the core, 13 W by friction. At
/// a slip of 0.05: 3.59 A at a power factor of 0.62, 147 W at the shaft, an efficiency of 0.60 (its inputs from a
/// secondary source, its results from memory).
#[test]
fn the_textbooks_motor_does_at_five_per_cent_slip_what_the_textbook_says() {
    let circuit = MotorCircuit {
        a_ohms: 2.02,
        b_ohms: 2.02,
        leak_ohms: 2.79,
        magnet_ohms: 66.8,
        rotor_ohms: 4.12,
        rotor_leak_ohms: 2.12,
        supply_hz: 60.0,
    };
    let speed = 0.95;
    // The other winding is open: so large a resistance before it that nothing flows there.
    let (windings, nm) = simulated(&circuit, speed, 110.0, real(1e9), true);
    let amps = windings[0].norm();
    let power_factor = windings[0].re / amps;
    let shaft_w = nm * speed * TAU * 60.0 / POLE_PAIRS - 24.0 - 13.0;
    let efficiency = shaft_w / (110.0 * windings[0].re);
    println!("{amps:.3} A, {power_factor:.3}, {shaft_w:.1} W, {efficiency:.3}");
    for (what, here, printed) in [
        ("current", amps, 3.59),
        ("power factor", power_factor, 0.62),
        ("shaft", shaft_w, 147.0),
        ("efficiency", efficiency, 0.60),
    ] {
        assert!(
            (here / printed - 1.0).abs() < 0.006,
            "{what}: {here} {printed}"
        );
    }
}

/// Voltages across windings B and A of a plant's motor as its network was last solved: what stands between their
/// leads and the common one, less what the common lead itself takes.
fn winding_volts(plant: &Plant) -> [Complex64; 2] {
    let mains = plant.mains();
    let pin = |terminal| Pin::Wire(terminal, Side::Load);
    let [a, b] = mains.winding_currents();
    let common_v = (a + b) * plant.params().get(Param::MotorCommonOhms);
    [Terminal::MotorB, Terminal::MotorA].map(|lead| {
        let across = mains.drop(pin(lead), pin(Terminal::MotorCommon));
        across.expect("both are on the mains side") - common_v
    })
}

/// Without its belt the motor of the whole machine has nothing to turn but itself, and Newton's second law gives its
/// torque away at each tick.
#[test]
fn the_running_machine_speeds_its_motor_up_by_that_torque() {
    let stage = Stage::new();
    for mains in MAINS {
        for (way, sign) in [(Relay::MotorA, 1.0), (Relay::MotorB, -1.0)] {
            let mut params = stage.sound(mains).clone();
            params.set(Param::BeltGripNm, 0.0);
            let mut plant = plant(&params, mains.rating());
            drive(&mut plant, &[Relay::Lock], Span::from_s(1));
            assert!(plant.bolted());
            let synchronous_rad_s = TAU * mains.rating().hz / POLE_PAIRS;
            let inertia = params.get(Param::MotorInertiaKgM2);
            let (mut most_nm, mut fastest): (f64, f64) = (0.0, 0.0);
            for _ in 0..150 {
                let from_rad_s = plant.drive().motor_rad_s;
                let (step, winding_c) = (plant.drive().speed_step, plant.drive().winding_step);
                drive(&mut plant, &[Relay::Lock, way], Span(1));
                let axes = TwoAxes::of(&motor_circuit(&params, mains.rating(), winding_c));
                let [a, b] = plant.mains().winding_currents();
                let none = [Complex64::ZERO; 2];
                let [first, second, ..] =
                    axes.currents(speed_of(step), winding_volts(&plant), none);
                let off = (first - b).norm() + (second - a).norm();
                assert!(
                    off < 1e-7 * (a.norm() + b.norm()),
                    "{mains:?}: off by {off:e} A"
                );

                let rotor = axes.rotor_currents(from_rad_s / synchronous_rad_s, [b, a]);
                let nm = axes.torque_nm([b, a], rotor);
                let drag_nm = params.get(Param::MotorDragNm);
                let free = from_rad_s + nm * TICK_S / inertia;
                let rub = (drag_nm * TICK_S / inertia).min(free.abs());
                let expected = free - rub * free.signum();
                let rad_s = plant.drive().motor_rad_s;
                assert!(
                    (rad_s - expected).abs() < 1e-6 * (1.0 + expected.abs()),
                    "{mains:?}: {rad_s} rad/s, by Newton {expected}"
                );
                most_nm = most_nm.max(sign * nm);
                fastest = fastest.max(sign * rad_s / synchronous_rad_s);
            }
            println!(
                "{mains:?} {way:?}: {most_nm:.2} N·m at most, up to {fastest:.3} of synchronous"
            );
            assert!(most_nm > 0.5 && fastest > 0.95 && fastest < 1.0);
        }
    }
}
