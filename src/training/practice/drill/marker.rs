//! A round marked again, answer by answer, from its seed.

use super::task::{Given, QuestionSource, Task};
use super::{Done, Round};
use crate::practice::Skill;
use crate::slices::SliceEnd;

/// A round of which answers are marked in the order in which they were given.
#[derive(Clone, Debug)]
pub struct RoundMarker {
    skill: Skill,
    round: Round,
    /// The question that was asked last.
    task: Option<Task>,
}

impl RoundMarker {
    /// Of a round of so many questions that follow from `seed`.
    pub fn begin(skill: Skill, questions: usize, seed: u64) -> RoundMarker {
        RoundMarker {
            skill,
            round: Round::of(questions, seed),
            task: None,
        }
    }

    /// The round as far as it was marked.
    pub const fn round(&self) -> &Round {
        &self.round
    }

    /// The question that comes next; none where nothing more is asked, or there is nothing to ask from.
    pub fn next_task(&self, source: &dyn QuestionSource) -> Option<Task> {
        if self.round.is_over() {
            return None;
        }
        let (asked, seed) = (self.round.done().len(), self.round.seed());
        match &self.task {
            Some(task) => task.next(source, asked, seed),
            None => Task::first(self.skill, source, asked, seed),
        }
    }

    /// Asks the next question and marks the answer to it, in slices; it took `took_s`. None where nothing more is asked,
    /// there is nothing to ask from, or it is no answer to the question: nothing is marked then.
    pub async fn mark_in_slices(
        &mut self,
        source: &dyn QuestionSource,
        given: &Given,
        took_s: f64,
    ) -> Option<Done> {
        let task = self.next_task(source)?;
        SliceEnd::default().await;
        let right = task.mark_in_slices(source, given).await?;
        SliceEnd::default().await;
        self.task = Some(task);
        let done = Done { right, took_s };
        self.round.note(done);
        Some(done)
    }
}
