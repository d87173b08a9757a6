//! The way through a job, deed by deed: what it made likely, and what it cost so far. Yours is done again on a
//! fresh bench; the best one is what the planner would have done on the same machine.

use super::evidence::{self, End, Outcome, Table};
use super::plan::{Course, PlanError, PlanStep};
use super::posterior::{Posterior, PosteriorError};
use super::repair_costs::{OPENED, Probe, Remedy, RepairCosts, SERVICE, WAIT_PER_HOUR};
use crate::bench::{
    Action, Bench, Milestone, MilestoneKind, Part, Question, Quote, Refusal, cost, holds_water,
};
use crate::lesson::{Library, Scenario, SetUpError, set_up_in_slices};
use crate::slices::{SliceEnd, wait};
use detent_simulation::controller::Board;
use detent_simulation::interface::Component;
use detent_simulation::plant::FailureMode;
use detent_simulation::units::Time;

/// Beliefs that the search for one next action may look at.
pub const WORK: u32 = 4000;
/// Deeds of a best path at most: a way that finds nothing ends in a new machine long before.
const LONGEST: usize = 60;
/// Smallest likelihood of a run that goes against a repair made: faults that come and goes, two at once.
const AGAINST: f64 = evidence::FLOOR;

/// Something that was done or happened.
#[derive(Clone, Debug, PartialEq)]
pub enum PathStep {
    /// The technician came to a machine whose last wash ended so.
    Arrived(Outcome),
    /// Service mode was entered and the codes were read.
    ReadCodes,
    /// This was done.
    Did(Action),
    /// A wash ended so.
    Ran(Outcome),
    /// A recalibration ended so.
    Recalibrated(Outcome),
    /// The planner did this.
    Planned(PlanStep),
    /// The report was written, at the end of the planner's way.
    Reported,
}

/// A point on the way: what stands after a deed.
#[derive(Clone, Debug, PartialEq)]
pub struct PathPoint {
    /// Machine time; for the best path none is known.
    pub at: Option<Time>,
    /// The deed.
    pub deed: PathStep,
    /// Belief in each hypothesis after it; they add up to 1.
    pub shares: Vec<f64>,
    /// Work so far, min.
    pub minutes: f64,
    /// Work, parts and waits so far, whole units of money.
    pub money: f64,
    /// What the planner would have done instead of this deed, where money was about to be spent on something that
    /// had not been seen broken.
    pub sound: Option<PlanStep>,
}

/// Why a way cannot be shown.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum PathError {
    /// The scenario does not fit the library.
    #[error(transparent)]
    SetUp(#[from] SetUpError),
    /// What was done cannot be done again.
    #[error("the attempt cannot be done again: {0}")]
    Refused(#[from] Refusal),
    /// Nothing can be planned.
    #[error(transparent)]
    Plan(#[from] PlanError),
    /// Nothing can be believed.
    #[error(transparent)]
    Posterior(#[from] PosteriorError),
}

/// Everything that both ways begin from.
#[derive(Clone, Copy)]
pub(super) struct Start<'a> {
    pub scenario: &'a Scenario,
    pub library: Library<'a>,
    pub table: &'a Table,
    pub repair_costs: &'a RepairCosts,
    pub seed: u64,
}

impl Start<'_> {
    /// Belief after a customer's wash that ended so.
    fn belief(&self, outcome: &Outcome) -> Result<Posterior, PosteriorError> {
        let mut belief = Posterior::from_weights(&evidence::prior(self.library.modes))?;
        belief.update(&self.table.wash(outcome))?;
        Ok(belief)
    }

    fn next(&self, course: &Course) -> Result<PlanStep, PlanError> {
        Ok(self.repair_costs.problem.plan(course, WORK)?.next())
    }
}

/// How the customer's wash ended, and the way that `done` went from there: its deeds done again on a fresh bench.
pub(super) async fn yours(
    start: Start<'_>,
    done: &Bench,
) -> Result<(Outcome, Vec<PathPoint>), PathError> {
    let (outcome, walk) = walk(start, done).await?;
    Ok((outcome, walk.stops))
}

/// How the customer's wash ended, and where somebody stands who did what was `done` from there.
pub(super) async fn walk<'a>(
    start: Start<'a>,
    done: &Bench,
) -> Result<(Outcome, Walk<'a>), PathError> {
    let bench = set_up_in_slices(start.scenario, &start.library, start.seed).await?;
    let outcome = Outcome::of_wash(&bench);
    let belief = start.belief(&outcome)?;
    let mut walk = Walk {
        course: Course::begin(&belief.shares()),
        seen: bench.milestones().len(),
        start,
        bench,
        belief,
        looked: Vec::new(),
        repaired: None,
        sound: None,
        stops: Vec::new(),
    };
    walk.stop(PathStep::Arrived(outcome.clone()), None);
    for (at, action) in done.history().iter() {
        walk.wait(at).await?;
        walk.act(action)?;
        SliceEnd::default().await;
    }
    walk.wait(done.now()).await?;
    Ok((outcome, walk))
}

