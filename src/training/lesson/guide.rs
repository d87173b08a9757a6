//! A guide through a job: what to do next and why, step by step. Each step has a goal that the bench's log shows
//! reached, so that a guide can be left, taken up again and replayed with the attempt.

use super::scenario::Bilingual;
use crate::bench::script::ScriptStep;
use crate::bench::{
    Action, BenchLog, Display, LogEntry, MeterMode, MilestoneKind, TOUCH_V, hands_inside,
};
use detent_simulation::interface::Pin;
use serde::Deserialize;

/// A guide through one job.
#[derive(Clone, Debug, PartialEq)]
pub struct Guide {
    /// What is done, in order.
    pub steps: Vec<GuideStep>,
}

/// One step.
#[derive(Clone, Debug, PartialEq)]
pub struct GuideStep {
    /// What to do and why.
    pub say: Bilingual,
    /// When it is done.
    pub goal: Goal,
    /// Text keys of the controls to use, which are marked.
    pub mark: Vec<String>,
    /// How it is done, to be shown.
    pub shown: Vec<ScriptStep>,
    /// What leads away from it.
    pub astray: Vec<Astray>,
}

/// What leads away from a step.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Astray {
    /// What the log shows then.
    pub after: Goal,
    /// What it means, and the way back.
    pub say: Bilingual,
}

/// Where somebody stands in a guide.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct GuidePlace {
    /// Steps done.
    pub steps_done: usize,
    /// What led away from the next step last, by its place in [`GuideStep::astray`].
    pub astray: Option<usize>,
}

/// What the log must show after the step before.
#[derive(Clone, Debug, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Goal {
    /// This was done.
    Did(Action),
    /// The control was without power until it forgot.
    Rested,
    /// Service mode was entered.
    Entered,
    /// The lamps showed this stored code.
    Shown(u8),
    /// A meter across the bulk capacitor showed it dead.
    ReadDead,
    /// A reading was taken on these pins, either way round.
    Read {
        /// Meter setting.
        mode: MeterMode,
        /// One pin.
        red: Pin,
        /// The other.
        black: Pin,
    },
    /// The customer agreed to a quote.
    Approved,
    /// A recalibration passed.
    Calibrated,
    /// A program ran to its end.
    Finished,
    /// The report was handed in.
    Reported,
    /// A code was noted, and not this one.
    NotedAnother(u8),
    /// Some part was ordered.
    Ordered,
    /// Hands went behind the panels.
    HandsInside,
}

impl Goal {
    fn is_reached_by(&self, entry: &LogEntry) -> bool {
        let went_through =
            |kind| matches!(entry, LogEntry::Milestone(milestone) if milestone.kind == kind);
        let done = |wanted: &dyn Fn(&Action) -> bool| matches!(entry, LogEntry::Action { action, .. } if wanted(action));
        match self {
            Goal::Did(wanted) => done(&|action| action == wanted),
            Goal::NotedAnother(code) => {
                done(&|action| matches!(action, Action::NoteCode(noted) if noted != code))
            }
            Goal::Ordered => done(&|action| matches!(action, Action::Order(_))),
            Goal::HandsInside => done(&hands_inside),
            Goal::Reported => done(&|action| matches!(action, Action::Report(_))),
            Goal::Approved => matches!(entry, LogEntry::Quoted(given) if given.approved),
            Goal::Rested => went_through(MilestoneKind::PowerReset),
            Goal::Entered => went_through(MilestoneKind::ServiceEntered),
            Goal::Shown(code) => went_through(MilestoneKind::CodeShown(*code)),
            Goal::Calibrated => went_through(MilestoneKind::CalibrationPassed),
            Goal::Finished => went_through(MilestoneKind::ProgramFinished),
            Goal::Read { mode, red, black } => {
                matches!(entry, LogEntry::Reading(r) if r.mode == *mode
                    && [(r.red, r.black), (r.black, r.red)].contains(&(*red, *black)))
            }
            Goal::ReadDead => {
                let bulk = Goal::Read {
                    mode: MeterMode::VoltsDc,
                    red: Pin::BulkPlus,
                    black: Pin::BulkMinus,
                };
                bulk.is_reached_by(entry)
                    && matches!(entry, LogEntry::Reading(r) if !r.live
                        && matches!(r.shown, Display::Value(volts) if volts.abs() < TOUCH_V))
            }
        }
    }
}

impl Guide {
    /// Where somebody stands whose bench has this log.
    pub fn place(&self, log: &BenchLog) -> GuidePlace {
        let mut entries = log.entries();
        let mut steps_done = 0;
        for step in &self.steps {
            let reached = |entry| step.goal.is_reached_by(entry);
            let Some(at) = entries.iter().position(reached) else {
                break;
            };
            entries = &entries[at + 1..];
            steps_done += 1;
        }
        let astray = self.steps.get(steps_done).and_then(|step| {
            let leads_away = |entry| {
                step.astray
                    .iter()
                    .position(|a| a.after.is_reached_by(entry))
            };
            entries.iter().rev().find_map(leads_away)
        });
        GuidePlace { steps_done, astray }
    }
}
