//! The customer's wash as a timeline: what a scenario's machine does before the technician comes.

use super::scenario::Scenario;
use super::set_up::{Library, SetUpError, customer_washes, prepare};
use crate::bench::{Bench, MilestoneKind};
use crate::slices::without_breaks;
use detent_simulation::controller::{ControlMode, Lamps, Monitor, PhaseKind};
use detent_simulation::machine::Machine;
use detent_simulation::units::{TICKS_PER_S, Time};

/// Most samples of a trace. A longer wash is thinned out evenly.
pub const MOST_SAMPLES: usize = 2000;

/// The customer's wash, from the plug in the outlet until the technician comes.
#[derive(Clone, Debug, PartialEq)]
pub struct WashTrace {
    /// The machine at every whole second, or at every so many of them, and at the end; in order of time.
    pub samples: Vec<WashSample>,
    /// Codes that the wash stored, in order of time.
    pub stored: Vec<StoredCode>,
    /// Codes that were stored before it, newest first.
    pub stale: Vec<u8>,
    /// How the wash ended.
    pub end: WashEnd,
}

/// The machine at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WashSample {
    /// When, from the plug in the outlet.
    pub time: Time,
    /// The running program's phase; none while no program runs.
    pub phase: Option<PhaseKind>,
    /// Water depth in the tub, mm.
    pub level_mm: f64,
    /// Basket speed, rev/min.
    pub basket_rpm: f64,
    /// Current that the whole machine draws, A rms.
    pub mains_current_a: f64,
    /// Lamps lit at this moment: of a blinking one only what it is now.
    pub lamps: Lamps,
    /// The bolt of the lid lock is out.
    pub locked: bool,
}

/// A code that the wash stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StoredCode {
    /// Tick at which it was stored, from the plug in the outlet.
    pub time: Time,
    /// Two digits.
    pub code: u8,
}

/// How the customer's wash ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WashEnd {
    /// It ran to its end.
    Finished,
    /// The control stopped it for this reason.
    Stopped(Monitor),
    /// No program was ever begun.
    NeverStarted,
    /// The control lost its supply.
    WentDark,
    /// The program was called off, and the control reported nothing.
    CalledOff,
    /// It was still running, or waiting, when the customer gave up.
    StillRunning,
}

impl WashEnd {
    /// Its name in files and in keys of texts.
    pub const fn name(self) -> &'static str {
        match self {
            WashEnd::Finished => "finished",
            WashEnd::Stopped(_) => "stopped",
            WashEnd::NeverStarted => "never-started",
            WashEnd::WentDark => "went-dark",
            WashEnd::CalledOff => "called-off",
            WashEnd::StillRunning => "still-running",
        }
    }

    fn of(bench: &Bench) -> WashEnd {
        let went_through = |kind| bench.milestones().iter().any(|m| m.kind == kind);
        let started = went_through(MilestoneKind::ProgramStarted);
        let stopped = bench.milestones().iter().find_map(|m| m.kind.stopped_by());
        match bench.machine().control().control_status().mode {
            ControlMode::Off | ControlMode::Starved if started => return WashEnd::WentDark,
            ControlMode::Off | ControlMode::Starved => return WashEnd::NeverStarted,
            ControlMode::Idle | ControlMode::Program | ControlMode::Hold | ControlMode::Service => {
            }
        }
        match stopped {
            Some(monitor) => WashEnd::Stopped(monitor),
            None if went_through(MilestoneKind::ProgramFinished) => WashEnd::Finished,
            None if !started => WashEnd::NeverStarted,
            None if went_through(MilestoneKind::ProgramCancelled) => WashEnd::CalledOff,
            None => WashEnd::StillRunning,
        }
    }
}

impl WashSample {
    /// The machine as it is now.
    pub fn of(machine: &Machine) -> WashSample {
        let view = machine.view();
        let running = view.control.mode == ControlMode::Program;
        WashSample {
            time: machine.now(),
            phase: view.control.phase.filter(|_| running),
            level_mm: view.level_mm,
            basket_rpm: view.basket_rpm,
            mains_current_a: machine.plant().amps().line,
            lamps: view.lamps,
            locked: view.lid_bolted,
        }
    }
}

/// What has been written down so far.
struct Recorder {
    samples: Vec<WashSample>,
    stored: Vec<StoredCode>,
    /// The newest code of this wash at the last tick.
    newest: Option<u8>,
}

impl Recorder {
    fn new(machine: &Machine) -> Recorder {
        Recorder {
            samples: vec![WashSample::of(machine)],
            stored: Vec::new(),
            newest: newest(machine),
        }
    }

    fn after_tick(&mut self, machine: &Machine) {
        let (time, newest) = (machine.now(), newest(machine));
        if newest != self.newest {
            self.newest = newest;
            let stored = newest.map(|code| StoredCode { time, code });
            self.stored.extend(stored);
        }
        if time.0.is_multiple_of(TICKS_PER_S) {
            self.samples.push(WashSample::of(machine));
        }
    }

    /// All samples and the machine at the end, thinned out.
    fn samples(self, machine: &Machine) -> Vec<WashSample> {
        let mut samples = thinned(self.samples, MOST_SAMPLES - 1);
        if samples.last().is_none_or(|last| last.time != machine.now()) {
            samples.push(WashSample::of(machine));
        }
        samples
    }
}

/// The newest code, if no program has been begun since it was stored.
fn newest(machine: &Machine) -> Option<u8> {
    let newest = machine.control().memory().codes.first();
    newest.filter(|c| c.cycles_ago == 0).map(|c| c.code)
}

/// The first and then every n-th, with the least n that leaves `most` or fewer.
fn thinned<T>(all: Vec<T>, most: usize) -> Vec<T> {
    let step = all.len().div_ceil(most).max(1);
    all.into_iter().step_by(step).collect()
}

/// Runs the wash that [`super::set_up`] lets the customer run, with the same draws, and writes it down.
///
/// # Errors
/// The scenario does not fit the library.
pub fn wash_trace(
    library: Library<'_>,
    scenario: &Scenario,
    seed: u64,
) -> Result<WashTrace, SetUpError> {
    without_breaks(wash_trace_in_slices(library, scenario, seed))
}

/// The same in slices of a few milliseconds each, so that whoever waits can do something else in between.
///
/// # Errors
/// As [`wash_trace`].
pub async fn wash_trace_in_slices(
    library: Library<'_>,
    scenario: &Scenario,
    seed: u64,
) -> Result<WashTrace, SetUpError> {
    let mut bench = prepare(scenario, &library, seed)?;
    let memory = bench.machine().control().memory();
    let stale = memory.codes.iter().map(|c| c.code).collect();
    let mut recorder = Recorder::new(bench.machine());
    let mut after_tick = |bench: &Bench| recorder.after_tick(bench.machine());
    customer_washes(&mut bench, &mut after_tick).await;
    Ok(WashTrace {
        stored: std::mem::take(&mut recorder.stored),
        samples: recorder.samples(bench.machine()),
        stale,
        end: WashEnd::of(&bench),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_list_is_thinned_out_evenly_and_a_short_one_not_at_all() {
        for (count, most, left) in [
            (0_usize, 3, vec![]),
            (3, 3, vec![0, 1, 2]),
            (4, 3, vec![0, 2]),
            (7, 3, vec![0, 3, 6]),
        ] {
            let all: Vec<usize> = (0..count).collect();
            assert_eq!(thinned(all, most), left, "{count} to {most}");
        }
    }
}
