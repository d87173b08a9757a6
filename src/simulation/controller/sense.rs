//! From input pins to quantities: filters, scaling, and the rate of the speed pulses.

use super::board::{Board, ThermistorRules};
use super::debounce::Debounce;
use super::io::Inputs;
use super::memory::Calibration;
use crate::units::{GRAVITY_M_S2, TICK_MS, TICK_S, ZERO_C_K};
use serde::Serialize;

/// Water at 20 °C, kg/m³.
const WATER_KG_M3: f64 = 998.2;
/// Length of one pulse bucket, ticks.
const BUCKET_TICKS: u8 = 10;
/// Buckets that make up the speed.
const BUCKETS: usize = 5;
/// The thermistor is converted this often, ticks: water is slow and the logarithm is dear.
const THERM_TICKS: u8 = 10;

/// Level for one volt of the pressure input, mm/V.
pub(super) fn mm_per_volt(v_per_kpa: f64) -> f64 {
    1000.0 * 1000.0 / (WATER_KG_M3 * GRAVITY_M_S2 * v_per_kpa)
}

/// Temperature from the divider's voltage by the Beta equation, °C. The voltage must lie within
/// the rail.
pub(super) fn thermistor_c(rules: &ThermistorRules, volts: f64) -> f64 {
    let volts = volts.clamp(0.001, rules.rail_v - 0.001);
    let ohms = rules.pullup_ohms * volts / (rules.rail_v - volts);
    let inverse = 1.0 / (25.0 + ZERO_C_K) + libm::log(ohms / rules.r25_ohms) / rules.beta_k;
    1.0 / inverse - ZERO_C_K
}

/// What the control believes about the machine.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Sense {
    pub bulk_v: f64,
    pub pressure_v: f64,
    pub level_mm: f64,
    pub thermistor_v: f64,
    pub water_c: f64,
    pub motor_a: f64,
    /// Line comes back through the lock, this tick and debounced.
    pub locked_now: bool,
    pub locked: Debounce,
    pub cam: Debounce,
    pub pulses: u16,
    /// Ticks since the last pulse.
    pub still: u32,
    pub rpm: f64,
    /// Swing of the speed as a share of its mean.
    pub ripple: f64,
    buckets: [u16; BUCKETS],
    bucket: u16,
    bucket_tick: u8,
    mean: f64,
    swing: f64,
    therm_tick: u8,
    fresh: bool,
}

impl Sense {
    /// Before the first tick.
    pub fn new() -> Sense {
        Sense {
            bulk_v: 0.0,
            pressure_v: 0.0,
            level_mm: 0.0,
            thermistor_v: 0.0,
            water_c: 20.0,
            motor_a: 0.0,
            locked_now: false,
            locked: Debounce::default(),
            cam: Debounce::default(),
            pulses: 0,
            still: u32::MAX / 2,
            rpm: 0.0,
            ripple: 0.0,
            buckets: [0; BUCKETS],
            bucket: 0,
            bucket_tick: 0,
            mean: 0.0,
            swing: 0.0,
            therm_tick: 0,
            fresh: true,
        }
    }

    /// One tick.
    pub fn step(
        &mut self,
        board: &Board,
        mm_per_v: f64,
        debounce: u16,
        calibration: Option<&Calibration>,
        inputs: &Inputs,
    ) {
        if self.fresh {
            self.fresh = false;
            self.pressure_v = inputs.pressure_v;
            self.thermistor_v = inputs.thermistor_v;
            self.cam = Debounce::resting(inputs.cam);
            self.therm_tick = THERM_TICKS - 1;
        }
        self.bulk_v = inputs.bulk_v;
        // First-order filters: about 0.3 s for the sensors, 30 ms for the current.
        self.pressure_v += (inputs.pressure_v - self.pressure_v) * 0.03;
        self.thermistor_v += (inputs.thermistor_v - self.thermistor_v) * 0.03;
        self.motor_a += (inputs.motor_a - self.motor_a) * 0.3;
        let zero_v = calibration.map_or(board.pressure.zero_v, |c| c.zero_v);
        self.level_mm = (self.pressure_v - zero_v) * mm_per_v;
        self.therm_tick += 1;
        if self.therm_tick == THERM_TICKS {
            self.therm_tick = 0;
            self.water_c = thermistor_c(&board.thermistor, self.thermistor_v);
        }
        self.locked_now = inputs.locked_line;
        self.locked.step(inputs.locked_line, debounce);
        self.cam.step(inputs.cam, debounce);
        self.count(f64::from(board.motor.pulses_per_rev), inputs.pickup_pulses);
    }

    fn count(&mut self, pulses_per_rev: f64, pulses: u16) {
        self.pulses = pulses;
        self.still = if pulses > 0 {
            0
        } else {
            self.still.saturating_add(1)
        };
        self.bucket = self.bucket.saturating_add(pulses);
        self.bucket_tick += 1;
        if self.bucket_tick < BUCKET_TICKS {
            return;
        }
        self.bucket_tick = 0;
        self.buckets.rotate_left(1);
        self.buckets[BUCKETS - 1] = std::mem::take(&mut self.bucket);
        let sum: u32 = self.buckets.iter().map(|b| u32::from(*b)).sum();
        let window_s = f64::from(BUCKET_TICKS) * BUCKETS as f64 * TICK_S;
        self.rpm = f64::from(sum) / window_s / pulses_per_rev * 60.0;
        let latest = f64::from(self.buckets[BUCKETS - 1]);
        self.mean += (latest - self.mean) * 0.2;
        self.swing += ((latest - self.mean).abs() - self.swing) * 0.2;
        // Under four pulses a bucket, counting itself looks like a swing.
        self.ripple = if self.mean > 4.0 {
            self.swing / self.mean
        } else {
            0.0
        };
    }

    /// The drum has not turned for this long.
    pub fn still_for(&self, time_ms: u32) -> bool {
        self.still >= time_ms / TICK_MS as u32
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rules() -> ThermistorRules {
        ThermistorRules {
            rail_v: 5.0,
            pullup_ohms: 10_000.0,
            r25_ohms: 10_000.0,
            beta_k: 3977.0,
            min_v: 0.3,
            max_v: 4.8,
        }
    }

    /// Hydrostatic pressure of 0.3 m of water at 20 °C: 2936.7 Pa, density from the IAPWS-95
    /// formulation.
    #[test]
    fn a_known_column_of_water_reads_its_height() {
        assert!((mm_per_volt(1.0) * 2.9367 - 300.0).abs() < 0.05);
    }

    /// Resistances of a 10 kΩ, B25/85 = 3977 K component as component makers print it. Pure
    /// Beta is within half a kelvin of them from 20 to 60 °C.
    #[test]
    fn the_thermistor_reads_its_makers_table() {
        for (celsius, ohms) in [
            (20.0, 12488.0),
            (25.0, 10000.2),
            (40.0, 5330.0),
            (60.0, 2490.0),
        ] {
            let volts = 5.0 * ohms / (10_000.0 + ohms);
            let read = thermistor_c(&rules(), volts);
            assert!((read - celsius).abs() < 0.5, "{celsius}: {read}");
        }
    }
}
