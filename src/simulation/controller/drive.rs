//! From what a mode wants to what the relays may do: the interlocks.
//!
//! Water and motor run only with the lock driven and proven, the motor in a gear that is reached and
//! after a rest when its direction changes. The clutch actuator moves only at standstill. The lock lets go only when
//! the drum stands.

use super::board::Board;
use super::memory::Calibration;
use super::sense::Sense;
use crate::interface::{Relay, Relays};
use crate::units::TICK_MS;
use serde::Serialize;

/// A direction of the motor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub(super) enum MotorDirection {
    A,
    B,
}

impl MotorDirection {
    /// Position in a pair of counters.
    pub const fn index(self) -> usize {
        self as usize
    }
}

/// A position of the clutch actuator.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub(super) enum Gear {
    Agitate,
    Spin,
}

/// What a mode wants from the loads.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub(super) struct Demand {
    pub cold: bool,
    pub hot: bool,
    pub pump: bool,
    pub motor: Option<MotorDirection>,
    pub gear: Option<Gear>,
    /// The clutch actuator turns without a target.
    pub turn_cam: bool,
    pub lock: bool,
}

/// The state of the loads.
#[derive(Clone, Debug, Default, Serialize)]
pub(super) struct Drive {
    pub relays: Relays,
    pub running: Option<MotorDirection>,
    last: Option<MotorDirection>,
    /// Ticks since the motor was switched on, and since it was switched off.
    pub on_ticks: u32,
    off_ticks: u32,
    /// The last motor drive was a spin, whose coasting takes long.
    spun: bool,
    /// Ticks of the present clutch actuator move.
    pub moving: u32,
    run_on: u32,
    /// Ticks of the run-on after the last edge of the cam; 0 where the cam did not come to rest after one.
    rested: u32,
    /// The cam took another time for its last half turn than the control has learned.
    pub cam_differs: bool,
}

/// Half a turn of the cam may take so much more or less than learned, as a share. Our own choice: a new actuator differs
/// by more.
const CAM_DIFFERS: f64 = 0.04;

fn ticks(ms: u32) -> u32 {
    ms / TICK_MS as u32
}

impl Drive {
    /// After power-up nothing is known to have moved.
    pub fn new() -> Drive {
        Drive {
            off_ticks: u32::MAX / 2,
            ..Drive::default()
        }
    }

    /// All relays have dropped out (no supply).
    pub fn drop_out(&mut self) {
        self.relays = Relays::NONE;
        if self.running.take().is_some() {
            self.off_ticks = 0;
        }
        self.on_ticks = 0;
        self.moving = 0;
        self.run_on = 0;
        self.rested = 0;
    }

    /// The motor is driven in some direction.
    pub fn driven(&self) -> bool {
        self.running.is_some()
    }

    /// The lock is driven and proven.
    pub fn locked(&self, sense: &Sense) -> bool {
        self.relays.has(Relay::Lock) && sense.locked.closed() && sense.locked_now
    }

    /// The drum stands, as far as the pickup tells and the coasting time allows.
    pub fn standing(&self, board: &Board, sense: &Sense) -> bool {
        let motor = &board.motor;
        let rest_ms = if self.spun {
            motor.coast_ms
        } else {
            motor.standstill_ms
        };
        !self.driven() && sense.still_for(motor.standstill_ms) && self.off_ticks >= ticks(rest_ms)
    }

    /// The clutch actuator rests in `gear`.
    pub fn geared(&self, gear: Gear, sense: &Sense) -> bool {
        self.moving == 0 && self.run_on == 0 && at(sense) == gear
    }

    /// One tick: relays for `demand`.
    pub fn step(
        &mut self,
        board: &Board,
        calibration: Option<&Calibration>,
        demand: &Demand,
        sense: &Sense,
    ) -> Relays {
        let standing = self.standing(board, sense);
        let turning = self.clutch(board, calibration, demand, sense, standing);
        let lock = demand.lock || (self.relays.has(Relay::Lock) && !standing);
        self.motor(board, demand, sense, turning);
        let water = demand.lock && self.locked(sense);
        self.relays = Relays::NONE
            .with(Relay::Cold, demand.cold && water)
            .with(Relay::Hot, demand.hot && water)
            .with(Relay::Pump, demand.pump)
            .with(Relay::MotorA, self.running == Some(MotorDirection::A))
            .with(Relay::MotorB, self.running == Some(MotorDirection::B))
            .with(Relay::Clutch, turning)
            .with(Relay::Lock, lock);
        self.relays
    }

    fn clutch(
        &mut self,
        board: &Board,
        calibration: Option<&Calibration>,
        demand: &Demand,
        sense: &Sense,
        standing: bool,
    ) -> bool {
        if demand.turn_cam {
            self.moving = 0;
            self.run_on = 0;
            self.rested = 0;
            return standing;
        }
        let Some(target) = demand.gear else {
            if self.moving > 0 || self.run_on > 0 {
                self.rested = 0;
            }
            self.moving = 0;
            self.run_on = 0;
            return false;
        };
        if self.run_on > 0 {
            self.run_on -= 1;
            return self.run_on > 0;
        }
        if at(sense) == target {
            if self.moving > 0 {
                let ms_per_deg =
                    calibration.map_or(board.clutch_actuator.ms_per_deg, |c| c.cam_ms_per_deg);
                if self.rested > 0 && calibration.is_some() {
                    let half_ms = f64::from((self.rested + self.moving) * TICK_MS as u32);
                    let learned_ms = 180.0 * ms_per_deg;
                    self.cam_differs = (half_ms / learned_ms - 1.0).abs() > CAM_DIFFERS;
                }
                self.moving = 0;
                self.run_on = ticks((board.clutch_actuator.run_on_deg * ms_per_deg) as u32);
                self.rested = self.run_on;
            }
            return self.run_on > 0;
        }
        if self.moving > 0 || standing {
            self.moving += 1;
        }
        self.moving > 0
    }

    fn motor(&mut self, board: &Board, demand: &Demand, sense: &Sense, turning: bool) {
        let allowed = self.locked(sense)
            && !turning
            && demand.lock
            && demand.gear.is_some_and(|gear| self.geared(gear, sense));
        let want = demand.motor.filter(|_| allowed);
        let rested = self.off_ticks >= ticks(board.motor.reverse_ms);
        let next = match (self.running, want) {
            (Some(now), Some(then)) if now == then => Some(now),
            (None, Some(then)) if rested || self.last == Some(then) => Some(then),
            _ => None,
        };
        if next.is_some() {
            self.on_ticks = if self.running == next {
                self.on_ticks.saturating_add(1)
            } else {
                0
            };
            self.last = next;
            self.spun = demand.gear == Some(Gear::Spin);
            self.off_ticks = 0;
        } else {
            self.off_ticks = self.off_ticks.saturating_add(1);
        }
        self.running = next;
    }
}

fn at(sense: &Sense) -> Gear {
    if sense.cam.closed() {
        Gear::Spin
    } else {
        Gear::Agitate
    }
}
