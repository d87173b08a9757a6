//! The control's own supply: rectifier, bulk capacitor, bleeder and the switching supply behind them; the
//! filter capacitor's charge; the line fuse.

use super::params::{Param, Params};
use crate::units::TICK_S;
use serde::{Deserialize, Serialize};

/// Forward drop of the rectifier, V.
const DIODES_V: f64 = 1.8;
/// Rated current of the line fuse, A. Heat is counted from what that current brings.
const FUSE_A: f64 = 16.0;
/// Heat at which its wire melts, A²·s.
const FUSE_A2S: f64 = 900.0;
/// Time constant with which its wire gives heat to its body, s.
const FUSE_WIRE_S: f64 = 0.6;
/// Time constant with which its body gives heat away, s.
const FUSE_BODY_S: f64 = 120.0;
/// Heat capacity of its body, as a multiple of its wire's.
const FUSE_BODY_SHARE: f64 = 41.0;

/// Whether a fuse that is found blown could have been blown by so much current from the plug, A, if that goes on.
pub(super) fn blows_in_time(line_a: f64) -> bool {
    let over = line_a * line_a - FUSE_A * FUSE_A;
    over * (FUSE_WIRE_S + FUSE_BODY_S / FUSE_BODY_SHARE) > FUSE_A2S
}

/// Charges and the fuse.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Supply {
    /// Voltage on the bulk capacitor, V.
    pub bulk_v: f64,
    /// The switching supply works: the control has its five volts.
    pub running: bool,
    /// Voltage left on the filter capacitor since the plug came out, V.
    pub filter_v: f64,
    /// Heat gathered in the fuse's wire, A²·s over its rating.
    pub fuse_heat: f64,
    /// Warmth of its body, as the heat at which its wire would be as warm, A²·s over its rating.
    pub fuse_body_heat: f64,
    /// The fuse has blown.
    pub fuse_blown: bool,
    /// Fuses that have blown so far.
    pub fuses_blown: u32,
}

/// Voltage left after `s` seconds on `farads` through `ohms` from `start_v`: the closed form.
pub fn discharge_v(start_v: f64, farads: f64, ohms: f64, s: f64) -> f64 {
    start_v * libm::exp(-s / (farads * ohms))
}

/// Voltage to which `board_v`, the mains rms at the board, charges the bulk capacitor, V; negative when it
/// does not overcome the rectifier.
pub fn charged_v(board_v: f64) -> f64 {
    board_v * core::f64::consts::SQRT_2 - DIODES_V
}

impl Supply {
    /// Whether the switching supply works at this bulk voltage. It starts above one voltage and locks out
    /// below a lower one, as such supplies do (undervoltage lock-out: common practice, no source).
    pub fn would_run(&self, p: &Params) -> bool {
        let from = if self.running {
            Param::SupplyStopV
        } else {
            Param::SupplyStartV
        };
        self.bulk_v >= p.get(from)
    }

    /// So much time with the plug out: the switching supply draws the bulk capacitor down until it locks out, and the
    /// bleeder does the rest.
    pub(super) fn stand(&mut self, p: &Params, seconds: f64) {
        let farads = p.get(Param::BulkFarads);
        let mut left_s = seconds;
        let (stop_v, load_w) = (p.get(Param::SupplyStopV), p.get(Param::BoardLoadW));
        if self.running && self.bulk_v > stop_v {
            let squared = self.bulk_v * self.bulk_v;
            let drawn_s = (0.5 * farads * (squared - stop_v * stop_v) / load_w).min(left_s);
            self.bulk_v = (squared - 2.0 * load_w * drawn_s / farads).sqrt();
            left_s -= drawn_s;
        }
        let bleeder_ohms = p.get(Param::BulkBleederOhms);
        self.bulk_v = discharge_v(self.bulk_v, farads, bleeder_ohms, left_s);
        let (x_farads, x_ohms) = (p.get(Param::FilterXFarads), p.get(Param::FilterBleederOhms));
        self.filter_v = discharge_v(self.filter_v, x_farads, x_ohms, seconds);
        self.cool_fuse();
    }

    /// The fuse is as cold as a new one.
    fn cool_fuse(&mut self) {
        (self.fuse_heat, self.fuse_body_heat) = (0.0, 0.0);
    }

    /// A new fuse.
    pub(super) fn renew_fuse(&mut self) {
        self.fuse_blown = false;
        self.cool_fuse();
    }

    /// One tick of the fuse's wire and body: two thermal masses in a row.
    fn heat_fuse(&mut self, line_a: f64) {
        let over = line_a * line_a - FUSE_A * FUSE_A;
        if over <= 0.0 && self.fuse_heat == 0.0 && self.fuse_body_heat == 0.0 {
            return;
        }
        let to_body = (self.fuse_heat - self.fuse_body_heat) / FUSE_WIRE_S;
        let away = self.fuse_body_heat / FUSE_BODY_S;
        self.fuse_heat = (self.fuse_heat + (over - to_body) * TICK_S).max(0.0);
        let gained = (to_body / FUSE_BODY_SHARE - away) * TICK_S;
        self.fuse_body_heat = (self.fuse_body_heat + gained).max(0.0);
        if !self.fuse_blown && self.fuse_heat > FUSE_A2S {
            self.fuse_blown = true;
            self.fuses_blown += 1;
        }
    }

