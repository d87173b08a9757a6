//! What the control is doing, for the instructor and the lesson.

use super::memory::StoredCode;
use super::mode::{ControlMode, PhaseKind};
use super::monitor::{Monitor, Routine, Stage};
use super::tries::Tries;

/// A read-only look at the control.
#[derive(Clone, Copy, Debug, Default)]
pub struct ControlView<'a> {
    /// What it is doing; off as soon as the supply is too low to work.
    pub mode: ControlMode,
    /// The program's phase.
    pub phase: Option<PhaseKind>,
    /// Position of the running program.
    pub program: Option<u8>,
    /// The position that the control takes to be chosen.
    pub position: u8,
    /// The program waits for Start or for the lid.
    pub paused: bool,
    /// The monitor behind the present fault hold.
    pub hold: Option<Monitor>,
    /// The service routine at work.
    pub routine: Option<Routine>,
    /// The stage of recalibration at work.
    pub stage: Option<Stage>,
    /// Why the last recalibration was broken off, until the next input.
    pub aborted: Option<Monitor>,
    /// Page of the code list, from 0.
    pub page: Option<u8>,
    /// The number that the lamps show, when it shows one.
    pub digits: Option<u8>,
    /// Stored codes, newest first.
    pub stored: &'a [StoredCode],
    /// Recalibration has passed since the board was new.
    pub calibrated: bool,
    /// Tries at the entry gesture.
    pub tries: Tries<'a>,
    /// Time in the present mode, s.
    pub in_mode_s: f64,
    /// Level as the control reads it, mm.
    pub level_mm: f64,
    /// Water temperature as the control reads it, °C.
    pub water_c: f64,
    /// Speed as the control reads it, rev/min.
    pub rpm: f64,
}
