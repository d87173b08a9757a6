//! What an ideal instrument with its own input resistance would read between two pins, from the
//! solved networks; for the machine as it is, or as it would be with some other fault and all that
//! can be seen from outside alike. Range, resolution and noise belong to the meter on the bench.
//!
//! [`Probed`] is the machine's side of a reading, [`Probes`] the instrument's: two pins, and the networks with
//! a meter across them. Those are laid out once for as long as the probes stay; each reading writes their
//! values anew and solves.

use super::fault::Op;
use super::mains::{Analysis, Circuit, Switching, angular};
use super::motor::{quotient, rms};
use super::params::{Param, Params};
use super::signal::{SignalState, Signals};
use super::supply::{Supply, blows_in_time, charged_v};
use super::washer::{Plant, empty_basket};
use super::water::hydrostatic_kpa;
use crate::interface::{Pin, Rating, Relay, Relays, Terminal};
use num_complex::Complex64;

/// Test source of the ohmmeter, V.
const TEST_V: f64 = 0.6;
/// Resistance behind the test source, Ω.
const TEST_OHMS: f64 = 1000.0;
/// Test source of the insulation tester, V direct (IEC 60364-6 for circuits of up to 500 V, from memory).
const INSULATION_TEST_V: f64 = 500.0;
/// Resistance behind it, Ω: it gives its 500 V from 1 MΩ up within a twentieth, and a short circuit 10 mA. Our own.
const INSULATION_TEST_OHMS: f64 = 50e3;
/// Frequency at which capacitance is measured, Hz.
const FARADS_HZ: f64 = 100.0;
/// A pickup signal is a signal above this rate, Hz.
const TURNING_HZ: f64 = 1.0;
/// A hose that loses its air faster than this has lost it by the time that anyone measures, s.
const LEAKED_S: f64 = 2000.0;

/// A machine to put probes on: all that decides a reading, besides the probes.
#[derive(Clone, Debug, PartialEq)]
pub struct Probed {
    rating: Rating,
    params: Params,
    mains: Switching,
    signals: SignalState,
    bulk_v: f64,
    filter_v: f64,
    pulse_hz: f64,
}

impl Plant {
    /// The machine as it is.
    pub fn probed(&self) -> Probed {
        Probed {
            rating: self.rating(),
            params: self.params().clone(),
            mains: self.mains_state(),
            signals: self.signal_state(false),
            bulk_v: self.supply().bulk_v,
            filter_v: self.supply().filter_v,
            pulse_hz: pulse_hz(self.params(), self.drive().pulley_rad_s),
        }
    }

    /// The parameters of this machine with only `changes` wrong in it.
    pub fn params_if(&self, changes: &[(Param, Op)]) -> Params {
        let mut params = self.sound().clone();
        for (param, op) in changes {
            params.set(*param, op.apply(params.get(*param)));
        }
        if self.basket_empty() {
            empty_basket(&mut params);
        }
        params
    }

    /// The machine as it would be with only `changes` wrong in it, while everything that can be
    /// seen from outside (water, plug, lid, what is switched, the motor's speed) is as it is.
    pub fn probed_if(&self, changes: &[(Param, Op)]) -> Probed {
        let params = self.params_if(changes);
        let water = self.water();
        let driven = self.mains_state().relays;
        let belt_holds = params.get(Param::BeltGripNm) > 0.1;
        let turns = self.drive().motor_rad_s / super::drive::BELT_RATIO;
        let pulley = if belt_holds { turns } else { 0.0 };
        let depth_mm = (water.level_mm() - super::water::DOME_MM).max(0.0);
        let leaked =
            params.get(Param::HoseLeakS) < LEAKED_S || params.get(Param::HoseLagS) > LEAKED_S;
        let mut probed = Probed {
            rating: self.rating(),
            mains: Switching {
                bolted: driven.has(Relay::Lock)
                    && !self.lid_open()
                    && params.get(Param::LockTravelS) < 10.0,
                pump_turning: driven.has(Relay::Pump) && params.get(Param::PumpFree) > 0.5,
                protector_open: false,
                fuse_blown: false,
                ..self.mains_state()
            },
            signals: SignalState {
                pressure_kpa: if leaked {
                    0.0
                } else {
                    hydrostatic_kpa(depth_mm, water.water_c)
                },
                ..self.signal_state_under(&params)
            },
            pulse_hz: pulse_hz(&params, pulley),
            params,
            bulk_v: self.supply().bulk_v,
            filter_v: self.supply().filter_v,
        };
        probed.mains.fuse_blown =
            self.supply().fuse_blown && probed.blows_the_fuse(self.mains_layout());
        let board_v = probed.settle_actuators(self.mains_layout());
        if self.energized() {
            let supply = Supply {
                bulk_v: charged_v(board_v).max(0.0),
                ..self.supply().clone()
            };
            probed.bulk_v = supply.bulk_v;
            probed.signals.powered = supply.would_run(&probed.params);
        }
        probed
    }
}

