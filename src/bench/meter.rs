//! The meter: ranges, resolution, noise, fuse. An invented instrument of the usual 6000-count class.

use super::action::MeterMode;
use super::view::Display;
use crate::plant::{Pin, Probed};

/// Input resistance on the voltage ranges, Ω (common practice for digital multimeters, no source).
pub const INPUT_OHMS: f64 = 10e6;
/// Counts of the display.
const COUNTS: f64 = 6000.0;
/// Resistance of the two leads, Ω.
const LEADS_OHMS: f64 = 0.2;
/// Highest resistance shown, Ω.
const OVER_OHMS: f64 = 40e6;
/// Voltage at which an ohmmeter's fuse blows, V.
pub const OHMS_FUSE_V: f64 = 10.0;

/// What the instrument would show with no noise.
pub fn ideal(on: &Probed, mode: MeterMode, red: Pin, black: Pin) -> Display {
    let value = match mode {
        MeterMode::Ohms => on.ohms(red, black) + LEADS_OHMS,
        MeterMode::VoltsAc => on.volts_ac(red, black, INPUT_OHMS),
        MeterMode::VoltsDc => on.volts_dc(red, black, INPUT_OHMS),
        MeterMode::AmpsClamp => on.amps(red).unwrap_or(0.0),
        MeterMode::Hertz => on.hertz(red, black, INPUT_OHMS),
    };
    if mode == MeterMode::Ohms && value > OVER_OHMS {
        return Display::OverRange;
    }
    Display::Value(rounded(mode, value))
}

/// The same with one draw of noise, −1 to 1, at the size of [`accuracy`].
pub fn noisy(shown: Display, mode: MeterMode, draw: f64) -> Display {
    match shown {
        Display::Value(value) => {
            Display::Value(rounded(mode, value + 0.5 * draw * accuracy(mode, value)))
        }
        other => other,
    }
}

/// Widest error of a reading, in the mode's unit: a share of it and a few counts.
pub fn accuracy(mode: MeterMode, value: f64) -> f64 {
    let (share, counts) = match mode {
        MeterMode::Ohms => (0.009, 3.0),
        MeterMode::VoltsAc => (0.010, 4.0),
        MeterMode::VoltsDc => (0.005, 2.0),
        MeterMode::AmpsClamp => (0.020, 5.0),
        MeterMode::Hertz => (0.001, 2.0),
    };
    share * value.abs() + counts * resolution(mode, value)
}

/// True when two readings differ by more than both their errors.
pub fn differ(mode: MeterMode, a: Display, b: Display) -> bool {
    match (a, b) {
        (Display::Value(a), Display::Value(b)) => {
            // A part's own tolerance is wider than the meter's error.
            (a - b).abs() > accuracy(mode, a) + accuracy(mode, b) + 0.05 * a.abs().max(b.abs())
        }
        (a, b) => a != b,
    }
}

/// Smallest step shown for a value.
pub fn resolution(mode: MeterMode, value: f64) -> f64 {
    let mut full = match mode {
        MeterMode::Ohms => 600.0,
        MeterMode::VoltsAc | MeterMode::VoltsDc => 6.0,
        MeterMode::AmpsClamp => return 0.01,
        MeterMode::Hertz => return 0.1,
    };
    while value.abs() >= full && full < 6e7 {
        full *= 10.0;
    }
    full / COUNTS
}

fn rounded(mode: MeterMode, value: f64) -> f64 {
    let step = resolution(mode, value);
    let counts = libm::round(value / step);
    // Dividing by the whole number 1/step gives the decimal that the display shows.
    let shown = if step < 1.0 {
        counts / libm::round(1.0 / step)
    } else {
        counts * step
    };
    // A display shows no minus before nothing.
    shown + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_display_has_six_thousand_counts() {
        assert_eq!(resolution(MeterMode::Ohms, 120.0), 0.1);
        assert_eq!(resolution(MeterMode::Ohms, 780.0), 1.0);
        assert_eq!(resolution(MeterMode::VoltsAc, 121.3), 0.1);
        assert_eq!(rounded(MeterMode::VoltsDc, 3.4447), 3.445);
    }

    #[test]
    fn noise_stays_within_the_stated_accuracy() {
        for draw in [-1.0, -0.3, 0.7, 1.0] {
            let Display::Value(v) = noisy(Display::Value(780.0), MeterMode::Ohms, draw) else {
                panic!("a value stays a value")
            };
            assert!((v - 780.0).abs() <= accuracy(MeterMode::Ohms, 780.0) + 0.5);
        }
    }
}
