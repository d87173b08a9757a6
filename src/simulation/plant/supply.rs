//! The control's own supply: rectifier, bulk capacitor, bleeder; the filter capacitor's charge;
//! the line fuse.

use super::params::{Param, Params};
use crate::units::TICK_S;
use serde::{Deserialize, Serialize};

/// Forward drop of the rectifier, V.
const DIODES_V: f64 = 1.8;
/// The switching regulator stops drawing below this, V.
const REGULATOR_STOPS_V: f64 = 40.0;
/// Current that the line fuse carries for ever, A.
const FUSE_A: f64 = 16.0;
/// Melting integral of the line fuse beyond that, A²·s.
const FUSE_A2S: f64 = 900.0;

/// Charges and the fuse.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Supply {
    /// Voltage on the bulk capacitor, V.
    pub bulk_v: f64,
    /// Voltage left on the filter capacitor since the plug came out, V.
    pub filter_v: f64,
    /// Heat gathered in the fuse, A²·s over its rating.
    pub fuse_heat: f64,
    /// The fuse has blown.
    pub fuse_blown: bool,
}

/// Voltage left after `s` seconds on `farads` through `ohms` from `start_v`: the closed form.
pub fn discharge_v(start_v: f64, farads: f64, ohms: f64, s: f64) -> f64 {
    start_v * libm::exp(-s / (farads * ohms))
}

impl Supply {
    /// One tick. `board_v`: mains rms at the board; `line_a`: rms in the cord.
    pub fn step(&mut self, p: &Params, plugged: bool, rated_v: f64, board_v: f64, line_a: f64) {
        let charge_to = board_v * core::f64::consts::SQRT_2 - DIODES_V;
        let farads = p.get(Param::BulkFarads);
        if self.bulk_v > 0.0 || charge_to > 0.0 {
            let mut amps = self.bulk_v / p.get(Param::BulkBleederOhms);
            if self.bulk_v > REGULATOR_STOPS_V {
                amps += p.get(Param::BoardLoadW) / self.bulk_v;
            }
            self.bulk_v = (self.bulk_v - amps * TICK_S / farads).max(0.0);
            if self.bulk_v < 0.01 {
                self.bulk_v = 0.0;
            }
        }
        if charge_to > self.bulk_v {
            let share = (TICK_S / (p.get(Param::RectifierOhms) * farads)).min(1.0);
            self.bulk_v += (charge_to - self.bulk_v) * share;
        }
        if plugged {
            // The worst moment to pull a plug is the peak.
            self.filter_v = rated_v * p.get(Param::SupplyScale) * core::f64::consts::SQRT_2;
        } else if self.filter_v > 0.0 {
            let tau = p.get(Param::FilterXFarads) * p.get(Param::FilterBleederOhms);
            self.filter_v = if self.filter_v < 0.01 {
                0.0
            } else {
                discharge_v(self.filter_v, tau, 1.0, TICK_S)
            };
        }
        let over = line_a * line_a - FUSE_A * FUSE_A;
        if over > 0.0 || self.fuse_heat > 0.0 {
            self.fuse_heat = (self.fuse_heat + over * TICK_S).max(0.0);
            self.fuse_blown |= self.fuse_heat > FUSE_A2S;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Peak voltage, capacitor, bleeder, and what stands on the plug's blades 1 s after it is pulled.
    fn check_plug(peak_v: f64, farads: f64, ohms: f64, after_1s_v: f64, passes: bool) {
        let v = discharge_v(peak_v, farads, ohms, 1.0);
        assert!((v - after_1s_v).abs() < 0.01, "{v}");
        // IEC 60335-1, 22.5: not more than 34 V, 1 s after disconnection.
        assert_eq!(v <= 34.0, passes);
    }

    #[test]
    fn plug_pins_follow_the_closed_form_and_the_limit() {
        // Closed form V0 exp(-t/RC), independent arithmetic; an ngspice transient agrees.
        check_plug(325.269, 0.47e-6, 1e6, 38.74, false);
        check_plug(169.706, 0.47e-6, 1e6, 20.21, true);
    }

    #[test]
    fn stepping_follows_the_closed_form() {
        let mut p = Params::zeroed();
        for (param, value) in [
            (Param::BulkFarads, 330e-6),
            (Param::BulkBleederOhms, 82e3),
            (Param::RectifierOhms, 10.0),
            (Param::FilterXFarads, 0.22e-6),
            (Param::FilterBleederOhms, 1e6),
            (Param::SupplyScale, 1.0),
        ] {
            p.set(param, value);
        }
        let mut supply = Supply {
            bulk_v: 160.0,
            ..Supply::default()
        };
        for _ in 0..1000 {
            supply.step(&p, false, 120.0, 0.0, 0.0);
        }
        let exact = discharge_v(160.0, 330e-6, 82e3, 10.0);
        assert!(
            (supply.bulk_v / exact - 1.0).abs() < 1e-3,
            "{} {exact}",
            supply.bulk_v
        );
    }
}
