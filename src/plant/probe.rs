//! What an ideal instrument with its own input resistance would read between two pins, from the
//! solved networks. Range, resolution and noise belong to the meter on the bench.

use super::ids::{Pin, Terminal};
use super::mains::{Analysis, Circuit};
use super::signal::{SignalState, Signals};
use super::washer::Plant;
use num_complex::Complex64;

/// Test source of the ohmmeter, V, and the resistance behind it, Ω.
const TEST_V: f64 = 0.6;
const TEST_OHMS: f64 = 1000.0;
/// A pickup signal is a signal above this rate, Hz.
const TURNING_HZ: f64 = 1.0;

impl Plant {
    /// Alternating voltage between two pins, V rms, with `input_ohms` across them.
    pub fn probe_volts_ac(&self, red: Pin, black: Pin, input_ohms: f64) -> f64 {
        let Some(at) = self.mains_state() else { return 0.0 };
        let mut circuit = Circuit::<Complex64>::new(Some((red, black)));
        circuit.set(self.params(), self.rating(), &at);
        let volts = self.rating().volts * self.params().get(super::Param::SupplyScale);
        circuit.set_outlet_emf(Complex64::new(volts, 0.0));
        circuit.set_meter(Complex64::ohms(input_ohms), Complex64::ZERO);
        circuit.solve();
        circuit.drop(red, black).map_or(0.0, |v| v.norm_sqr().sqrt())
    }

    /// Direct voltage from `black` to `red`, V, with `input_ohms` across them.
    pub fn probe_volts_dc(&self, red: Pin, black: Pin, input_ohms: f64) -> f64 {
        match (red, black) {
            (Pin::BulkPlus, Pin::BulkMinus) => self.supply().bulk_v,
            (Pin::BulkMinus, Pin::BulkPlus) => -self.supply().bulk_v,
            _ => self
                .signal_volts(red, black, input_ohms)
                .or_else(|| self.charge_volts(red, black, input_ohms))
                .unwrap_or(0.0),
        }
    }

    /// Resistance between two pins, Ω. Only right on a dead circuit: stored charge disturbs it as
    /// it does a real ohmmeter.
    pub fn probe_ohms(&self, red: Pin, black: Pin) -> f64 {
        let meter = (1.0 / TEST_OHMS, TEST_V);
        if matches!((red, black), (Pin::BulkPlus, Pin::BulkMinus) | (Pin::BulkMinus, Pin::BulkPlus)) {
            return self.params().get(super::Param::BulkBleederOhms);
        }
        let reading = |drop: Option<f64>, amps: Option<f64>| {
            let drop = drop?;
            // The meter's branch carries its own test current backwards: through the circuit
            // flows what the source gives after its own resistance.
            let _ = amps?;
            let through = (TEST_V - drop) / TEST_OHMS;
            Some(if through.abs() < 1e-13 { f64::INFINITY } else { drop / through })
        };
        let signal = self.signals_state().and_then(|at| {
            let mut circuit = Signals::new(Some((red, black)));
            circuit.set_meter(meter.0, meter.1);
            circuit.settle(self.params(), &SignalState { powered: false, ..at });
            reading(circuit.drop(red, black), circuit.meter_current())
        });
        let mains = || {
            let at = self.mains_state()?;
            let mut circuit = Circuit::<f64>::new(Some((red, black)));
            circuit.set(self.params(), self.rating(), &at);
            circuit.set_outlet_emf(0.0);
            if self.supply().filter_v > 0.5 {
                circuit.set_filter_charge(self.supply().filter_v);
            }
            circuit.set_meter(meter.0, meter.1);
            circuit.solve();
            reading(circuit.drop(red, black), circuit.meter_current())
        };
        signal.or_else(mains).unwrap_or(f64::INFINITY)
    }

    /// Current in the wire at `pin`, A rms; none for pins without a wire on the mains side.
    pub fn probe_amps(&self, pin: Pin) -> Option<f64> {
        match pin {
            Pin::Wire(t, _) if t.is_mains() => Some(self.mains().wire_current(t).norm_sqr().sqrt()),
            Pin::PlugLine | Pin::FuseIn | Pin::FuseOut => Some(self.amps().line),
            _ => None,
        }
    }

    /// Frequency between two pins, Hz.
    pub fn probe_hertz(&self, red: Pin, black: Pin, input_ohms: f64) -> f64 {
        let is_pickup = |pin| matches!(pin, Pin::Wire(Terminal::PickupOut, _));
        if is_pickup(red) || is_pickup(black) {
            let (low, high) = self.pickup_levels(red, black, input_ohms);
            return if (high - low).abs() > 2.0 { self.pulse_hz() } else { 0.0 };
        }
        if self.probe_volts_ac(red, black, input_ohms) > 5.0 { self.rating().hz } else { 0.0 }
    }

    fn pickup_levels(&self, red: Pin, black: Pin, input_ohms: f64) -> (f64, f64) {
        let Some(at) = self.signals_state() else { return (0.0, 0.0) };
        let level = |pickup_low| {
            let mut circuit = Signals::new(Some((red, black)));
            circuit.set_meter(1.0 / input_ohms, 0.0);
            circuit.settle(self.params(), &SignalState { pickup_low, ..at });
            circuit.drop(red, black).unwrap_or(0.0)
        };
        (level(true), level(false))
    }

    fn signal_volts(&self, red: Pin, black: Pin, input_ohms: f64) -> Option<f64> {
        let at = self.signals_state()?;
        let mut circuit = Signals::new(Some((red, black)));
        circuit.node(red).zip(circuit.node(black))?;
        if self.pulse_hz() > TURNING_HZ {
            // A slow meter shows the mean of a square wave.
            let (low, high) = self.pickup_levels(red, black, input_ohms);
            return Some(0.5 * (low + high));
        }
        circuit.set_meter(1.0 / input_ohms, 0.0);
        circuit.settle(self.params(), &at);
        circuit.drop(red, black)
    }

    fn charge_volts(&self, red: Pin, black: Pin, input_ohms: f64) -> Option<f64> {
        let at = self.mains_state()?;
        if at.plugged {
            return Some(0.0);
        }
        let mut circuit = Circuit::<f64>::new(Some((red, black)));
        circuit.set(self.params(), self.rating(), &at);
        circuit.set_outlet_emf(0.0);
        circuit.set_filter_charge(self.supply().filter_v);
        circuit.set_meter(1.0 / input_ohms, 0.0);
        circuit.solve();
        circuit.drop(red, black)
    }
}
