//! Sequential probability ratio test (Wald, 1945): two simple hypotheses, evidence one piece at a
//! time, a decision as soon as the odds reach a bound.

use libm::{log, log1p};

/// A test that cannot be made.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum WaldError {
    /// Risks that leave nothing to decide.
    #[error("risks {alpha} and {beta}; both are above 0 and together below 1")]
    Risks {
        /// Chance of taking the second hypothesis when the first is true.
        alpha: f64,
        /// Chance of taking the first when the second is true.
        beta: f64,
    },
    /// A chance outside its range, or the same under both hypotheses.
    #[error("chances {first} and {second}; both lie between 0 and 1 and are not equal")]
    Chances {
        /// Under the first hypothesis.
        first: f64,
        /// Under the second.
        second: f64,
    },
}

/// What the evidence so far allows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Neither bound is reached.
    GoOn,
    /// The first hypothesis holds.
    First,
    /// The second hypothesis holds.
    Second,
}

/// The test: the logarithm of the likelihood ratio, second over first, and its two bounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sprt {
    /// Reaching this or more takes the second hypothesis.
    pub upper: f64,
    /// Reaching this or less takes the first.
    pub lower: f64,
    /// Logarithm of the likelihood ratio so far.
    pub log_ratio: f64,
}

/// The parallel lines between which a count of events leaves a test of two rates open:
/// `slope · n − accept` and `slope · n + reject`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lines {
    /// Intercept below, events.
    pub accept: f64,
    /// Intercept above, events.
    pub reject: f64,
    /// Events per trial.
    pub slope: f64,
}

impl Sprt {
    /// Bounds for the risks `alpha` (taking the second hypothesis when the first is true) and
    /// `beta` (the other way round). Wald's bounds keep both at most slightly above these.
    ///
    /// # Errors
    /// [`WaldError::Risks`].
    pub fn new(alpha: f64, beta: f64) -> Result<Sprt, WaldError> {
        if !(alpha > 0.0 && beta > 0.0 && alpha + beta < 1.0) {
            return Err(WaldError::Risks { alpha, beta });
        }
        Ok(Sprt {
            upper: log((1.0 - beta) / alpha),
            lower: log(beta / (1.0 - alpha)),
            log_ratio: 0.0,
        })
    }

    /// The same bounds for the odds themselves, second over first, that stand at `prior` before the
    /// first trial; 1 leaves the plain test.
    #[must_use]
    pub fn with_odds(mut self, prior: f64) -> Sprt {
        self.log_ratio += log(prior);
        self
    }

    /// Odds of the second hypothesis over the first, or the likelihood ratio in the plain test.
    pub fn odds(&self) -> f64 {
        libm::exp(self.log_ratio)
    }

    /// Takes in one trial, which came out as it does with these chances under the hypotheses.
    pub fn see(&mut self, first: f64, second: f64) {
        self.log_ratio += log(second) - log(first);
    }

    /// Where it stands.
    pub fn verdict(&self) -> Verdict {
        if self.log_ratio >= self.upper {
            Verdict::Second
        } else if self.log_ratio <= self.lower {
            Verdict::First
        } else {
            Verdict::GoOn
        }
    }

    /// The same bounds for counting events of chance `first` or `second` a trial, where `first` is
    /// the smaller.
    ///
    /// # Errors
    /// [`WaldError::Chances`].
    pub fn lines(&self, first: f64, second: f64) -> Result<Lines, WaldError> {
        if !(0.0 < first && first < second && second < 1.0) {
            return Err(WaldError::Chances { first, second });
        }
        let k = log(second * (1.0 - first) / (first * (1.0 - second)));
        Ok(Lines {
            accept: -self.lower / k,
            reject: self.upper / k,
            slope: (log1p(-first) - log1p(-second)) / k,
        })
    }
}

impl Lines {
    /// Most events in `trials` that take the first hypothesis; none when no count does yet.
    pub fn accept_at(&self, trials: u32) -> Option<u32> {
        let most = libm::floor(self.slope * f64::from(trials) - self.accept);
        (most >= 0.0).then_some(most as u32)
    }

