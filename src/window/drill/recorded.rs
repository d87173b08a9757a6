//! A round that is recorded as it is done: its text, which is kept and sent elsewhere.

use super::{Done, Sitting};
use detent_training::practice::Moment;
use detent_training::record::{DrillAnswer, DrillText};

/// The record of the round at hand.
#[derive(Clone, Debug)]
pub struct Recorded {
    /// The name under which it is kept.
    pub name: String,
    /// What is not right or wrong to be shown before somebody else says so.
    pub sealed: bool,
    text: DrillText,
    /// Answers since it was last taken to be kept; none where nothing is new.
    unkept: Option<usize>,
}

impl Recorded {
    /// A record that is to be kept under this name; `text` is all of it so far. `is_new`: not even that is kept yet.
    pub fn new(name: &str, text: DrillText, (sealed, is_new): (bool, bool)) -> Recorded {
        Recorded {
            name: name.to_owned(),
            sealed,
            text,
            unkept: is_new.then_some(0),
        }
    }

    /// All of the text, and the answers in it that are new; none where nothing is.
    pub fn take_to_keep(&mut self) -> Option<(&str, usize)> {
        let answers = self.unkept.take()?;
        Some((self.text.text(), answers))
    }
}

impl Sitting {
    /// What is not to be told right or wrong now.
    pub fn is_sealed(&self) -> bool {
        self.recorded
            .as_ref()
            .is_some_and(|recorded| recorded.sealed)
    }

    /// Records the answer that was just judged, given at `at`; with the last one the end.
    pub fn record(&mut self, done: Done, at: Moment) {
        let Some(recorded) = &mut self.recorded else {
            return;
        };
        let Some(given) = self.asked.given() else {
            return;
        };
        let answer = DrillAnswer {
            at,
            took_ms: (done.took_s * 1000.0).round() as u32,
            given,
        };
        // A number or a name can always be put into words.
        let _ = recorded.text.push(&answer);
        recorded.unkept = Some(recorded.unkept.unwrap_or_default() + 1);
        if self.round.done().len() + 1 >= self.round.questions() {
            let right = self.round.right() + usize::from(done.right);
            let _ = recorded.text.end(right);
        }
    }
}
