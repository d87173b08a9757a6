//! Where a job stands in the course.

use detent_simulation::names;
use serde::{Deserialize, Serialize};

names! {
    /// A part of the course, in order. Its name is text key `course-{name}`.
    CoursePart {
        EntryDrill = "entry-drill", ReadingDrill = "reading-drill", SingleFault = "single-fault",
        LookAlikes = "look-alikes", Intermittents = "intermittents",
        NothingFound = "nothing-found", Doubles = "doubles", Exam = "exam",
    }
}

/// A job's place in the course.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Course {
    /// Part.
    pub part: CoursePart,
    /// Place within the part, from 1.
    pub number: u8,
    /// Jobs to do before, by file name without extension.
    #[serde(default)]
    pub after: Vec<String>,
}
