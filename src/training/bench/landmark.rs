//! What the machine goes through, noticed as it happens: the lesson's evidence.

use super::log::{BenchLog, LogEntry};
use detent_simulation::controller::{Glance, Monitor};
use detent_simulation::machine::Machine;
use detent_simulation::units::Time;

/// Something that the machine went through.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Landmark {
    /// When.
    pub at: Time,
    /// What.
    pub kind: LandmarkKind,
}

/// Kinds of landmark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LandmarkKind {
    /// The control lost its supply long enough to forget, and is off.
    PowerReset,
    /// Service mode was entered.
    ServiceEntered,
    /// A program was started.
    ProgramStarted,
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
    /// The arc showed this stored code in the code list.
    CodeShown(u8),
    /// The code list was cleared.
    CodesCleared,
}

impl LandmarkKind {
    /// The monitor that stopped the control, in a program or in recalibration.
    pub fn stopped_by(self) -> Option<Monitor> {
        match self {
            LandmarkKind::Held(monitor) | LandmarkKind::CalibrationFailed(monitor) => Some(monitor),
            _ => None,
        }
    }
}

/// Compares each glance at the control with the last.
#[derive(Clone, Debug, Default)]
pub struct Watcher {
    last: Glance,
}

impl Watcher {
    /// Looks once, after a tick, and writes down what is new.
    pub fn look(&mut self, machine: &Machine, log: &mut BenchLog) {
        let now = machine.control().glance();
        // Starved of supply the control keeps what it was doing: nothing has happened to it yet.
        if now == self.last || now.mode == "starved" {
            return;
        }
        let last = std::mem::replace(&mut self.last, now);
        let at = machine.now();
        let mut note = |kind| log.push(LogEntry::Landmark(Landmark { at, kind }));
        if now.mode != last.mode {
            match (last.mode, now.mode) {
                (_, "off") if !last.mode.is_empty() => note(LandmarkKind::PowerReset),
                (_, "service") => note(LandmarkKind::ServiceEntered),
                ("idle", "program") => note(LandmarkKind::ProgramStarted),
                _ => {}
            }
        }
        if now.finished > last.finished {
            note(LandmarkKind::ProgramFinished);
        }
        if let Some(monitor) = now.hold
            && last.hold != now.hold
        {
            note(LandmarkKind::Held(monitor));
        }
        if now.calibrating && !last.calibrating {
            note(LandmarkKind::CalibrationStarted);
        }
        if now.calibrations > last.calibrations {
            note(LandmarkKind::CalibrationPassed);
        }
        if let Some(monitor) = now.aborted
            && last.aborted != now.aborted
        {
            note(LandmarkKind::CalibrationFailed(monitor));
        }
        if let Some(code) = now.code_shown
            && last.code_shown != now.code_shown
        {
            note(LandmarkKind::CodeShown(code));
        }
        if now.stored == 0 && last.stored > 0 && now.mode == "service" {
            note(LandmarkKind::CodesCleared);
        }
    }
}
