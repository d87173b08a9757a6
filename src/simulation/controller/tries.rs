//! The tries at the entry gesture, borrowed from whoever keeps them.

use super::gesture::{Outcome, TraceLine, Try};
use serde::{Serialize, Serializer};
use std::fmt;

/// Tries at the entry gesture, oldest first.
#[derive(Clone, Copy, Default)]
pub struct Tries<'a> {
    /// They may lie in several places: on boards that were replaced, and in the present one's ring.
    parts: [&'a [Try]; 3],
    /// Only those that count as the work of a person who came then, s.
    meant_since_s: Option<f64>,
}

impl<'a> Tries<'a> {
    /// Those in a control's two slices after those of boards that were replaced.
    pub(crate) fn of(replaced: &'a [Try], (older, newer): (&'a [Try], &'a [Try])) -> Tries<'a> {
        Tries {
            parts: [replaced, older, newer],
            meant_since_s: None,
        }
    }

    /// Those that began at `since_s` or later and that were meant as one: whoever turns the dial or presses a button
    /// to choose a program makes no try. It is meant as one from the gesture's second step on; not if the first one
    /// turns out as plain use of the panel, a turn more than three detents past its count without a rest, or a
    /// button to be kept down that is let go before anything else is used; and in a fault hold, where the dial is
    /// turned for nothing as well, only once the second step was begun rightly.
    #[must_use]
    pub fn meant_since(self, since_s: f64) -> Tries<'a> {
        Tries {
            meant_since_s: Some(since_s),
            ..self
        }
    }

    /// One after the other.
    pub fn iter(self) -> impl DoubleEndedIterator<Item = &'a Try> + Clone {
        let counts = move |attempt: &&Try| {
            self.meant_since_s.is_none_or(|since_s| {
                let held = attempt.outcome == Outcome::InHold;
                let meant = |line: &TraceLine| line.step > 0 && !(held && line.broke.is_some());
                f64::from(attempt.began_s) >= since_s
                    && attempt.lines.iter().any(meant)
                    && !attempt.is_plain_use()
            })
        };
        self.parts.into_iter().flatten().filter(counts)
    }

    /// How many there are.
    pub fn len(self) -> usize {
        self.iter().count()
    }

    /// Whether there are none.
    pub fn is_empty(self) -> bool {
        self.iter().next().is_none()
    }

    /// The latest.
    pub fn last(self) -> Option<&'a Try> {
        self.iter().next_back()
    }
}

impl<'a> From<&'a [Try]> for Tries<'a> {
    fn from(tries: &'a [Try]) -> Tries<'a> {
        Tries::of(tries, (&[], &[]))
    }
}

impl PartialEq for Tries<'_> {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

impl fmt::Debug for Tries<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_list().entries(self.iter()).finish()
    }
}

impl Serialize for Tries<'_> {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_seq(self.iter())
    }
}
