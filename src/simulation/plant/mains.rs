//! The mains side of the machine as one network: outlet, cord, fuse, filter, board switches,
//! harness, loads. The same circuit is used twice: with phasors at mains frequency for the live
//! machine and with direct current for the ohmmeter and stored charge.

use super::heat::copper_ohms;
use super::motor::{MotorCircuit, quotient};
use super::network::{Branch, Netlist, Network, Node, Scalar, TwoPort};
use super::params::{Param, Params};
use crate::interface::{Pin, Rating, Relay, Relays, Side, Terminal};
use num_complex::Complex64;

/// Conductance of a path that is not there: an unplugged blade, a pulled connector, S.
const GONE_S: f64 = 1e-10;
/// Resistance of a board trace, Ω.
const TRACE_OHMS: f64 = 0.005;
/// Input of the line sense behind the lid lock, Ω.
const SENSE_OHMS: f64 = 470e3;
/// What an unpowered rectifier input lets through at direct current, Ω.
const RECTIFIER_DC_OHMS: f64 = 680e3;

/// Stray capacitance from a harness wire to the line conductors it is bundled with, F. Common practice,
/// no source: some 40 pF a metre, and our harness is about a metre and a half long.
pub const STRAY_LINE_FARADS: f64 = 60e-12;
/// Stray capacitance from a harness wire to the cabinet, F (likewise).
pub const STRAY_EARTH_FARADS: f64 = 60e-12;
/// What stray capacitance leaks, Ω: nothing that shows.
const STRAY_LEAK_OHMS: f64 = 1e15;

/// So many times its resistance at working voltage insulation shows to an ohmmeter, whose half volt jumps no gap
/// and crosses no damp track. That an ohmmeter misses bad insulation is common practice, no source; how far, our own.
const UNSTRESSED: f64 = 1000.0;

/// Number of harness terminals on the mains side.
pub const WIRES: usize = Terminal::Cap2.index() + 1;

/// How elements become admittances in one kind of analysis.
pub trait Analysis: Scalar {
    /// A resistance, Ω.
    fn ohms(ohms: f64) -> Self;
    /// Insulation that has `ohms` at working voltage.
    fn insulation(ohms: f64) -> Self;
    /// A conductance, S.
    fn siemens(siemens: f64) -> Self;
    /// A coil: winding resistance and inductance.
    fn coil(ohms: f64, henry: f64, hz: f64) -> Self;
    /// A capacitor with series and leakage resistance.
    fn capacitor(farads: f64, series_ohms: f64, leak_ohms: f64, hz: f64) -> Self;
    /// A motor at `speed` (fraction of synchronous).
    fn motor(circuit: &MotorCircuit, speed: f64) -> [[Self; 2]; 2];
    /// EMF of an outlet of `volts` rms.
    fn outlet_emf(volts: f64) -> Self;
    /// The control's power supply input.
    fn supply_input(watts: f64, rated_v: f64) -> Self;
}

impl Analysis for Complex64 {
    fn ohms(ohms: f64) -> Self {
        Complex64::new(1.0 / ohms, 0.0)
    }
    fn insulation(ohms: f64) -> Self {
        Complex64::ohms(ohms)
    }
    fn siemens(siemens: f64) -> Self {
        Complex64::new(siemens, 0.0)
    }
    fn coil(ohms: f64, henry: f64, hz: f64) -> Self {
        quotient(Complex64::ONE, Complex64::new(ohms, angular(hz) * henry))
    }
    fn capacitor(farads: f64, series_ohms: f64, leak_ohms: f64, hz: f64) -> Self {
        let reactance = -1.0 / (angular(hz) * farads);
        quotient(Complex64::ONE, Complex64::new(series_ohms, reactance))
            + Complex64::new(1.0 / leak_ohms, 0.0)
    }
    fn motor(circuit: &MotorCircuit, speed: f64) -> [[Self; 2]; 2] {
        circuit.admittance(speed)
    }
    fn outlet_emf(volts: f64) -> Self {
        Complex64::new(volts, 0.0)
    }
    fn supply_input(watts: f64, rated_v: f64) -> Self {
        Complex64::new(watts / (rated_v * rated_v) + 1.0 / RECTIFIER_DC_OHMS, 0.0)
    }
}

