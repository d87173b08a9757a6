//! A washing program: its phases one after another.

use super::board::{Board, Phase};
use super::drive::{Demand, Drive, Gear, MotorDirection};
use super::memory::Memory;
use super::sense::Sense;
use super::watch::Aim;
use crate::units::{TICK_MS, TICKS_PER_S};
use serde::Serialize;

/// A program at work.
#[derive(Clone, Debug, Serialize)]
pub(super) struct Run {
    /// Index in the board's list.
    pub program: u8,
    /// Index of the phase.
    pub phase: u8,
    /// Ticks that count towards the phase.
    pub ticks: u32,
    /// Waits for Start.
    pub paused: bool,
    /// Usual length of the phases after this one, s.
    after_s: u32,
    /// Level at the end of the last fill, mm.
    filled_mm: Option<f64>,
    /// Motor off in a spin because the speed is reached.
    coasting: bool,
}

/// How a tick of the program ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Progress {
    Same,
    NextPhase,
    Finished,
}

/// The inputs of one tick of a phase.
pub(super) struct Scene<'a> {
    pub board: &'a Board,
    pub memory: &'a Memory,
    pub sense: &'a Sense,
    pub drive: &'a Drive,
    pub lid_closed: bool,
    /// The loads rest before a retry: nothing counts.
    pub resting: bool,
}

fn ticks(minutes: f64) -> u32 {
    (minutes * 60.0 * TICKS_PER_S as f64) as u32
}

impl Run {
    /// Begins `program`.
    pub fn new(board: &Board, program: u8) -> Run {
        Run {
            after_s: seconds_after(board, program, 0),
            program,
            phase: 0,
            ticks: 0,
            paused: false,
            filled_mm: None,
            coasting: false,
        }
    }

