//! A guide through a job: what to do next and why, step by step. Each step has a goal that the bench's log shows
//! reached, so that a guide can be left, taken up again and replayed with the attempt. The first steps of a first guide
//! teach the window's own controls; what the window shows is told to the guide, and no log needs it.

use super::scenario::Bilingual;
use crate::bench::script::ScriptStep;
use crate::bench::{
    Action, BenchLog, Display, LogEntry, MeterMode, MilestoneKind, TOUCH_V, hands_inside,
};
use detent_simulation::interface::{Direction, Pin};
use serde::Deserialize;
use std::collections::BTreeSet;

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

/// What is in the middle of the window.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
pub enum WindowView {
    /// The console, close up.
    Console,
    /// The whole machine.
    Machine,
    /// The machine's inside.
    Inside,
}

/// What the window shows, as far as a guide teaches it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WindowState {
    /// The view.
    pub view: WindowView,
    /// The machine's clock runs this many times as fast as time; 0: it is paused.
    pub clock_speed: u32,
}

/// Steps about the window that were done at this bench, by their place in the guide.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct WindowStepsDone(BTreeSet<usize>);

/// What the log, or the window, must show after the step before.
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
    /// The dial was turned this way.
    Turned(Direction),
    /// The window shows this view.
    Looked(WindowView),
    /// The clock runs at this speed; 0: it is paused.
    ClockAt(u32),
}

impl Goal {
    /// The window shows it.
    fn is_reached_in(&self, window: WindowState) -> bool {
        match self {
            Goal::Looked(view) => *view == window.view,
            Goal::ClockAt(speed) => *speed == window.clock_speed,
            Goal::Did(_)
            | Goal::Rested
            | Goal::Entered
            | Goal::Shown(_)
            | Goal::ReadDead
            | Goal::Read { .. }
            | Goal::Approved
            | Goal::Calibrated
            | Goal::Finished
            | Goal::Reported
            | Goal::NotedAnother(_)
            | Goal::Ordered
            | Goal::HandsInside
            | Goal::Turned(_) => false,
        }
    }

    /// It is about the controls of this window and not about the job: whoever has gone on with the job needs it no
    /// more.
    fn is_about_controls(&self) -> bool {
        matches!(self, Goal::Turned(_) | Goal::Looked(_) | Goal::ClockAt(_))
    }

    fn is_reached_by(&self, entry: &LogEntry) -> bool {
        let went_through =
            |kind| matches!(entry, LogEntry::Milestone(milestone) if milestone.kind == kind);
        let done = |wanted: &dyn Fn(&Action) -> bool| matches!(entry, LogEntry::Action { action, .. } if wanted(action));
        match self {
            Goal::Did(wanted) => done(&|action| action == wanted),
            Goal::NotedAnother(code) => {
                done(&|action| matches!(action, Action::NoteCode(noted) if noted != code))
            }
            Goal::Looked(_) | Goal::ClockAt(_) => false,
            Goal::Turned(way) => {
                done(&|action| matches!(action, Action::Detent(turned) if turned == way))
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
    /// Notes the next step as done if it is about the window and the window shows it. True when that is news.
    pub fn look(&self, place: GuidePlace, window: WindowState, done: &mut WindowStepsDone) -> bool {
        let step = self.steps.get(place.steps_done);
        step.is_some_and(|step| step.goal.is_reached_in(window)) && done.0.insert(place.steps_done)
    }

    /// Where somebody stands whose bench has this log, and who did these steps about the window.
    pub fn place(&self, log: &BenchLog, done: &WindowStepsDone) -> GuidePlace {
        let mut entries = log.entries();
        let mut steps_done = 0;
        while let Some(step) = self.steps.get(steps_done) {
            let reached = |entry| step.goal.is_reached_by(entry);
            if let Some(at) = entries.iter().position(reached) {
                entries = &entries[at + 1..];
            } else if !done.0.contains(&steps_done) && !self.went_on_from(steps_done, entries) {
                break;
            }
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

    /// The step is about the window's controls, and what follows in the job itself was done.
    fn went_on_from(&self, step: usize, entries: &[LogEntry]) -> bool {
        let mut rest = self.steps[step..].iter();
        let about_controls = self.steps[step].goal.is_about_controls();
        let next = rest.find(|step| !step.goal.is_about_controls());
        about_controls
            && next.is_some_and(|next| entries.iter().any(|entry| next.goal.is_reached_by(entry)))
    }
}
