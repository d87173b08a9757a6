//! One answer of a learner: all that a profile keeps. Everything else follows from the answers.

use super::Skill;
use crate::lesson::{Dimension, PASS_SHARE, Score};
use serde::{Deserialize, Serialize};

/// A moment of the learner's own time: seconds since 1970 began, UTC. It comes in as an argument.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Moment(pub i64);

/// One answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Answer {
    /// When it was given.
    pub at: Moment,
    /// The skill that it speaks for.
    pub skill: Skill,
    /// It was right.
    pub right: bool,
    /// Time from the question to the answer, s.
    pub took_s: f64,
    /// What else is worth keeping.
    pub detail: Detail,
}

/// An answer that took five seconds.
#[cfg(test)]
pub(crate) fn given(at: i64, skill: Skill, right: bool, detail: Detail) -> Answer {
    Answer {
        at: Moment(at),
        skill,
        right,
        took_s: 5.0,
        detail,
    }
}

/// What else is worth keeping of an answer.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Detail {
    /// Nothing.
    None,
    /// A number that was read off lamps.
    Lamps {
        /// The number that was shown.
        shown: u8,
        /// The number that was read.
        read: u8,
    },
    /// The hand's rhythm in a try at an entry gesture.
    Rhythm {
        /// Mean time from one step of the gesture to the next, ms.
        mean_ms: f64,
        /// Its standard deviation, ms.
        spread_ms: f64,
        /// Chance of entry at this rhythm on this dial, 0 to 1.
        odds: f64,
    },
    /// A whole job.
    Job {
        /// The scenario's file name without folder and ending.
        file: String,
        /// Share of this side's points that was kept, 0 to 1.
        kept: f64,
    },
}

/// What a job that was handed in at `at`, after `took_s` of its own time, says about skills: each side that
/// it scores speaks for one or two, right where a pass of its points was kept. `file` is the scenario's file
/// name without folder and ending.
pub fn answers_of_job(file: &str, score: &Score, at: Moment, took_s: f64) -> Vec<Answer> {
    let mut answers = Vec::new();
    for side in score.dimensions.iter().filter(|side| side.of > 0.0) {
        let kept = side.kept / side.of;
        answers.extend(skills_of(side.dimension).iter().map(|skill| Answer {
            at,
            skill: *skill,
            right: kept >= PASS_SHARE,
            took_s,
            detail: Detail::Job {
                file: file.to_owned(),
                kept,
            },
        }));
    }
    answers
}

/// The skills that a side of a job speaks for. Time and money speak for none by themselves: they follow from
/// the others.
pub const fn skills_of(side: Dimension) -> &'static [Skill] {
    match side {
        Dimension::Entry => &[Skill::EntryTiming],
        Dimension::Reading => &[Skill::LampReading],
        Dimension::Reasoning => &[Skill::NextTest, Skill::PartChoice],
        Dimension::Safety => &[Skill::SafeWork],
        Dimension::Cost => &[],
        Dimension::Proof => &[Skill::Proof],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lesson::DimensionScore;

    #[test]
    fn a_job_speaks_for_the_skills_of_the_sides_that_it_scores() {
        let side = |dimension, of, kept| DimensionScore {
            dimension,
            of,
            kept,
            lost: Vec::new(),
        };
        let score = Score {
            dimensions: vec![
                side(Dimension::Entry, 0.0, 0.0),
                side(Dimension::Reading, 20.0, 14.0),
                side(Dimension::Reasoning, 40.0, 20.0),
                side(Dimension::Cost, 20.0, 20.0),
                side(Dimension::Proof, 20.0, 20.0),
            ],
        };
        let answers = answers_of_job("drain-code", &score, Moment(7), 1800.0);
        let told: Vec<(Skill, bool)> = answers.iter().map(|a| (a.skill, a.right)).collect();
        let expected = [
            (Skill::LampReading, true),
            (Skill::NextTest, false),
            (Skill::PartChoice, false),
            (Skill::Proof, true),
        ];
        assert_eq!(told, expected);
        let detail = Detail::Job {
            file: "drain-code".to_owned(),
            kept: 0.5,
        };
        assert_eq!(answers[1].detail, detail);
    }
}
