//! Marks of a class: what each attempt was worth, what that says of learners and of jobs, and how it is handed on to other
//! programs. Everything here is a function of what it is given: no clock, no file, no network.

mod attempt_result;
mod class_grades;
mod item_statistics;
mod mark;
mod marks_csv;
mod one_roster;
mod skill_summary;
mod utc;
mod xapi;

pub use attempt_result::{AttemptResult, MisreadCode, NamedCause, SkillAnswer};
pub use class_grades::{ClassGrades, ClassLearner, InstructorMark, MOST_POINTS, Mark};
pub use item_statistics::{
    FEWEST_LEARNERS, ItemStatistics, LossCount, MisreadCount, corrected_item_total, difficulty,
    item_statistics,
};
pub use mark::{Gradebook, GradedAttempt, MarkRule};
pub use marks_csv::{marks_csv, safe_cell};
pub use one_roster::one_roster_files;
pub use skill_summary::{SkillSummary, skills_of_learner};
pub use utc::utc_minute;
pub use xapi::xapi_lines;

#[cfg(test)]
mod export_tests;
#[cfg(test)]
mod tests;
