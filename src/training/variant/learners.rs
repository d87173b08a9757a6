//! Learners who do not exist: how many of them would pass a job.
//!
//! What a job asks of them is read off the expert's attempt at it: codes to read, entries into service mode, tests to
//! choose, hands to put in safely, things to prove. Each learner has a rate for each skill, the chance that one such
//! thing comes off. Who chooses a wrong test may stop testing and go the guesser's way, which was gone on the same
//! machine; every other slip takes the judge's own losses. The same learners try every job, so that two jobs differ by
//! what they ask and not by who came. A worn dial is not in it, nor is the time that slips take.

use super::difficulty::share;
use crate::bench::{Bench, MilestoneKind};
use crate::lesson::technician::TRIES;
use crate::lesson::{FREE_TRIES, Loss, Score, first_touches};
use detent_simulation::controller::EntryError;
use detent_simulation::interface::Pin;
use detent_simulation::names;
use detent_simulation::units::{Time, uniform};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// Learners who try each job, and the seed that they are drawn from.
const LEARNERS: usize = 200;
const SEED: u64 = 0x6c65_6172_6e65_7273;
/// Of wrong choices, one in so many is to buy on a guess instead of testing on. Our own invention.
const GUESSES_ONE_IN: f64 = 3.0;

/// Least and greatest rate that a learner is drawn with, every value between them as likely. Our own invention: no
/// learner was measured.
const READING: (f64, f64) = (0.80, 0.99);
const ENTERING: (f64, f64) = (0.50, 0.95);
const CHOOSING: (f64, f64) = (0.60, 0.98);
const SAFE_WORK: (f64, f64) = (0.85, 0.99);
const PROVING: (f64, f64) = (0.60, 0.98);

names! {
    /// How far learners of one group have come. Its text is `author-learners-{name}`.
    LearnerLevel {
        /// A tenth of the way from the least rates to the greatest.
        Beginner = "beginner",
        /// Half of the way.
        Middle = "middle",
        /// Nine tenths of the way.
        Advanced = "advanced",
    }
}

impl LearnerLevel {
    /// How far the rates lie from the least to the greatest, 0 to 1. Our own choice.
    const fn of_the_way(self) -> f64 {
        match self {
            LearnerLevel::Beginner => 0.1,
            LearnerLevel::Middle => 0.5,
            LearnerLevel::Advanced => 0.9,
        }
    }
}

/// What learners of one level make of a job.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LearnerGroup {
    /// The level.
    pub level: LearnerLevel,
    /// Share of them who pass, 0 to 1.
    pub passing: f64,
    /// Share of the points that they keep in the mean, 0 to 1.
    pub mean_share: f64,
    /// Standard deviation of that share over the learners.
    pub spread: f64,
}

/// Chances, 0 to 1, that something comes off for one learner.
#[derive(Clone, Copy, Debug)]
struct SkillRates {
    /// A code is read rightly.
    reading: f64,
    /// A try at the entry gesture gets in.
    entering: f64,
    /// The next test is chosen rightly.
    choosing: f64,
    /// Hands go in only once the machine is proved dead.
    safe_work: f64,
    /// Something that the proof wants is done.
    proving: f64,
}

impl SkillRates {
    fn draw(rng: &mut ChaCha8Rng) -> SkillRates {
        SkillRates::at(|| uniform(rng))
    }

    /// Each rate so much of the way from the least to the greatest, 0 to 1.
    fn at(mut of_the_way: impl FnMut() -> f64) -> SkillRates {
        let mut between = |(least, most): (f64, f64)| least + (most - least) * of_the_way();
        SkillRates {
            reading: between(READING),
            entering: between(ENTERING),
            choosing: between(CHOOSING),
            safe_work: between(SAFE_WORK),
            proving: between(PROVING),
        }
    }
}

/// What a job asks, and what the expert's way and the guesser's are worth.
pub(crate) struct Demands<'a> {
    expert: &'a Score,
    /// None where the machine refused him a step.
    guesser: Option<&'a Score>,
    codes: Vec<u8>,
    entries: usize,
    choices: usize,
    touches: usize,
    proofs: Vec<Loss>,
    end: Time,
}