/// Pulses per second of the pickup for a pulley speed.
fn pulse_hz(p: &Params, pulley_rad_s: f64) -> f64 {
    let rev_s = pulley_rad_s.abs() / core::f64::consts::TAU;
    rev_s * p.get(Param::PickupPulsesPerRev) * p.get(Param::PickupGap).clamp(0.0, 1.0)
}

impl Probed {
    /// Whether such a machine blows its line fuse by being plugged in, nothing switched on.
    fn blows_the_fuse(&self, mut circuit: Circuit<Complex64>) -> bool {
        let plugged_in = Switching {
            plugged: true,
            outlet_tripped: false,
            relays: Relays::NONE,
            ..self.mains
        };
        circuit.reset();
        circuit.set(&self.params, self.rating, &plugged_in);
        circuit.solve();
        blows_in_time(rms(circuit.line_current()))
    }

    /// A bolt and a pump move only if they draw enough current. Returns the mains at the board, V rms.
    fn settle_actuators(&mut self, mut circuit: Circuit<Complex64>) -> f64 {
        circuit.reset();
        circuit.set(&self.params, self.rating, &self.mains);
        circuit.solve();
        let lock_a = rms(circuit.wire_current(Terminal::LockCoil1));
        let pump_a = rms(circuit.wire_current(Terminal::Pump1));
        self.mains.bolted &= lock_a >= self.params.get(Param::LockPullInA);
        self.mains.pump_turning &= pump_a >= self.params.get(Param::PumpPullInA);
        rms(circuit.board_voltage())
    }
}

/// Probes on two pins. What they read depends on the machine alone, never on what they read before.
#[derive(Clone)]
pub struct Probes {
    red: Pin,
    black: Pin,
    /// The mains side with phasors and with direct current, with the meter across the pins.
    live: Option<Circuit<Complex64>>,
    dead: Option<Circuit<f64>>,
    /// The mains side without a meter, for the clamp.
    clamped: Option<Circuit<Complex64>>,
    /// The low-voltage side with the meter.
    signals: Option<Signals>,
}

impl Probes {
    /// On these pins.
    pub fn on(red: Pin, black: Pin) -> Probes {
        Probes {
            red,
            black,
            live: None,
            dead: None,
            clamped: None,
            signals: None,
        }
    }

    /// The pins under the red and the black probe.
    pub fn pins(&self) -> (Pin, Pin) {
        (self.red, self.black)
    }

    /// Alternating voltage between the pins, V rms, with `input_ohms` across them. A wire that nothing
    /// holds takes a ghost of the line beside it, which a low `input_ohms` makes vanish.
    pub fn volts_ac(&mut self, at: &Probed, input_ohms: f64) -> f64 {
        let (red, black) = self.pins();
        let circuit = self.live(at, at.rating);
        circuit.set_meter(Complex64::ohms(input_ohms), Complex64::ZERO);
        circuit.solve();
        circuit.drop(red, black).map_or(0.0, rms)
    }

