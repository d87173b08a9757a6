//! Endless variants of a job: each is drawn from an original and proved before it is offered.
//!
//! A draft is the original's job on another machine: board, supply, fault, wear, old codes. Most faults are of the
//! original's kin (they raise a code in common with its faults, or lie in the same component), the others come from
//! the whole catalogue. What proves it goes from cheap to dear: tables of what each fault shows, the planner, the
//! customer's wash, and people at the bench.

mod difficulty;
mod draft;
mod known_faults;
mod learners;
mod maker;
mod proof;
mod refusal;
mod tally;
pub(crate) use difficulty::PeopleAtWork;
pub use difficulty::{Band, Difficulty, PEOPLE};
pub use draft::Draft;
pub use known_faults::KnownFaults;
pub(crate) use learners::Demands;
pub use learners::{LearnerGroup, LearnerLevel};
pub(crate) use maker::hypotheses_of;
pub use maker::{Variant, VariantError, VariantMaker};
pub use refusal::VariantRefusal;
pub use tally::{Spread, Tally};
