//! How difficult a job is, and the band around an original's.

use super::learners::Demands;
use super::refusal::VariantRefusal;
use crate::bench::Bench;
use crate::lesson::technician::{Persona, work_in_slices};
use crate::lesson::{Scenario, Score, judge};

/// The people who try a job, besides the expert who proves it.
pub const PEOPLE: [Persona; 2] = [Persona::Guesser, Persona::Swapper];
/// The best plan may cost so many times as much or as little. Our own choice.
const COST_FACTOR: f64 = 1.75;
/// The mean share of the points that people keep may differ by so much, and the chance of passing by so much. Our own
/// choice.
const SHARE_APART: f64 = 0.2;
const CHANCE_APART: f64 = 0.25;

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
    /// Share of simulated learners who pass, 0 to 1.
    pub chance_of_passing: f64,
}

/// What people make of a job, besides the expert who proves it.
pub(crate) struct PeopleAtWork {
    scores: [Option<Score>; PEOPLE.len()],
}

impl PeopleAtWork {
    /// Each of [`PEOPLE`] does the job.
    pub async fn at(scenario: &Scenario, bench: &Bench) -> PeopleAtWork {
        PeopleAtWork {
            scores: scores(scenario, bench).await,
        }
    }

    /// What guessing comes to; none where the machine refused a step.
    pub fn guesser(&self) -> Option<&Score> {
        let guesser = PEOPLE.iter().position(|one| *one == Persona::Guesser);
        guesser.and_then(|n| self.scores[n].as_ref())
    }
}

impl Difficulty {
    /// Of a job whose best plan costs this and which the expert did so.
    pub(crate) fn of(
        planned_cost: f64,
        (done, score): (&Bench, &Score),
        people: &PeopleAtWork,
    ) -> Difficulty {
        Difficulty {
            planned_cost,
            expert_minutes: done.minutes(),
            expert_share: share(score),
            shares: (people.scores.each_ref()).map(|one| one.as_ref().map_or(0.0, share)),
            chance_of_passing: Demands::of(done, score, people.guesser()).share_passing(),
        }
    }

    /// Share of the points that all three keep in the mean, 0 to 1.
    pub fn mean_share(&self) -> f64 {
        (self.expert_share + self.shares.iter().sum::<f64>()) / (1 + PEOPLE.len()) as f64
    }
}

/// What each of [`PEOPLE`] makes of a job; nothing where the machine refuses them a step.
async fn scores(scenario: &Scenario, bench: &Bench) -> [Option<Score>; PEOPLE.len()] {
    let mut scores = PEOPLE.map(|_| None);
    for (score, persona) in scores.iter_mut().zip(PEOPLE) {
        let done = work_in_slices(persona, scenario, bench.clone()).await;
        *score = done.ok().map(|done| judge(scenario, &done));
    }
    scores
}

/// Share of the points that is kept, 0 to 1.
pub(super) fn share(score: &Score) -> f64 {
    score.total() / score.of()
}

/// From the easiest to the most difficult that a variant may be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    /// Expected costs of the best plan, whole units of money.
    pub planned_cost: (f64, f64),
    /// Mean shares of the points that people keep, 0 to 1.
    pub mean_share: (f64, f64),
    /// Chances of passing, 0 to 1.
    pub chance_of_passing: (f64, f64),
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
        let (least, most) = range(Difficulty::mean_share);
        let (hardest, easiest) = range(|d| d.chance_of_passing);
        Band {
            planned_cost: (cheapest / COST_FACTOR, dearest * COST_FACTOR),
            mean_share: (least - SHARE_APART, most + SHARE_APART),
            chance_of_passing: (hardest - CHANCE_APART, easiest + CHANCE_APART),
        }
    }

    /// Whether people do much better or much worse than at the original, if so.
    pub(super) fn refuses(&self, difficulty: &Difficulty) -> Option<VariantRefusal> {
        let people = [
            (difficulty.mean_share(), self.mean_share),
            (difficulty.chance_of_passing, self.chance_of_passing),
        ];
        if people.iter().any(|(figure, (_, most))| figure > most) {
            return Some(VariantRefusal::TooEasy);
        }
        let too_hard = people.iter().any(|(figure, (least, _))| figure < least);
        too_hard.then_some(VariantRefusal::TooHard)
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
            chance_of_passing: guesser,
        };
        let own = [machine(70.0, 0.6), machine(140.0, 0.3)];
        assert!((own[0].mean_share() - 0.6).abs() < 1e-12);
        let band = Band::around(&own);
        assert!((band.planned_cost.0 - 40.0).abs() < 1e-9);
        assert!((band.planned_cost.1 - 245.0).abs() < 1e-9);
        assert!((band.mean_share.0 - 0.3).abs() < 1e-9);
        assert!((band.mean_share.1 - 0.8).abs() < 1e-9);
        assert!((band.chance_of_passing.0 - 0.05).abs() < 1e-9);
        assert!((band.chance_of_passing.1 - 0.85).abs() < 1e-9);
        assert!(own.iter().all(|own| band.refuses(own).is_none()));
        // Either of the two figures is enough to refuse it.
        let mut easy = own[0];
        easy.chance_of_passing = 0.9;
        assert_eq!(band.refuses(&easy), Some(VariantRefusal::TooEasy));
        assert_eq!(
            band.refuses(&machine(100.0, 0.04)),
            Some(VariantRefusal::TooHard)
        );
    }
}