    /// Direct voltage from black to red, V, with `input_ohms` across them.
    pub fn volts_dc(&mut self, at: &Probed, input_ohms: f64) -> f64 {
        match self.pins() {
            (Pin::BulkPlus, Pin::BulkMinus) => at.bulk_v,
            (Pin::BulkMinus, Pin::BulkPlus) => -at.bulk_v,
            _ => self
                .signal_volts(at, input_ohms)
                .or_else(|| self.charge_volts(at, input_ohms))
                .unwrap_or(0.0),
        }
    }

    /// Resistance between the pins, Ω; infinite when open. Only right on a dead circuit: stored
    /// charge disturbs it as it does a real ohmmeter.
    pub fn ohms(&mut self, at: &Probed) -> f64 {
        if matches!(
            self.pins(),
            (Pin::BulkPlus, Pin::BulkMinus) | (Pin::BulkMinus, Pin::BulkPlus)
        ) {
            return at.params.get(Param::BulkBleederOhms);
        }
        let drop = self
            .test_drop_signal(at)
            .or_else(|| self.test_drop_mains(at));
        let Some(drop) = drop else {
            return f64::INFINITY;
        };
        let through_a = (TEST_V - drop) / TEST_OHMS;
        if through_a < 1e-10 {
            f64::INFINITY
        } else {
            drop / through_a
        }
    }

    /// Insulation between two mains pins, Ω, with working voltage and more on it; infinite when open, or where a pin
    /// is not on the mains side. Only right on a dead circuit, as with [`Probes::ohms`].
    pub fn insulation_ohms(&mut self, at: &Probed) -> f64 {
        let (red, black) = self.pins();
        let circuit = self.dead(at);
        circuit.stress_insulation(&at.params);
        circuit.set_meter(1.0 / INSULATION_TEST_OHMS, INSULATION_TEST_V);
        circuit.solve();
        let Some(drop) = circuit.drop(red, black) else {
            return f64::INFINITY;
        };
        let through_a = (INSULATION_TEST_V - drop) / INSULATION_TEST_OHMS;
        if through_a < 1e-10 {
            f64::INFINITY
        } else {
            drop / through_a
        }
    }

    /// Capacitance between two mains pins, F, from the quadrature current of a small alternating test
    /// voltage; none where something else than capacitance carries most of it, such as a winding
    /// across the capacitor. Only right on a dead circuit, as with [`Probes::ohms`].
    pub fn farads(&mut self, at: &Probed) -> Option<f64> {
        let (red, black) = self.pins();
        let rating = Rating {
            hz: FARADS_HZ,
            ..at.rating
        };
        let circuit = self.live(at, rating);
        if circuit.node(red).zip(circuit.node(black)).is_none() {
            return Some(0.0);
        }
        circuit.set_meter(Complex64::ohms(TEST_OHMS), Complex64::new(TEST_V, 0.0));
        circuit.solve();
        let drop = circuit.drop(red, black)?;
        let through = (Complex64::new(TEST_V, 0.0) - drop) / TEST_OHMS;
        // Nothing passes: an open circuit has no capacitance, whatever little leaks.
        if rms(through) < 1e-8 {
            return Some(0.0);
        }
        let siemens = quotient(through, drop);
        (siemens.im > siemens.re).then(|| siemens.im / angular(FARADS_HZ))
    }

    /// Current in the wire at the red pin, A rms; none for pins without a wire on the mains side.
    pub fn amps(&mut self, at: &Probed) -> Option<f64> {
        let circuit = self.clamped.get_or_insert_with(|| Circuit::new(None));
        circuit.reset();
        circuit.set(&at.params, at.rating, &at.mains);
        circuit.solve();
        let amps = match self.red {
            Pin::Wire(t, _) if t.is_mains() => circuit.wire_current(t),
            Pin::PlugLine | Pin::FuseIn | Pin::FuseOut => circuit.line_current(),
            Pin::Wire(..) | Pin::PlugNeutral | Pin::PlugEarth | Pin::BulkPlus | Pin::BulkMinus => {
                return None;
            }
        };
        Some(rms(amps))
    }

