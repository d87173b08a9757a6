//! The drive: motor, belt, pulley, agitator or basket, unbalance, winding heat.

use super::motor::MotorCircuit;
use super::params::{Param, Params};
use crate::units::{GRAVITY_M_S2, TICK_S};
use num_complex::Complex64;
use serde::{Deserialize, Serialize};

/// Motor turns for one turn of the pulley.
pub(super) const BELT_RATIO: f64 = 2.65;
/// Pulley turns for one turn of the agitator, through the gearcase.
const GEARCASE_RATIO: f64 = 6.0;
/// Inertia at the pulley with the agitator coupled, kg·m².
const AGITATOR_KG_M2: f64 = 0.02;
/// Inertia of the empty basket, kg·m².
const BASKET_KG_M2: f64 = 0.45;
/// Inertia that a kilogram of (wet) laundry adds to the basket, kg·m².
const LAUNDRY_KG_M2: f64 = 0.11;
/// Water drag on the agitator, N·m at the pulley per (rad/s)² and mm of water.
const AGITATOR_DRAG: f64 = 7.0e-6;
/// Water drag on the basket, N·m per (rad/s)² and mm of water.
const BASKET_DRAG: f64 = 4.0e-5;
/// Air drag on the basket, N·m per (rad/s)².
const AIR_DRAG: f64 = 2.2e-4;
/// Basket brake when the motor does not drive it, N·m.
const BRAKE_NM: f64 = 4.5;
/// Mass that the suspension carries, kg.
const SUSPENDED_KG: f64 = 32.0;
/// Resonance of the suspension, rad/s.
const RESONANCE_RAD_S: f64 = 14.0;
/// Drag from a shaking tub, N·m per mm.
const SHAKE_DRAG_NM: f64 = 0.12;
/// Damping of the suspension, as a share of the critical.
const DAMPING_RATIO: f64 = 0.175;
/// A machine that rocks by this much on its feet shakes twice as far, mm.
const ROCK_DOUBLES_MM: f64 = 2.0;
/// A tub that swings further out than this takes its magnets out of the pickup's reach, mm.
const PICKUP_REACH_MM: f64 = 4.0;
/// Dry laundry that the agitator still moves with ease, kg.
const EASY_KG: f64 = 6.0;
/// Drag of each further kilogram on the agitator, N·m at the pulley.
const CROWDED_NM_KG: f64 = 1.6;
/// Drag of a tub full of suds on the spinning basket, N·m.
const SUDS_NM: f64 = 16.0;
/// Heat capacity of the motor, J/K.
const MOTOR_J_K: f64 = 1500.0;
/// How far the windings' copper is warmer than the motor as a whole, K per W of loss in it.
const COPPER_K_W: f64 = 0.4;
/// Time constant with which the copper follows its loss, s.
const COPPER_S: f64 = 40.0;
/// Less than this is none, K.
const COPPER_NONE_K: f64 = 1e-3;
/// The protector, which lies on the copper, closes again this far below its trip point, K.
const PROTECTOR_SPAN_K: f64 = 40.0;

/// What the gearcase couples the pulley to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Coupling {
    /// The agitator; the basket stands.
    Agitator,
    /// The basket, agitator with it.
    Basket,
}

/// State of the drive.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Drive {
    /// Motor speed, rad/s, positive in direction A.
    pub motor_rad_s: f64,
    /// Pulley speed, rad/s.
    pub pulley_rad_s: f64,
    /// Agitator angle, revolutions.
    pub agitator_rev: f64,
    /// Basket angle, revolutions.
    pub basket_rev: f64,
    /// Fraction of the next pickup pulse.
    pub pulse_phase: f64,
    /// Winding temperature, °C: that of the motor as a whole.
    pub winding_c: f64,
    /// How far its copper is warmer where the protector lies, K.
    pub copper_rise_k: f64,
    /// Protector open.
    pub protector_open: bool,
    /// Shake of the cabinet, mm.
    pub shake_mm: f64,
    /// Where the tub stands in its own slow sway, rad.
    pub sway_rad: f64,
    /// Speed in network steps (1/256 of synchronous), with hysteresis.
    pub speed_step: i16,
    /// Winding temperature in network steps (1 °C), with hysteresis.
    pub winding_step: i16,
}

/// Rounds to whole steps, but keeps the last step until the value is well past its edge, so that a
/// value resting on an edge does not make the network be solved at every tick.
pub fn stepped(value: f64, last: i16) -> i16 {
    if (value - f64::from(last)).abs() > 0.75 {
        libm::round(value) as i16
    } else {
        last
    }
}

/// Relative centrifugal force at `radius_m` and `rpm`: ω² r / g.
pub fn relative_centrifugal_force(radius_m: f64, rpm: f64) -> f64 {
    let rad_s = rpm * core::f64::consts::PI / 30.0;
    rad_s * rad_s * radius_m / GRAVITY_M_S2
}

