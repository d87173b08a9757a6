//! Belief over hypotheses of which one is true.

use libm::{exp, log};

/// Why a belief cannot be formed.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum PosteriorError {
    /// Nothing to believe in.
    #[error("there is no hypothesis; give at least one")]
    Empty,
    /// A weight or likelihood that is negative or no number.
    #[error("number {at} is {value}; weights and likelihoods are 0 or more")]
    Bad {
        /// Place in the list.
        at: usize,
        /// What stands there.
        value: f64,
    },
    /// Not one likelihood for each hypothesis.
    #[error("{found} likelihoods for {wanted} hypotheses; give one for each")]
    Length {
        /// Likelihoods given.
        found: usize,
        /// Hypotheses.
        wanted: usize,
    },
    /// No hypothesis can have brought this about.
    #[error("no hypothesis leaves this possible; give likelihoods a floor")]
    Impossible,
}

/// Shares of belief, kept as logarithms so that long evidence loses nothing.
#[derive(Clone, Debug, PartialEq)]
pub struct Posterior {
    log_weights: Vec<f64>,
}

impl Posterior {
    /// Belief in proportion to weights, 0 or more, not all 0.
    ///
    /// # Errors
    /// As named.
    pub fn from_weights(weights: &[f64]) -> Result<Posterior, PosteriorError> {
        if weights.is_empty() {
            return Err(PosteriorError::Empty);
        }
        let mut belief = Posterior {
            log_weights: vec![0.0; weights.len()],
        };
        belief.update(weights)?;
        Ok(belief)
    }

    /// Takes in evidence with this likelihood under each hypothesis. Any common factor may be left
    /// out. On an error nothing has changed.
    ///
    /// # Errors
    /// As named.
    pub fn update(&mut self, likelihood: &[f64]) -> Result<(), PosteriorError> {
        let (found, wanted) = (likelihood.len(), self.log_weights.len());
        if found != wanted {
            return Err(PosteriorError::Length { found, wanted });
        }
        if let Some(at) = (likelihood.iter()).position(|l| !(*l >= 0.0 && l.is_finite())) {
            let value = likelihood[at];
            return Err(PosteriorError::Bad { at, value });
        }
        let next: Vec<f64> = (self.log_weights.iter().zip(likelihood))
            .map(|(w, l)| w + log(*l))
            .collect();
        let most = next.iter().fold(f64::NEG_INFINITY, |a, b| a.max(*b));
        if most == f64::NEG_INFINITY {
            return Err(PosteriorError::Impossible);
        }
        self.log_weights = next.iter().map(|w| w - most).collect();
        Ok(())
    }

    /// Share of each hypothesis; they add up to 1.
    pub fn shares(&self) -> Vec<f64> {
        let weights: Vec<f64> = self.log_weights.iter().map(|w| exp(*w)).collect();
        let total: f64 = weights.iter().sum();
        weights.iter().map(|w| w / total).collect()
    }

    /// Hypotheses by share, greatest first; of equals, the first.
    pub fn ranked(&self) -> Vec<(usize, f64)> {
        let mut ranked: Vec<(usize, f64)> = self.shares().into_iter().enumerate().collect();
        ranked.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
        ranked
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_test_for_a_rare_thing_is_weaker_than_it_looks() {
        // 8 % have it; the test is positive for 75 % of those and for 4 % of the others. Our own arithmetic.
        let mut belief = Posterior::from_weights(&[0.08, 0.92]).expect("weights");
        belief.update(&[0.75, 0.04]).expect("one for each");
        assert!((belief.shares()[0] - 0.06 / (0.06 + 0.0368)).abs() < 1e-12);
    }

    #[test]
    fn long_evidence_neither_vanishes_nor_overflows() {
        let mut belief = Posterior::from_weights(&[1.0, 1.0]).expect("weights");
        for _ in 0..10_000 {
            belief.update(&[1e-30, 2e-30]).expect("possible");
        }
        assert_eq!(belief.ranked()[0], (1, 1.0));
    }

    #[test]
    fn what_cannot_be_is_refused_and_changes_nothing() {
        let mut belief = Posterior::from_weights(&[1.0, 0.0]).expect("weights");
        let before = belief.clone();
        assert_eq!(belief.update(&[0.0, 1.0]), Err(PosteriorError::Impossible));
        let (at, value) = (1, -0.5);
        assert_eq!(
            belief.update(&[0.1, value]),
            Err(PosteriorError::Bad { at, value })
        );
        assert!(belief.update(&[0.1, f64::NAN]).is_err());
        let (found, wanted) = (1, 2);
        assert_eq!(
            belief.update(&[0.1]),
            Err(PosteriorError::Length { found, wanted })
        );
        assert_eq!(belief, before);
        assert_eq!(Posterior::from_weights(&[]), Err(PosteriorError::Empty));
        assert_eq!(
            Posterior::from_weights(&[0.0]),
            Err(PosteriorError::Impossible)
        );
    }

    proptest! {
        #[test]
        fn shares_are_bayes_theorem_whatever_the_order(
            rows in proptest::collection::vec((0.01..9.0f64, 0.01..1.0f64, 0.01..1.0f64), 2..12)
        ) {
            let prior: Vec<f64> = rows.iter().map(|r| r.0).collect();
            let (one, two): (Vec<f64>, Vec<f64>) = rows.iter().map(|r| (r.1, r.2)).unzip();
            let told = |first: &[f64], second: &[f64]| {
                let mut belief = Posterior::from_weights(&prior).expect("weights");
                belief.update(first).expect("possible");
                belief.update(second).expect("possible");
                belief.shares()
            };
            let total: f64 = rows.iter().map(|r| r.0 * r.1 * r.2).sum();
            for (row, (a, b)) in rows.iter().zip(told(&one, &two).iter().zip(told(&two, &one))) {
                prop_assert!((a - row.0 * row.1 * row.2 / total).abs() < 1e-12);
                prop_assert!((a - b).abs() < 1e-12);
            }
        }
    }
}
