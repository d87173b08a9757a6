//! Where everybody stands, in memory: made from what is kept, and from what comes in.

use crate::board::{AttemptView, SeatView};
use crate::definition::ClassDefinition;
use crate::moment::Moment;
use crate::store::{KeptAttempt, KeptSeat};
use crate::watch::{Watched, WatchedDrill};
use detent_class_protocol::{AttemptId, DrillStatus, Verdict};
use std::collections::BTreeMap;

/// One attempt.
struct LiveAttempt {
    kept: KeptAttempt,
    watched: Watched,
}

/// One seat.
struct LiveSeat {
    kept: KeptSeat,
    heard: Option<Moment>,
    attempts: Vec<LiveAttempt>,
    /// Number of the change that changed it last.
    changed: u64,
}

/// Every seat of a class.
#[derive(Default)]
pub(super) struct Live {
    seats: BTreeMap<u32, LiveSeat>,
    /// Changes so far.
    changes: u64,
    /// Number of the last change that was about the whole class.
    class_changed: u64,
    /// Number of the last change that took a seat away.
    erased: u64,
    /// What is wrong with the server itself.
    trouble: Option<String>,
    /// The last job of which no variant could be drawn.
    undrawn: Option<String>,
}

impl Live {
    /// As everything was kept.
    pub fn of(seats: Vec<KeptSeat>, attempts: Vec<KeptAttempt>) -> Live {
        let mut live = Live::default();
        seats.into_iter().for_each(|seat| live.seat(seat));
        attempts
            .into_iter()
            .for_each(|attempt| live.attempt(attempt));
        live
    }

    /// Changes so far.
    pub const fn changes(&self) -> u64 {
        self.changes
    }

    /// What is wrong with the server itself.
    pub fn trouble(&self) -> Option<&str> {
        self.trouble.as_deref()
    }

    /// Something is wrong with the server itself, or no longer.
    pub fn set_trouble(&mut self, trouble: Option<String>) {
        if self.trouble != trouble {
            self.trouble = trouble;
            self.class();
        }
    }

    /// The last job of which no variant could be drawn, so that everybody has it as it is written.
    pub fn undrawn(&self) -> Option<&str> {
        self.undrawn.as_deref()
    }

    /// No variant of this job can be drawn.
    pub fn set_undrawn(&mut self, job: String) {
        if self.undrawn.as_ref() != Some(&job) {
            self.undrawn = Some(job);
            self.class();
        }
    }

    /// Something about the whole class changed.
    pub fn class(&mut self) {
        self.changes += 1;
        self.class_changed = self.changes;
    }

    /// Whether something about the whole class changed after this change.
    pub const fn class_changed_since(&self, change: u64) -> bool {
        self.class_changed > change
    }

    /// There is this seat.
    pub fn seat(&mut self, kept: KeptSeat) {
        self.changes += 1;
        let changed = self.changes;
        match self.seats.get_mut(&kept.seat) {
            Some(seat) => {
                seat.kept = kept;
                seat.changed = changed;
            }
            None => {
                let seat = LiveSeat {
                    kept,
                    heard: None,
                    attempts: Vec::new(),
                    changed,
                };
                self.seats.insert(seat.kept.seat, seat);
            }
        }
    }

    /// The numbers of all seats.
    pub fn seat_numbers(&self) -> impl Iterator<Item = u32> + Clone {
        self.seats.keys().copied()
    }

    /// This seat is not there any more.
    pub fn erase(&mut self, seat: u32) {
        self.seats.remove(&seat);
        self.changes += 1;
        self.erased = self.changes;
    }

    /// Whether a seat was taken away after this change, so that what changed since does not tell all.
    pub const fn erased_since(&self, change: u64) -> bool {
        self.erased > change
    }

    /// Who sits there.
    pub fn name_of(&self, seat: u32) -> Option<&str> {
        Some(&self.seats.get(&seat)?.kept.name)
    }

