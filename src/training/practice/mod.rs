//! Short exercises, what their answers say about a learner's skill, and what to practise next.

mod answer;
mod choose;
mod class_plan;
mod coach;
mod confusion;
pub mod drill;
mod examination;
pub mod fit;
mod learner;
pub mod review;
pub mod simulated;
mod skill;
mod summary;
mod tracing;
pub use answer::{Answer, Detail, Moment, answers_of_job, skills_of};
pub use choose::{Choice, CourseJob, Exercise, Target, TargetError, Why, choose};
pub use class_plan::{ClassPlan, ClassPurpose, MOST_SEATS, PlannedDrill};
pub use coach::{CoachAdvice, coach, trained_by};
pub use confusion::Confusion;
pub use examination::{
    Examination, ExaminationError, ExaminationSitting, JobResult, JobStanding, Pause, SheetPage,
    SittingJob, SittingResult,
};
pub use learner::{DayRhythm, Learner, MASTERY_DAYS, Standing, hand_record, rhythm_by_day};
pub use review::Memory;
pub use skill::Skill;
pub use summary::{LearnerSummary, MostLost};
pub use tracing::{MASTERY, Rates, RatesError, Tracing};
