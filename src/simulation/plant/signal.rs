//! The low-voltage side as a direct-current network: rail, harness, sensors and contact inputs.

use super::heat::NTC_3977;
use super::mains::WIRES as FIRST;
use super::network::{Branch, Netlist, Network, Node};
use super::params::{Param, Params};
use crate::interface::{Pin, Side, Terminal};

const WIRES: usize = Terminal::ALL.len() - FIRST;
const GONE_S: f64 = 1e-10;
const TRACE_OHMS: f64 = 0.005;
/// Series protection in the rail to the sensors, Ω.
const RAIL_OHMS: f64 = 10.0;
/// Pull-down at the pressure input, so that an open wire reads as no voltage, Ω.
const PRESSURE_PULLDOWN_OHMS: f64 = 100e3;
/// Supply that the sensors are made for, V.
const SENSOR_V: f64 = 5.0;
/// What a three-wire sensor draws, Ω between its supply and ground.
const SENSOR_DRAW_OHMS: f64 = 1000.0;

/// All that decides the low-voltage network besides the parameters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SignalState {
    /// The control's rail is up.
    pub powered: bool,
    /// Lid switch closed (lid down).
    pub lid_closed: bool,
    /// Cam switch closed.
    pub cam_closed: bool,
    /// Pressure at the sensor, kPa, already in steps.
    pub pressure_kpa: f64,
    /// Temperature of the thermistor element, °C, already in steps.
    pub therm_c: f64,
    /// A magnet stands before the pickup: its output pulls down.
    pub pickup_low: bool,
    /// Harness ends off at the board, a bit for each terminal, counted from the first low-voltage one.
    pub off_board: u32,
    /// Harness ends off at the load, likewise.
    pub off_load: u32,
}

/// What stands between the rail and a pin.
#[derive(Clone, Copy)]
enum Feed {
    /// The supply of a sensor.
    Supply,
    /// The thermistor's pull-up.
    ThermistorPullup,
    /// The pull-up of a contact or of an open collector.
    ContactPullup,
}

/// The low-voltage circuit.
#[derive(Clone)]
pub struct Signals {
    net: Network<f64>,
    nodes: [[Node; 3]; WIRES],
    contact: [Branch; WIRES],
    wire: [Branch; WIRES],
    /// Rail to each pin that has a pull-up or a supply.
    feeds: [(Branch, Feed); 6],
    grounds: [Branch; 5],
    pressure_pulldown: Branch,
    pressure_draw: Branch,
    pressure_out: Branch,
    pickup_draw: Branch,
    pickup_out: Branch,
    therm: Branch,
    lid: Branch,
    cam: Branch,
    meter: Option<Branch>,
}

impl Signals {
    /// Lays out the circuit; `meter` adds a meter across two low-voltage pins.
    pub fn new(meter: Option<(Pin, Pin)>) -> Signals {
        use Terminal::{
            Cam1, Cam2, LidSwitch1, LidSwitch2, PickupGround, PickupOut, PickupSupply,
            PressureGround, PressureOut, PressureSupply, Therm1, Therm2,
        };
        let mut list = Netlist::new();
        let nodes: [[Node; 3]; WIRES] =
            core::array::from_fn(|_| core::array::from_fn(|_| list.node()));
        let board = |t: Terminal| nodes[t.index() - FIRST][0];
        let load = |t: Terminal| nodes[t.index() - FIRST][2];
        let contact = core::array::from_fn(|i| list.branch(nodes[i][0], nodes[i][1]));
        let wire = core::array::from_fn(|i| list.branch(nodes[i][1], nodes[i][2]));
        let feeds = [
            (PickupSupply, Feed::Supply),
            (PressureSupply, Feed::Supply),
            (Therm1, Feed::ThermistorPullup),
            (LidSwitch1, Feed::ContactPullup),
            (Cam1, Feed::ContactPullup),
            (PickupOut, Feed::ContactPullup),
        ]
        .map(|(t, feed)| (list.branch(board(t), Node::GROUND), feed));
        let grounds = [PickupGround, PressureGround, Therm2, LidSwitch2, Cam2]
            .map(|t| list.branch(board(t), Node::GROUND));
        let pressure_pulldown = list.branch(board(PressureOut), Node::GROUND);
        let mut signals = Signals {
            net: Netlist::new().build(),
            nodes,
            contact,
            wire,
            feeds,
            grounds,
            pressure_pulldown,
            pressure_draw: list.branch(load(PressureSupply), load(PressureGround)),
            pressure_out: list.branch(load(PressureOut), load(PressureGround)),
            pickup_draw: list.branch(load(PickupSupply), load(PickupGround)),
            pickup_out: list.branch(load(PickupOut), load(PickupGround)),
            therm: list.branch(load(Therm1), load(Therm2)),
            lid: list.branch(load(LidSwitch1), load(LidSwitch2)),
            cam: list.branch(load(Cam1), load(Cam2)),
            meter: None,
        };
        if let Some((red, black)) = meter {
            let ends = signals.node(red).zip(signals.node(black));
            signals.meter = ends.map(|(a, b)| list.branch(a, b));
        }
        signals.net = list.build();
        signals
    }

