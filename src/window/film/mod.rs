//! An attempt as a film: its deeds at their moments on a bench at which nobody can do anything.
//!
//! The bench that is shown is a function of the log and of the place in it, however one got there: played at any speed,
//! stepped, or jumped to. Going back is beginning anew, from a bench that was kept on the way.

mod film_bench;
mod follow;
mod steps;
#[cfg(test)]
pub(crate) mod tests;
mod timeline;
mod whole_run;

pub use film_bench::open_film;
#[cfg(target_family = "wasm")]
pub use follow::Follower;
pub use follow::{FilmSource, plugin};
pub use steps::FilmStep;
pub use timeline::Timeline;

use super::attempts::whole_name;
use super::background::Background;
use detent_simulation::interface::Button;
use detent_simulation::units::{Span, Time};
use detent_training::bench::{Action, Bench, LogEntry, Milestone};
use detent_training::lesson::{Deduction, Scenario, Score, judge};
use detent_training::record::{
    Attempt, Divergence, Footer, PART, RecordError, compare, is_end, read_attempt,
};
use detent_training::without_breaks;
use std::sync::Arc;
use steps::steps_of;
use whole_run::{BenchAt, PlaceInFilm, WholeRun, is_nearer};

/// Speeds at which a film is played.
pub const FILM_SPEEDS: [u32; 4] = [1, 4, 16, 60];
/// Waits that are seen for longer than this are shortened, s.
pub const LONGEST_WAIT_S: u64 = 6;
/// So much of a shortened wait is seen at its beginning and again at its end, s.
const SEEN_OF_WAIT_S: u64 = 2;
/// How long before a deed a jump to it arrives: what it is done to is seen first.
const LEAD: Span = Span::from_s(2);

/// Where a film stands in a picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShownFilm {
    /// At its beginning.
    Beginning,
    /// A little before the first point is lost.
    FirstLoss,
    /// At its end.
    End,
    /// At its end, beside both ways through the job.
    Ways,
}

impl ShownFilm {
    /// The one that a picture names so.
    pub fn named(name: &str) -> Option<ShownFilm> {
        match name {
            "film" => Some(ShownFilm::Beginning),
            "film-loss" => Some(ShownFilm::FirstLoss),
            "film-end" => Some(ShownFilm::End),
            "film-ways" => Some(ShownFilm::Ways),
            _ => None,
        }
    }
}

/// What was jumped to, or why that cannot be reached.
type Arrived = Result<BenchAt, Divergence>;

/// An attempt being watched.
pub struct Film {
    name: String,
    source: FilmSource,
    scenario: Arc<Scenario>,
    attempt: Arc<Attempt>,
    steps: Vec<FilmStep>,
    /// What is shown.
    shown: BenchAt,
    whole: WholeRun,
    /// Bytes that its source had at the last look.
    seen_bytes: usize,
    /// What is new of the attempt, being done beforehand.
    growing: Option<Background<WholeRun>>,
    /// The way to somewhere else in it.
    jump: Option<Background<Arrived>>,
    /// How long the wait is that was shortened last, until the next deed.
    shortened: Option<Span>,
    /// How it came out, once its end was reached.
    ending: Option<Result<(), Divergence>>,
    /// It runs.
    playing: bool,
    /// So many times as fast as the clock.
    speed: u32,
}

/// What the bench does next.
enum Next {
    /// This deed, counted from 0, at this moment.
    Deed(usize, Time),
    /// It comes to the end at this moment.
    End(Time),
    /// Nothing: the rest is not known yet, or cannot be done.
    Nothing,
}

impl Film {
    /// A film that begins where the technician arrives.
    fn begin(
        (name, source): (String, FilmSource),
        scenario: Arc<Scenario>,
        attempt: Arc<Attempt>,
        whole: WholeRun,
    ) -> Film {
        Film {
            name,
            source,
            scenario,
            steps: steps_of(&attempt.actions),
            attempt,
            shown: whole.arrival().clone(),
            whole,
            seen_bytes: 0,
            growing: None,
            jump: None,
            shortened: None,
            ending: None,
            playing: false,
            speed: 1,
        }
    }

    /// The attempt's name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Where the attempt comes from.
    pub fn source(&self) -> &FilmSource {
        &self.source
    }

