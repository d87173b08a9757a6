//! What becomes of many drafts: how many pass, why the others do not, and how the difficulties are spread.

use super::difficulty::Difficulty;
use super::maker::Variant;
use super::refusal::VariantRefusal;

/// What became of some drafts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Tally {
    /// Drafts.
    pub drawn: u64,
    /// Difficulties of those that passed, in order of the drafts.
    pub passed: Vec<Difficulty>,
    /// Drafts refused for each reason, by [`VariantRefusal::index`].
    refused: [u64; VariantRefusal::ALL.len()],
}

/// Least, middle and greatest of some numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// Least.
    pub least: f64,
    /// As many are above as below.
    pub median: f64,
    /// Greatest.
    pub greatest: f64,
}

impl Tally {
    /// Counts one more draft.
    pub fn count(&mut self, came_of_it: &Result<Variant, VariantRefusal>) {
        self.drawn += 1;
        match came_of_it {
            Ok(variant) => self.passed.push(variant.difficulty),
            Err(reason) => self.refused[reason.index()] += 1,
        }
    }

    /// Drafts refused for this reason.
    pub fn refused(&self, reason: VariantRefusal) -> u64 {
        self.refused[reason.index()]
    }

    /// How a figure is spread over those that passed; none if none did.
    pub fn spread(&self, figure: impl Fn(&Difficulty) -> f64) -> Option<Spread> {
        let mut figures: Vec<f64> = self.passed.iter().map(figure).collect();
        figures.sort_by(f64::total_cmp);
        Some(Spread {
            least: *figures.first()?,
            median: figures[figures.len() / 2],
            greatest: *figures.last()?,
        })
    }
}
