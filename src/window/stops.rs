//! What whoever lets time run waits for: what ends a run of the clock, so that nobody pays for minutes that nobody needs.

use super::state::BenchRes;
use detent_simulation::controller::ControlMode;
use detent_training::bench::MilestoneKind;

/// Litres on the floor from which on it is called wet.
pub const WET_FLOOR_L: f64 = 0.2;

/// Why a run of the clock came to its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stop {
    /// A program ran to its end.
    ProgramFinished,
    /// The control stopped with a fault.
    Held,
    /// Recalibration passed or was broken off: which, the lamps tell.
    CalibrationOver,
    /// The control left service mode, and no hand was at it.
    ServiceLeft,
    /// The control has no supply any more.
    Dark,
    /// The outlet's residual current device tripped.
    OutletTripped,
    /// Water came onto the floor.
    FloorWet,
    /// The longest wait is over, and nothing of all this came.
    NothingCame,
}

impl Stop {
    /// Every reason.
    pub const ALL: [Stop; 8] = [
        Stop::ProgramFinished,
        Stop::Held,
        Stop::CalibrationOver,
        Stop::ServiceLeft,
        Stop::Dark,
        Stop::OutletTripped,
        Stop::FloorWet,
        Stop::NothingCame,
    ];

    /// Text key of the sentence that says so.
    pub const fn key(self) -> &'static str {
        match self {
            Stop::ProgramFinished => "stopped-program-finished",
            Stop::Held => "stopped-held",
            Stop::CalibrationOver => "stopped-calibration-over",
            Stop::ServiceLeft => "stopped-service-left",
            Stop::Dark => "stopped-dark",
            Stop::OutletTripped => "stopped-outlet-tripped",
            Stop::FloorWet => "stopped-floor-wet",
            Stop::NothingCame => "stopped-nothing-came",
        }
    }

    fn of_milestone(kind: MilestoneKind) -> Option<Stop> {
        match kind {
            MilestoneKind::ProgramFinished => Some(Stop::ProgramFinished),
            MilestoneKind::Held(_) => Some(Stop::Held),
            MilestoneKind::CalibrationPassed | MilestoneKind::CalibrationFailed(_) => {
                Some(Stop::CalibrationOver)
            }
            MilestoneKind::PowerReset
            | MilestoneKind::ServiceEntered
            | MilestoneKind::ProgramStarted
            | MilestoneKind::ProgramCancelled
            | MilestoneKind::CalibrationStarted
            | MilestoneKind::CodeShown(_)
            | MilestoneKind::CodesCleared => None,
        }
    }
}

/// The bench at one tick, as far as it matters here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Glance {
    milestones: usize,
    plugged: bool,
    mode: ControlMode,
    outlet_tripped: bool,
    floor_wet: bool,
}

impl Glance {
    /// How the bench stands.
    pub fn of(bench: &BenchRes) -> Glance {
        let view = bench.view();
        Glance {
            milestones: view.log.milestones().len(),
            plugged: view.machine.plugged,
            mode: view.machine.control.mode,
            outlet_tripped: view.outlet_tripped,
            floor_wet: view.machine.floor_l > WET_FLOOR_L,
        }
    }

    /// What has come since that one waits for. What comes at once is told by its cause.
    pub fn stop_since(self, before: Glance, bench: &BenchRes) -> Option<Stop> {
        if self == before {
            return None;
        }
        if self.outlet_tripped && !before.outlet_tripped {
            return Some(Stop::OutletTripped);
        }
        if self.floor_wet && !before.floor_wet {
            return Some(Stop::FloorWet);
        }
        // Whoever pulls the plug need not be told.
        let supplied = |glance: Glance| !glance.mode.is_without_supply();
        if supplied(before) && !supplied(self) && self.plugged == before.plugged {
            return Some(Stop::Dark);
        }
        let milestones = bench.view().log.milestones();
        let mut news = milestones.starting_at(before.milestones).iter();
        let stop = news.find_map(|milestone| Stop::of_milestone(milestone.kind));
        let left = before.mode == ControlMode::Service && self.mode == ControlMode::Idle;
        stop.or_else(|| (left && bench.hands_are_off()).then_some(Stop::ServiceLeft))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo::DemoBench;
    use detent_content::{Language, Texts};

    const BEFORE: Glance = Glance {
        milestones: 0,
        plugged: true,
        mode: ControlMode::Program,
        outlet_tripped: false,
        floor_wet: false,
    };

    #[track_caller]
    fn check(now: Glance, before: Glance, stop: Option<Stop>) {
        let bench = BenchRes::new(Box::new(DemoBench::new()));
        assert_eq!(now.stop_since(before, &bench), stop);
    }

    #[test]
    fn what_comes_ends_a_run_and_what_stays_or_goes_does_not() {
        let tripped = Glance {
            outlet_tripped: true,
            ..BEFORE
        };
        let wet = Glance {
            floor_wet: true,
            ..BEFORE
        };
        let with = |mode| Glance { mode, ..BEFORE };
        let dark = with(ControlMode::Starved);
        check(tripped, BEFORE, Some(Stop::OutletTripped));
        check(wet, BEFORE, Some(Stop::FloorWet));
        check(dark, BEFORE, Some(Stop::Dark));
        for same in [BEFORE, tripped, wet, dark] {
            check(same, same, None);
            check(BEFORE, same, None);
        }
        // Somebody pulled the plug; later on the charge runs out.
        let pulled = |glance| Glance {
            plugged: false,
            ..glance
        };
        check(pulled(dark), BEFORE, None);
        check(pulled(dark), pulled(BEFORE), Some(Stop::Dark));
        // It was dark already, and now forgets.
        check(with(ControlMode::Off), dark, None);
        let (service, idle) = (with(ControlMode::Service), with(ControlMode::Idle));
        check(idle, service, Some(Stop::ServiceLeft));
        check(idle, BEFORE, None);
        check(service, idle, None);
        // The cause is told, and not what follows from it.
        let dark = ControlMode::Off;
        check(
            Glance {
                mode: dark,
                ..tripped
            },
            BEFORE,
            Some(Stop::OutletTripped),
        );
    }

    #[test]
    fn every_reason_has_its_words() {
        for language in Language::ALL {
            let texts = Texts::load(language);
            for stop in Stop::ALL {
                assert!(texts.has(stop.key()), "{language:?}: {stop:?}");
            }
        }
    }
}
