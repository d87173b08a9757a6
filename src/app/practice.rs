//! What ties practice to the window: the learner at the bench, and the drill being done.

pub use super::drill::DrillRes;
use crate::practice::{Answer, Moment};
use bevy::prelude::*;

/// Who practises here, and what they answered so far.
#[derive(Resource, Default)]
pub struct LearnerRes {
    answers: Vec<Answer>,
}

impl LearnerRes {
    /// Takes in an answer and keeps it.
    pub fn note(&mut self, answer: Answer) {
        self.answers.push(answer);
    }
}

/// The learner's own time now.
pub fn now() -> Moment {
    Moment(seconds_since_1970())
}

#[cfg(not(target_family = "wasm"))]
fn seconds_since_1970() -> i64 {
    let now = std::time::SystemTime::now();
    let since = now.duration_since(std::time::UNIX_EPOCH);
    // A clock that stands before 1970 says nothing.
    since.map_or(0, |since| since.as_secs() as i64)
}

#[cfg(target_family = "wasm")]
fn seconds_since_1970() -> i64 {
    (js_sys::Date::now() / 1000.0) as i64
}
