//! Knowledge tracing: how likely it is that a learner knows a skill, from right and wrong answers.
//!
//! A. T. Corbett and J. R. Anderson, "Knowledge tracing: modeling the acquisition of procedural
//! knowledge", User Modeling and User-Adapted Interaction 4 (1995), 253–278. A skill is known or not;
//! each answer is a chance to learn it. What was known is never lost here: what a rest does to it is
//! [`super::Memory`]'s affair.

use super::Skill;

/// Belief from which a skill counts as mastered, after Corbett and Anderson (1995).
pub const MASTERY: f64 = 0.95;

/// The four parameters of one skill, each a probability.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rates {
    known: f64,
    learn: f64,
    slip: f64,
    guess: f64,
}

/// Parameters that say nothing sensible.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum RatesError {
    /// Not a probability.
    #[error("{name} is {value}; write a probability from 0 to 1")]
    NotAProbability {
        /// The parameter.
        name: &'static str,
        /// As given.
        value: f64,
    },
    /// A right answer would then speak against knowing.
    #[error(
        "slip {slip} and guess {guess} come to 1 or more: a right answer would then speak against knowing; make them smaller"
    )]
    Upside {
        /// Chance of a wrong answer by one who knows.
        slip: f64,
        /// Chance of a right answer by one who does not.
        guess: f64,
    },
}

impl Rates {
    /// Chances that the skill is `known` before the first answer, that an answer lets one `learn` it, that
    /// one who knows gets it wrong (`slip`), and that one who does not gets it right (`guess`).
    ///
    /// # Errors
    /// One of them is no probability, or slip and guess come to 1 or more.
    pub fn new(known: f64, learn: f64, slip: f64, guess: f64) -> Result<Rates, RatesError> {
        for (name, value) in [
            ("known", known),
            ("learn", learn),
            ("slip", slip),
            ("guess", guess),
        ] {
            if !(0.0..=1.0).contains(&value) {
                return Err(RatesError::NotAProbability { name, value });
            }
        }
        if slip + guess >= 1.0 {
            return Err(RatesError::Upside { slip, guess });
        }
        Ok(Rates {
            known,
            learn,
            slip,
            guess,
        })
    }

    /// What this program takes for a skill: our own choice, not fitted to any learner. Where a drill offers
    /// `n` answers to choose one from, `guess` is one in `n`; a typed number, a gesture, several ticks or
    /// an answer in four parts is hardly guessed.
    pub const fn of(skill: Skill) -> Rates {
        let (known, learn, slip, guess) = match skill {
            Skill::EntryTiming => (0.10, 0.10, 0.10, 0.10),
            Skill::LampReading => (0.20, 0.15, 0.05, 0.05),
            Skill::Metering => (0.10, 0.12, 0.10, 0.05),
            Skill::CodeLookUp => (0.20, 0.20, 0.05, 0.05),
            Skill::NextTest => (0.10, 0.10, 0.10, 0.25),
            Skill::PartChoice => (0.10, 0.10, 0.10, 0.20),
            // Two questions in three have five answers to choose from, the third asks for a whole order.
            Skill::SafeWork => (0.20, 0.15, 0.10, 0.15),
            Skill::Proof => (0.10, 0.12, 0.10, 0.20),
        };
        Rates {
            known,
            learn,
            slip,
            guess,
        }
    }

    /// Chance that the skill is known before the first answer.
    pub const fn known(&self) -> f64 {
        self.known
    }

    /// Chance that an answer lets one learn it who did not know it.
    pub const fn learn(&self) -> f64 {
        self.learn
    }

    /// Chance of a wrong answer by one who knows.
    pub const fn slip(&self) -> f64 {
        self.slip
    }

    /// Chance of a right answer by one who does not know.
    pub const fn guess(&self) -> f64 {
        self.guess
    }

    /// Chance of a right answer by one who knows with chance `known`.
    pub fn success(&self, known: f64) -> f64 {
        known * (1.0 - self.slip) + (1.0 - known) * self.guess
    }
}

/// The belief about one skill of one learner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tracing {
    rates: Rates,
    known: f64,
}

impl Tracing {
    /// Before the first answer.
    pub const fn new(rates: Rates) -> Tracing {
        Tracing {
            rates,
            known: rates.known,
        }
    }

    /// The parameters.
    pub const fn rates(&self) -> &Rates {
        &self.rates
    }

    /// How likely it is that the skill is known, 0 to 1.
    pub const fn known(&self) -> f64 {
        self.known
    }

    /// Whether it counts as mastered.
    pub fn mastered(&self) -> bool {
        self.known >= MASTERY
    }

    /// Some of what was known may be gone: the belief is now `known` times `kept`.
    pub fn fade(&mut self, kept: f64) {
        self.known *= kept.clamp(0.0, 1.0);
    }

    /// Takes in an answer: what it says about knowing (Bayes), then the chance that it taught.
    pub fn update(&mut self, right: bool) {
        let Rates {
            learn, slip, guess, ..
        } = self.rates;
        let (if_known, if_not) = if right {
            (1.0 - slip, guess)
        } else {
            (slip, 1.0 - guess)
        };
        let joint = self.known * if_known;
        let all = joint + (1.0 - self.known) * if_not;
        // Parameters may make an answer impossible; then it teaches nothing about knowing.
        let after = if all > 0.0 { joint / all } else { self.known };
        self.known = after + (1.0 - after) * learn;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parameters_that_say_nothing_are_refused() {
        assert!(Rates::new(0.2, 0.1, 0.1, 0.25).is_ok());
        for (rates, words) in [
            (Rates::new(1.2, 0.1, 0.1, 0.2), "known"),
            (Rates::new(0.2, f64::NAN, 0.1, 0.2), "learn"),
            (Rates::new(0.2, 0.1, -0.1, 0.2), "slip"),
            (Rates::new(0.2, 0.1, 0.5, 0.5), "speak against"),
        ] {
            let error = rates.expect_err(words).to_string();
            assert!(error.contains(words), "{error}");
        }
    }

    #[test]
    fn what_the_program_takes_for_each_skill_is_sound() {
        for skill in Skill::ALL {
            let Rates {
                known,
                learn,
                slip,
                guess,
            } = Rates::of(*skill);
            assert_eq!(
                Rates::new(known, learn, slip, guess),
                Ok(Rates::of(*skill)),
                "{skill}"
            );
            // Baker, Corbett and Aleven (2008) call others degenerate: from memory.
            assert!(slip < 0.5 && guess < 0.5, "{skill}");
        }
    }

    #[test]
    fn impossible_answers_leave_the_belief_a_probability() {
        let sure = Rates::new(1.0, 0.0, 0.0, 0.0).expect("sound");
        let mut tracing = Tracing::new(sure);
        tracing.update(false);
        assert_eq!(tracing.known(), 1.0);
    }
}
