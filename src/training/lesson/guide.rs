//! A guide through a job: what to do next and why, step by step. Each step has a goal that the bench's log shows
//! reached, so that a guide can be left, taken up again and replayed with the attempt. The first steps of a first guide
//! teach the window's own controls; what the window shows is told to the guide, and no log needs it.

use super::scenario::Bilingual;
use crate::bench::script::ScriptStep;
use crate::bench::{
    Action, BenchLog, Display, LogEntry, MeterMode, MilestoneKind, TOUCH_V, hands_inside,
};
use detent_simulation::interface::{Direction, Pin};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::cmp::Reverse;
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
#[derive(Clone, Debug, PartialEq)]
pub struct Astray {
    /// What the log shows then.
    pub after: BenchGoal,
    /// What ends it; else it is told until the step is done.
    pub until: Option<BenchGoal>,
    /// What it means, and the way back.
    pub say: Bilingual,
    /// The way back, to be shown before the step itself.
    pub shown: Vec<ScriptStep>,
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum WindowView {
    /// The console, close up.
    Console,
    /// The whole machine.
    Machine,
    /// The machine's inside.
    Inside,
}

/// What stands on the right of the window.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize, JsonSchema)]
pub enum WindowTab {
    /// The service sheet.
    #[default]
    Sheet,
    /// Meter and notebook.
    Meter,
    /// The parts counter.
    Parts,
    /// The report.
    Report,
    /// The score.
    Score,
}

/// What the window shows, as far as a guide teaches it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WindowState {
    /// The view.
    pub view: WindowView,
    /// The tab.
    pub tab: WindowTab,
    /// The machine's clock runs this many times as fast as time; 0: it is paused.
    pub clock_speed: u32,
}

impl WindowState {
    /// The window as a job opens.
    pub const OPENED: WindowState = WindowState {
        view: WindowView::Machine,
        tab: WindowTab::Sheet,
        clock_speed: 1,
    };
}

/// Steps about the window that were done at this bench, by their place in the guide.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct WindowStepsDone(BTreeSet<usize>);

/// What must have happened after the step before, or be shown.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
pub enum Goal {
    /// What the bench has seen, by its log.
    Bench(BenchGoal),
    /// What the window shows.
    Window(WindowGoal),
}

/// What the window must show.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub enum WindowGoal {
    /// This view.
    Looked(WindowView),
    /// This tab.
    Opened(WindowTab),
    /// The machine's clock this many times as fast as time; 0: it is paused.
    ClockAt(u32),
}

/// What the bench's log must show.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub enum BenchGoal {
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
        /// Setting of the meter.
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
    /// A program was started.
    Started,
    /// A program was called off before its end.
    Cancelled,
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
}

impl Goal {
    /// The window shows it.
    fn is_reached_in(&self, window: WindowState) -> bool {
        match self {
            Goal::Bench(_) => false,
            Goal::Window(goal) => goal.is_reached_in(window),
        }
    }

    /// The entry of the log shows it.
    fn is_reached_by(&self, entry: &LogEntry) -> bool {
        match self {
            Goal::Bench(goal) => goal.is_reached_by(entry),
            Goal::Window(_) => false,
        }
    }

    /// It is about the controls of this window and not about the job: whoever has gone on with the job needs it no
    /// more.
    fn is_about_controls(&self) -> bool {
        match self {
            Goal::Bench(goal) => matches!(goal, BenchGoal::Turned(_)),
            Goal::Window(_) => true,
        }
    }
}

impl WindowGoal {
    fn is_reached_in(self, window: WindowState) -> bool {
        match self {
            WindowGoal::Looked(view) => view == window.view,
            WindowGoal::Opened(tab) => tab == window.tab,
            WindowGoal::ClockAt(speed) => speed == window.clock_speed,
        }
    }
}

impl BenchGoal {
    fn is_reached_by(&self, entry: &LogEntry) -> bool {
        let went_through =
            |kind| matches!(entry, LogEntry::Milestone(milestone) if milestone.kind == kind);
        let done = |wanted: &dyn Fn(&Action) -> bool| matches!(entry, LogEntry::Action { action, .. } if wanted(action));
        match self {
            BenchGoal::Did(wanted) => done(&|action| action == wanted),
            BenchGoal::NotedAnother(code) => {
                done(&|action| matches!(action, Action::NoteCode(noted) if noted != code))
            }
            BenchGoal::Turned(way) => {
                done(&|action| matches!(action, Action::Detent(turned) if turned == way))
            }
            BenchGoal::Ordered => done(&|action| matches!(action, Action::Order(_))),
            BenchGoal::HandsInside => done(&hands_inside),
            BenchGoal::Reported => done(&|action| matches!(action, Action::Report(_))),
            BenchGoal::Approved => matches!(entry, LogEntry::Quoted(given) if given.approved),
            BenchGoal::Rested => went_through(MilestoneKind::PowerReset),
            BenchGoal::Entered => went_through(MilestoneKind::ServiceEntered),
            BenchGoal::Shown(code) => went_through(MilestoneKind::CodeShown(*code)),
            BenchGoal::Calibrated => went_through(MilestoneKind::CalibrationPassed),
            BenchGoal::Started => went_through(MilestoneKind::ProgramStarted),
            BenchGoal::Cancelled => went_through(MilestoneKind::ProgramCancelled),
            BenchGoal::Finished => went_through(MilestoneKind::ProgramFinished),
            BenchGoal::Read { mode, red, black } => {
                matches!(entry, LogEntry::Reading(r) if r.mode == *mode
                    && [(r.red, r.black), (r.black, r.red)].contains(&(*red, *black)))
            }
            BenchGoal::ReadDead => {
                let bulk = BenchGoal::Read {
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

impl Astray {
    /// The place of the entry with which it was gone last, if nothing has ended it since.
    fn gone_at(&self, entries: &[LogEntry]) -> Option<usize> {
        let reached =
            |goal: &BenchGoal| entries.iter().rposition(|entry| goal.is_reached_by(entry));
        let at = reached(&self.after)?;
        let ended = self.until.as_ref().and_then(reached);
        ended.is_none_or(|ended| ended < at).then_some(at)
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
            let ways = step.astray.iter().enumerate();
            let gone = ways.filter_map(|(n, way)| Some((way.gone_at(entries)?, n)));
            gone.max_by_key(|(at, n)| (*at, Reverse(*n)))
        });
        let astray = astray.map(|(_, n)| n);
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
