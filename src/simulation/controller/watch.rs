//! The monitors: each looks for one condition that lasts too long.
//!
//! A condition that has lasted its delay first costs a retry: the loads rest and the work goes on.
//! When the retries are used up, the monitor raises its fault.

use super::board::{Board, SupplyRules};
use super::drive::{Demand, Drive};
use super::monitor::Monitor;
use super::sense::Sense;
use crate::interface::{Rating, Relay};
use crate::units::{TICK_MS, TICK_S, TICKS_PER_S};
use serde::Serialize;

const COUNT: usize = Monitor::ALL.len();

/// Delays, retries and rests by monitor, in ticks; levels of the supply at hand.
#[derive(Clone, Debug)]
pub(super) struct Limits {
    delay: [u32; COUNT],
    retries: [u8; COUNT],
    rest: [u32; COUNT],
    supply: SupplyRules,
}

impl Limits {
    /// The control forgets its volatile state below this, V.
    pub fn reset_v(&self) -> f64 {
        self.supply.reset_v
    }

    /// A monitor without a rule never trips; a supply without levels is never too low.
    pub fn compile(board: &Board, rating: Rating) -> Limits {
        let mut limits = Limits {
            delay: [u32::MAX; COUNT],
            retries: [0; COUNT],
            rest: [0; COUNT],
            supply: board.supply_rules(rating),
        };
        for rule in &board.monitors {
            let index = rule.monitor.index();
            limits.delay[index] = (rule.delay_ms / TICK_MS as u32).max(1);
            limits.retries[index] = rule.retries;
            limits.rest[index] = rule.rest_ms / TICK_MS as u32;
        }
        limits
    }
}

/// What the present work is meant to achieve, so that its failure can be seen.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub(super) struct Aim {
    /// The machine works: sensors, lock, motor and clutch actuator are watched.
    pub work: bool,
    /// Water that comes by itself is watched.
    pub water: bool,
    /// No retries: the first trip is a fault.
    pub strict: bool,
    /// Filling, with the lowest and highest temperature wanted, °C.
    pub fill: Option<(f64, f64)>,
    /// The tub is being emptied.
    pub drain: bool,
    /// Water that must stay, mm.
    pub keep_mm: Option<f64>,
    /// Stroking to and fro.
    pub agitate: bool,
    /// Spin speed wanted, rev/min, and extra time for the load's inertia, ticks.
    pub spin: Option<(f64, u32)>,
}

/// The monitors' counters.
#[derive(Clone, Debug, Default, Serialize)]
pub(super) struct Watch {
    count: [u32; COUNT],
    tries: [u8; COUNT],
    /// Ticks of rest still to come, and whether the lock rests too.
    rest: u32,
    rest_lock: bool,
    fill_mark_mm: f64,
    filling: bool,
    shut_ticks: u32,
    low_mm: f64,
    motor: MotorWatch,
}

impl Watch {
    /// A new phase or stage: retries begin anew.
    pub fn new_phase(&mut self) {
        self.tries = [0; COUNT];
        for monitor in [
            Monitor::FillNone,
            Monitor::FillSlow,
            Monitor::DrainSlow,
            Monitor::LevelLost,
            Monitor::WaterNotWarm,
            Monitor::WaterTooHot,
            Monitor::SpinNotReached,
        ] {
            self.count[monitor.index()] = 0;
        }
        self.filling = false;
        self.motor.reached = false;
        self.motor.stroke_ticks = 0;
        self.motor.stroke_pulses = 0;
    }

    /// A new mode: everything begins anew.
    pub fn clear(&mut self) {
        *self = Watch::default();
    }

    /// True while the loads rest before a retry.
    pub fn resting(&self) -> bool {
        self.rest > 0
    }

    /// Takes the loads out of `demand` while resting.
    pub fn rest(&self, demand: &mut Demand) {
        if self.rest > 0 {
            *demand = Demand {
                lock: demand.lock && !self.rest_lock,
                ..Demand::default()
            };
        }
    }

