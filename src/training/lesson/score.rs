//! What an attempt is worth, dimension by dimension, and why each point was lost.

use super::loss::Loss;
use detent_simulation::names;
use detent_simulation::units::Time;
use serde::{Deserialize, Serialize};

names! {
    /// One side of the job that is scored by itself.
    Dimension { Entry = "entry", Reading = "reading", Reasoning = "reasoning", Safety = "safety", Cost = "cost", Proof = "proof" }
}

/// Points lost at one moment for one reason.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Deduction {
    /// When.
    pub at: Time,
    /// Points lost.
    pub points: f64,
    /// Why.
    #[serde(flatten)]
    pub loss: Loss,
}

/// One dimension's result.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DimensionScore {
    /// Which.
    pub dimension: Dimension,
    /// Highest points possible.
    pub of: f64,
    /// Points kept, never below zero.
    pub kept: f64,
    /// Each loss with its moment and reason.
    pub lost: Vec<Deduction>,
}

/// The whole result.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Score {
    /// By dimension.
    pub dimensions: Vec<DimensionScore>,
}

/// Share of the points that is a pass (our own choice).
pub const PASS_SHARE: f64 = 0.7;
/// Share of the points for safety below which nothing else makes a pass. That who works unsafely fails a practical
/// examination is common practice, no source; the figure is our own choice: hands in a circuit that nobody proved dead
/// are too much, a meter that was not checked once is not.
pub const PASS_SAFETY_SHARE: f64 = 0.6;

impl Score {
    /// Takes a loss's share of a side's points, as far as there are any left. The reason is kept even when there are
    /// none: it is there to be learned from.
    pub(crate) fn lose(&mut self, side: Dimension, at: Time, loss: Loss) {
        let entry = &mut self.dimensions[side.index()];
        let points = (loss.share(side) * entry.of).min(entry.kept);
        entry.kept -= points;
        entry.lost.push(Deduction { at, points, loss });
    }

    /// Points kept over all dimensions.
    pub fn total(&self) -> f64 {
        self.dimensions.iter().map(|d| d.kept).sum()
    }

    /// Points possible over all dimensions.
    pub fn of(&self) -> f64 {
        self.dimensions.iter().map(|d| d.of).sum()
    }

    /// The first thing that failed the job whatever else was won.
    pub fn failed_by(&self) -> Option<&Deduction> {
        let lost = self.dimensions.iter().flat_map(|d| &d.lost);
        lost.filter(|d| d.loss.kind().fails_the_job())
            .min_by_key(|d| d.at)
    }

    /// Whether enough of the points for safety is kept for a pass.
    pub fn is_safe_enough(&self) -> bool {
        let mut sides = self.dimensions.iter();
        sides.all(|d| d.dimension != Dimension::Safety || d.kept >= PASS_SAFETY_SHARE * d.of)
    }

    /// Whether that is a pass.
    pub fn passed(&self) -> bool {
        self.failed_by().is_none()
            && self.is_safe_enough()
            && self.total() >= PASS_SHARE * self.of()
    }
}
