//! Service mode: a menu of routines by position.

use super::drive::{Demand, Gear, MotorDirection};
use super::memory::{Calibration, Memory};
use super::monitor::{Monitor, Routine};
use super::program::Scene;
use super::recalibrate::{Recal, RecalProgress};
use super::signs::Picture;
use super::watch::Aim;
use crate::units::{TICK_MS, TICKS_PER_S};
use serde::Serialize;

/// Service mode at work.
#[derive(Clone, Debug, Default, Serialize)]
pub(super) struct Service {
    pub routine: Option<Routine>,
    pub recal: Recal,
    /// Why the last recalibration was broken off.
    pub aborted: Option<Monitor>,
    /// Why recalibration was not begun: its code is shown until the next input, and nothing is stored.
    pub refused: Option<Monitor>,
    pub page: u8,
    /// Ticks since the routine began, and since the last input.
    ticks: u32,
    quiet: u32,
    /// Ticks of a press of Start that began within the routine.
    pressed: Option<u32>,
    /// The live number, renewed once a second.
    live: u8,
    coasting: bool,
}

/// What a person did in this tick.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Touch {
    pub start_down: bool,
    pub start_up: bool,
    pub stop_down: bool,
    pub page_down: bool,
    /// A knob, a list or the lid was moved.
    pub moved: bool,
    pub lid: bool,
}

/// What service mode asks of the firmware.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Request {
    None,
    NewPhase,
    Leave,
    ClearCodes,
    Calibrate(Calibration),
    Abort(Monitor),
}

impl Service {
    /// The menu, after recalibration was broken off.
    pub fn after_abort(monitor: Monitor) -> Service {
        Service {
            aborted: Some(monitor),
            ..Service::default()
        }
    }

    /// One tick. `at`: position chosen. `mm_per_v`: scale of the pressure input.
    pub fn step(
        &mut self,
        scene: &Scene,
        touch: Touch,
        at: u8,
        mm_per_v: f64,
    ) -> (Demand, Aim, Request) {
        let nothing = (Demand::default(), Aim::default());
        self.ticks = self.ticks.saturating_add(1);
        self.quiet = self.quiet.saturating_add(1);
        let touched = touch.start_down || touch.stop_down || touch.page_down || touch.moved;
        if touched {
            self.quiet = 0;
            self.aborted = None;
            self.refused = None;
        }
        if touch.stop_down {
            let left = self.routine.take();
            self.ticks = 0;
            let request = if left.is_some() {
                Request::NewPhase
            } else {
                Request::Leave
            };
            return (nothing.0, nothing.1, request);
        }
        let Some(routine) = self.routine else {
            if touch.start_down
                && let Some(routine) = scene.board.routine_at(at)
            {
                if routine == Routine::Recalibrate && !scene.lid_closed {
                    self.refused = Some(Monitor::LockNotProven);
                    return (nothing.0, nothing.1, Request::None);
                }
                *self = Service {
                    routine: Some(routine),
                    ..Service::default()
                };
                return (nothing.0, nothing.1, Request::NewPhase);
            }
            let timeout = scene.board.service.timeout_s * TICKS_PER_S as u32;
            let request = if self.quiet >= timeout {
                Request::Leave
            } else {
                Request::None
            };
            return (nothing.0, nothing.1, request);
        };
        self.work(scene, touch, routine, mm_per_v)
    }

    fn work(
        &mut self,
        scene: &Scene,
        touch: Touch,
        routine: Routine,
        mm_per_v: f64,
    ) -> (Demand, Aim, Request) {
        let rules = &scene.board.service;
        let mut demand = Demand::default();
        let mut aim = Aim::default();
        let mut request = Request::None;
        match routine {
            Routine::Recalibrate => {
                self.quiet = 0;
                let (wish, target, progress) = self.recal.step(scene, mm_per_v);
                demand = wish;
                aim = target;
                request = match progress {
                    RecalProgress::Same => Request::None,
                    RecalProgress::NextStage => Request::NewPhase,
                    RecalProgress::Passed(learned) => {
                        self.routine = None;
                        Request::Calibrate(learned)
                    }
                    RecalProgress::Failed(monitor) => Request::Abort(monitor),
                };
            }
            Routine::Recall | Routine::Ages => {
                if touch.page_down {
                    // One blank page follows the oldest code.
                    self.page = (self.page + 1) % (scene.memory.codes.len() as u8 + 1);
                }
            }
            Routine::Clear => {
                if touch.start_down {
                    self.pressed = Some(0);
                } else if touch.start_up {
                    self.pressed = None;
                }
                if let Some(held) = &mut self.pressed {
                    *held += 1;
                    if *held >= rules.clear_hold_ms / TICK_MS as u32 {
                        self.pressed = None;
                        request = Request::ClearCodes;
                    }
                }
            }
            Routine::LampTest => {}
            Routine::LiveLevel => self.refresh_live(scene.sense.level_mm / 10.0),
            Routine::LiveTemperature => self.refresh_live(scene.sense.water_c),
            Routine::LiveSpeed => self.refresh_live(scene.sense.rpm / 10.0),
            Routine::TestCold
            | Routine::TestHot
            | Routine::TestPump
            | Routine::TestMotorA
            | Routine::TestMotorB
            | Routine::TestSpin
            | Routine::TestClutch
            | Routine::TestLock => {
                self.test(scene, routine, &mut demand, &mut aim);
                if self.ticks >= rules.test_limit_s * TICKS_PER_S as u32 {
                    self.routine = None;
                    request = Request::NewPhase;
                }
            }
        }
        if self.quiet >= rules.timeout_s * TICKS_PER_S as u32 {
            request = Request::Leave;
        }
        (demand, aim, request)
    }

