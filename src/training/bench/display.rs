//! What stands on a meter's display.

use super::action::MeterMode;
use super::meter::resolution;
use serde::{Deserialize, Serialize};

/// What a meter shows.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Display {
    /// A value in the unit of the mode.
    Value(f64),
    /// Over range or open: the meter shows `OL`.
    OverRange,
    /// The meter's fuse has blown; it shows nothing until replaced.
    Dead,
}

/// A display as it is read: what stands on the glass and the unit beside it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct WrittenDisplay {
    /// Digits with a decimal point, `OL`, or nothing on a dead display.
    pub digits: String,
    /// `k`, `M` or nothing, before the unit.
    pub prefix: &'static str,
    /// The unit of the setting.
    pub unit: &'static str,
}

impl Display {
    /// As the display writes it: the digits of the 6000-count range that the value lies in, with the prefix that goes
    /// with that range on the resistance setting.
    pub fn written(self, mode: MeterMode) -> WrittenDisplay {
        let unit = mode.unit();
        let (digits, prefix) = match self {
            Display::Dead => (String::new(), ""),
            Display::OverRange => ("OL".to_owned(), ""),
            Display::Value(value) => {
                let step = resolution(mode, value);
                let (scale, prefix) = match mode {
                    MeterMode::Ohms if step >= 1e3 => (1e6, "M"),
                    MeterMode::Ohms if step >= 1.0 => (1e3, "k"),
                    _ => (1.0, ""),
                };
                let decimals = match step / scale {
                    fine if fine < 0.005 => 3,
                    fine if fine < 0.05 => 2,
                    fine if fine < 0.5 => 1,
                    _ => 0,
                };
                let digits = format!("{:.decimals$}", value / scale);
                // A display shows no minus before nothing.
                let digits = match digits.strip_prefix('-') {
                    Some(zero) if zero.parse() == Ok(0.0) => zero.to_owned(),
                    _ => digits,
                };
                (digits, prefix)
            }
        };
        WrittenDisplay {
            digits,
            prefix,
            unit,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn shows(mode: MeterMode, value: f64, digits: &str, unit: &str) {
        let written = Display::Value(value).written(mode);
        assert_eq!(written.digits, digits);
        assert_eq!(format!("{}{}", written.prefix, written.unit), unit);
    }

    /// Ranges of a display of 6000 counts: 600.0 Ω, 6.000 kΩ and so on to 60.00 MΩ, 6.000 V to 600.0 V (common
    /// practice for digital multimeters, no source).
    #[test]
    fn every_range_has_the_digits_of_six_thousand_counts() {
        shows(MeterMode::Ohms, 14.2, "14.2", "Ω");
        shows(MeterMode::Ohms, 599.9, "599.9", "Ω");
        shows(MeterMode::Ohms, 780.0, "0.780", "kΩ");
        shows(MeterMode::Ohms, 5_999.0, "5.999", "kΩ");
        shows(MeterMode::Ohms, 12_510.0, "12.51", "kΩ");
        shows(MeterMode::Ohms, 470_000.0, "470.0", "kΩ");
        shows(MeterMode::Ohms, 1_234_000.0, "1.234", "MΩ");
        shows(MeterMode::Ohms, 12_340_000.0, "12.34", "MΩ");
        shows(MeterMode::Continuity, 0.2, "0.2", "Ω");
        shows(MeterMode::VoltsDc, 3.445, "3.445", "V");
        shows(MeterMode::VoltsDc, -0.0, "0.000", "V");
        shows(MeterMode::VoltsDc, -12.5, "-12.50", "V");
        shows(MeterMode::VoltsAc, 121.3, "121.3", "V");
        shows(MeterMode::AmpsClamp, 1.25, "1.25", "A");
        shows(MeterMode::Hertz, 60.0, "60.0", "Hz");
        shows(MeterMode::Microfarads, 35.12, "35.12", "µF");
        shows(MeterMode::Insulation, 2.5, "2.500", "MΩ");
        shows(MeterMode::Insulation, 250.0, "250.0", "MΩ");
    }

    #[test]
    fn no_reading_has_no_digits() {
        let written = Display::OverRange.written(MeterMode::Ohms);
        assert_eq!((written.digits.as_str(), written.prefix), ("OL", ""));
        assert_eq!(Display::Dead.written(MeterMode::Ohms).digits, "");
    }
}
