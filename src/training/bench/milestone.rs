//! What the machine goes through, noticed as it happens: the lesson's evidence.

use super::log::{BenchLog, LogEntry};
use super::proving_run::FinishedRun;
use detent_simulation::controller::{ControlMode, ControlStatus, Monitor};
use detent_simulation::machine::Machine;
use detent_simulation::units::Time;

/// Something that the machine went through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Milestone {
    /// When.
    pub at: Time,
    /// What.
    pub kind: MilestoneKind,
}

/// Kinds of milestone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MilestoneKind {
    /// The control lost its supply long enough to forget, and is off.
    PowerReset,
    /// Service mode was entered.
    ServiceEntered,
    /// A program was started.
    ProgramStarted,
    /// A program was called off before its end.
    ProgramCancelled,
    /// A program ran to its end.
    ProgramFinished,
    /// The control stopped with this monitor.
    Held(Monitor),
    /// Recalibration began.
    CalibrationStarted,
    /// Recalibration passed.
    CalibrationPassed,
    /// Recalibration was broken off by this monitor.
    CalibrationFailed(Monitor),
    /// The lamps showed this code: in the code list, or as the reason why recalibration was not begun.
    CodeShown(u8),
    /// The code list was cleared.
    CodesCleared,
}

impl MilestoneKind {
    /// The monitor that stopped the control, in a program or in recalibration.
    pub fn stopped_by(self) -> Option<Monitor> {
        match self {
            MilestoneKind::Held(monitor) | MilestoneKind::CalibrationFailed(monitor) => {
                Some(monitor)
            }
            _ => None,
        }
    }
}

/// Compares each glance at the control with the last.
#[derive(Clone, Debug, Default)]
pub struct MilestoneDetector {
    /// None before the first look.
    last: Option<ControlStatus>,
}

impl MilestoneDetector {
    /// Looks once, after a tick, and writes down what is new.
    pub fn observe(&mut self, machine: &Machine, log: &mut BenchLog) {
        let now = machine.control().control_status();
        // Starved of supply the control keeps what it was doing: nothing has happened to it yet.
        if self.last == Some(now) || now.mode == ControlMode::Starved {
            return;
        }
        let last = self.last.replace(now);
        let at = machine.now();
        let mut ran = None;
        let mut note = |kind| log.push(LogEntry::Milestone(Milestone { at, kind }));
        let before = last.map(|last| last.mode);
        let finished = now.finished > last.map_or(0, |last| last.finished);
        if before != Some(now.mode) {
            match now.mode {
                ControlMode::Off if before.is_some() => note(MilestoneKind::PowerReset),
                ControlMode::Service => note(MilestoneKind::ServiceEntered),
                ControlMode::Program if before == Some(ControlMode::Idle) => {
                    note(MilestoneKind::ProgramStarted);
                }
                ControlMode::Idle if before == Some(ControlMode::Program) && !finished => {
                    note(MilestoneKind::ProgramCancelled);
                }
                ControlMode::Off
                | ControlMode::Program
                | ControlMode::Starved
                | ControlMode::Idle
                | ControlMode::Hold => {}
            }
        }
        if finished {
            note(MilestoneKind::ProgramFinished);
            let program = last.and_then(|last| last.program);
            ran = program.map(|program| FinishedRun { at, program });
        }
        // A board that keeps its hold wakes up in it: that is no new one.
        if let Some(monitor) = now.hold
            && last.and_then(|last| last.hold) != now.hold
            && before != Some(ControlMode::Off)
        {
            note(MilestoneKind::Held(monitor));
        }
        if now.calibrating && !last.is_some_and(|last| last.calibrating) {
            note(MilestoneKind::CalibrationStarted);
        }
        if now.calibrations > last.map_or(0, |last| last.calibrations) {
            note(MilestoneKind::CalibrationPassed);
        }
        if let Some(monitor) = now.aborted
            && last.and_then(|last| last.aborted) != now.aborted
        {
            note(MilestoneKind::CalibrationFailed(monitor));
        }
        if let Some(code) = now.code_shown
            && last.and_then(|last| last.code_shown) != now.code_shown
        {
            note(MilestoneKind::CodeShown(code));
        }
        if now.stored == 0
            && last.is_some_and(|last| last.stored > 0)
            && now.mode == ControlMode::Service
        {
            note(MilestoneKind::CodesCleared);
        }
        if let Some(run) = ran {
            log.push(LogEntry::Ran(run));
        }
    }
}
