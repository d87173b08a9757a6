//! One answer of a learner: all that a profile keeps. Everything else follows from the answers.

use super::Skill;
use serde::{Deserialize, Serialize};

/// A moment of the learner's own time: seconds since 1970 began, UTC. It comes in as an argument.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Moment(pub i64);

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Answer {
    /// When it was given.
    pub at: Moment,
    /// The skill that it speaks for.
    pub skill: Skill,
    /// It was right.
    pub right: bool,
    /// Time from the question to the answer, s.
    pub took_s: f64,
    /// What else is worth keeping.
    pub detail: Detail,
}

/// What else is worth keeping of an answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Detail {
    /// Nothing.
    None,
    /// A number that was read off lamps.
    Lamps {
        /// The number that was shown.
        shown: u8,
        /// The number that was read.
        read: u8,
    },
    /// The hand's rhythm in a try at an entry gesture.
    Rhythm {
        /// Mean time from one step of the gesture to the next, ms.
        mean_ms: f64,
        /// Its standard deviation, ms.
        spread_ms: f64,
        /// Chance of entry at this rhythm on this dial, 0 to 1.
        odds: f64,
    },
    /// A whole job.
    Job {
        /// The scenario's file.
        file: String,
        /// Share of this side's points that was kept, 0 to 1.
        kept: f64,
    },
}