    /// There is this attempt, as it is kept now.
    pub fn attempt(&mut self, kept: KeptAttempt) {
        let Some(seat) = self.seats.get_mut(&kept.seat) else {
            return;
        };
        self.changes += 1;
        seat.changed = self.changes;
        match seat
            .attempts
            .iter_mut()
            .find(|live| live.kept.status.attempt == kept.status.attempt)
        {
            Some(live) => live.kept = kept,
            None => seat.attempts.push(LiveAttempt {
                kept,
                watched: Watched::default(),
            }),
        }
    }

    /// Somebody asked from this seat.
    pub fn heard(&mut self, seat: u32, now: Moment) {
        if let Some(seat) = self.seats.get_mut(&seat) {
            // A page counts on by itself; it is told when somebody comes back.
            if seat
                .heard
                .is_none_or(|heard| now.seconds_since(heard) >= 15)
            {
                self.changes += 1;
                seat.changed = self.changes;
            }
            seat.heard = Some(now);
        }
    }

    /// This attempt of this seat, to be changed.
    fn change(&mut self, seat: u32, attempt: AttemptId) -> Option<&mut LiveAttempt> {
        let seat = self.seats.get_mut(&seat)?;
        let mut attempts = seat.attempts.iter_mut();
        let live = attempts.find(|live| live.kept.status.attempt == attempt)?;
        self.changes += 1;
        seat.changed = self.changes;
        Some(live)
    }

    /// So it looks to whoever watches it.
    pub fn watched(&mut self, seat: u32, attempt: AttemptId, watched: &Watched) {
        if let Some(live) = self.change(seat, attempt) {
            live.watched.clone_from(watched);
        }
    }

    /// It was done again.
    pub fn judged(&mut self, seat: u32, attempt: AttemptId, verdict: Verdict) {
        if let Some(live) = self.change(seat, attempt) {
            live.kept.status.verdict = verdict;
        }
    }

    /// The job that this attempt of this seat says it is at, and how far it has come where it is a round of a drill.
    pub fn work_of(&self, seat: u32, attempt: AttemptId) -> (Option<String>, Option<DrillStatus>) {
        let attempts = self.seats.get(&seat).map_or(&[][..], |seat| &seat.attempts);
        let mut attempts = attempts.iter();
        let live = attempts.find(|live| live.kept.status.attempt == attempt);
        let watched = live.map(|live| &live.watched);
        (
            watched.and_then(|watched| watched.job.clone()),
            watched.and_then(|watched| watched.drill).map(drill_status),
        )
    }

    /// The seats that changed after this change; all of them after none.
    pub fn seats_since(
        &self,
        change: u64,
        definition: &ClassDefinition,
        now: Moment,
    ) -> Vec<SeatView> {
        let seats = self.seats.values().filter(|seat| seat.changed > change);
        seats.map(|seat| seat.view(definition, now)).collect()
    }
}

fn drill_status(watched: WatchedDrill) -> DrillStatus {
    let count = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
    DrillStatus {
        drill: watched.skill.name().to_owned(),
        done: count(watched.done),
        questions: count(watched.questions),
        right: watched.right.map(count),
    }
}

impl LiveSeat {
    fn view(&self, definition: &ClassDefinition, now: Moment) -> SeatView {
        let last = self.attempts.iter().map(|live| live.kept.last).max();
        SeatView {
            seat: self.kept.seat,
            name: self.kept.name.clone(),
            joined: self.kept.joined.is_some(),
            silent_s: self.heard.map(|heard| now.seconds_since(heard)),
            idle_s: last.map(|last| now.seconds_since(last)),
            attempts: (self.attempts.iter().rev())
                .map(|attempt| attempt.view(definition))
                .collect(),
        }
    }
}

impl LiveAttempt {
    fn view(&self, definition: &ClassDefinition) -> AttemptView {
        let (status, watched) = (&self.kept.status, &self.watched);
        let job = watched.job.as_deref().unwrap_or_default();
        AttemptView {
            attempt: status.attempt,
            job: definition.original_of(job).unwrap_or(job).to_owned(),
            drill: watched.drill.map(drill_status),
            deeds: watched.deeds,
            machine_s: watched.machine_s,
            closed: status.closed,
            verdict: status.verdict.clone(),
            unsafe_acts: watched.unsafe_acts,
            unsafe_now: watched.unsafe_now,
            stuck: watched.stuck,
        }
    }
}
