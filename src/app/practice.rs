//! What ties practice to the window: the learner at the bench, and the drill being done.

use crate::practice::{Answer, Skill};
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

/// The drill being done, if one is.
#[derive(Resource, Default)]
pub struct DrillRes {
    begun: Option<(Skill, u64)>,
}

impl DrillRes {
    /// Begins a drill of this skill with questions drawn from `seed`.
    pub fn begin(&mut self, skill: Skill, seed: u64) {
        self.begun = Some((skill, seed));
    }
}