impl Analysis for f64 {
    fn ohms(ohms: f64) -> Self {
        1.0 / ohms
    }
    fn insulation(ohms: f64) -> Self {
        1.0 / (UNSTRESSED * ohms)
    }
    fn siemens(siemens: f64) -> Self {
        siemens
    }
    fn coil(ohms: f64, _henry: f64, _hz: f64) -> Self {
        1.0 / ohms
    }
    fn capacitor(_farads: f64, _series_ohms: f64, leak_ohms: f64, _hz: f64) -> Self {
        1.0 / leak_ohms
    }
    fn motor(circuit: &MotorCircuit, _speed: f64) -> [[Self; 2]; 2] {
        [[1.0 / circuit.a_ohms, 0.0], [0.0, 1.0 / circuit.b_ohms]]
    }
    fn outlet_emf(_volts: f64) -> Self {
        0.0
    }
    fn supply_input(_watts: f64, _rated_v: f64) -> Self {
        1.0 / RECTIFIER_DC_OHMS
    }
}

/// 2 π f, rad/s.
pub fn angular(hz: f64) -> f64 {
    core::f64::consts::TAU * hz
}

/// All that decides the mains network besides the parameters. Equal states give equal solutions,
/// so the network is solved again only when this changes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Switching {
    /// The plug is in the outlet.
    pub plugged: bool,
    /// The outlet's residual current device has opened both conductors.
    pub outlet_tripped: bool,
    /// Relays driven.
    pub relays: Relays,
    /// The lid lock's line contact is closed.
    pub bolted: bool,
    /// The pump's rotor turns.
    pub pump_turning: bool,
    /// The motor's thermal protector is open.
    pub protector_open: bool,
    /// The line fuse has blown.
    pub fuse_blown: bool,
    /// Motor speed in steps of 1/256 of synchronous speed, positive in direction A.
    pub speed_step: i16,
    /// Winding temperature in whole °C.
    pub winding_c: i16,
    /// Harness ends off at the board, a bit for each mains terminal.
    pub off_board: u32,
    /// Harness ends off at the load, likewise.
    pub off_load: u32,
}

/// Motor speed as a fraction of synchronous for a step count.
pub fn speed_of(step: i16) -> f64 {
    f64::from(step) / 256.0
}

/// The mains circuit in one kind of analysis.
#[derive(Clone)]
pub struct Circuit<T: Analysis> {
    net: Network<T>,
    nodes: [[Node; 3]; WIRES],
    plug: [Node; 3],
    fuse_in: Node,
    fuse_out: Node,
    outlet: [Branch; 3],
    cord: [Branch; 2],
    fuse: Branch,
    filter: Branch,
    x_cap: Branch,
    contact: [Branch; WIRES],
    wire: [Branch; WIRES],
    relay: [Branch; 7],
    supply_input: Branch,
    sense: Branch,
    lock_contact: Branch,
    shunt: Branch,
    traces: Vec<Branch>,
    cold: Branch,
    hot: Branch,
    pump: Branch,
    clutch: Branch,
    lock_coil: Branch,
    common: Branch,
    capacitor: Branch,
    motor: TwoPort,
    /// From filter, pump and motor to the cabinet.
    insulation: [Branch; 3],
    meter: Option<Branch>,
    /// To line and to the cabinet, for each harness wire. Only a meter notices: beside a load's
    /// resistance it is nothing, so the machine itself runs without.
    stray: Vec<[Branch; 2]>,
}