    /// One tick. Answers a monitor whose retries are used up.
    pub fn step(
        &mut self,
        board: &Board,
        limits: &Limits,
        aim: &Aim,
        demand: &Demand,
        sense: &Sense,
        drive: &Drive,
    ) -> Option<Monitor> {
        if self.rest > 0 {
            self.rest -= 1;
            return None;
        }
        let tripped = self.check(board, limits, aim, demand, sense, drive)?;
        let index = tripped.index();
        self.count[index] = 0;
        self.tries[index] = self.tries[index].saturating_add(1);
        if aim.strict || self.tries[index] > limits.retries[index] {
            return Some(tripped);
        }
        self.rest = limits.rest[index];
        self.rest_lock = tripped == Monitor::LockNotProven;
        self.filling = false;
        self.motor = MotorWatch::default();
        None
    }

    fn check(
        &mut self,
        board: &Board,
        limits: &Limits,
        aim: &Aim,
        demand: &Demand,
        sense: &Sense,
        drive: &Drive,
    ) -> Option<Monitor> {
        let mut tally = Tally {
            count: &mut self.count,
            limits,
            tripped: None,
        };
        let lock_driven = drive.relays.has(Relay::Lock);
        let locked = sense.locked.closed();
        if aim.work {
            let p = &board.pressure;
            let in_range = (p.min_v..=p.max_v).contains(&sense.pressure_v);
            tally.lasts(Monitor::PressureRange, !in_range);
            let t = &board.thermistor;
            let in_range = (t.min_v..=t.max_v).contains(&sense.thermistor_v);
            tally.lasts(Monitor::ThermistorRange, !in_range);
            tally.lasts(
                Monitor::LockNotProven,
                demand.lock && lock_driven && !locked,
            );
            tally.lasts(Monitor::CamLost, drive.moving > 0);
        }
        if aim.water {
            tally.lasts(Monitor::LockNotReleased, !lock_driven && locked);
            self.shut_ticks = if demand.cold || demand.hot {
                0
            } else {
                self.shut_ticks.saturating_add(1)
            };
            let settled = self.shut_ticks > board.water.settle_s * TICKS_PER_S as u32;
            if !settled || sense.level_mm < self.low_mm {
                self.low_mm = sense.level_mm;
            }
            let rose = sense.level_mm > self.low_mm + board.water.unexpected_mm;
            tally.lasts(Monitor::WaterUnexpected, settled && rose);
        }
        if let Some((min_c, max_c)) = aim.fill {
            if !self.filling || sense.level_mm >= self.fill_mark_mm + board.water.rise_mm {
                self.filling = true;
                self.fill_mark_mm = sense.level_mm;
                tally.lasts(Monitor::FillNone, false);
            }
            tally.lasts(Monitor::FillNone, true);
            tally.lasts(Monitor::FillSlow, true);
            let judged = sense.level_mm >= board.water.judge_mm;
            tally.lasts(
                Monitor::WaterNotWarm,
                judged && demand.hot && sense.water_c < min_c,
            );
            tally.lasts(Monitor::WaterTooHot, judged && sense.water_c > max_c);
        }
        let undrained = sense.level_mm > board.water.drained_mm;
        tally.lasts(Monitor::DrainSlow, aim.drain && undrained);
        let lost = aim
            .keep_mm
            .is_some_and(|keep_mm| sense.level_mm < keep_mm - board.water.lost_mm);
        tally.lasts(Monitor::LevelLost, lost);
        if let Some(direction) = drive.running.filter(|_| aim.work) {
            self.motor.check(
                board,
                aim,
                sense,
                direction.index(),
                drive.on_ticks,
                &mut tally,
            );
        }
        tally.tripped
    }
}

