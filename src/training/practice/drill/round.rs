//! A round of a drill: so many questions, what came of them, and how long they took.

/// Questions in a round, where nobody asks for another number.
pub const QUESTIONS: usize = 10;
/// Most questions that somebody can ask for.
pub const MOST_QUESTIONS: usize = 50;

/// What came of one question.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Done {
    /// The answer was right.
    pub right: bool,
    /// From the question to the answer, s.
    pub took_s: f64,
}

/// A round as far as it has come.
#[derive(Clone, Debug, PartialEq)]
pub struct Round {
    seed: u64,
    questions: usize,
    done: Vec<Done>,
}

impl Round {
    /// Begins a round whose questions follow from `seed`.
    pub fn begin(seed: u64) -> Round {
        Round::of(QUESTIONS, seed)
    }

    /// The same of so many questions.
    pub fn of(questions: usize, seed: u64) -> Round {
        let done = Vec::new();
        Round {
            seed,
            questions,
            done,
        }
    }

    /// Questions that it has.
    pub const fn questions(&self) -> usize {
        self.questions
    }

    /// Seed of the present question; each question of a round has one of its own.
    pub fn seed(&self) -> u64 {
        // Far apart, so that two rounds begun one after the other share no question.
        let step = 0x9e37_79b9_7f4a_7c15_u64;
        (self.seed).wrapping_add(step.wrapping_mul(self.done.len() as u64 + 1))
    }

    /// Writes the answer to the present question down; the next one is then the present one.
    pub fn note(&mut self, done: Done) {
        self.done.push(done);
    }

    /// Answers so far.
    pub fn done(&self) -> &[Done] {
        &self.done
    }

    /// Nothing more is asked.
    pub fn is_over(&self) -> bool {
        self.done.len() >= self.questions
    }

    /// Right answers so far.
    pub fn right(&self) -> usize {
        self.done.iter().filter(|done| done.right).count()
    }

    /// Median time of an answer, s; none before the first. Of an even number, the mean of the middle two.
    pub fn median_s(&self) -> Option<f64> {
        let mut times: Vec<f64> = self.done.iter().map(|done| done.took_s).collect();
        times.sort_by(f64::total_cmp);
        let upper = times.len() / 2;
        let high = times.get(upper)?;
        let low = times[(times.len() - 1) / 2];
        Some((low + high) / 2.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn round(times: &[f64]) -> Round {
        let mut round = Round::begin(5);
        for (n, took_s) in times.iter().enumerate() {
            let (right, took_s) = (n % 2 == 0, *took_s);
            round.note(Done { right, took_s });
        }
        round
    }

    #[test]
    fn a_round_counts_its_answers_and_ends_after_ten() {
        let nine = round(&[1.0; 9]);
        assert!(!nine.is_over());
        assert_eq!(nine.right(), 5);
        assert!(round(&[1.0; QUESTIONS]).is_over());
        assert_eq!(Round::begin(5).questions(), QUESTIONS);
        assert!(!Round::of(1, 5).is_over());
        let mut one = Round::of(1, 5);
        one.note(nine.done()[0]);
        assert!(one.is_over());
    }

    #[test]
    fn the_median_is_the_middle_time() {
        assert_eq!(round(&[]).median_s(), None);
        assert_eq!(round(&[9.0, 1.0, 2.0]).median_s(), Some(2.0));
        assert_eq!(round(&[9.0, 1.0, 2.0, 4.0]).median_s(), Some(3.0));
    }

    #[test]
    fn each_question_has_a_seed_of_its_own() {
        let mut seeds: Vec<u64> = (0..20)
            .flat_map(|seed| {
                (0..QUESTIONS).map(move |n| {
                    let done = vec![
                        Done {
                            right: true,
                            took_s: 1.0
                        };
                        n
                    ];
                    Round {
                        done,
                        ..Round::begin(seed)
                    }
                    .seed()
                })
            })
            .collect();
        let count = seeds.len();
        seeds.sort_unstable();
        seeds.dedup();
        assert_eq!(seeds.len(), count);
    }
}