    /// The present phase.
    pub fn phase<'a>(&self, board: &'a Board) -> Option<&'a Phase> {
        board
            .programs
            .get(usize::from(self.program))?
            .phases
            .get(usize::from(self.phase))
    }

    /// Usual time to the end, min, rounded up.
    pub fn minutes_left(&self, board: &Board) -> u32 {
        let gone = self.ticks / TICKS_PER_S as u32;
        let now = self.phase(board).map_or(0, Phase::typical_s);
        (self.after_s + now.saturating_sub(gone)).div_ceil(60)
    }

    /// One tick: what the phase wants, what it aims at, and whether it is over.
    pub fn step(&mut self, scene: &Scene) -> (Demand, Aim, Progress) {
        let mut demand = Demand::default();
        let mut aim = Aim {
            work: true,
            water: true,
            ..Aim::default()
        };
        let Some(phase) = self.phase(scene.board).copied() else {
            return (demand, aim, Progress::Finished);
        };
        if self.paused || !scene.lid_closed {
            return (demand, aim, Progress::Same);
        }
        let over = match phase {
            Phase::Fill {
                level_mm,
                cold,
                hot,
                min_c,
                max_c,
                ..
            } => {
                self.fill(scene, &mut demand, (cold, hot), (min_c, max_c));
                demand.lock = true;
                aim.fill = Some((min_c, max_c));
                let full = scene.sense.level_mm >= level_mm;
                if full {
                    demand = Demand::default();
                    self.filled_mm = Some(level_mm);
                }
                self.ticks += u32::from(!scene.resting);
                full
            }
            Phase::Agitate {
                minutes,
                stroke_ms,
                pause_ms,
            } => {
                aim.keep_mm = self.filled_mm;
                aim.agitate = true;
                demand.lock = true;
                demand.gear = Some(Gear::Agitate);
                let ready = scene.drive.locked(scene.sense)
                    && scene.drive.geared(Gear::Agitate, scene.sense);
                if ready && !scene.resting {
                    let (stroke, pause) = (stroke_ms / TICK_MS as u32, pause_ms / TICK_MS as u32);
                    let turn = self.ticks % (2 * (stroke + pause)).max(1);
                    demand.motor = if turn < stroke {
                        Some(MotorDirection::A)
                    } else if (stroke + pause..2 * stroke + pause).contains(&turn) {
                        Some(MotorDirection::B)
                    } else {
                        None
                    };
                    self.ticks += 1;
                }
                self.ticks >= ticks(minutes)
            }
            Phase::Soak { minutes } => {
                aim.keep_mm = self.filled_mm;
                self.ticks += u32::from(!scene.resting);
                self.ticks >= ticks(minutes)
            }
            Phase::Drain { .. } => {
                self.filled_mm = None;
                demand.pump = true;
                aim.drain = true;
                self.drained(scene)
            }
            Phase::Spin { rpm, minutes } => {
                self.filled_mm = None;
                self.spin(scene, &mut demand, &mut aim, rpm);
                self.ticks >= ticks(minutes)
            }
            Phase::Rest { seconds } => {
                self.ticks += u32::from(!scene.resting);
                self.ticks >= seconds * TICKS_PER_S as u32
            }
        };
        if !over {
            return (demand, aim, Progress::Same);
        }
        self.phase += 1;
        self.after_s = seconds_after(scene.board, self.program, self.phase);
        self.ticks = 0;
        self.coasting = false;
        let progress = if self.phase(scene.board).is_some() {
            Progress::NextPhase
        } else {
            Progress::Finished
        };
        (demand, aim, progress)
    }

    /// Opens the valves wanted; in judged water the one that leads away from the wanted
    /// temperature rests, while the other is there to fill.
    fn fill(
        &self,
        scene: &Scene,
        demand: &mut Demand,
        (cold, hot): (bool, bool),
        (min_c, max_c): (f64, f64),
    ) {
        let judged = scene.sense.level_mm >= scene.board.water.judge_mm;
        let too_cold = judged && scene.sense.water_c < min_c;
        let too_hot = judged && scene.sense.water_c > max_c;
        demand.cold = cold && !(hot && too_cold);
        demand.hot = hot && !(cold && too_hot);
    }

    /// Counts the pump's run-on once the tub is empty.
    fn drained(&mut self, scene: &Scene) -> bool {
        let empty = scene.sense.level_mm <= scene.board.water.drained_mm;
        if empty && !scene.resting {
            self.ticks += 1;
        }
        self.ticks >= scene.board.water.pump_run_on_s * TICKS_PER_S as u32
    }

    fn spin(&mut self, scene: &Scene, demand: &mut Demand, aim: &mut Aim, rpm: f64) {
        let Scene {
            board,
            memory,
            sense,
            drive,
            ..
        } = scene;
        demand.pump = true;
        demand.lock = true;
        // While the drum turns, water thrown about may lift the reading a little.
        let slack_mm = if self.ticks > 0 {
            board.water.unexpected_mm
        } else {
            0.0
        };
        let empty = sense.level_mm <= board.water.drained_mm + slack_mm;
        if !empty {
            aim.drain = true;
            return;
        }
        demand.gear = Some(Gear::Spin);
        let (rpm, extra_ticks) = match &memory.calibration {
            // The heavier the load, the longer it may take.
            Some(c) => (rpm, spin_up_ticks(board, c.inertia_ms, rpm)),
            None => (rpm.min(board.motor.uncalibrated_rpm), 0),
        };
        aim.spin = Some((rpm, extra_ticks));
        if drive.locked(sense) && drive.geared(Gear::Spin, sense) && !scene.resting {
            if sense.rpm > rpm {
                self.coasting = true;
            } else if sense.rpm < rpm * 0.97 {
                self.coasting = false;
            }
            if !self.coasting {
                demand.motor = Some(MotorDirection::A);
            }
            self.ticks += 1;
        }
    }
}

/// Usual length of the phases that follow `phase`, s.
fn seconds_after(board: &Board, program: u8, phase: u8) -> u32 {
    board
        .programs
        .get(usize::from(program))
        .map_or(0, |program| {
            let after = program.phases.iter().skip(usize::from(phase) + 1);
            after.map(Phase::typical_s).sum()
        })
}

/// Time to reach `rpm` at the acceleration that recalibration saw, ticks.
fn spin_up_ticks(board: &Board, inertia_ms: u32, rpm: f64) -> u32 {
    let (from, to) = board.recalibration.spin_rpm;
    (f64::from(inertia_ms) * rpm / (to - from)) as u32 / TICK_MS as u32
}
