//! What the instructor's board shows.

use detent_class_protocol::{AttemptId, ClassKind, DrillStatus, JoinCode, Standing, Verdict};
use serde::Serialize;

/// Longest message to learners, characters.
pub const LONGEST_NOTICE: usize = 500;

/// The whole board at one moment. What is told to one instructor's page and to the next is the same.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BoardView {
    /// What the class is called.
    pub title: String,
    /// What it is for.
    pub kind: ClassKind,
    /// Where it stands.
    pub standing: Standing,
    /// The code to join with.
    pub code: JoinCode,
    /// The address to join at, `http://HOST:PORT/`.
    pub address: String,
    /// Jobs that each learner has.
    pub jobs: Vec<String>,
    /// Drills that each learner has, by the fixed names of their skills.
    pub drills: Vec<String>,
    /// Every seat, in the order of its number.
    pub seats: Vec<SeatView>,
    /// A job of which no variant could be drawn: everybody has it as it is written.
    pub undrawn: Option<String>,
    /// The page with the bench is served here, so that attempts can be watched there.
    pub has_bench: bool,
    /// What is wrong with the server itself, in a sentence, while it is: its disk is full, say.
    pub trouble: Option<String>,
}

/// One seat.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SeatView {
    /// Its number, from 1.
    pub seat: u32,
    /// Who sits there; as it was typed, never to be taken for markup.
    pub name: String,
    /// Whether somebody has joined.
    pub joined: bool,
    /// Since it was heard of last, s.
    pub silent_s: Option<u32>,
    /// Since something was done last, s.
    pub idle_s: Option<u32>,
    /// Its attempts, the newest first.
    pub attempts: Vec<AttemptView>,
}

/// One attempt.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AttemptView {
    /// Which one.
    pub attempt: AttemptId,
    /// At which job.
    pub job: String,
    /// How far it has come, where it is a round of a drill.
    pub drill: Option<DrillStatus>,
    /// Deeds, or answers, that came in.
    pub deeds: u32,
    /// How far the clock of the job had come, s.
    pub machine_s: u32,
    /// Whether its end is there.
    pub closed: bool,
    /// What doing it again has shown.
    pub verdict: Verdict,
    /// Unsafe acts so far.
    pub unsafe_acts: u32,
    /// The last one was within the last minute.
    pub unsafe_now: bool,
    /// The same step failed three times, or nothing new was found out for long.
    pub stuck: bool,
}