/// Moves `speed` by friction that can stop it but never turn it round.
fn rub(speed: f64, most: f64) -> f64 {
    if speed.abs() <= most {
        0.0
    } else {
        speed - most.copysign(speed)
    }
}

impl Drive {
    /// At rest at room temperature.
    pub fn at_rest(p: &Params) -> Drive {
        let room = p.get(Param::AmbientC);
        Drive {
            motor_rad_s: 0.0,
            pulley_rad_s: 0.0,
            agitator_rev: 0.0,
            basket_rev: 0.0,
            pulse_phase: 0.0,
            winding_c: room,
            copper_rise_k: 0.0,
            protector_open: false,
            shake_mm: 0.0,
            sway_rad: 0.0,
            speed_step: 0,
            winding_step: libm::round(room) as i16,
        }
    }

    /// True when nothing turns.
    pub fn stands(&self) -> bool {
        self.motor_rad_s == 0.0 && self.pulley_rad_s == 0.0
    }

    /// Pulley speed, rev/min, without sign.
    pub fn pulley_rpm(&self) -> f64 {
        self.pulley_rad_s.abs() * 30.0 / core::f64::consts::PI
    }

    /// One tick. `windings` are the currents A and B of the network's last solution.
    /// Returns the pulses that the pickup gave.
    pub fn step(
        &mut self,
        p: &Params,
        circuit: &MotorCircuit,
        windings: [Complex64; 2],
        coupling: Coupling,
        level_mm: f64,
    ) -> u16 {
        let loss_w =
            windings[0].norm_sqr() * circuit.a_ohms + windings[1].norm_sqr() * circuit.b_ohms;
        let driven = loss_w > 1e-3;
        self.heat(p, loss_w);
        if !driven && self.stands() {
            self.shake_mm = 0.0;
            return 0;
        }
        let torque_nm = if driven {
            circuit.torque_nm(
                self.motor_rad_s / circuit.synchronous_rad_s(),
                windings[0],
                windings[1],
            )
        } else {
            0.0
        };
        let motor_kg_m2 = p.get(Param::MotorInertiaKgM2);
        let pulley_kg_m2 = match coupling {
            Coupling::Agitator => AGITATOR_KG_M2,
            Coupling::Basket => BASKET_KG_M2 + LAUNDRY_KG_M2 * p.get(Param::LoadKg),
        };
        let w = self.pulley_rad_s;
        let drag = match coupling {
            Coupling::Agitator => AGITATOR_DRAG * level_mm,
            Coupling::Basket => AIR_DRAG + BASKET_DRAG * level_mm,
        };
        let mut brake_nm = p.get(Param::BasketDragNm);
        if coupling == Coupling::Basket {
            self.shake(p, w.abs());
            brake_nm += SHAKE_DRAG_NM * self.shake_mm + SUDS_NM * p.get(Param::Suds);
            if !driven {
                brake_nm += BRAKE_NM;
            }
        } else {
            self.shake_mm = 0.0;
            brake_nm += CROWDED_NM_KG * (p.get(Param::LoadKg) - EASY_KG).max(0.0);
        }
        // Speeds at the end of the tick without the belt, then the belt's pull that makes them
        // agree, cut off where it slips. Implicit, so a stiff belt needs no smaller step.
        let free_motor = rub(
            self.motor_rad_s + torque_nm * TICK_S / motor_kg_m2,
            p.get(Param::MotorDragNm) * TICK_S / motor_kg_m2,
        );
        let free_pulley = rub(
            w / (1.0 + drag * w.abs() * TICK_S / pulley_kg_m2),
            brake_nm * TICK_S / pulley_kg_m2,
        );
        let agree = (free_motor - BELT_RATIO * free_pulley)
            / (TICK_S * (1.0 / motor_kg_m2 + BELT_RATIO * BELT_RATIO / pulley_kg_m2));
        let grip = p.get(Param::BeltGripNm);
        let belt_nm = agree.clamp(-grip, grip);
        self.motor_rad_s = free_motor - belt_nm * TICK_S / motor_kg_m2;
        self.pulley_rad_s = free_pulley + BELT_RATIO * belt_nm * TICK_S / pulley_kg_m2;
        if !driven && self.motor_rad_s.abs() < 0.02 && self.pulley_rad_s.abs() < 0.02 {
            self.motor_rad_s = 0.0;
            self.pulley_rad_s = 0.0;
        }
        self.speed_step = stepped(
            256.0 * self.motor_rad_s / circuit.synchronous_rad_s(),
            self.speed_step,
        );

        let rev = self.pulley_rad_s * TICK_S / core::f64::consts::TAU;
        match coupling {
            Coupling::Agitator => self.agitator_rev += rev / GEARCASE_RATIO,
            Coupling::Basket => {
                self.basket_rev += rev;
                self.agitator_rev += rev;
            }
        }
        if self.magnets_reach() {
            let gap = p.get(Param::PickupGap).clamp(0.0, 1.0);
            self.pulse_phase += rev.abs() * p.get(Param::PickupPulsesPerRev) * gap;
        }
        let whole = libm::floor(self.pulse_phase);
        self.pulse_phase -= whole;
        whole as u16
    }