/// Somebody on the way through a job.
pub(super) struct Walk<'a> {
    start: Start<'a>,
    /// Their bench.
    pub bench: Bench,
    /// What is believed.
    pub belief: Posterior,
    /// How far the work has come, for the planner.
    pub course: Course,
    /// Landmarks taken in.
    seen: usize,
    /// What was measured or looked at: the same once more tells nothing new.
    looked: Vec<Action>,
    /// Hypotheses that repairs have ended, once one was made.
    pub repaired: Option<Vec<bool>>,
    /// The planner's choice here, until something changes it.
    sound: Option<PlanStep>,
    stops: Vec<PathPoint>,
}

impl Walk<'_> {
    fn stop(&mut self, deed: PathStep, sound: Option<PlanStep>) {
        let bench = &self.bench;
        let waits = WAIT_PER_HOUR * bench.waited_hours();
        self.stops.push(PathPoint {
            at: Some(bench.now()),
            deed,
            shares: self.belief.shares(),
            minutes: bench.minutes(),
            money: bench.bill() + waits,
            sound,
        });
    }

    /// What the planner would do here.
    pub fn sound(&mut self) -> Result<PlanStep, PlanError> {
        if self.sound.is_none() {
            self.sound = Some(self.start.next(&self.course)?);
        }
        Ok(self.sound.unwrap_or(PlanStep::LastResort))
    }

    /// Takes in that service mode lets nobody in.
    pub fn find_service_mode_shut(&mut self) -> Result<(), PathError> {
        let likelihood = self.start.table.recalibration(&None);
        self.learn(&likelihood)
    }

    fn learn(&mut self, likelihood: &[f64]) -> Result<(), PathError> {
        self.belief.update(likelihood)?;
        self.course.weights = self.belief.shares();
        self.sound = None;
        Ok(())
    }

    async fn wait(&mut self, until: Time) -> Result<(), PathError> {
        let span = until.since(self.bench.now());
        wait(&mut self.bench, span).await;
        self.notice()
    }

    fn act(&mut self, action: &Action) -> Result<(), PathError> {
        let sound = match action {
            Action::Order(number) => {
                let part = self.bench.part(number);
                let seen = part.is_some_and(|part| was_seen(&self.bench, part, self.bench.now()));
                if seen { None } else { Some(self.sound()?) }
            }
            _ => None,
        };
        let repairs = self.bench.repairs().len();
        self.bench.act(action)?;
        match action {
            Action::Probe { .. } | Action::Inspect(_) | Action::BucketTest(_) => {
                self.learn_from(action)?;
            }
            Action::Fit(number) => {
                let part = self.bench.part(number).cloned();
                self.repair(|mode| part.as_ref().is_some_and(|p| p.ends(mode)));
            }
            // Taps that were only shut off for the work are opened again: that repairs nothing.
            Action::PutRight(Component::Taps) if self.bench.repairs().len() == repairs => {}
            Action::PutRight(c) => self.repair(|mode| mode.needs_no_part() && mode.component == *c),
            Action::OpenCabinet => self.ready(OPENED),
            _ => {}
        }
        let told = matches!(
            action,
            Action::Probe { .. }
                | Action::Inspect(_)
                | Action::BucketTest(_)
                | Action::ShutTaps
                | Action::Quote(_)
                | Action::CheckForLeaks
                | Action::Ask(Question::Demonstration)
                | Action::PutRight(_)
                | Action::Order(_)
                | Action::Fit(_)
                | Action::NoteCode(_)
                | Action::Report(_)
        );
        if told {
            self.stop(PathStep::Did(action.clone()), sound);
        }
        self.notice()
    }

    /// Something that has to be done once was done.
    fn ready(&mut self, need: u8) {
        if self.course.done & need == 0 {
            self.course.done |= need;
            self.sound = None;
        }
    }

    /// Takes in a reading or a look. Repairs change what the others would show: after one, runs alone count.
    fn learn_from(&mut self, action: &Action) -> Result<(), PathError> {
        if self.repaired.is_some() || self.looked.contains(action) {
            return Ok(());
        }
        let likelihood = match action {
            Action::Probe {
                mode,
                red,
                black,
                grip,
            } => {
                let Some(reading) = self.bench.notebook().last().filter(|r| r.meter_sound) else {
                    return Ok(());
                };
                evidence::reading_here(&self.bench, (*mode, *red, *black, *grip), reading.shown)
            }
            Action::Inspect(component) => {
                let Some(found) = self.bench.found().last() else {
                    return Ok(());
                };
                evidence::finding_here(&self.bench, *component, &found.findings)
            }
            Action::BucketTest(pipe) => {
                let Some(test) = self.bench.log().bucket_tests().last() else {
                    return Ok(());
                };
                evidence::bucket_here(&self.bench, *pipe, test.strength())
            }
            _ => return Ok(()),
        };
        // A live machine changes by itself: the same pins may tell something else later.
        if !self.bench.machine().plant().plugged() {
            self.looked.push(action.clone());
        }
        self.tick_off(action);
        self.learn(&likelihood)
    }

    /// The planner need not propose what was done.
    fn tick_off(&mut self, action: &Action) {
        let live = self.bench.machine().plant().plugged();
        let same = |probe: &Probe| match (probe, action) {
            (Probe::Inspect(a), Action::Inspect(b)) => a == b,
            (Probe::BucketTest(a), Action::BucketTest(b)) => a == b,
            (
                Probe::Read(point),
                Action::Probe {
                    mode, red, black, ..
                },
            ) => {
                let pins = [(*red, *black), (*black, *red)];
                point.state.is_live() == live
                    && point.mode == *mode
                    && pins.contains(&(point.red, point.black))
            }
            _ => false,
        };
        for (t, probe) in self.start.repair_costs.probes.iter().enumerate() {
            if same(probe) {
                self.course.tick_off(t);
            }
        }
    }

    fn repair(&mut self, ends: impl Fn(&FailureMode) -> bool) {
        let modes = self.start.library.modes;
        let repaired = (self.repaired).get_or_insert_with(|| vec![false; modes.len() + 1]);
        for (n, mode) in modes.iter().enumerate() {
            repaired[n + 1] |= ends(mode);
        }
        self.sound = None;
    }

    /// Takes in what the machine went through meanwhile.
    fn notice(&mut self) -> Result<(), PathError> {
        let news = self.bench.milestones().starting_at(self.seen).iter();
        let news: Vec<Milestone> = news.copied().collect();
        self.seen = self.bench.milestones().len();
        for Milestone { at, kind } in news {
            let empty = self.bench.log().basket_was_empty(at);
            let board = self.bench.machine().board();
            let (deed, mut likelihood, tabled) = match kind {
                MilestoneKind::ServiceEntered => {
                    self.ready(SERVICE);
                    continue;
                }
                MilestoneKind::ProgramFinished | MilestoneKind::Held(_) => {
                    let outcome = ended(kind, board);
                    let likelihood = self.start.table.wash(&outcome);
                    (PathStep::Ran(outcome), likelihood, !empty)
                }
                MilestoneKind::CalibrationPassed | MilestoneKind::CalibrationFailed(_) => {
                    let outcome = Some(ended(kind, board));
                    let likelihood = self.start.table.recalibration(&outcome);
                    (
                        outcome.map_or(PathStep::ReadCodes, PathStep::Recalibrated),
                        likelihood,
                        empty,
                    )
                }
                _ => continue,
            };
            if !tabled {
                self.leave_laundry_open(&mut likelihood);
            }
            let passed = kind.stopped_by().is_none();
            let likelihood = self.after_repairs(likelihood, passed);
            self.learn(&likelihood)?;
            self.stop(deed, None);
        }
        Ok(())
    }

    /// The table is of recalibrations with an empty basket and of washes with laundry. What was done the other way
    /// round says nothing of the laundry: its share stays as it is.
    fn leave_laundry_open(&self, likelihood: &mut [f64]) {
        let modes = self.start.library.modes;
        let of_laundry = |h: usize| h > 0 && modes[h - 1].component == Component::Laundry;
        let shares = self.belief.shares();
        let told = || (0..likelihood.len()).filter(|h| !of_laundry(*h));
        let known: f64 = told().map(|h| shares[h]).sum();
        if known <= 0.0 {
            return;
        }
        let mean = told().map(|h| shares[h] * likelihood[h]).sum::<f64>() / known;
        for (h, likely) in likelihood.iter_mut().enumerate() {
            if of_laundry(h) {
                *likely = mean;
            }
        }
    }

    /// What was ended runs well; what was not runs as it did.
    fn after_repairs(&mut self, mut likelihood: Vec<f64>, passed: bool) -> Vec<f64> {
        let Some(repaired) = &self.repaired else {
            return likelihood;
        };
        for (likely, ended) in likelihood.iter_mut().zip(repaired) {
            if *ended {
                *likely = if passed { 1.0 - AGAINST } else { AGAINST };
            }
        }
        if !passed {
            for (r, repair) in self.start.repair_costs.problem.repairs.iter().enumerate() {
                if repair.cures.iter().all(|h| repaired[*h]) {
                    self.course.tried |= 1 << r;
                }
            }
        }
        likelihood
    }
}

