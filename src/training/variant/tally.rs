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

#[cfg(test)]
mod tests {
    use super::*;

    fn tally(costs: &[f64]) -> Tally {
        let difficulty = |planned_cost: &f64| Difficulty {
            planned_cost: *planned_cost,
            expert_minutes: 40.0,
            expert_share: 1.0,
            shares: [0.5, 0.0],
            chance_of_passing: 0.5,
        };
        Tally {
            passed: costs.iter().map(difficulty).collect(),
            ..Tally::default()
        }
    }

    #[test]
    fn a_figure_is_spread_from_its_least_to_its_greatest() {
        let spread = tally(&[90.0, 30.0, 60.0]).spread(|d| d.planned_cost);
        let (least, median, greatest) = (30.0, 60.0, 90.0);
        assert_eq!(
            spread,
            Some(Spread {
                least,
                median,
                greatest
            })
        );
        assert_eq!(tally(&[]).spread(|d| d.planned_cost), None);
    }

    #[test]
    fn each_draft_is_counted_once_and_for_its_reason() {
        let mut tally = tally(&[]);
        for reason in [
            VariantRefusal::TooEasy,
            VariantRefusal::SameJob,
            VariantRefusal::TooEasy,
        ] {
            tally.count(&Err(reason));
        }
        assert_eq!(tally.drawn, 3);
        assert_eq!(tally.refused(VariantRefusal::TooEasy), 2);
        assert_eq!(tally.refused(VariantRefusal::SameJob), 1);
        assert_eq!(tally.refused(VariantRefusal::TooHard), 0);
    }
}
