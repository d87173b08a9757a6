//! Whether a run proves a repair: it must come to what was repaired. Which faults a run that falls short can hide is held
//! against the machine itself in `tests/training/proving_runs.rs`.

use super::log::Repair;
use super::workplace::Bench;
use detent_simulation::controller::{Board, Phase, Program};
use detent_simulation::interface::Component;
use detent_simulation::names;
use detent_simulation::units::Time;

/// A program that ran to its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FinishedRun {
    /// When.
    pub at: Time,
    /// Which, by its place in the board's list.
    pub program: u8,
}

names! {
    /// What a run did not come to. Its text is `run-gap-{name}`.
    RunGap { Water = "water", HotWater = "hot-water", FullSpeed = "full-speed", Laundry = "laundry" }
}

/// What the runs since the repairs prove of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RunProof {
    /// Every repair was tried by a run to the end.
    Complete,
    /// No program has run to its end since the last repair.
    NoRun,
    /// Programs have run to their end, but none that came to this.
    FallsShort(RunGap),
}

impl Bench {
    /// What the programs that ran to their end prove of the repairs before them or, where nothing was repaired, of the
    /// whole machine.
    pub fn run_proof(&self) -> RunProof {
        let last = self.repairs().last().map_or(self.began(), |(at, _)| at);
        let ran_since = |at: Time| {
            let runs = self.log().finished_runs().iter();
            runs.filter(move |run| run.at >= at)
        };
        if ran_since(last).next().is_none() {
            return RunProof::NoRun;
        }
        let repaired = self.repairs().iter().filter_map(|(at, repair)| {
            let component = match repair {
                Repair::Fitted { part } => self.part(part)?.component,
                Repair::PutRight(component) => *component,
            };
            Some((at, component))
        });
        // Where nothing was repaired, the whole machine is to be shown, as after work on its control.
        let whole = (self.repairs().is_empty()).then_some((last, Component::Board));
        let mut gaps = repaired.chain(whole).flat_map(|(at, component)| {
            let wanted = to_be_tried(component).iter().copied();
            wanted.filter(move |what| !ran_since(at).any(|run| self.came_to(run, *what)))
        });
        gaps.next().map_or(RunProof::Complete, RunProof::FallsShort)
    }

    /// Whether a run came to this.
    fn came_to(&self, run: FinishedRun, what: RunGap) -> bool {
        let board = self.machine().board();
        let program = board.programs.get(usize::from(run.program));
        match what {
            RunGap::Laundry => !self.log().basket_was_empty(run.at),
            RunGap::Water => program.is_some_and(|p| fills(p, |_| true)),
            RunGap::HotWater => program.is_some_and(|p| fills(p, |hot| hot)),
            RunGap::FullSpeed => program.is_some_and(|p| fastest_rpm(p) >= full_speed_rpm(board)),
        }
    }
}

/// What a run must come to after work on a component (common practice, no source).
const fn to_be_tried(component: Component) -> &'static [RunGap] {
    match component {
        Component::InletCold
        | Component::DrainPump
        | Component::DrainHose
        | Component::PressureSensor
        | Component::PressureHose
        | Component::LidLock
        | Component::ClutchActuator => &[RunGap::Water],
        Component::Taps | Component::InletHoses | Component::InletHot | Component::Thermistor => {
            &[RunGap::HotWater]
        }
        Component::Motor
        | Component::RunCapacitor
        | Component::Belt
        | Component::Pickup
        | Component::Tub => &[RunGap::Water, RunGap::FullSpeed],
        // What is out of balance only with laundry in it.
        Component::Laundry | Component::Floor => {
            &[RunGap::Water, RunGap::FullSpeed, RunGap::Laundry]
        }
        // All that hangs on it.
        Component::Supply
        | Component::Cord
        | Component::LineFuse
        | Component::Filter
        | Component::Board
        | Component::Dial
        | Component::Harness => &[RunGap::HotWater, RunGap::FullSpeed],
    }
}

/// Whether a program lets water in, hot or not, that this is true of.
fn fills(program: &Program, wanted: impl Fn(bool) -> bool) -> bool {
    (program.phases.iter()).any(|phase| matches!(phase, Phase::Fill { hot, .. } if wanted(*hot)))
}

/// The fastest spin of a program, rev/min; 0 without one.
fn fastest_rpm(program: &Program) -> f64 {
    let spins = program.phases.iter().map(|phase| match phase {
        Phase::Spin { rpm, .. } => *rpm,
        Phase::Fill { .. }
        | Phase::Agitate { .. }
        | Phase::Soak { .. }
        | Phase::Drain { .. }
        | Phase::Rest { .. } => 0.0,
    });
    spins.fold(0.0, f64::max)
}

/// The fastest spin of a board, rev/min.
fn full_speed_rpm(board: &Board) -> f64 {
    board.programs.iter().map(fastest_rpm).fold(0.0, f64::max)
}