impl<'a> Demands<'a> {
    /// Of the job that the expert did on `done`.
    pub fn of(done: &Bench, expert: &'a Score, guesser: Option<&'a Score>) -> Demands<'a> {
        let began = done.began();
        let entered = |kind: &MilestoneKind| *kind == MilestoneKind::ServiceEntered;
        let milestones = done.milestones().iter();
        let entries = milestones.filter(|m| m.at >= began && entered(&m.kind));
        // What proves the machine dead is part of safe work.
        let charge = |pin: Pin| matches!(pin, Pin::BulkPlus | Pin::BulkMinus);
        let readings = done.notebook().iter();
        let readings = readings.filter(|r| !(charge(r.red) && charge(r.black)));
        let choices = readings.count() + done.log().seen_by_hand().count();
        let mut proofs = Vec::new();
        if choices > 0 {
            proofs.push(Loss::NoEvidence);
        }
        if done.passed(MilestoneKind::CalibrationPassed, began) {
            proofs.push(Loss::NotRecalibrated);
        }
        if done.passed(MilestoneKind::ProgramFinished, began) {
            proofs.push(Loss::NoProvingRun);
        }
        let mut codes: Vec<u8> = Vec::new();
        for (_, code) in done.noted_codes().iter() {
            if !codes.contains(&code) {
                codes.push(code);
            }
        }
        Demands {
            expert,
            guesser,
            codes,
            entries: entries.count(),
            choices,
            touches: first_touches(done).len(),
            proofs,
            end: done.now(),
        }
    }

    /// Share of the simulated learners who pass, 0 to 1.
    pub fn share_passing(&self) -> f64 {
        self.share_of(SkillRates::draw)
    }

    /// What learners of each level make of it.
    pub fn groups(&self) -> Vec<LearnerGroup> {
        let group = |level: &LearnerLevel| {
            let scores: Vec<_> = self
                .scores_of(|_| SkillRates::at(|| level.of_the_way()))
                .collect();
            let count = scores.len() as f64;
            let shares = scores.iter().map(|s| s.as_ref().map_or(0.0, share));
            let mean = shares.clone().sum::<f64>() / count;
            let squares: f64 = shares.map(|share| (share - mean) * (share - mean)).sum();
            let passing = scores.iter().flatten().filter(|score| score.passed());
            LearnerGroup {
                level: *level,
                passing: passing.count() as f64 / count,
                mean_share: mean,
                spread: libm::sqrt(squares / count),
            }
        };
        LearnerLevel::ALL.iter().map(group).collect()
    }

    fn share_of(&self, rates: impl Fn(&mut ChaCha8Rng) -> SkillRates) -> f64 {
        let scores = self.scores_of(rates).flatten();
        scores.filter(Score::passed).count() as f64 / LEARNERS as f64
    }

    /// What each learner makes of it; none for one who guesses where the machine refused the guesser a step.
    fn scores_of(
        &self,
        rates: impl Fn(&mut ChaCha8Rng) -> SkillRates,
    ) -> impl Iterator<Item = Option<Score>> {
        (0..LEARNERS).map(move |n| {
            let mut rng = ChaCha8Rng::seed_from_u64(SEED);
            rng.set_stream(n as u64);
            let rates = rates(&mut rng);
            self.tries(rates, &mut rng)
        })
    }

    /// What somebody with these rates makes of it this time.
    fn tries(&self, rates: SkillRates, rng: &mut ChaCha8Rng) -> Option<Score> {
        let mut comes_off = |rate: f64| uniform(rng) < rate;
        let guesses = (1.0 - rates.choosing) / GUESSES_ONE_IN;
        let tests_on = (0..self.choices).all(|_| comes_off(1.0 - guesses));
        let way = match tests_on {
            true => Some(self.expert),
            false => self.guesser,
        };
        let mut score = way.cloned()?;
        let mut lose = |loss: Loss| score.lose(loss.side(), self.end, loss);
        let mut failed = 0;
        let mut was_in = false;
        for _ in 0..self.entries {
            let tries = (0..TRIES).take_while(|_| !comes_off(rates.entering));
            let failed_now = tries.count();
            failed += failed_now;
            was_in |= failed_now < TRIES;
        }
        for _ in FREE_TRIES..failed {
            let rule = EntryError::Late { step: 0, by_ms: 1 };
            lose(Loss::FailedTry { rule });
        }
        if self.entries > 0 && !was_in {
            lose(Loss::NeverEntered);
        }
        let due = self.codes.len();
        for code in &self.codes {
            let was_read = comes_off(rates.reading);
            if was_in && !was_read {
                let (noted, shown) = (code ^ 1, self.codes.clone());
                lose(Loss::Misread { noted, shown });
            }
            if !was_in || !was_read {
                lose(Loss::CodeNotNoted { code: *code, due });
            }
        }
        for _ in 0..self.touches {
            if !comes_off(rates.safe_work) {
                lose(Loss::NotProvedDead);
            }
        }
        for loss in self.proofs.iter().filter(|_| tests_on) {
            if !comes_off(rates.proving) {
                lose(loss.clone());
            }
        }
        Some(score)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lesson::Dimension;
    use crate::lesson::DimensionScore;

    /// A score of 100 points with this share kept on every side.
    fn score(kept: f64) -> Score {
        let points = [5.0, 15.0, 30.0, 20.0, 10.0, 20.0];
        let sides = Dimension::ALL.iter().zip(points);
        let dimensions = sides.map(|(dimension, of)| DimensionScore {
            dimension: *dimension,
            of,
            kept: kept * of,
            lost: Vec::new(),
        });
        Score {
            dimensions: dimensions.collect(),
        }
    }

    fn demands<'a>(expert: &'a Score, guesser: &'a Score) -> Demands<'a> {
        Demands {
            expert,
            guesser: Some(guesser),
            codes: vec![42],
            entries: 2,
            choices: 2,
            touches: 2,
            proofs: vec![Loss::NoEvidence, Loss::NotRecalibrated, Loss::NoProvingRun],
            end: Time::ZERO,
        }
    }

    fn all(rate: f64) -> SkillRates {
        SkillRates {
            reading: rate,
            entering: rate,
            choosing: rate,
            safe_work: rate,
            proving: rate,
        }
    }

    #[test]
    fn who_never_slips_passes_as_the_expert_does_and_who_always_slips_fails() {
        let (expert, guesser) = (score(1.0), score(0.4));
        let demands = demands(&expert, &guesser);
        assert_eq!(demands.share_of(|_| all(1.0)), 1.0);
        assert_eq!(demands.share_of(|_| all(0.0)), 0.0);
        let share = demands.share_passing();
        assert!(share > 0.1 && share < 0.9, "{share}");
        // The same learners, the same slips.
        assert_eq!(share, demands.share_passing());
    }

    /// Who does everything else well passes unless one choice is to guess: the share is the chance not to guess to the
    /// power of the choices (product rule for independent events), within four standard errors of a binomial share.
    #[test]
    fn each_further_choice_costs_its_share_of_the_learners() {
        let (expert, guesser) = (score(1.0), score(0.4));
        let rate = 0.4;
        let goes_on: f64 = 1.0 - (1.0 - rate) / GUESSES_ONE_IN;
        for choices in [0, 1, 3, 6] {
            let demands = Demands {
                choices,
                ..demands(&expert, &guesser)
            };
            let choosing = |_: &mut ChaCha8Rng| SkillRates {
                choosing: rate,
                ..all(1.0)
            };
            let expected: f64 = (0..choices).map(|_| goes_on).product();
            let error = (expected * (1.0 - expected) / LEARNERS as f64).sqrt();
            let share = demands.share_of(choosing);
            assert!(
                (share - expected).abs() <= 4.0 * error,
                "{choices}: {share}"
            );
        }
    }

    /// So that a job which is too easy without the guesser is too easy with any.
    #[test]
    fn a_guesser_who_gets_somewhere_only_lets_more_learners_pass() {
        let expert = score(1.0);
        let mut shares = Vec::new();
        for kept in [0.0, 0.4, 0.8, 1.0] {
            let guesser = score(kept);
            let with = demands(&expert, &guesser);
            let without = Demands {
                guesser: None,
                ..demands(&expert, &guesser)
            };
            let (without, with) = (without.share_passing(), with.share_passing());
            assert!(without <= with, "{kept}: {without} and {with}");
            shares.push((without, with));
        }
        assert!(
            shares.iter().any(|(without, with)| without < with),
            "{shares:?}"
        );
    }

    /// One slip is enough: hands in a circuit that nobody proved dead.
    #[test]
    fn hands_that_are_put_in_unsafely_are_no_pass() {
        let (expert, guesser) = (score(1.0), score(0.4));
        let careless = |_: &mut ChaCha8Rng| SkillRates {
            safe_work: 0.0,
            ..all(1.0)
        };
        for (touches, share) in [(0, 1.0), (1, 0.0)] {
            let demands = Demands {
                touches,
                ..demands(&expert, &guesser)
            };
            assert_eq!(demands.share_of(careless), share);
        }
    }
}
