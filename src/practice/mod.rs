//! Short exercises, what their answers say about a learner's skill, and what to practise next.

mod answer;
pub mod drill;
mod skill;
pub use answer::{Answer, Detail, Moment};
pub use skill::Skill;
