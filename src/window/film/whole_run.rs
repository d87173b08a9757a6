//! A whole attempt done once beforehand: what is on the way, how it ends, and benches to begin from when somebody jumps.

use detent_simulation::units::{Span, Time};
use detent_training::bench::Bench;
use detent_training::lesson::{Scenario, Score, judge};
use detent_training::record::{
    Answer, Attempt, Divergence, Footer, compare, replay_deeds_in_slices, replay_end_in_slices,
};
use detent_training::wait_in_slices;
use std::sync::Arc;

/// Most benches that are kept to begin from.
const MOST_BEGINNINGS: usize = 48;
/// Machine time between two of them at first; twice as long each time there are too many.
const FIRST_SPACING: Span = Span::from_s(60);

/// A bench somewhere in an attempt.
#[derive(Clone)]
pub struct BenchAt {
    /// The bench.
    pub bench: Bench,
    /// So many deeds are done on it.
    pub done: usize,
    /// When the last of them had been done, or when the technician arrived.
    pub rested: Time,
}

impl BenchAt {
    /// Somewhere in the attempt this lies at or before: it can be reached from here.
    fn leads_to(&self, place: PlaceInFilm) -> bool {
        let now = self.bench.now();
        self.done < place.done || (self.done == place.done && now <= place.at.max(self.rested))
    }

    /// Goes on to this place in slices of a few milliseconds each.
    ///
    /// # Errors
    /// The first deed that cannot be done as recorded.
    pub async fn go_on(&mut self, attempt: &Attempt, place: PlaceInFilm) -> Result<(), Divergence> {
        if self.done < place.done {
            replay_deeds_in_slices(&mut self.bench, attempt, self.done..place.done).await?;
            (self.done, self.rested) = (place.done, self.bench.now());
        }
        let left = place.at.since(self.bench.now());
        wait_in_slices(&mut self.bench, left).await;
        Ok(())
    }
}

/// A place in an attempt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PlaceInFilm {
    /// So many deeds are done.
    pub done: usize,
    /// And it is no earlier than this.
    pub at: Time,
}

/// A whole attempt done again.
#[derive(Clone)]
pub struct WholeRun {
    /// Behind everything that is known of it.
    pub end: Arc<BenchAt>,
    /// Where it leaves the recording, if it does: nothing behind that can be watched.
    pub divergence: Option<Divergence>,
    /// What it was worth: of a finished attempt that comes out as recorded and whose answer was shown.
    pub score: Option<Arc<Score>>,
    /// It is finished, and its end was reached.
    pub finished: bool,
    beginnings: Vec<Arc<BenchAt>>,
    spacing: Span,
}

impl WholeRun {
    /// Nothing of it yet, on the bench at which the technician arrives.
    pub fn begin(bench: Bench) -> WholeRun {
        let rested = bench.now();
        let arrival = Arc::new(BenchAt {
            bench,
            done: 0,
            rested,
        });
        WholeRun {
            end: Arc::clone(&arrival),
            divergence: None,
            score: None,
            finished: false,
            beginnings: vec![arrival],
            spacing: FIRST_SPACING,
        }
    }

    /// Does all that is new of the attempt in slices of a few milliseconds each.
    pub async fn go_on(mut self, scenario: Arc<Scenario>, attempt: Arc<Attempt>) -> WholeRun {
        if self.finished || self.divergence.is_some() {
            return self;
        }
        let mut at = BenchAt::clone(&self.end);
        let deeds = attempt.actions.len();
        while at.done < deeds && self.divergence.is_none() {
            let next = PlaceInFilm {
                done: at.done + 1,
                at: Time::ZERO,
            };
            // What stopped halfway is no place to look at.
            match at.go_on(&attempt, next).await {
                Ok(()) => self.keep(&at),
                Err(divergence) => self.divergence = Some(divergence),
            }
        }
        if let (Some(footer), None) = (&attempt.footer, &self.divergence) {
            match replay_end_in_slices(&mut at.bench, &attempt).await {
                Ok(()) => {
                    self.finished = true;
                    let score = judge(&scenario, &at.bench);
                    self.divergence = compare(&attempt, &Footer::of(&at.bench, &score)).err();
                    let shown = matches!(footer.answer, Answer::Shown { .. });
                    self.score = (shown && self.divergence.is_none()).then(|| Arc::new(score));
                }
                Err(divergence) => self.divergence = Some(divergence),
            }
        }
        if at.done < deeds && self.divergence.is_some() {
            // It stands in the middle of the wait for what could not be done: once more up to there.
            let place = PlaceInFilm {
                done: at.done,
                at: Time::ZERO,
            };
            at = self.before(place).clone();
            if let Err(divergence) = at.go_on(&attempt, place).await {
                self.divergence = Some(divergence);
            }
        }
        self.end = Arc::new(at);
        self
    }

    /// Keeps a bench to begin from, unless the last one is near.
    fn keep(&mut self, at: &BenchAt) {
        let last = self.beginnings.last().map(|last| last.bench.now());
        if last.is_some_and(|last| at.bench.now().since(last) < self.spacing) {
            return;
        }
        self.beginnings.push(Arc::new(at.clone()));
        if self.beginnings.len() > MOST_BEGINNINGS {
            let mut number = 0;
            self.beginnings.retain(|_| {
                number += 1;
                number % 2 == 1
            });
            self.spacing = self.spacing.saturating_mul(2);
        }
    }

    /// The bench at which the technician arrives.
    pub fn arrival(&self) -> &BenchAt {
        self.beginnings.first().unwrap_or(&self.end)
    }

    /// The bench from which this place is reached soonest.
    pub fn before(&self, place: PlaceInFilm) -> &BenchAt {
        let mut all = self.beginnings.iter().rev();
        let near = all.find(|beginning| beginning.leads_to(place));
        near.map_or_else(|| self.arrival(), Arc::as_ref)
    }
}

/// Whether the second of two benches that lead to a place is nearer to it.
pub fn is_nearer(shown: &BenchAt, kept: &BenchAt, place: PlaceInFilm) -> bool {
    shown.leads_to(place) && (shown.done, shown.bench.now()) >= (kept.done, kept.bench.now())
}