    /// One tick. `board_v`: mains rms at the board; `line_a`: rms in the cord.
    pub fn step(&mut self, p: &Params, plugged: bool, rated_v: f64, board_v: f64, line_a: f64) {
        let charge_to = charged_v(board_v);
        let farads = p.get(Param::BulkFarads);
        if self.bulk_v > 0.0 || charge_to > 0.0 {
            // Locked out it draws next to nothing, and the bleeder is left alone with the charge.
            let mut amps = self.bulk_v / p.get(Param::BulkBleederOhms);
            if self.running {
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
        self.running = self.would_run(p);
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
        self.heat_fuse(line_a);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Peak voltage, capacitor, bleeder, and what stands on the plug's blades 1 s after it is pulled.
    fn check_plug(peak_v: f64, farads: f64, ohms: f64, after_1s_v: f64, passes: bool) {
        let v = discharge_v(peak_v, farads, ohms, 1.0);
        assert!((v - after_1s_v).abs() < 0.01, "{v}");
        // IEC 60335-1, 22.5 (from a secondary source): not more than 34 V, 1 s after disconnection at the peak.
        assert_eq!(v <= 34.0, passes);
    }

    #[test]
    fn plug_pins_follow_the_closed_form_and_the_limit() {
        // Closed form V0 exp(-t/RC), independent arithmetic; an ngspice transient agrees.
        check_plug(325.269, 0.47e-6, 1e6, 38.74, false);
        check_plug(169.706, 0.47e-6, 1e6, 20.21, true);
    }

    /// A sound supply for 120 V.
    fn params() -> Params {
        let mut p = Params::zeroed();
        for (param, value) in [
            (Param::BoardLoadW, 3.0),
            (Param::BulkFarads, 330e-6),
            (Param::BulkBleederOhms, 390e3),
            (Param::SupplyStartV, 95.0),
            (Param::SupplyStopV, 75.0),
            (Param::RectifierOhms, 10.0),
            (Param::FilterXFarads, 0.22e-6),
            (Param::FilterBleederOhms, 1e6),
            (Param::SupplyScale, 1.0),
        ] {
            p.set(param, value);
        }
        p
    }

    fn step(supply: &mut Supply, p: &Params, board_v: f64, seconds: f64) {
        for _ in 0..(seconds / TICK_S).round() as u64 {
            supply.step(p, board_v > 0.0, 120.0, board_v, 0.0);
        }
    }

    fn plugged_in(p: &Params) -> Supply {
        let mut supply = Supply::default();
        step(&mut supply, p, 120.0, 2.0);
        supply
    }

    /// Closed forms, independent arithmetic. Under constant power P the energy ½CV² falls as P·t (the bleeder
    /// takes less than 2 % of it); once the supply has locked out, V = V₀ exp(−t/RC).
    #[test]
    fn the_control_takes_the_charge_down_to_its_lock_out_and_the_bleeder_takes_the_rest() {
        let p = params();
        let mut supply = plugged_in(&p);
        assert!(supply.running);
        let from_v = supply.bulk_v;
        let mut ran_s = 0.0;
        while supply.running {
            step(&mut supply, &p, 0.0, TICK_S);
            ran_s += TICK_S;
        }
        let exact_s = 0.5 * 330e-6 * (from_v * from_v - 75.0 * 75.0) / 3.0;
        assert!((ran_s / exact_s - 1.0).abs() < 0.02, "{ran_s} {exact_s}");
        for seconds in [10.0, 50.0, 300.0] {
            let mut supply = supply.clone();
            let exact_v = discharge_v(supply.bulk_v, 330e-6, 390e3, seconds);
            step(&mut supply, &p, 0.0, seconds);
            let v = supply.bulk_v;
            assert!((v / exact_v - 1.0).abs() < 1e-3, "{v} {exact_v}");
            assert!(!supply.running);
        }
    }

    #[test]
    fn it_starts_higher_than_it_stops() {
        let p = params();
        let mut supply = plugged_in(&p);
        // 57 V at the board charge the capacitor to 79 V: enough to go on, not enough to begin.
        step(&mut supply, &p, 57.0, 30.0);
        assert!(supply.running, "{supply:?}");
        step(&mut supply, &p, 0.0, 10.0);
        step(&mut supply, &p, 57.0, 30.0);
        assert!(!supply.running, "{supply:?}");
        step(&mut supply, &p, 70.0, 1.0);
        assert!(supply.running, "{supply:?}");
    }

    /// What a dead supply leaves: no load, so the whole charge goes through the bleeder.
    #[test]
    fn a_supply_that_never_starts_leaves_the_whole_charge_to_the_bleeder() {
        let mut p = params();
        p.set(Param::SupplyStartV, 1e6);
        p.set(Param::SupplyStopV, 1e6);
        let mut supply = plugged_in(&p);
        assert!(!supply.running && supply.bulk_v > 160.0, "{supply:?}");
        let exact_v = discharge_v(supply.bulk_v, 330e-6, 390e3, 60.0);
        step(&mut supply, &p, 0.0, 60.0);
        let v = supply.bulk_v;
        assert!((v / exact_v - 1.0).abs() < 1e-3, "{v} {exact_v}");
        assert!(v > 100.0, "after a minute it bites as before: {v} V");
    }
}