/// One look until then found what only faults show that this part ends: no test tells more.
pub(super) fn was_seen(bench: &Bench, part: &Part, until: Time) -> bool {
    bench.found().iter().any(|look| {
        let mut modes = bench.modes().iter().zip(&look.rules_out);
        look.at <= until
            && !look.findings.is_empty()
            && modes.all(|(mode, ruled_out)| *ruled_out || part.ends(mode))
    })
}

/// How a run ended that this milestone closed.
fn ended(kind: MilestoneKind, board: &Board) -> Outcome {
    match kind.stopped_by() {
        Some(monitor) => Outcome {
            end: End::Stopped,
            codes: board.code_of(monitor).into_iter().collect(),
        },
        None => Outcome {
            end: End::Finished,
            codes: Vec::new(),
        },
    }
}

/// The planner's own way on the same machine, after a customer's wash that ended so. Several faults are taken
/// one after the other.
pub(super) async fn best(
    start: Start<'_>,
    outcome: &Outcome,
    done: &Bench,
) -> Result<Vec<PathPoint>, PathError> {
    let place = |mode: &FailureMode| {
        let same = start.library.modes.iter().position(|m| m.id == mode.id);
        same.map_or(0, |n| n + 1)
    };
    let mut truths: Vec<usize> = done.hidden().iter().map(place).collect();
    if truths.is_empty() {
        truths.push(0);
    }
    let (minutes, money) = start.repair_costs.first_look();
    let reads = !outcome.codes.is_empty();
    let mut stops = vec![PathPoint {
        at: None,
        shares: start.belief(outcome)?.shares(),
        deed: PathStep::Arrived(outcome.clone()),
        minutes: 0.0,
        money: 0.0,
        sound: None,
    }];
    if reads {
        let shares = stops[0].shares.clone();
        stops.push(PathPoint {
            at: None,
            deed: PathStep::ReadCodes,
            shares,
            minutes,
            money,
            sound: None,
        });
    }
    let mut ready = if reads { SERVICE } else { 0 };
    let mut parts = Vec::new();
    for (n, truth) in truths.into_iter().enumerate() {
        let mut owed = Owed {
            start: &start,
            done,
            parts: &mut parts,
        };
        let outcome = match start.table.seen[truth].washes.first() {
            Some(usual) if n > 0 => usual,
            _ => outcome,
        };
        let mut course = Course::begin(&start.belief(outcome)?.shares());
        course.done = ready;
        one_fault(&mut owed, truth, &mut course, &mut stops).await?;
        ready = course.done;
    }
    show_customer(&start, &mut stops);
    if let Some(end) = stops.last().cloned() {
        let (minutes, money) = start.repair_costs.report();
        stops.push(PathPoint {
            deed: PathStep::Reported,
            minutes: end.minutes + minutes,
            money: end.money + money,
            ..end
        });
    }
    Ok(stops)
}

