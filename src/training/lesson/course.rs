//! Where a job stands in the course.

use detent_simulation::names;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

names! {
    // Its name is text key `course-{name}`.
    /// A part of the course, in order.
    #[derive(JsonSchema)]
    CoursePart {
        /// Getting into service mode.
        EntryDrill = "entry-drill",
        /// Reading the lamps and the codes.
        ReadingDrill = "reading-drill",
        /// One fault that shows itself plainly.
        SingleFault = "single-fault",
        /// Several causes for what is seen.
        LookAlikes = "look-alikes",
        /// Faults that come and go or grow.
        Intermittents = "intermittents",
        /// Nothing wrong with the machine, or nothing worth repairing.
        NothingFound = "nothing-found",
        /// Two faults at once.
        Doubles = "doubles",
        /// Jobs of the examinations.
        Exam = "exam",
    }
}

/// A job's place in the course.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Course {
    /// Part of the course.
    pub part: CoursePart,
    /// Place within the part, from 1.
    pub number: u8,
    /// Jobs to do before it, by file name without ending.
    #[serde(default)]
    pub after: Vec<String>,
}
