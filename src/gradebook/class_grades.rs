//! The marks of a class: what its attempts are worth, and what an instructor has changed about that.

use super::Gradebook;
use std::collections::BTreeMap;

/// Highest mark.
pub const MOST_POINTS: f64 = 100.0;

/// A learner as the gradebook knows one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClassLearner {
    /// Number of the seat, from 1.
    pub seat: u32,
    /// Name, as it was typed: never to be taken for markup, a formula or a command.
    pub name: String,
    /// What stands for the name where none is needed; drawn once for each class.
    pub pseudonym: String,
}

/// What an instructor has said about one learner's job.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct InstructorMark {
    /// Number of the last change, which tells two instructors apart who change the same mark; 0 before the first.
    pub version: u32,
    /// Points of [`MOST_POINTS`] in the place of those that were computed; none leaves those.
    pub points: Option<f64>,
    /// A comment, for whoever reads the report.
    pub comment: String,
    /// When the points were changed last, ms since 1970, UTC.
    pub changed_ms: Option<u64>,
}

/// One learner's mark at one job.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mark<'a> {
    /// Points of [`MOST_POINTS`]; none where nothing was verified and no instructor said otherwise. Never a zero for that.
    pub points: Option<f64>,
    /// What the attempt that counts is worth.
    pub computed: Option<f64>,
    /// Whether an instructor put another one in its place.
    pub is_changed: bool,
    /// An instructor's comment; empty without one.
    pub comment: &'a str,
    /// Number of the last change, 0 before the first.
    pub version: u32,
    /// When an instructor put another one in its place, ms since 1970, UTC.
    pub changed_ms: Option<u64>,
}

/// The marks of a class.
#[derive(Clone, Debug)]
pub struct ClassGrades {
    /// What the class is called.
    pub title: String,
    /// Its learners, in the order of their seats.
    pub learners: Vec<ClassLearner>,
    /// Their verified attempts.
    pub book: Gradebook,
    /// What instructors changed, by seat and job.
    pub changes: BTreeMap<(u32, String), InstructorMark>,
}

impl ClassGrades {
    /// The mark of this seat at this job.
    pub fn mark(&self, seat: u32, job: &str) -> Mark<'_> {
        let computed = self.book.points(seat, job);
        let change = self.changes.get(&(seat, job.to_owned()));
        let changed = change.and_then(|change| change.points);
        Mark {
            points: changed.or(computed),
            computed,
            is_changed: changed.is_some(),
            comment: change.map_or("", |change| &change.comment),
            version: change.map_or(0, |change| change.version),
            changed_ms: changed.and(change).and_then(|change| change.changed_ms),
        }
    }

    /// The learner in this seat.
    pub fn learner(&self, seat: u32) -> Option<&ClassLearner> {
        self.learners.iter().find(|learner| learner.seat == seat)
    }

    /// Mean of a learner's marks over the jobs that have one; none without one.
    pub fn mean(&self, seat: u32) -> Option<f64> {
        let jobs = self.book.jobs().iter();
        let marks: Vec<f64> = jobs.filter_map(|job| self.mark(seat, job).points).collect();
        super::difficulty(&marks)
    }
}
