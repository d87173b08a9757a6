//! Scenarios and scores.

mod scenario;
mod score;
pub use scenario::{Bilingual, Hidden, Mains, Points, Scenario};
pub use score::{Deduction, Dimension, DimensionScore, Score};