    /// The bench as it is shown.
    fn bench(&self) -> &Bench {
        &self.shown.bench
    }

    /// Its deeds, as far as they can be watched.
    pub fn steps(&self) -> &[FilmStep] {
        let known = self.whole.end.done;
        let count = self.steps.partition_point(|step| step.deeds.end <= known);
        &self.steps[..count]
    }

    /// So many of them are done.
    pub fn steps_done(&self) -> usize {
        let done = self.shown.done;
        let steps = self.steps();
        steps.partition_point(|step| step.deeds.end <= done)
    }

    /// What the deed that was done last brought to light.
    pub fn came_of_it(&self) -> impl Iterator<Item = &LogEntry> {
        let entries = self.bench().log().entries();
        let deed = |entry: &LogEntry| matches!(entry, LogEntry::Action { .. });
        let last = entries.iter().rposition(deed);
        entries[last.map_or(entries.len(), |place| place + 1)..].iter()
    }

    /// What the machine went through since the technician arrived.
    pub fn milestones(&self) -> impl Iterator<Item = &Milestone> {
        let arrived = self.arrival();
        let all = self.whole.end.bench.log().milestones().iter();
        all.filter(move |milestone| milestone.at > arrived)
    }

    /// What it was worth, where that may be told: it is finished and comes out as recorded.
    pub fn score(&self) -> Option<&Score> {
        self.whole.score.as_deref()
    }

    /// Points that were lost, in the order of their moments.
    pub fn losses(&self) -> Vec<&Deduction> {
        let sides = self.score().into_iter().flat_map(|score| &score.dimensions);
        let mut losses: Vec<&Deduction> = sides.flat_map(|side| &side.lost).collect();
        losses.sort_by_key(|loss| loss.at);
        losses
    }

    /// The bench at its end, so far as it is known.
    fn end(&self) -> &Bench {
        &self.whole.end.bench
    }

    /// The moment that is shown.
    pub fn now(&self) -> Time {
        self.bench().now()
    }

    /// When the technician arrived.
    pub fn arrival(&self) -> Time {
        self.whole.arrival().bench.now()
    }

    /// Where its moments lie along it.
    pub fn timeline(&self) -> Timeline {
        Timeline::new(self.arrival(), self.steps(), self.end().now())
    }

    /// It runs, and what comes next is not known yet.
    pub fn waits_for_more(&self) -> bool {
        self.playing && !self.is_busy() && self.is_live() && matches!(self.next(), Next::Nothing)
    }

    /// The attempt goes on as somebody works at it.
    pub fn is_live(&self) -> bool {
        self.attempt.footer.is_none()
    }

    /// How it came out: as recorded, or why not. None before its end was reached.
    pub fn ending(&self) -> Option<&Result<(), Divergence>> {
        self.ending.as_ref()
    }

    /// The wait that was shortened a moment ago.
    pub fn shortened(&self) -> Option<Span> {
        self.shortened
    }

    /// It is on its way to somewhere else.
    pub fn is_catching_up(&self) -> bool {
        self.jump.is_some()
    }

    /// Something is being worked out.
    pub fn is_busy(&self) -> bool {
        self.jump.is_some() || self.growing.is_some()
    }

    /// It is asked to run.
    pub fn is_playing(&self) -> bool {
        self.playing
    }

    /// It runs: its clock goes on.
    pub fn runs(&self) -> bool {
        self.playing && self.jump.is_none() && !matches!(self.next(), Next::Nothing)
    }

    /// It is played this many times as fast as the clock.
    pub fn speed(&self) -> u32 {
        self.speed
    }

    /// Buttons that the technician holds down, each at its place.
    pub fn held(&self) -> [bool; Button::ALL.len()] {
        let mut held = [false; Button::ALL.len()];
        for timed in &self.attempt.actions[..self.shown.done] {
            match timed.action {
                Action::Down(button) => held[button.index()] = true,
                Action::Up(button) => held[button.index()] = false,
                _ => {}
            }
        }
        held
    }

    fn next(&self) -> Next {
        if self.ending.is_some() {
            return Next::Nothing;
        }
        if self.shown.done < self.whole.end.done {
            return Next::Deed(self.shown.done, self.attempt.actions[self.shown.done].at);
        }
        match &self.attempt.footer {
            Some(footer) if self.shown.done == self.attempt.actions.len() => Next::End(footer.at),
            _ if self.whole.divergence.is_some() => Next::End(Time::ZERO),
            Some(_) | None => Next::Nothing,
        }
    }
}