    /// Frequency between the pins, Hz.
    pub fn hertz(&mut self, at: &Probed, input_ohms: f64) -> f64 {
        let is_pickup = |pin| matches!(pin, Pin::Wire(Terminal::PickupOut, _));
        if is_pickup(self.red) || is_pickup(self.black) {
            let (low, high) = self.pickup_levels(at, input_ohms);
            return if (high - low).abs() > 2.0 {
                at.pulse_hz
            } else {
                0.0
            };
        }
        if self.volts_ac(at, input_ohms) > 5.0 {
            at.rating.hz
        } else {
            0.0
        }
    }

    /// The mains side with phasors, its values those of `at`; the meter is still to be set.
    fn live(&mut self, at: &Probed, rating: Rating) -> &mut Circuit<Complex64> {
        let pins = self.pins();
        let circuit = self.live.get_or_insert_with(|| Circuit::new(Some(pins)));
        circuit.reset();
        circuit.set(&at.params, rating, &at.mains);
        circuit
    }

    /// The same with direct current.
    fn dead(&mut self, at: &Probed) -> &mut Circuit<f64> {
        let pins = self.pins();
        let circuit = self.dead.get_or_insert_with(|| Circuit::new(Some(pins)));
        circuit.reset();
        circuit.set(&at.params, at.rating, &at.mains);
        circuit
    }

    /// Voltage between the pins on the low-voltage side with this meter across them, V.
    fn settled(&mut self, at: &Probed, state: &SignalState, (y, emf): (f64, f64)) -> Option<f64> {
        let (red, black) = self.pins();
        let pins = (red, black);
        let circuit = self.signals.get_or_insert_with(|| Signals::new(Some(pins)));
        circuit.node(red).zip(circuit.node(black))?;
        // What the ratiometric outputs settle to may depend on where they begin.
        circuit.reset();
        circuit.set_meter(y, emf);
        circuit.settle(&at.params, state);
        circuit.drop(red, black)
    }

    fn test_drop_signal(&mut self, at: &Probed) -> Option<f64> {
        let unpowered = SignalState {
            powered: false,
            ..at.signals
        };
        self.settled(at, &unpowered, (1.0 / TEST_OHMS, TEST_V))
    }

    fn test_drop_mains(&mut self, at: &Probed) -> Option<f64> {
        let (red, black) = self.pins();
        let circuit = self.dead(at);
        if at.filter_v > 0.5 {
            circuit.set_filter_charge(at.filter_v);
        }
        circuit.set_meter(1.0 / TEST_OHMS, TEST_V);
        circuit.solve();
        circuit.drop(red, black)
    }

    fn pickup_levels(&mut self, at: &Probed, input_ohms: f64) -> (f64, f64) {
        let mut level = |pickup_low| {
            let state = SignalState {
                pickup_low,
                ..at.signals
            };
            self.settled(at, &state, (1.0 / input_ohms, 0.0))
                .unwrap_or(0.0)
        };
        (level(true), level(false))
    }

    fn signal_volts(&mut self, at: &Probed, input_ohms: f64) -> Option<f64> {
        let still = self.settled(at, &at.signals, (1.0 / input_ohms, 0.0))?;
        if at.pulse_hz > TURNING_HZ {
            // A slow meter shows the mean of a square wave.
            let (low, high) = self.pickup_levels(at, input_ohms);
            return Some(0.5 * (low + high));
        }
        Some(still)
    }

    fn charge_volts(&mut self, at: &Probed, input_ohms: f64) -> Option<f64> {
        if at.mains.plugged {
            return Some(0.0);
        }
        let (red, black) = self.pins();
        let circuit = self.dead(at);
        circuit.set_filter_charge(at.filter_v);
        circuit.set_meter(1.0 / input_ohms, 0.0);
        circuit.solve();
        circuit.drop(red, black)
    }
}