impl<T: Analysis> Circuit<T> {
    /// Lays out the circuit; `meter` adds a meter across two pins (both must be mains pins).
    pub fn new(meter: Option<(Pin, Pin)>) -> Circuit<T> {
        let mut list = Netlist::new();
        let g = Node::GROUND;
        let plug = [list.node(), list.node(), list.node()];
        let (fuse_in, fuse_out) = (list.node(), list.node());
        let nodes: [[Node; 3]; WIRES] =
            core::array::from_fn(|_| core::array::from_fn(|_| list.node()));
        let mut nodes = nodes;
        let at = |nodes: &[[Node; 3]; WIRES], t: Terminal, s: Side| nodes[t.index()][s.index()];
        // On the board the capacitor's pins are the same metal as the motor's.
        nodes[Terminal::Cap1.index()][0] = at(&nodes, Terminal::MotorA, Side::Board);
        nodes[Terminal::Cap2.index()][0] = at(&nodes, Terminal::MotorB, Side::Board);
        let star = list.node();

        let board = |t| at(&nodes, t, Side::Board);
        let load = |t| at(&nodes, t, Side::Load);
        let line = board(Terminal::CordLine);
        let neutral = board(Terminal::CordNeutral);

        let outlet = core::array::from_fn(|i| list.branch(plug[i], g));
        let cord = [
            list.branch(plug[0], fuse_in),
            list.branch(plug[1], load(Terminal::CordNeutral)),
        ];
        let fuse = list.branch(fuse_in, fuse_out);
        let filter = list.branch(fuse_out, load(Terminal::CordLine));
        let x_cap = list.branch(fuse_out, load(Terminal::CordNeutral));
        let contact = core::array::from_fn(|i| list.branch(nodes[i][0], nodes[i][1]));
        let wire = core::array::from_fn(|i| list.branch(nodes[i][1], nodes[i][2]));
        let motor_line = board(Terminal::LockLineOut);
        let relay = core::array::from_fn(|i| {
            let (from, to) = match Relay::ALL[i] {
                Relay::Cold => (line, Terminal::Cold1),
                Relay::Hot => (line, Terminal::Hot1),
                Relay::Pump => (line, Terminal::Pump1),
                Relay::MotorA => (motor_line, Terminal::MotorA),
                Relay::MotorB => (motor_line, Terminal::MotorB),
                Relay::Clutch => (line, Terminal::Clutch1),
                Relay::Lock => (line, Terminal::LockCoil1),
            };
            list.branch(from, board(to))
        });
        let supply_input = list.branch(line, neutral);
        let sense = list.branch(motor_line, neutral);
        let shunt = list.branch(board(Terminal::MotorCommon), neutral);
        let traces = [
            (line, Terminal::LockLineIn),
            (neutral, Terminal::Cold2),
            (neutral, Terminal::Hot2),
            (neutral, Terminal::Pump2),
            (neutral, Terminal::Clutch2),
            (neutral, Terminal::LockCoil2),
        ]
        .into_iter()
        .map(|(rail, t)| list.branch(rail, board(t)))
        .collect();
        let between = |list: &mut Netlist, a, b| list.branch(load(a), load(b));
        let lock_contact = between(&mut list, Terminal::LockLineIn, Terminal::LockLineOut);
        let cold = between(&mut list, Terminal::Cold1, Terminal::Cold2);
        let hot = between(&mut list, Terminal::Hot1, Terminal::Hot2);
        let pump = between(&mut list, Terminal::Pump1, Terminal::Pump2);
        let clutch = between(&mut list, Terminal::Clutch1, Terminal::Clutch2);
        let lock_coil = between(&mut list, Terminal::LockCoil1, Terminal::LockCoil2);
        let capacitor = between(&mut list, Terminal::Cap1, Terminal::Cap2);
        let common = list.branch(star, load(Terminal::MotorCommon));
        let motor = list.two_port(load(Terminal::MotorA), star, load(Terminal::MotorB), star);

        // The cabinet is bonded to the plug's ground pin. A load that is switched off is at neutral and leaks nothing.
        let insulation = [
            list.branch(fuse_out, plug[2]),
            list.branch(load(Terminal::Pump1), plug[2]),
            list.branch(load(Terminal::MotorA), plug[2]),
        ];

        let mut circuit = Circuit {
            net: Netlist::new().build(),
            nodes,
            plug,
            fuse_in,
            fuse_out,
            outlet,
            cord,
            fuse,
            filter,
            x_cap,
            contact,
            wire,
            relay,
            supply_input,
            sense,
            lock_contact,
            shunt,
            traces,
            cold,
            hot,
            pump,
            clutch,
            lock_coil,
            common,
            capacitor,
            motor,
            insulation,
            meter: None,
            stray: Vec::new(),
        };
        if let Some((red, black)) = meter {
            circuit.stray = (nodes.iter())
                .map(|[_, wire, _]| [list.branch(line, *wire), list.branch(plug[2], *wire)])
                .collect();
            let ends = circuit.node(red).zip(circuit.node(black));
            circuit.meter = ends.map(|(a, b)| list.branch(a, b));
        }
        circuit.net = list.build();
        circuit
    }

    /// The node of a pin, if it is on the mains side.
    pub fn node(&self, pin: Pin) -> Option<Node> {
        match pin {
            Pin::Wire(t, side) if t.is_mains() => Some(self.nodes[t.index()][side.index()]),
            Pin::PlugLine => Some(self.plug[0]),
            Pin::PlugNeutral => Some(self.plug[1]),
            Pin::PlugEarth => Some(self.plug[2]),
            Pin::FuseIn => Some(self.fuse_in),
            Pin::FuseOut => Some(self.fuse_out),
            Pin::Wire(..) | Pin::BulkPlus | Pin::BulkMinus => None,
        }
    }