    /// A tub that shakes hard also sways on its springs, slower than it turns, and takes its magnets
    /// away from the pickup each time: the speed seems to swing.
    fn magnets_reach(&mut self) -> bool {
        if self.shake_mm <= PICKUP_REACH_MM {
            self.sway_rad = 0.0;
            return true;
        }
        self.sway_rad += RESONANCE_RAD_S * TICK_S;
        self.shake_mm * libm::cos(self.sway_rad) <= PICKUP_REACH_MM
    }

    /// So much time at rest: the winding cools.
    pub(super) fn stand(&mut self, p: &Params, seconds: f64) {
        let room = p.get(Param::AmbientC);
        let kept = libm::exp(-seconds * p.get(Param::MotorCoolWK) / MOTOR_J_K);
        self.winding_c = room + (self.winding_c - room) * kept;
        self.copper_rise_k *= libm::exp(-seconds / COPPER_S);
    }

    fn heat(&mut self, p: &Params, loss_w: f64) {
        let away_w = p.get(Param::MotorCoolWK) * (self.winding_c - p.get(Param::AmbientC));
        self.winding_c += (loss_w - away_w) * TICK_S / MOTOR_J_K;
        self.winding_step = stepped(self.winding_c, self.winding_step);
        self.copper_rise_k += (COPPER_K_W * loss_w - self.copper_rise_k) * TICK_S / COPPER_S;
        if self.copper_rise_k < COPPER_NONE_K {
            self.copper_rise_k = 0.0;
        }
        let copper_c = self.winding_c + self.copper_rise_k;
        let trip_c = p.get(Param::MotorTripC);
        if copper_c > trip_c {
            self.protector_open = true;
        } else if copper_c < trip_c - PROTECTOR_SPAN_K {
            self.protector_open = false;
        }
    }

    /// Amplitude of a spring-borne mass with a rotating unbalance.
    fn shake(&mut self, p: &Params, rad_s: f64) {
        let rocking = 1.0 + p.get(Param::FloorRockMm) / ROCK_DOUBLES_MM;
        let free_mm = 1000.0 * p.get(Param::LoadOffsetKgM) / SUSPENDED_KG * rocking;
        self.shake_mm = free_mm * unbalance_response(rad_s / RESONANCE_RAD_S);
    }
}

/// Amplitude of a damped, spring-borne mass that a rotating unbalance shakes, as a share of its amplitude far
/// above resonance; `ratio` is the speed over that of resonance.
fn unbalance_response(ratio: f64) -> f64 {
    let ratio2 = ratio * ratio;
    let (spring, damper) = (1.0 - ratio2, 2.0 * DAMPING_RATIO * ratio);
    ratio2 / (spring * spring + damper * damper).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn relative_centrifugal_force_matches_the_laboratory_rule() {
        // RCF = 1.118e-5 r[cm] n² (centrifuge handbooks): 5 cm at 10 000 rev/min is 5590.
        assert!((relative_centrifugal_force(0.05, 10_000.0) / 5590.0 - 1.0).abs() < 1e-3);
        for (rpm, g) in [(800.0, 178.92), (1200.0, 402.57), (59.81, 1.0)] {
            assert!((relative_centrifugal_force(0.25, rpm) / g - 1.0).abs() < 1e-3);
        }
    }

    /// Forced vibration by a rotating unbalance, M·X/(m·e) = r²/√((1-r²)² + (2ζr)²), as in S. S. Rao,
    /// "Mechanical Vibrations"; formula from memory, values calculated apart for ζ = 0.175.
    #[test]
    fn unbalance_shakes_as_a_damped_spring_borne_mass_does() {
        for (ratio, share) in [
            (0.0, 0.0),
            (0.5, 0.32461),
            (1.0, 2.85714),
            (2.0, 1.29845),
            (50.0, 1.00038),
        ] {
            let response = unbalance_response(ratio);
            assert!((response - share).abs() < 1e-5, "{ratio}: {response}");
        }
        // Its peak lies above resonance, at 1/√(1-2ζ²), and is 1/(2ζ√(1-ζ²)) high.
        let damping2 = DAMPING_RATIO * DAMPING_RATIO;
        let peak = unbalance_response((1.0 - 2.0 * damping2).sqrt().recip());
        let high = (2.0 * DAMPING_RATIO * (1.0 - damping2).sqrt()).recip();
        assert!((peak - high).abs() < 1e-9, "{peak} {high}");
    }

    #[test]
    fn friction_never_turns_the_shaft_round() {
        assert_eq!(rub(0.5, 1.0), 0.0);
        assert_eq!(rub(-3.0, 1.0), -2.0);
    }
}