    /// Fewest events in `trials` that take the second hypothesis; none when there are not as many trials.
    pub fn reject_at(&self, trials: u32) -> Option<u32> {
        let fewest = libm::ceil(self.slope * f64::from(trials) + self.reject);
        (fewest <= f64::from(trials)).then_some(fewest as u32)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bounds_are_walds() {
        // Wald (1945), from memory: A = (1 − β)/α, B = β/(1 − α). The number is independent arithmetic.
        let test = Sprt::new(0.05, 0.05).expect("risks");
        assert!((test.upper - 2.94444).abs() < 5e-6);
        assert!((test.lower + 2.94444).abs() < 5e-6);
    }

    #[test]
    fn the_plan_of_the_handbook_comes_out() {
        // NIST/SEMATECH e-Handbook of Statistical Methods, 6.2.6: at the 24th unit accept with none, reject
        // with three. Its inputs p1 = 0.01, p2 = 0.10, α = 0.05, β = 0.10 are from memory.
        let test = Sprt::new(0.05, 0.10).expect("risks");
        let lines = test.lines(0.01, 0.10).expect("chances");
        for (found, expected) in [
            (lines.accept, 0.93886),
            (lines.reject, 1.20538),
            (lines.slope, 0.039747),
        ] {
            assert!((found - expected).abs() < 1e-5, "{found} for {expected}");
        }
        assert_eq!(
            (lines.accept_at(24), lines.reject_at(24)),
            (Some(0), Some(3))
        );
        assert_eq!(lines.accept_at(23), None);
        assert_eq!(lines.reject_at(1), None);
    }

    #[test]
    fn lines_and_ratio_decide_alike() {
        let test = Sprt::new(0.05, 0.10).expect("risks");
        let (first, second) = (0.1, 0.4);
        let lines = test.lines(first, second).expect("chances");
        for trials in 1..60 {
            for events in 0..=trials {
                let mut counted = test;
                (0..events).for_each(|_| counted.see(first, second));
                (events..trials).for_each(|_| counted.see(1.0 - first, 1.0 - second));
                let by_lines = if lines.reject_at(trials).is_some_and(|n| events >= n) {
                    Verdict::Second
                } else if lines.accept_at(trials).is_some_and(|n| events <= n) {
                    Verdict::First
                } else {
                    Verdict::GoOn
                };
                assert_eq!(counted.verdict(), by_lines, "{events} of {trials}");
            }
        }
    }

    #[test]
    fn risks_and_chances_outside_their_range_are_refused() {
        for (alpha, beta) in [(0.0, 0.1), (0.5, 0.5), (f64::NAN, 0.1), (0.1, -0.1)] {
            assert!(Sprt::new(alpha, beta).is_err(), "{alpha} {beta}");
        }
        let test = Sprt::new(0.1, 0.1).expect("risks");
        assert!(test.lines(0.2, 0.2).is_err() && test.lines(0.0, 0.2).is_err());
    }

    #[test]
    fn risks_are_kept_in_the_long_run() {
        use detent_simulation::units::uniform;
        use rand::SeedableRng;
        let mut rng = rand_chacha::ChaCha8Rng::seed_from_u64(9);
        let (alpha, beta) = (0.1, 0.1);
        let mut wrong = |true_chance: f64, right: Verdict| {
            let runs = 4000;
            let mut missed = 0;
            for _ in 0..runs {
                let mut test = Sprt::new(alpha, beta).expect("risks");
                while test.verdict() == Verdict::GoOn {
                    if uniform(&mut rng) < true_chance {
                        test.see(0.2, 0.5);
                    } else {
                        test.see(0.8, 0.5);
                    }
                }
                missed += u32::from(test.verdict() != right);
            }
            f64::from(missed) / f64::from(runs)
        };
        // Wald's inequality: the two true risks together are no more than the two nominal ones.
        let total = wrong(0.2, Verdict::First) + wrong(0.5, Verdict::Second);
        assert!(total < alpha + beta + 0.01, "{total}");
        assert!(total > 0.05, "{total}: the test decides too late");
    }
}
