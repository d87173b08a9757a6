//! What a learner's attempts say about each skill.

use super::Gradebook;
use detent_training::practice::Skill;
use std::collections::BTreeMap;

/// What the attempts that count say about one skill.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct SkillSummary {
    /// Jobs that speak for it.
    pub jobs: u32,
    /// Those in which that came to a right answer.
    pub right: u32,
    /// Mean share of the points that was kept on the side that speaks for it, 0 to 1.
    pub kept: f64,
}

/// What the attempts of this seat that count say about each skill that a job speaks for.
pub fn skills_of_learner(book: &Gradebook, seat: u32) -> BTreeMap<Skill, SkillSummary> {
    let mut skills: BTreeMap<Skill, SkillSummary> = BTreeMap::new();
    for answer in book
        .all_counting(seat)
        .flat_map(|attempt| &attempt.result.skills)
    {
        let summary = skills.entry(answer.skill).or_default();
        summary.jobs += 1;
        summary.right += u32::from(answer.right);
        summary.kept += (answer.kept - summary.kept) / f64::from(summary.jobs);
    }
    skills
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tests::graded;
    use crate::{MarkRule, SkillAnswer};

    #[test]
    fn each_job_speaks_once_and_only_through_the_attempt_that_counts() {
        let with = |job: &str, begun_ms, share, kept| {
            let mut attempt = graded(1, job, begun_ms, share);
            attempt.result.skills = vec![SkillAnswer {
                skill: Skill::SafeWork,
                right: kept >= 0.7,
                kept,
            }];
            attempt
        };
        let attempts = vec![
            with("one", 1, 0.9, 0.9),
            with("one", 2, 0.1, 0.1),
            with("two", 3, 0.5, 0.4),
        ];
        let jobs = vec!["one".to_owned(), "two".to_owned(), "three".to_owned()];
        let book = Gradebook::new(jobs, attempts, MarkRule::Best);
        let skills = skills_of_learner(&book, 1);
        assert_eq!(skills.len(), 1);
        let summary = skills[&Skill::SafeWork];
        assert_eq!((summary.jobs, summary.right), (2, 1));
        assert!((summary.kept - 0.65).abs() < 1e-12);
        assert!(skills_of_learner(&book, 2).is_empty());
    }
}