/// What whoever watches can do.
impl Film {
    /// Plays it, from its beginning once its end was reached.
    pub fn play(&mut self) {
        if self.ending.is_some() {
            self.jump_to(PlaceInFilm {
                done: 0,
                at: Time::ZERO,
            });
        }
        self.playing = true;
    }

    /// Stops it.
    pub fn pause(&mut self) {
        self.playing = false;
    }

    /// Plays it this many times as fast as the clock.
    pub fn play_at(&mut self, speed: u32) {
        self.speed = speed;
    }

    /// The next higher or lower speed, if there is one.
    pub fn change_speed(&mut self, faster: bool) {
        let place = FILM_SPEEDS.iter().position(|speed| *speed == self.speed);
        let place = place.unwrap_or_default();
        let to = match faster {
            true => (place + 1).min(FILM_SPEEDS.len() - 1),
            false => place.saturating_sub(1),
        };
        self.speed = FILM_SPEEDS[to];
    }

    /// To right behind so many of its steps.
    pub fn go_behind(&mut self, steps: usize) {
        let all = self.steps();
        let steps = steps.min(all.len());
        let done = steps.checked_sub(1).map_or(0, |last| all[last].deeds.end);
        self.jump_to(PlaceInFilm {
            done,
            at: Time::ZERO,
        });
    }

    /// One deed on.
    pub fn go_on_one(&mut self) {
        self.go_behind(self.steps_done() + 1);
    }

    /// One deed back.
    pub fn go_back_one(&mut self) {
        let steps = self.steps_done();
        let behind = steps
            .checked_sub(1)
            .map_or(0, |last| self.steps[last].deeds.end);
        // Whoever is in the middle of a turn, or has watched the wait behind a deed for a while, comes back to it first.
        let is_on = self.shown.done > behind || self.bench().now() > self.shown.rested + LEAD;
        self.go_behind(steps.saturating_sub(usize::from(!is_on)));
    }

    /// To a little before the deed that this moment belongs to.
    pub fn go_to(&mut self, moment: Time) {
        let steps = self.steps();
        let begun = steps.partition_point(|step| step.at <= moment);
        let Some(step) = begun.checked_sub(1).map(|step| &steps[step]) else {
            return self.go_behind(0);
        };
        let place = PlaceInFilm {
            done: step.deeds.start,
            at: Time(step.at.0.saturating_sub(LEAD.0)),
        };
        self.jump_to(place);
    }

    /// To where a picture shows it, and it stays there.
    pub fn show(&mut self, shown: ShownFilm) {
        // It comes out at its end by itself.
        self.playing = matches!(shown, ShownFilm::End | ShownFilm::Ways);
        match shown {
            ShownFilm::Beginning => self.go_behind(0),
            ShownFilm::FirstLoss => {
                let first = self.losses().first().map(|loss| loss.at);
                // What is only missed is lost at no deed.
                self.go_to(first.unwrap_or(self.end().now()));
            }
            ShownFilm::End | ShownFilm::Ways => self.go_behind(usize::MAX),
        }
    }

    /// To a little before its last deed.
    pub fn go_to_newest(&mut self) {
        if let Some(last) = self.steps().last().map(|step| step.at) {
            self.go_to(last);
        }
    }

    fn jump_to(&mut self, place: PlaceInFilm) {
        let kept = self.whole.before(place);
        let mut at = match is_nearer(&self.shown, kept, place) {
            true => self.shown.clone(),
            false => kept.clone(),
        };
        let attempt = Arc::clone(&self.attempt);
        (self.shortened, self.ending) = (None, None);
        self.jump = Some(Background::begin_to_break_off(Box::pin(async move {
            at.go_on(&attempt, place).await?;
            Ok(at)
        })));
    }
}

/// How it goes on.
impl Film {
    /// One tick of 10 ms, at most one deed before it. What takes its time is done in the background meanwhile.
    pub fn step(&mut self) {
        if self.jump.is_some() {
            return;
        }
        let now = self.shown.bench.now();
        match self.next() {
            Next::Nothing => {}
            Next::Deed(deed, at) if now >= at => self.do_deed(deed),
            Next::End(at) if now >= at => self.come_out(),
            Next::Deed(_, at) | Next::End(at) => {
                if !self.shorten(now, at) {
                    self.shown.bench.step();
                }
            }
        }
    }

