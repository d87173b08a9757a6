//! A cheap look at the control at every tick, for whoever notes what it goes through.

use super::mode::ControlMode;
use super::monitor::{Monitor, Routine};

/// The few things whose changes are milestones.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ControlStatus {
    /// What it is doing.
    pub mode: ControlMode,
    /// The monitor behind the present fault hold.
    pub hold: Option<Monitor>,
    /// The service routine at work.
    pub routine: Option<Routine>,
    /// Recalibration is at work.
    pub calibrating: bool,
    /// Why the last recalibration was broken off, until the next input.
    pub aborted: Option<Monitor>,
    /// The code that is shown: a stored one in the code list, or why recalibration was not begun.
    pub code_shown: Option<u8>,
    /// Number of stored codes.
    pub stored: u8,
    /// The program at work, by its place in the board's list.
    pub program: Option<u8>,
    /// Programs run to their end since the control was made.
    pub finished: u32,
    /// Recalibrations passed since the control was made.
    pub calibrations: u32,
}