    /// The node of a pin, if it is on the low-voltage side.
    pub fn node(&self, pin: Pin) -> Option<Node> {
        match pin {
            Pin::Wire(t, side) if !t.is_mains() => {
                Some(self.nodes[t.index() - FIRST][side.index()])
            }
            Pin::Wire(..)
            | Pin::PlugLine
            | Pin::PlugNeutral
            | Pin::PlugEarth
            | Pin::FuseIn
            | Pin::FuseOut
            | Pin::BulkPlus
            | Pin::BulkMinus => None,
        }
    }

    /// Writes every element's value for this state.
    pub fn set(&mut self, p: &Params, at: &SignalState) {
        let rail_v = if at.powered { p.get(Param::RailV) } else { 0.0 };
        for (i, t) in Terminal::ALL[FIRST..].iter().enumerate() {
            let y = |off: u32, param| {
                if off & (1 << i) != 0 {
                    GONE_S
                } else {
                    1.0 / p.get(param)
                }
            };
            self.net
                .set_admittance(self.contact[i], y(at.off_board, Param::ContactOhms(*t)));
            self.net
                .set_admittance(self.wire[i], y(at.off_load, Param::WireOhms(*t)));
        }
        for (branch, feed) in self.feeds {
            let ohms = match feed {
                Feed::Supply => RAIL_OHMS,
                Feed::ThermistorPullup => p.get(Param::ThermPullupOhms),
                Feed::ContactPullup => p.get(Param::SensePullupOhms),
            };
            self.net.set_admittance(branch, 1.0 / ohms);
            self.net.set_emf(branch, rail_v);
        }
        for ground in self.grounds {
            self.net.set_admittance(ground, 1.0 / TRACE_OHMS);
        }
        self.net
            .set_admittance(self.pressure_pulldown, 1.0 / PRESSURE_PULLDOWN_OHMS);
        self.net
            .set_admittance(self.pressure_draw, 1.0 / SENSOR_DRAW_OHMS);
        self.net
            .set_admittance(self.pickup_draw, 1.0 / SENSOR_DRAW_OHMS);
        // A ratiometric sensor: its output follows its own supply, and rests with it.
        let fed = if at.powered {
            self.drop(
                Pin::Wire(Terminal::PressureSupply, Side::Load),
                Pin::Wire(Terminal::PressureGround, Side::Load),
            )
            .unwrap_or(0.0)
                / SENSOR_V
        } else {
            0.0
        };
        let emf = (p.get(Param::PressureZeroV) + p.get(Param::PressureVPerKpa) * at.pressure_kpa)
            .clamp(0.05, 4.95);
        let fed = if fed > 0.8 { fed.min(1.0) } else { 0.0 };
        self.net
            .set_admittance(self.pressure_out, 1.0 / p.get(Param::PressureOutOhms));
        self.net.set_emf(self.pressure_out, emf * fed);
        let pickup_fed = self.pickup_supply_v() > 3.5;
        let low = at.pickup_low && pickup_fed;
        self.net.set_admittance(
            self.pickup_out,
            if low {
                1.0 / p.get(Param::PickupOutOhms)
            } else {
                1e-7
            },
        );
        let element = NTC_3977.ohms(p.get(Param::ThermR25Ohms), at.therm_c);
        let therm = element + p.get(Param::ThermSeriesOhms);
        self.net
            .set_admittance(self.therm, 1.0 / therm + 1.0 / p.get(Param::ThermShuntOhms));
        let lid = if at.lid_closed {
            Param::LidSwitchClosedOhms
        } else {
            Param::LidSwitchOpenOhms
        };
        self.net.set_admittance(self.lid, 1.0 / p.get(lid));
        let cam = if at.cam_closed {
            Param::CamClosedOhms
        } else {
            Param::CamOpenOhms
        };
        self.net.set_admittance(self.cam, 1.0 / p.get(cam));
    }

    /// Solves if anything changed. A changed supply moves the ratiometric outputs, so the caller
    /// sets and solves again while this returns true, twice at most.
    pub fn settle(&mut self, p: &Params, at: &SignalState) {
        for _ in 0..3 {
            self.set(p, at);
            if !self.net.solve() {
                break;
            }
        }
    }

    /// Back to how it was laid out, without any value.
    pub fn reset(&mut self) {
        self.net.reset();
    }

    /// Sets the meter across its pins.
    pub fn set_meter(&mut self, siemens: f64, emf: f64) {
        if let Some(meter) = self.meter {
            self.net.set_admittance(meter, siemens);
            self.net.set_emf(meter, emf);
        }
    }

    /// Voltage from `black` to `red`, V; `None` when a pin is not on this side.
    pub fn drop(&self, red: Pin, black: Pin) -> Option<f64> {
        Some(self.net.drop(self.node(red)?, self.node(black)?))
    }

    /// Voltage at the board's own pin for `t`, V.
    pub fn input_v(&self, t: Terminal) -> f64 {
        self.net.voltage(self.nodes[t.index() - FIRST][0])
    }

    /// How often the network was solved.
    pub fn solves(&self) -> u64 {
        self.net.solves()
    }

    fn pickup_supply_v(&self) -> f64 {
        let at = |t| Pin::Wire(t, Side::Load);
        self.drop(at(Terminal::PickupSupply), at(Terminal::PickupGround))
            .unwrap_or(0.0)
    }
}