    /// Writes every element's value for this state of the machine.
    pub fn set(&mut self, p: &Params, rating: Rating, at: &Switching) {
        let hz = rating.hz;
        let y = |param| T::ohms(p.get(param));
        let net = &mut self.net;
        let gone = T::siemens(GONE_S);
        let volts = rating.volts * p.get(Param::SupplyScale);
        net.set_emf(self.outlet[0], T::outlet_emf(volts));
        let closed = at.plugged && !at.outlet_tripped;
        let line_ohms = p.get(Param::SupplyOhms) + p.get(Param::ExtensionOhms);
        let blades = [
            (closed, 1.0 / line_ohms),
            (closed, 20.0),
            (at.plugged, 1.0 / p.get(Param::OutletGroundOhms)),
        ];
        for (branch, (there, siemens)) in self.outlet.into_iter().zip(blades) {
            net.set_admittance(branch, if there { T::siemens(siemens) } else { gone });
        }
        for (branch, param) in self.insulation.into_iter().zip(INSULATION) {
            net.set_admittance(branch, T::insulation(p.get(param)));
        }
        for pair in &self.stray {
            for (branch, farads) in pair.iter().zip([STRAY_LINE_FARADS, STRAY_EARTH_FARADS]) {
                net.set_admittance(*branch, T::capacitor(farads, 0.0, STRAY_LEAK_OHMS, hz));
            }
        }
        net.set_admittance(self.cord[0], y(Param::CordLineOhms));
        net.set_admittance(self.cord[1], y(Param::CordNeutralOhms));
        net.set_admittance(
            self.fuse,
            if at.fuse_blown {
                gone
            } else {
                y(Param::FuseOhms)
            },
        );
        net.set_admittance(self.filter, y(Param::FilterOhms));
        net.set_admittance(
            self.x_cap,
            T::capacitor(
                p.get(Param::FilterXFarads),
                0.1,
                p.get(Param::FilterBleederOhms),
                hz,
            ),
        );
        for (i, t) in Terminal::ALL[..WIRES].iter().enumerate() {
            let off_board = at.off_board & (1 << i) != 0;
            let off_load = at.off_load & (1 << i) != 0;
            net.set_admittance(
                self.contact[i],
                if off_board {
                    gone
                } else {
                    y(Param::ContactOhms(*t))
                },
            );
            net.set_admittance(
                self.wire[i],
                if off_load {
                    gone
                } else {
                    y(Param::WireOhms(*t))
                },
            );
        }
        for relay in Relay::ALL {
            let (closed, open) = relay_params(*relay);
            let param = if at.relays.has(*relay) { closed } else { open };
            net.set_admittance(self.relay[relay.index()], y(param));
        }
        for trace in &self.traces {
            net.set_admittance(*trace, T::ohms(TRACE_OHMS));
        }
        net.set_admittance(
            self.supply_input,
            T::supply_input(p.get(Param::BoardLoadW), rating.volts),
        );
        net.set_admittance(self.sense, T::ohms(SENSE_OHMS));
        net.set_admittance(self.shunt, y(Param::ShuntOhms));
        let lock = if at.bolted {
            Param::LockContactOhms
        } else {
            Param::LockContactOpenOhms
        };
        net.set_admittance(self.lock_contact, y(lock));
        let mut coil = |branch, ohms, henry| {
            net.set_admittance(branch, T::coil(p.get(ohms), p.get(henry), hz));
        };
        coil(self.cold, Param::ColdCoilOhms, Param::ColdCoilHenry);
        coil(self.hot, Param::HotCoilOhms, Param::HotCoilHenry);
        coil(self.clutch, Param::ClutchCoilOhms, Param::ClutchCoilHenry);
        coil(self.lock_coil, Param::LockCoilOhms, Param::LockCoilHenry);
        let pump_henry = if at.pump_turning {
            Param::PumpRunHenry
        } else {
            Param::PumpLockedHenry
        };
        coil(self.pump, Param::PumpCoilOhms, pump_henry);
        net.set_admittance(
            self.common,
            if at.protector_open {
                gone
            } else {
                y(Param::MotorCommonOhms)
            },
        );
        net.set_admittance(
            self.capacitor,
            T::capacitor(
                p.get(Param::CapFarads),
                p.get(Param::CapEsrOhms),
                p.get(Param::CapShuntOhms),
                hz,
            ),
        );
        net.set_two_port(
            self.motor,
            T::motor(
                &motor_circuit(p, rating, at.winding_c),
                speed_of(at.speed_step),
            ),
        );
    }

    /// Back to how it was laid out, without any value.
    pub fn reset(&mut self) {
        self.net.reset();
    }

    /// Puts a charge on the filter capacitor: a source of `volts` behind its series resistance.
    pub fn set_filter_charge(&mut self, volts: T) {
        self.net.set_admittance(self.x_cap, T::siemens(1.0));
        self.net.set_emf(self.x_cap, volts);
    }

