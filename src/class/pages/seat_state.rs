//! How a seat is doing, in one word or a few.

use super::page_texts::PageTexts;
use super::shown::shown;
use crate::board::{AttemptView, BoardView, SeatView};
use detent_class_protocol::Standing;

/// Whoever has done nothing for so long is idle, s. Ours.
pub(super) const IDLE_S: u32 = 180;
/// Whoever was not heard of for so long is out of contact, s. Ours.
pub(super) const SILENT_S: u32 = 60;

/// How a seat is doing; those who need help soonest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum SeatState {
    /// The last unsafe act was just now.
    Unsafe,
    /// The same step failed again and again, or nothing new was found out for long.
    Stuck,
    /// Nothing was done for [`IDLE_S`].
    Idle,
    /// Nothing was heard for [`SILENT_S`].
    Silent,
    /// Somebody is here and has begun nothing.
    NotBegun,
    /// A job is being done.
    Working,
    /// Somebody is here; the class is not open.
    Here,
    /// Every job of the class is finished.
    Finished,
    /// Nobody has joined.
    Absent,
}

impl SeatState {
    /// Every state, in order.
    pub(super) const ALL: [SeatState; 9] = [
        SeatState::Unsafe,
        SeatState::Stuck,
        SeatState::Idle,
        SeatState::Silent,
        SeatState::NotBegun,
        SeatState::Working,
        SeatState::Here,
        SeatState::Finished,
        SeatState::Absent,
    ];

    /// All that can be said of a seat, what matters most first; never nothing. `board.js` finds the same.
    pub(super) fn of(seat: &SeatView, board: &BoardView) -> Vec<SeatState> {
        if !seat.joined {
            return vec![SeatState::Absent];
        }
        let open = matches!(board.standing, Standing::Open { .. });
        let newest = seat.attempts.first();
        let closed = |is_of: &dyn Fn(&AttemptView) -> bool| {
            (seat.attempts.iter()).any(|attempt| attempt.closed && is_of(attempt))
        };
        let has_job = |job: &String| closed(&|one| one.drill.is_none() && one.job == *job);
        let has_drill = |drill: &String| {
            closed(&|one| one.drill.as_ref().is_some_and(|one| one.drill == *drill))
        };
        let finished = !(board.jobs.is_empty() && board.drills.is_empty())
            && board.jobs.iter().all(has_job)
            && board.drills.iter().all(has_drill);
        let for_long = |since: Option<u32>, limit| since.is_some_and(|since| since >= limit);

        let mut states = Vec::new();
        if seat.attempts.iter().any(|attempt| attempt.unsafe_now) {
            states.push(SeatState::Unsafe);
        }
        if open && newest.is_some_and(|attempt| attempt.stuck && !attempt.closed) {
            states.push(SeatState::Stuck);
        }
        if open && !finished && for_long(seat.idle_s, IDLE_S) {
            states.push(SeatState::Idle);
        }
        if board.standing != Standing::Closed && !finished && for_long(seat.silent_s, SILENT_S) {
            states.push(SeatState::Silent);
        }
        if states.is_empty() {
            states.push(match (finished, open, newest) {
                (true, _, _) => SeatState::Finished,
                (false, false, _) => SeatState::Here,
                (false, true, None) => SeatState::NotBegun,
                (false, true, Some(_)) => SeatState::Working,
            });
        }
        states
    }

    /// Whether the instructor should look.
    pub(super) fn needs_help(self) -> bool {
        self <= SeatState::Idle
    }

    /// Its fixed name, of keys and classes.
    pub(super) fn name(self) -> &'static str {
        match self {
            SeatState::Unsafe => "unsafe",
            SeatState::Stuck => "stuck",
            SeatState::Idle => "idle",
            SeatState::Silent => "silent",
            SeatState::NotBegun => "not-begun",
            SeatState::Working => "working",
            SeatState::Here => "here",
            SeatState::Finished => "finished",
            SeatState::Absent => "absent",
        }
    }

    /// The key of its words.
    pub(super) fn key(self) -> String {
        format!("pages-state-{}", self.name())
    }

    /// A sign beside the words, so that it hangs on no color; none where nothing is to be seen from afar.
    pub(super) fn sign(self) -> &'static str {
        match self {
            SeatState::Unsafe => "!",
            SeatState::Stuck => "?",
            SeatState::Idle => "…",
            SeatState::Silent => "×",
            SeatState::Finished => "✓",
            SeatState::NotBegun | SeatState::Working | SeatState::Here | SeatState::Absent => "",
        }
    }

    /// In words.
    pub(super) fn told(self, seat: &SeatView, texts: &PageTexts) -> String {
        let silent = texts.duration(seat.silent_s.unwrap_or_default());
        texts.with(&self.key(), &[("time", silent)])
    }
}

/// A seat's name as it is shown.
pub(super) fn shown_name(seat: &SeatView) -> String {
    shown(&seat.name)
}