/// Counters of the motor's monitors; they advance only while the motor is driven.
#[derive(Clone, Debug, Default, Serialize)]
struct MotorWatch {
    /// Driven without current, by direction.
    dead: [u32; 2],
    /// Driven with current, but without pulses, by direction.
    silent: [u32; 2],
    stroke_ticks: u32,
    stroke_pulses: u32,
    /// Driven with current since the last rest.
    ran_ticks: u32,
    reached: bool,
}

impl MotorWatch {
    fn check(
        &mut self,
        board: &Board,
        aim: &Aim,
        sense: &Sense,
        way: usize,
        on_ticks: u32,
        tally: &mut Tally,
    ) {
        let motor = &board.motor;
        // The first tenth of a second belongs to the current's filter.
        if on_ticks >= 10 {
            if sense.motor_a >= motor.min_a {
                self.dead[way] = 0;
                self.silent[way] += 1;
                self.ran_ticks = self.ran_ticks.saturating_add(1);
            } else {
                self.dead[way] += 1;
                let warm = self.ran_ticks >= motor.warm_s * TICKS_PER_S as u32;
                tally.reaches(
                    if warm {
                        Monitor::MotorOverheated
                    } else {
                        Monitor::MotorNoCurrent
                    },
                    self.dead[way],
                );
            }
        }
        if sense.pulses > 0 {
            self.silent[way] = 0;
        }
        tally.reaches(Monitor::PulsesNone, self.silent[way]);
        // Each start draws a surge, so time at normal current is counted back.
        let over =
            sense.motor_a > motor.overload_a && (aim.spin.is_none() || sense.rpm < motor.start_rpm);
        tally.leaks(Monitor::MotorOverload, over);
        let sags = sense.bulk_v < tally.limits.supply.sag_v;
        tally.lasts(Monitor::SupplyLow, sags);
        if aim.agitate {
            self.stroke_ticks += 1;
            self.stroke_pulses += u32::from(sense.pulses);
            if self.stroke_ticks >= tally.limits.delay[Monitor::PulsesWeak.index()] {
                let turns = f64::from(self.stroke_pulses) / f64::from(motor.pulses_per_rev);
                let rpm = turns / (f64::from(self.stroke_ticks) * TICK_S) * 60.0;
                if rpm > 0.0 && rpm < motor.agitate_min_rpm {
                    tally.trip(Monitor::PulsesWeak);
                }
                self.stroke_ticks = 0;
                self.stroke_pulses = 0;
            }
        }
        if let Some((rpm, extra_ticks)) = aim.spin {
            self.reached |= sense.rpm >= rpm * motor.reached_share;
            let count = &mut tally.count[Monitor::SpinNotReached.index()];
            *count += 1;
            let count = count.saturating_sub(extra_ticks);
            if !self.reached {
                tally.reaches(Monitor::SpinNotReached, count);
            }
            let swings = sense.rpm >= motor.ripple_rpm && sense.ripple > motor.ripple_share;
            tally.lasts(Monitor::Unbalance, swings);
        }
    }
}

/// The counters at work during one tick, and the first monitor that tripped.
struct Tally<'a> {
    count: &'a mut [u32; COUNT],
    limits: &'a Limits,
    tripped: Option<Monitor>,
}

impl Tally<'_> {
    fn trip(&mut self, monitor: Monitor) {
        self.tripped = self.tripped.or(Some(monitor));
    }

    fn reaches(&mut self, monitor: Monitor, count: u32) {
        if count >= self.limits.delay[monitor.index()] {
            self.trip(monitor);
        }
    }

    /// The condition has lasted without a break.
    fn lasts(&mut self, monitor: Monitor, condition: bool) {
        let count = &mut self.count[monitor.index()];
        *count = if condition { *count + 1 } else { 0 };
        let count = *count;
        self.reaches(monitor, count);
    }

    /// The condition has prevailed: time without it is counted back.
    fn leaks(&mut self, monitor: Monitor, condition: bool) {
        let count = &mut self.count[monitor.index()];
        *count = if condition {
            *count + 1
        } else {
            count.saturating_sub(1)
        };
        let count = *count;
        self.reaches(monitor, count);
    }
}
