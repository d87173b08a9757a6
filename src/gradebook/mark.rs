//! Which of a learner's attempts at a job counts.

use super::AttemptResult;
use detent_simulation::names;
use std::collections::BTreeMap;

names! {
    /// Which of several attempts at one job counts. Its text is `pages-rule-{name}`.
    MarkRule {
        /// The one with most points: whoever tries again and does better has learned it, and trying costs nothing.
        Best = "best",
        /// The one that was begun first: each learner's machine stays the same, so that whoever comes back to it knows
        /// its fault. What an examination needs.
        First = "first",
        /// The one that was begun last: where a learner stands now.
        Last = "last",
    }
}

/// A verified attempt.
#[derive(Clone, Debug, PartialEq)]
pub struct GradedAttempt {
    /// Number of the learner's seat.
    pub seat: u32,
    /// Name of the attempt, hexadecimal.
    pub attempt: String,
    /// When its first deeds came to the server, ms since 1970, UTC.
    pub begun_ms: u64,
    /// When its last ones did, ms since 1970, UTC.
    pub finished_ms: u64,
    /// What doing it again has shown.
    pub result: AttemptResult,
}

/// The verified attempts of a class. A second visit is listed and never counts: only whoever left the machine broken at
/// the first one gets to make it.
#[derive(Clone, Debug)]
pub struct Gradebook {
    jobs: Vec<String>,
    rule: MarkRule,
    /// By seat and job, in the order in which they were begun.
    attempts: BTreeMap<u32, BTreeMap<String, Vec<GradedAttempt>>>,
}

impl Gradebook {
    /// Of a class that does these jobs, in their order.
    pub fn new(jobs: Vec<String>, mut attempts: Vec<GradedAttempt>, rule: MarkRule) -> Gradebook {
        attempts.sort_by(|a, b| (a.begun_ms, &a.attempt).cmp(&(b.begun_ms, &b.attempt)));
        let mut by_seat: BTreeMap<u32, BTreeMap<String, Vec<GradedAttempt>>> = BTreeMap::new();
        for attempt in attempts {
            let jobs = by_seat.entry(attempt.seat).or_default();
            jobs.entry(attempt.result.job.clone())
                .or_default()
                .push(attempt);
        }
        Gradebook {
            jobs,
            rule,
            attempts: by_seat,
        }
    }

    /// The jobs of the class, in their order.
    pub fn jobs(&self) -> &[String] {
        &self.jobs
    }

    /// Which attempt counts.
    pub const fn rule(&self) -> MarkRule {
        self.rule
    }

    /// Every verified attempt of this seat at this job, the first one first.
    pub fn attempts(&self, seat: u32, job: &str) -> &[GradedAttempt] {
        let jobs = self.attempts.get(&seat);
        jobs.and_then(|jobs| jobs.get(job))
            .map_or(&[], Vec::as_slice)
    }

    /// Every verified attempt of this seat, job by job.
    pub fn attempts_of(&self, seat: u32) -> impl Iterator<Item = &GradedAttempt> {
        let jobs = self.jobs.iter();
        jobs.flat_map(move |job| self.attempts(seat, job))
    }

    /// The attempt of this seat at this job that counts, if there is one. Of several that are worth the same the first
    /// one does.
    pub fn counting(&self, seat: u32, job: &str) -> Option<&GradedAttempt> {
        let attempts = self.attempts(seat, job).iter();
        let mut visits = attempts.filter(|attempt| !attempt.result.is_second_visit);
        match self.rule {
            MarkRule::First => visits.next(),
            MarkRule::Last => visits.next_back(),
            // Of equals `max_by` takes the last, and the first one is to count.
            MarkRule::Best => visits
                .rev()
                .max_by(|a, b| a.result.share().total_cmp(&b.result.share())),
        }
    }

    /// The attempts of this seat that count, in the order of the jobs.
    pub fn all_counting(&self, seat: u32) -> impl Iterator<Item = &GradedAttempt> {
        let jobs = self.jobs.iter();
        jobs.filter_map(move |job| self.counting(seat, job))
    }

    /// Points of 100 of this seat at this job, without what an instructor changed; none where nothing counts.
    pub fn points(&self, seat: u32, job: &str) -> Option<f64> {
        let counting = self.counting(seat, job)?;
        Some(100.0 * counting.result.share())
    }

    /// The seats that have a verified attempt, in their order.
    pub fn seats(&self) -> impl Iterator<Item = u32> {
        self.attempts.keys().copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tests::graded;

    fn points(rule: MarkRule, attempts: Vec<GradedAttempt>) -> Option<f64> {
        Gradebook::new(vec!["one".to_owned()], attempts, rule).points(1, "one")
    }

    #[test]
    fn best_first_and_last_are_told_apart() {
        let attempts = || {
            vec![
                graded(1, "one", 300, 0.75),
                graded(1, "one", 100, 0.5),
                graded(1, "one", 200, 1.0),
                graded(2, "one", 50, 0.25),
                graded(1, "two", 10, 0.0),
            ]
        };
        assert_eq!(points(MarkRule::Best, attempts()), Some(100.0));
        assert_eq!(points(MarkRule::First, attempts()), Some(50.0));
        assert_eq!(points(MarkRule::Last, attempts()), Some(75.0));
        assert_eq!(points(MarkRule::Best, Vec::new()), None, "never a zero");
    }

    #[test]
    fn of_equals_the_first_one_counts_and_a_second_visit_never_does() {
        let mut second_visit = graded(1, "one", 300, 1.0);
        second_visit.result.is_second_visit = true;
        let attempts = vec![
            graded(1, "one", 200, 0.5),
            graded(1, "one", 100, 0.5),
            second_visit,
        ];
        let book = |rule| Gradebook::new(vec!["one".to_owned()], attempts.clone(), rule);
        for (rule, begun_ms) in [
            (MarkRule::Best, 100),
            (MarkRule::First, 100),
            (MarkRule::Last, 200),
        ] {
            let book = book(rule);
            let counting = book.counting(1, "one").expect("one counts");
            assert_eq!(counting.begun_ms, begun_ms, "{rule}");
            assert_eq!(book.attempts(1, "one").len(), 3);
        }
    }
}