/// At the end of a way that ended in a repair the customer is shown that the machine runs.
fn show_customer(start: &Start<'_>, stops: &mut Vec<PathPoint>) {
    let planned = stops.iter().rev().find_map(|stop| match stop.deed {
        PathStep::Planned(step) => Some(step),
        _ => None,
    });
    if matches!(planned, Some(PlanStep::Repair(_))) {
        add_deeds(start, vec![Action::Ask(Question::Demonstration)], stops);
    }
}

/// Goes on from the last stop with these, each at its own cost.
fn add_deeds(start: &Start<'_>, actions: Vec<Action>, stops: &mut Vec<PathPoint>) {
    for action in actions {
        let Some(last) = stops.last().cloned() else {
            return;
        };
        let minutes = cost::span(&action).seconds() / 60.0;
        stops.push(PathPoint {
            deed: PathStep::Did(action),
            minutes: last.minutes + minutes,
            money: last.money + start.library.rates.labour(minutes),
            ..last
        });
    }
}

/// What good work puts around a repair, whatever it is. The planner need not weigh it.
struct Owed<'a, 'b> {
    start: &'a Start<'b>,
    done: &'a Bench,
    /// Parts that the customer was told of.
    parts: &'a mut Vec<String>,
}

impl Owed<'_, '_> {
    /// Before and after a step: the customer is asked before a part goes in, the taps are shut off while what they
    /// feed is open, and whoever opened what holds water looks for leaks once it has run.
    fn around(&mut self, step: PlanStep) -> (Vec<Action>, Vec<Action>) {
        let PlanStep::Repair(repair) = step else {
            return (Vec::new(), Vec::new());
        };
        let (mut before, mut after) = (Vec::new(), Vec::new());
        let component = match &self.start.repair_costs.remedies[repair] {
            Remedy::Part(number) => {
                if !self.done.is_called_back() {
                    self.parts.push(number.clone());
                    before.push(Action::Quote(Quote {
                        parts: self.parts.clone(),
                        minutes: self.start.scenario.par_minutes as u16,
                    }));
                }
                self.done.part(number).map(|part| part.component)
            }
            Remedy::PutRight(component) => Some(*component),
            Remedy::Recalibrate => None,
        };
        if matches!(
            component,
            Some(Component::InletCold | Component::InletHot | Component::InletHoses)
        ) {
            before.push(Action::ShutTaps);
            after.push(Action::PutRight(Component::Taps));
        }
        if component.is_some_and(holds_water) {
            after.push(Action::CheckForLeaks);
        }
        (before, after)
    }
}

