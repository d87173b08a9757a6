//! An attempt while it is being made, done again as it comes in: what the instructor's board tells of it.

use super::drawing::DrawnJob;
use super::drills::RoundWatch;
use super::verify::{Verifier, job_of};
use detent_content::ScenarioSource;
use detent_simulation::units::{Span, Time};
use detent_training::bench::{Bench, MilestoneKind};
use detent_training::lesson::{Dimension, Loss, judge, set_up};
use detent_training::practice::Skill;
use detent_training::record::{Attempt, is_drill_round, read_attempt};

/// So many failed tries at one thing make whoever tries stuck.
const FAILED_TRIES: usize = 3;
/// So long without anything found out, in the time of the job, makes stuck too.
const NOTHING_NEW: Span = Span::from_s(15 * 60);
/// What happened within this is just now, in the time of the job.
const JUST_NOW: Span = Span::from_s(60);

/// What is told of a round of a drill.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WatchedDrill {
    /// The skill.
    pub skill: Skill,
    /// Questions that the round has.
    pub questions: usize,
    /// Answers so far.
    pub done: usize,
    /// Right ones among them; none where they cannot be marked.
    pub right: Option<usize>,
}

/// What is told of an attempt.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Watched {
    /// The job that it says it is at.
    pub job: Option<String>,
    /// How far it has come, where it is a round of a drill.
    pub drill: Option<WatchedDrill>,
    /// Deeds, or answers.
    pub deeds: u32,
    /// How far the clock of the job had come, s.
    pub machine_s: u32,
    /// Unsafe acts.
    pub unsafe_acts: u32,
    /// The last of them was just now.
    pub unsafe_now: bool,
    /// The same thing failed three times, or nothing was found out for long.
    pub stuck: bool,
}

/// An attempt that is being watched.
#[derive(Default)]
pub struct Watch {
    /// The machine as far as it was done again, with the deeds that were.
    bench: Option<(Box<Bench>, ScenarioSource, usize)>,
    /// The round as far as it was marked, where it is one.
    round: Option<RoundWatch>,
    /// It cannot be done again here; only what stands in its lines is told.
    is_blind: bool,
    watched: Watched,
}

impl Watch {
    /// What is told of it now.
    pub const fn watched(&self) -> &Watched {
        &self.watched
    }

    /// Does again what is new in `text`, all of the attempt so far. `drawn`: the seat's own scenarios, where the class's are
    /// sealed.
    pub fn follow(&mut self, verifier: &Verifier<'_>, drawn: &[DrawnJob], text: &str) {
        if is_drill_round(text) {
            if let Some((round, drill)) = RoundWatch::follow(self.round.take(), verifier, text) {
                self.round = Some(round);
                self.watched.drill = Some(drill);
                self.watched.deeds = u32::try_from(drill.done).unwrap_or(u32::MAX);
            }
            return;
        }
        // Its end may lack, and so may that of its last line.
        let Ok(attempt) = read_attempt("watched.attempt.part", text.as_bytes()) else {
            self.is_blind = true;
            return;
        };
        self.watched.job = job_of(&attempt.header).map(str::to_owned);
        self.watched.deeds = u32::try_from(attempt.actions.len()).unwrap_or(u32::MAX);
        self.watched.machine_s = seconds(attempt.last());
        if self.bench.is_none() && !self.is_blind {
            self.bench = begin(verifier, drawn, &attempt);
            self.is_blind = self.bench.is_none();
        }
        let Some((bench, scenario, done)) = &mut self.bench else {
            return;
        };
        for timed in attempt.actions.iter().skip(*done) {
            if timed.at < bench.now() {
                self.is_blind = true;
                self.bench = None;
                return;
            }
            bench.wait(timed.at.since(bench.now()));
            if bench.act(&timed.action).is_err() {
                self.is_blind = true;
                self.bench = None;
                return;
            }
        }
        *done = attempt.actions.len();
        let now = bench.now();
        let score = judge(&scenario.scenario, bench);
        let lost = score
            .dimensions
            .iter()
            .flat_map(|d| d.lost.iter().map(move |lost| (d.dimension, lost)));
        let happened = lost.filter(|(_, lost)| lost.at <= now);
        let (mut unsafe_acts, mut last_unsafe, mut tries) = (0, None, 0);
        for (dimension, lost) in happened {
            if dimension == Dimension::Safety {
                unsafe_acts += 1;
                last_unsafe = last_unsafe.max(Some(lost.at));
            }
            if matches!(lost.loss, Loss::FailedTry { .. }) {
                tries += 1;
            }
        }
        let log = bench.log();
        let found = [
            log.milestones().last().map(|milestone| milestone.at),
            log.readings().last().map(|reading| reading.at),
            log.found().last().map(|found| found.at),
            log.repairs().last().map(|(at, _)| at),
        ];
        let news = found.into_iter().flatten().max().unwrap_or(Time::ZERO);
        self.watched.unsafe_acts = unsafe_acts;
        self.watched.unsafe_now = last_unsafe.is_some_and(|at: Time| now.since(at) <= JUST_NOW);
        self.watched.stuck = attempt.footer.is_none()
            && (tries >= FAILED_TRIES
                && !log
                    .milestones()
                    .iter()
                    .any(|milestone| milestone.kind == MilestoneKind::ServiceEntered)
                || now.since(news) >= NOTHING_NEW);
    }
}

fn seconds(at: Time) -> u32 {
    u32::try_from(at.since(Time::ZERO).seconds() as u64).unwrap_or(u32::MAX)
}

/// The machine that this attempt is at, before its first deed. A second visit is watched from its own beginning only by
/// its lines.
fn begin(
    verifier: &Verifier<'_>,
    drawn: &[DrawnJob],
    attempt: &Attempt,
) -> Option<(Box<Bench>, ScenarioSource, usize)> {
    if attempt.first_visit.is_some() {
        return None;
    }
    let source = verifier.scenario_of(attempt, drawn)?;
    let library = verifier.library.library(&source.scenario);
    let bench = set_up(&source.scenario, &library, attempt.header.seed).ok()?;
    Some((Box::new(bench), source, 0))
}
