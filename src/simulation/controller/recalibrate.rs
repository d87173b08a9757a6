//! Recalibration: every load in turn, and what the programs need to know about each.

use super::drive::{Demand, Gear, MotorDirection};
use super::memory::Calibration;
use super::monitor::{Monitor, Stage};
use super::program::Scene;
use super::watch::Aim;
use crate::units::{TICK_MS, TICKS_PER_S};
use serde::Serialize;

/// One stroke of the motor stages, and the rest after it, ticks.
const STROKE_TICKS: u32 = 100;
/// Driven and resting time of a motor stage, ticks: four strokes.
const STROKES_TICKS: u32 = 8 * STROKE_TICKS;
/// The tub is empty when the pressure input has not fallen by this much, V, for so many ticks.
const FALL_V: f64 = 0.01;
const SETTLED_TICKS: u32 = 500;
/// Share of the cam's turn that either half must have.
const HALF_SHARE: (f64, f64) = (0.35, 0.65);

/// Recalibration at work.
#[derive(Clone, Debug, Default, Serialize)]
pub(super) struct Recal {
    stage: u8,
    ticks: u32,
    /// Ticks in which the stage could work (lock proven, gear reached).
    active: u32,
    /// Pressure voltage at the stage's begin, its sum and number in the zero stage.
    begin_v: f64,
    sum_v: f64,
    /// Emptying: lowest voltage so far, and when it last fell.
    low_v: f64,
    fell_ticks: u32,
    zero_v: f64,
    /// Cam: state, edges seen, ticks since the first and of the first half.
    cam: bool,
    edges: u8,
    turn_ticks: u32,
    half_ticks: u32,
    cam_ms_per_deg: f64,
    /// Spin: ticks since the lower speed.
    ramp_ticks: u32,
    inertia_ms: u32,
}

/// How a tick of recalibration ended.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum RecalProgress {
    Same,
    NextStage,
    Passed(Calibration),
    Failed(Monitor),
}

impl Recal {
    /// The stage at work.
    pub fn stage(&self, scene_stages: &[super::board::StageRule]) -> Option<Stage> {
        scene_stages.get(usize::from(self.stage)).map(|s| s.stage)
    }

    /// The stage at work, counted from 1.
    pub fn number(&self) -> u32 {
        u32::from(self.stage) + 1
    }