async fn one_fault(
    owed: &mut Owed<'_, '_>,
    truth: usize,
    course: &mut Course,
    stops: &mut Vec<PathPoint>,
) -> Result<(), PathError> {
    let start = owed.start;
    let problem = &start.repair_costs.problem;
    for _ in 0..LONGEST {
        SliceEnd::default().await;
        let step = start.next(course)?;
        let (work, price) = start.repair_costs.price(step, course.done);
        let next = problem.after(course, step);
        // The outcome that this fault brings most often.
        let most = |test: usize| {
            let chances = problem.tests[test].chances.iter().enumerate();
            let most = chances.max_by(|a, b| a.1[truth].total_cmp(&b.1[truth]));
            most.map(|(outcome, _)| (test as u16, outcome as u16))
        };
        let (following, cured) = match step {
            PlanStep::Test(t) => {
                let outcome = most(t);
                let came = |c: &Course| outcome.is_some_and(|o| c.seen.contains(&o));
                (next.into_iter().find(came), false)
            }
            PlanStep::Repair(r) => {
                let cured = problem.repairs[r].cures.contains(&truth);
                (next.into_iter().next(), cured)
            }
            PlanStep::LastResort => (None, true),
        };
        let shares = match (&following, cured) {
            (_, true) => (0..problem.hypotheses)
                .map(|h| f64::from(u8::from(h == truth)))
                .collect(),
            (Some(next), false) => Posterior::from_weights(&next.weights)?.shares(),
            (None, false) => return Ok(()),
        };
        let (before, after) = owed.around(step);
        add_deeds(start, before, stops);
        let (minutes, money) = stops.last().map_or((0.0, 0.0), |s| (s.minutes, s.money));
        stops.push(PathPoint {
            at: None,
            deed: PathStep::Planned(step),
            shares,
            minutes: minutes + work,
            money: money + price,
            sound: None,
        });
        add_deeds(start, after, stops);
        match following {
            Some(next) if !cured => *course = next,
            Some(next) => {
                course.done = next.done;
                return Ok(());
            }
            None => return Ok(()),
        }
    }
    Ok(())
}
