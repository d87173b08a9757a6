//! How difficult a job is, and the band around an original's.

use crate::bench::Bench;
use crate::lesson::technician::{Persona, work_in_slices};
use crate::lesson::{Scenario, judge};

/// The people who try a job, besides the expert who proves it.
pub const PEOPLE: [Persona; 2] = [Persona::Guesser, Persona::Swapper];
/// The best plan may cost so many times as much or as little. Our own choice.
const COST_FACTOR: f64 = 1.75;
/// The mean share of the points that people keep may differ by so much. Our own choice.
const SHARE_APART: f64 = 0.2;

/// How difficult a job is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Difficulty {
    /// Expected cost of repair after the customer's wash if the best step is taken each time, whole units of money.
    pub planned_cost: f64,
    /// Work time of the expert, min.
    pub expert_minutes: f64,
    /// Share of the points that the expert keeps, 0 to 1.
    pub expert_share: f64,
    /// The same of each of [`PEOPLE`].
    pub shares: [f64; PEOPLE.len()],
}

impl Difficulty {
    /// Share of the points that all three keep in the mean: their chance of success.
    pub fn success(&self) -> f64 {
        (self.expert_share + self.shares.iter().sum::<f64>()) / (1 + PEOPLE.len()) as f64
    }
}

/// What each of [`PEOPLE`] keeps of the points; nothing where the machine refuses them a step.
pub(super) async fn shares(scenario: &Scenario, bench: &Bench) -> [f64; PEOPLE.len()] {
    let mut shares = [0.0; PEOPLE.len()];
    for (share, persona) in shares.iter_mut().zip(PEOPLE) {
        if let Ok(done) = work_in_slices(persona, scenario, bench.clone()).await {
            let score = judge(scenario, &done);
            *share = score.total() / score.of();
        }
    }
    shares
}

/// From the easiest to the most difficult that a variant may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Expected costs of the best plan, whole units of money.
    pub planned_cost: (f64, f64),
    /// Chances of success, 0 to 1.
    pub success: (f64, f64),
}

impl Band {
    /// Around these machines of the original, at least one.
    pub fn around(originals: &[Difficulty]) -> Band {
        let range = |of: fn(&Difficulty) -> f64| {
            originals
                .iter()
                .map(of)
                .fold((f64::INFINITY, 0.0_f64), |(low, high), x| {
                    (low.min(x), high.max(x))
                })
        };
        let (cheapest, dearest) = range(|d| d.planned_cost);
        let (least, most) = range(Difficulty::success);
        Band {
            planned_cost: (cheapest / COST_FACTOR, dearest * COST_FACTOR),
            success: (least - SHARE_APART, most + SHARE_APART),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_band_reaches_around_every_machine_of_the_original() {
        let machine = |planned_cost, guesser| Difficulty {
            planned_cost,
            expert_minutes: 40.0,
            expert_share: 0.9,
            shares: [guesser, 0.3],
        };
        let own = [machine(70.0, 0.6), machine(140.0, 0.3)];
        assert!((own[0].success() - 0.6).abs() < 1e-12);
        let band = Band::around(&own);
        assert!((band.planned_cost.0 - 40.0).abs() < 1e-9);
        assert!((band.planned_cost.1 - 245.0).abs() < 1e-9);
        assert!((band.success.0 - 0.3).abs() < 1e-9);
        assert!((band.success.1 - 0.8).abs() < 1e-9);
    }
}