    /// One tick. `mm_per_v`: scale of the pressure input.
    pub fn step(&mut self, scene: &Scene, mm_per_v: f64) -> (Demand, Aim, RecalProgress) {
        let board = scene.board;
        let rules = &board.recalibration;
        let mut demand = Demand::default();
        let mut aim = Aim {
            work: true,
            strict: true,
            ..Aim::default()
        };
        let Some(rule) = rules.stages.get(usize::from(self.stage)) else {
            return (
                demand,
                aim,
                RecalProgress::Failed(Monitor::CalibrationFailed),
            );
        };
        if !scene.lid_closed {
            let failed = RecalProgress::Failed(Monitor::LockNotProven);
            return (demand, aim, failed);
        }
        let sense = scene.sense;
        if self.ticks == 0 {
            self.begin_v = sense.pressure_v;
            self.sum_v = 0.0;
            self.low_v = sense.pressure_v;
            self.fell_ticks = 0;
            self.active = 0;
            self.cam = sense.cam.closed();
            self.edges = 0;
            self.ramp_ticks = 0;
        }
        self.ticks += 1;
        let seconds = self.ticks / TICKS_PER_S as u32;
        let rise_mm = (sense.pressure_v - self.begin_v) * mm_per_v;
        let level_mm = (sense.pressure_v - self.zero_v) * mm_per_v;
        let mut failed = None;
        let done = match rule.stage {
            Stage::Empty => {
                demand.pump = true;
                if sense.pressure_v < self.low_v - FALL_V {
                    self.low_v = sense.pressure_v;
                    self.fell_ticks = self.ticks;
                }
                let (low, high) = rules.zero_v;
                let settled = self.ticks - self.fell_ticks >= SETTLED_TICKS;
                settled && (low..=high).contains(&sense.pressure_v)
            }
            Stage::Zero => {
                self.sum_v += sense.pressure_v;
                if rise_mm > board.water.unexpected_mm {
                    failed = Some(Monitor::WaterUnexpected);
                }
                true
            }
            Stage::Lock => {
                demand.lock = true;
                scene.drive.locked(sense)
            }
            Stage::Cold => {
                demand.lock = true;
                demand.cold = rise_mm < rules.rise_mm;
                !demand.cold
            }
            Stage::Hot => {
                demand.lock = true;
                demand.hot = rise_mm < rules.rise_mm;
                !demand.hot
            }
            Stage::Pump => {
                demand.lock = true;
                demand.pump = true;
                level_mm <= board.water.drained_mm
            }
            Stage::Cam => {
                demand.lock = true;
                demand.turn_cam = true;
                self.watch_cam(sense.cam.closed(), &mut failed, rules.cam_ms_per_deg)
            }
            Stage::MotorA | Stage::MotorB => {
                demand.lock = true;
                demand.gear = Some(Gear::Agitate);
                aim.agitate = true;
                if scene.drive.locked(sense) && scene.drive.geared(Gear::Agitate, sense) {
                    if self.active % (2 * STROKE_TICKS) < STROKE_TICKS {
                        demand.motor = Some(if rule.stage == Stage::MotorA {
                            MotorDirection::A
                        } else {
                            MotorDirection::B
                        });
                    }
                    self.active += 1;
                }
                self.active >= STROKES_TICKS
            }
            Stage::Spin => {
                demand.lock = true;
                demand.pump = true;
                demand.gear = Some(Gear::Spin);
                demand.motor = Some(MotorDirection::A);
                let (from, to) = rules.spin_rpm;
                aim.spin = Some((to, 0));
                // The pulley may still turn from the last stroke: the ramp begins at rest.
                if sense.rpm < from && scene.drive.geared(Gear::Spin, sense) {
                    self.active = 1;
                }
                if self.active > 0 && sense.rpm >= from {
                    self.ramp_ticks += 1;
                }
                let reached = self.active > 0 && sense.rpm >= to;
                if reached {
                    self.inertia_ms = self.ramp_ticks * TICK_MS as u32;
                    let (least, most) = rules.inertia_ms;
                    if !(least..=most).contains(&self.inertia_ms) {
                        failed = Some(Monitor::CalibrationFailed);
                    }
                }
                reached
            }
            Stage::Coast => {
                demand.lock = true;
                demand.pump = true;
                scene.drive.standing(board, sense)
            }
            Stage::Unlock => !sense.locked.closed(),
        };
        if let Some(monitor) = failed {
            return (Demand::default(), aim, RecalProgress::Failed(monitor));
        }
        if done && seconds >= rule.min_s {
            if rule.stage == Stage::Zero {
                self.zero_v = self.sum_v / f64::from(self.ticks);
            }
            self.stage += 1;
            self.ticks = 0;
            if usize::from(self.stage) < rules.stages.len() {
                return (demand, aim, RecalProgress::NextStage);
            }
            let learned = Calibration {
                zero_v: self.zero_v,
                cam_ms_per_deg: self.cam_ms_per_deg,
                inertia_ms: self.inertia_ms,
            };
            return (demand, aim, RecalProgress::Passed(learned));
        }
        if seconds >= rule.limit_s {
            let monitor = blame(rule.stage, sense.pressure_v < rules.zero_v.0);
            return (Demand::default(), aim, RecalProgress::Failed(monitor));
        }
        (demand, aim, RecalProgress::Same)
    }

    /// From the first edge, one whole turn later the same edge comes again.
    fn watch_cam(
        &mut self,
        closed: bool,
        failed: &mut Option<Monitor>,
        (least, most): (f64, f64),
    ) -> bool {
        if self.edges >= 3 {
            return true;
        }
        if self.edges > 0 {
            self.turn_ticks += 1;
        }
        if closed == self.cam {
            return false;
        }
        self.cam = closed;
        self.edges += 1;
        match self.edges {
            1 => self.turn_ticks = 0,
            2 => self.half_ticks = self.turn_ticks,
            _ => {
                let share = f64::from(self.half_ticks) / f64::from(self.turn_ticks.max(1));
                self.cam_ms_per_deg = f64::from(self.turn_ticks) * TICK_MS as f64 / 360.0;
                let halves = (HALF_SHARE.0..=HALF_SHARE.1).contains(&share);
                if !halves || !(least..=most).contains(&self.cam_ms_per_deg) {
                    *failed = Some(Monitor::CalibrationFailed);
                }
            }
        }
        self.edges >= 3
    }
}

/// The monitor behind a stage that ran out of time.
fn blame(stage: Stage, pressure_low: bool) -> Monitor {
    match stage {
        Stage::Empty if pressure_low => Monitor::PressureRange,
        Stage::Empty | Stage::Pump => Monitor::DrainSlow,
        Stage::Zero | Stage::Coast => Monitor::CalibrationFailed,
        Stage::Lock => Monitor::LockNotProven,
        Stage::Cold | Stage::Hot => Monitor::FillNone,
        Stage::Cam => Monitor::CamLost,
        Stage::MotorA | Stage::MotorB => Monitor::PulsesNone,
        Stage::Spin => Monitor::SpinNotReached,
        Stage::Unlock => Monitor::LockNotReleased,
    }
}