    fn do_deed(&mut self, deed: usize) {
        self.shortened = None;
        let place = PlaceInFilm {
            done: deed + 1,
            at: Time::ZERO,
        };
        if !self.attempt.actions[deed].action.is_gesture() {
            return self.jump_to(place);
        }
        if let Err(divergence) = without_breaks(self.shown.go_on(&self.attempt, place)) {
            self.ending = Some(Err(divergence));
        }
    }

    /// Shortens the wait until then, if it is a long one and enough was seen of it.
    fn shorten(&mut self, now: Time, until: Time) -> bool {
        let speed = u64::from(self.speed);
        let seen = Span::from_s(SEEN_OF_WAIT_S * speed);
        let left = until.since(now);
        let is_long = left > Span::from_s((LONGEST_WAIT_S - SEEN_OF_WAIT_S) * speed);
        if !is_long || now.since(self.shown.rested) < seen {
            return false;
        }
        self.jump_to(PlaceInFilm {
            done: self.shown.done,
            at: Time(until.0 - seen.0),
        });
        self.shortened = Some(until.since(self.shown.rested));
        true
    }

    /// Holds the bench at its end against what the attempt says.
    fn come_out(&mut self) {
        self.ending = Some(match &self.whole.divergence {
            Some(divergence) => Err(divergence.clone()),
            None => {
                let score = judge(&self.scenario, self.bench());
                compare(&self.attempt, &Footer::of(self.bench(), &score))
            }
        });
        self.playing = false;
    }

    /// Once a frame: takes in what was worked out.
    pub fn go_on(&mut self) {
        if let Some(jump) = &mut self.jump {
            jump.go_on();
        }
        match self.jump.take() {
            Some(Background::Done(Ok(at))) => self.shown = at,
            Some(Background::Done(Err(divergence))) => self.ending = Some(Err(divergence)),
            running => self.jump = running,
        }
        if let Some(growing) = &mut self.growing {
            growing.go_on();
        }
        match self.growing.take() {
            Some(Background::Done(whole)) => self.whole = whole,
            running => self.growing = running,
        }
    }

    /// Waits until all is worked out.
    #[cfg(test)]
    pub fn wait(&mut self) {
        if let Some(jump) = &mut self.jump {
            jump.wait();
        }
        if let Some(growing) = &mut self.growing {
            growing.wait();
        }
        self.go_on();
    }

    /// Takes in what its source says now. Only what goes on from what is known counts.
    ///
    /// # Errors
    /// It cannot be read.
    pub fn take_in(&mut self, text: &[u8]) -> Result<(), RecordError> {
        if !self.is_live() || self.growing.is_some() || text.len() == self.seen_bytes {
            return Ok(());
        }
        self.seen_bytes = text.len();
        let attempt = read_growing(&self.name, text)?;
        let (old, new) = (&self.attempt, &attempt);
        let is_longer = new.actions.len() > old.actions.len() || new.footer.is_some();
        let goes_on = new.header == old.header && new.actions.starts_with(&old.actions);
        if !is_longer || !goes_on {
            return Ok(());
        }
        self.steps = steps_of(&attempt.actions);
        self.attempt = Arc::new(attempt);
        let whole = self.whole.clone();
        let work = whole.go_on(Arc::clone(&self.scenario), Arc::clone(&self.attempt));
        self.growing = Some(Background::begin(Box::pin(work)));
        Ok(())
    }
}

/// Reads an attempt that may not be finished yet, whatever its name says of that.
///
/// # Errors
/// The first damage.
pub fn read_growing(name: &str, text: &[u8]) -> Result<Attempt, RecordError> {
    let whole = whole_name(name);
    let mut lines = text.trim_ascii_end().rsplit(|byte| *byte == b'\n');
    let last = lines.next().unwrap_or_default();
    let ended = std::str::from_utf8(last).is_ok_and(is_end);
    let read = match ended {
        true => read_attempt(whole, text),
        false => read_attempt(&format!("{whole}{PART}"), text),
    };
    let file = name.to_owned();
    read.map_err(|error| RecordError { file, ..error })
}
