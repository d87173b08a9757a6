//! How a learner stands, in the few figures that a teacher compares.

use super::{Answer, Detail, ExaminationSitting, Learner, Moment, SittingResult, Skill};

/// A learner in short.
#[derive(Clone, Debug, PartialEq)]
pub struct LearnerSummary {
    /// Jobs handed in, each attempt counted.
    pub jobs_done: usize,
    /// Those of them that were passed.
    pub jobs_passed: usize,
    /// When the last answer was given.
    pub last: Option<Moment>,
    /// Skills that were mastered when they were last practised.
    pub mastered: Vec<Skill>,
    /// When each of these is due for review.
    reviews: Vec<(Skill, Moment)>,
    /// Skills that were practised and are not mastered.
    pub worked_on: Vec<Skill>,
    /// The skill that jobs lost their points for most often; none where no job lost any side.
    pub most_lost: Option<MostLost>,
    /// What the closed sittings of examinations came to.
    pub sittings: Vec<SittingResult>,
    /// Sittings that are still open.
    pub open_sittings: usize,
}

/// The skill whose side of a job was most often lost. A profile keeps each side's share of points, not the reasons.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MostLost {
    /// The skill.
    pub skill: Skill,
    /// Jobs in which its side was no pass.
    pub lost: usize,
    /// Jobs that scored its side.
    pub of: usize,
}

impl LearnerSummary {
    /// What a profile's answers and sittings come to.
    pub fn of(answers: &[Answer], sittings: &[ExaminationSitting]) -> LearnerSummary {
        let learner = Learner::of(answers);
        let skills = |mastered: bool| -> Vec<Skill> {
            let standings = learner.standings().iter();
            standings
                .filter(|standing| standing.answers > 0 && standing.mastered() == mastered)
                .map(|standing| standing.skill())
                .collect()
        };
        LearnerSummary {
            jobs_done: learner.jobs_done(),
            jobs_passed: learner.jobs_passed(),
            last: answers.iter().map(|answer| answer.at).max(),
            mastered: skills(true),
            reviews: (learner.standings().iter())
                .filter_map(|standing| Some((standing.skill(), standing.due_at()?)))
                .collect(),
            worked_on: skills(false),
            most_lost: most_lost(answers),
            sittings: sittings.iter().filter_map(|s| s.result()).collect(),
            open_sittings: sittings.iter().filter(|s| s.is_open()).count(),
        }
    }

    /// Mastered skills whose review is due at `now`.
    pub fn due(&self, now: Moment) -> Vec<Skill> {
        let due = self.reviews.iter().filter(|(_, at)| *at <= now);
        due.map(|(skill, _)| *skill).collect()
    }
}

fn most_lost(answers: &[Answer]) -> Option<MostLost> {
    let of_jobs = |skill: Skill| {
        let of_jobs = answers.iter().filter(move |answer| answer.skill == skill);
        of_jobs.filter(|answer| matches!(answer.detail, Detail::Job { .. }))
    };
    let each = Skill::ALL.iter().map(|skill| MostLost {
        skill: *skill,
        lost: of_jobs(*skill).filter(|answer| !answer.right).count(),
        of: of_jobs(*skill).count(),
    });
    each.filter(|one| one.lost > 0)
        .reduce(|most, one| if one.lost > most.lost { one } else { most })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::answer::given as answer;
    use crate::practice::review::DAY_S;

    fn job(at: i64, skill: Skill, kept: f64) -> Answer {
        let file = "drain-code".to_owned();
        answer(at, skill, kept >= 0.7, Detail::Job { file, kept })
    }

    #[test]
    fn what_jobs_lost_and_what_was_mastered_is_counted() {
        let mut answers: Vec<Answer> = (0..8)
            .map(|n| answer(n / 4 * DAY_S + n, Skill::Metering, true, Detail::None))
            .collect();
        answers.extend([
            job(3 * DAY_S, Skill::Proof, 0.1),
            job(3 * DAY_S, Skill::NextTest, 0.2),
            job(4 * DAY_S, Skill::Proof, 0.3),
            job(4 * DAY_S, Skill::NextTest, 1.0),
            job(5 * DAY_S, Skill::Proof, 0.9),
        ]);
        let summary = LearnerSummary::of(&answers, &[]);
        assert_eq!((summary.jobs_done, summary.jobs_passed), (3, 1));
        assert_eq!(summary.last, Some(Moment(5 * DAY_S)));
        assert_eq!(summary.mastered, [Skill::Metering]);
        assert!(summary.worked_on.contains(&Skill::Proof));
        let most = MostLost {
            skill: Skill::Proof,
            lost: 2,
            of: 3,
        };
        assert_eq!(summary.most_lost, Some(most));
    }

    #[test]
    fn a_learner_who_did_nothing_has_nothing() {
        let summary = LearnerSummary::of(&[], &[]);
        assert_eq!((summary.jobs_done, summary.last), (0, None));
        assert!(summary.mastered.is_empty() && summary.worked_on.is_empty());
        assert_eq!(summary.most_lost, None);
    }
}