    /// Load tests drive one load without a monitor, so that it can be measured even if it is
    /// dead. The interlocks stay.
    fn test(&mut self, scene: &Scene, routine: Routine, demand: &mut Demand, aim: &mut Aim) {
        let sense = scene.sense;
        let board = scene.board;
        let room = sense.level_mm < board.water.judge_mm;
        match routine {
            Routine::TestCold | Routine::TestHot if scene.lid_closed => {
                demand.lock = true;
                demand.cold = room && routine == Routine::TestCold;
                demand.hot = room && routine == Routine::TestHot;
            }
            Routine::TestPump => demand.pump = true,
            Routine::TestClutch => demand.turn_cam = true,
            Routine::TestLock => demand.lock = true,
            Routine::TestMotorA | Routine::TestMotorB if scene.lid_closed => {
                demand.lock = true;
                demand.gear = Some(Gear::Agitate);
                demand.motor = Some(if routine == Routine::TestMotorA {
                    MotorDirection::A
                } else {
                    MotorDirection::B
                });
            }
            Routine::TestSpin if scene.lid_closed => {
                demand.lock = true;
                demand.pump = true;
                if sense.level_mm > board.water.drained_mm + board.water.unexpected_mm {
                    aim.drain = true;
                    return;
                }
                demand.gear = Some(Gear::Spin);
                let rpm = board.service.test_spin_rpm;
                if sense.rpm > rpm {
                    self.coasting = true;
                } else if sense.rpm < rpm * 0.97 {
                    self.coasting = false;
                }
                demand.motor = Some(MotorDirection::A).filter(|_| !self.coasting);
            }
            // Water and motor wait for the lid.
            Routine::TestCold
            | Routine::TestHot
            | Routine::TestMotorA
            | Routine::TestMotorB
            | Routine::TestSpin => {}
            Routine::Recall
            | Routine::Ages
            | Routine::Clear
            | Routine::LampTest
            | Routine::LiveLevel
            | Routine::LiveTemperature
            | Routine::LiveSpeed
            | Routine::Recalibrate => {}
        }
    }

    /// Once a second: two digits of a live value, which comes in cm, °C or tens of rev/min.
    fn refresh_live(&mut self, value: f64) {
        if self.ticks % TICKS_PER_S as u32 == 1 {
            self.live = (value + 0.5).clamp(0.0, 99.0) as u8;
        }
    }

    /// What the lamps show. `at`: position chosen.
    pub fn picture(&self, board: &super::board::Board, memory: &Memory, at: u8) -> Picture {
        let rules = &board.lamps;
        let Some(routine) = self.routine else {
            if let Some(code) = self.refused.and_then(|monitor| board.code_of(monitor)) {
                return Picture::Number(code);
            }
            return rules.service.of(u32::from(at), 99, &rules.signs);
        };
        let page = memory.codes.get(usize::from(self.page));
        match routine {
            Routine::Recall => page.map_or(Picture::Dark, |c| Picture::Number(c.code)),
            Routine::Ages => page.map_or(Picture::Dark, |c| {
                Picture::Number(c.cycles_ago.min(99) as u8)
            }),
            Routine::Clear => Picture::Number(memory.codes.len() as u8),
            Routine::LampTest => Picture::All,
            Routine::LiveLevel | Routine::LiveTemperature | Routine::LiveSpeed => {
                Picture::Number(self.live)
            }
            Routine::Recalibrate => {
                let stages = board.recalibration.stages.len() as u32;
                let stage = self.recal.number();
                rules.recalibration.of(stage, stages, &rules.signs)
            }
            Routine::TestCold
            | Routine::TestHot
            | Routine::TestPump
            | Routine::TestMotorA
            | Routine::TestMotorB
            | Routine::TestSpin
            | Routine::TestClutch
            | Routine::TestLock => {
                let gone = self.ticks / TICKS_PER_S as u32;
                let left_s = board.service.test_limit_s.saturating_sub(gone);
                rules
                    .test
                    .of(left_s, board.service.test_limit_s, &rules.signs)
            }
        }
    }
}