    /// Puts the insulation under working voltage, as an insulation tester does.
    pub fn stress_insulation(&mut self, p: &Params) {
        for (branch, param) in self.insulation.into_iter().zip(INSULATION) {
            self.net.set_admittance(branch, T::ohms(p.get(param)));
        }
    }

    /// Sets the meter across its pins: admittance and test source.
    pub fn set_meter(&mut self, y: T, emf: T) {
        if let Some(meter) = self.meter {
            self.net.set_admittance(meter, y);
            self.net.set_emf(meter, emf);
        }
    }

    /// Solves if anything changed.
    pub fn solve(&mut self) -> bool {
        self.net.solve()
    }

    /// Solves whether or not anything changed.
    pub fn solve_always(&mut self) {
        self.net.solve_always();
    }

    /// How often the network was solved.
    pub fn solves(&self) -> u64 {
        self.net.solves()
    }

    /// The network itself (for writing it out and checking it).
    pub fn network(&self) -> &Network<T> {
        &self.net
    }

    /// Voltage from `black` to `red`, V; `None` when a pin is not on the mains side.
    pub fn drop(&self, red: Pin, black: Pin) -> Option<T> {
        Some(self.net.drop(self.node(red)?, self.node(black)?))
    }

    /// Current in a harness wire towards its load, A.
    pub fn wire_current(&self, t: Terminal) -> T {
        self.net.current(self.wire[t.index()])
    }

    /// Current through the cord's line conductor, A.
    pub fn line_current(&self) -> T {
        self.net.current(self.cord[0])
    }

    /// Current that does not come back through the cord's conductors, A: that to ground.
    pub fn residual_current(&self) -> T {
        self.net.current(self.outlet[2])
    }

    /// Currents in motor windings A and B, A.
    pub fn winding_currents(&self) -> [T; 2] {
        self.net.two_port_current(self.motor)
    }

    /// Voltage between the board's line and neutral rails, V.
    pub fn board_voltage(&self) -> T {
        self.net.drop(
            self.nodes[Terminal::CordLine.index()][0],
            self.nodes[Terminal::CordNeutral.index()][0],
        )
    }

    /// Voltage on the line behind the lid lock, at the board, V.
    pub fn locked_voltage(&self) -> T {
        self.net.drop(
            self.nodes[Terminal::LockLineOut.index()][0],
            self.nodes[Terminal::CordNeutral.index()][0],
        )
    }

    /// Voltage across the pump's own terminals, V.
    pub fn pump_voltage(&self) -> T {
        self.net.drop(
            self.nodes[Terminal::Pump1.index()][2],
            self.nodes[Terminal::Pump2.index()][2],
        )
    }
}

/// What keeps filter, pump and motor from the cabinet.
const INSULATION: [Param; 3] = [
    Param::FilterInsulationOhms,
    Param::PumpInsulationOhms,
    Param::MotorInsulationOhms,
];

/// The two parameters of a relay's contact: closed and open.
pub fn relay_params(relay: Relay) -> (Param, Param) {
    match relay {
        Relay::Cold => (Param::RelayColdClosedOhms, Param::RelayColdOpenOhms),
        Relay::Hot => (Param::RelayHotClosedOhms, Param::RelayHotOpenOhms),
        Relay::Pump => (Param::RelayPumpClosedOhms, Param::RelayPumpOpenOhms),
        Relay::MotorA => (Param::RelayMotorAClosedOhms, Param::RelayMotorAOpenOhms),
        Relay::MotorB => (Param::RelayMotorBClosedOhms, Param::RelayMotorBOpenOhms),
        Relay::Clutch => (Param::RelayClutchClosedOhms, Param::RelayClutchOpenOhms),
        Relay::Lock => (Param::RelayLockClosedOhms, Param::RelayLockOpenOhms),
    }
}

/// The motor's equivalent circuit with its windings at `winding_c` °C.
pub fn motor_circuit(p: &Params, rating: Rating, winding_c: i16) -> MotorCircuit {
    let c = f64::from(winding_c);
    MotorCircuit {
        a_ohms: copper_ohms(p.get(Param::MotorAOhms), c),
        b_ohms: copper_ohms(p.get(Param::MotorBOhms), c),
        leak_ohms: p.get(Param::MotorLeakOhms),
        magnet_ohms: p.get(Param::MotorMagnetOhms),
        rotor_ohms: p.get(Param::MotorRotorOhms),
        rotor_leak_ohms: p.get(Param::MotorRotorLeakOhms),
        supply_hz: rating.hz,
    }
}
