//! What doing an attempt again has shown, in full.

use detent_simulation::units::Time;
use detent_training::bench::{Bench, Verdict};
use detent_training::lesson::{Deduction, Dimension, Loss, Score};
use detent_training::practice::{Detail, Moment, Skill, answers_of_job};
use serde::{Deserialize, Serialize};

/// What doing a finished attempt again has shown. Made on the server, never taken from what a learner's program says.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AttemptResult {
    /// The job: the name of the scenario's file without folder and ending.
    pub job: String,
    /// Whether the customer had called back and this is the visit after that.
    pub is_second_visit: bool,
    /// Whether it is a pass.
    pub passed: bool,
    /// When the learner arrived, by the clock that the lost points have.
    pub arrived: Time,
    /// Points side by side, and each lost point with its moment and reason.
    pub score: Score,
    /// Work, min, without waits for parts.
    pub work_min: f64,
    /// Time waited for parts, h.
    pub waited_h: f64,
    /// Parts and work, whole units of money.
    pub bill: f64,
    /// What the report names; none where nothing was handed in.
    pub named: Option<NamedCause>,
    /// The failure modes that the machine had.
    pub hidden: Vec<String>,
    /// What it says about each skill.
    pub skills: Vec<SkillAnswer>,
}

/// What a report names.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NamedCause {
    /// What it concludes.
    pub verdict: Verdict,
    /// The failure modes.
    pub causes: Vec<String>,
    /// Number of the part that was needed, or none.
    pub part: Option<String>,
}

/// What an attempt says about one skill.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SkillAnswer {
    /// Which.
    pub skill: Skill,
    /// Whether that counts as a right answer.
    pub right: bool,
    /// Share of the points that was kept on the side of the job that speaks for it, 0 to 1.
    pub kept: f64,
}

/// A code that was noted and never shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MisreadCode<'a> {
    /// The code noted.
    pub noted: u8,
    /// Codes shown in the whole job; none where the slip was struck out before it led to a purchase.
    pub shown: &'a [u8],
}

impl AttemptResult {
    /// Of the attempt at `job` that was done again on `bench` and was worth `score`.
    pub fn of(job: &str, is_second_visit: bool, bench: &Bench, score: Score) -> AttemptResult {
        let work_min = bench.minutes();
        // Moments of the learner's own time say nothing here: only what the score says about skills is kept.
        let answers = answers_of_job(job, &score, Moment(0), 60.0 * work_min);
        let skills = answers
            .into_iter()
            .filter_map(|answer| match answer.detail {
                Detail::Job { kept, .. } => Some(SkillAnswer {
                    skill: answer.skill,
                    right: answer.right,
                    kept,
                }),
                Detail::None | Detail::Lamps { .. } | Detail::Rhythm { .. } => None,
            });
        AttemptResult {
            job: job.to_owned(),
            is_second_visit,
            passed: score.passed(),
            arrived: bench.began(),
            work_min,
            waited_h: bench.waited_hours(),
            bill: bench.bill(),
            named: bench.report().map(|report| NamedCause {
                verdict: report.verdict,
                causes: report.causes.clone(),
                part: report.part.clone(),
            }),
            hidden: bench.hidden().iter().map(|mode| mode.id.clone()).collect(),
            skills: skills.collect(),
            score,
        }
    }

    /// Share of the points that was kept, 0 to 1; 0 for a job without points.
    pub fn share(&self) -> f64 {
        let of = self.score.of();
        if of > 0.0 {
            self.score.total() / of
        } else {
            0.0
        }
    }

    /// Minutes from the arrival to this loss; 0 for what was lost before.
    pub fn minutes_to(&self, lost: &Deduction) -> f64 {
        lost.at.since(self.arrived).seconds() / 60.0
    }

    /// Each lost point with the side that it counts on, in the order of the sides.
    pub fn lost(&self) -> impl Iterator<Item = (Dimension, &Deduction)> {
        let sides = self.score.dimensions.iter();
        sides.flat_map(|side| side.lost.iter().map(move |lost| (side.dimension, lost)))
    }

    /// Unsafe acts, in the order in which the judge found them.
    pub fn unsafe_acts(&self) -> impl Iterator<Item = &Deduction> {
        let lost = self.lost();
        lost.filter_map(|(side, lost)| (side == Dimension::Safety).then_some(lost))
    }

    /// Codes that were noted and never shown.
    pub fn misread(&self) -> impl Iterator<Item = MisreadCode<'_>> {
        self.lost().filter_map(|(_, lost)| match &lost.loss {
            Loss::Misread { noted, shown } => Some(MisreadCode {
                noted: *noted,
                shown,
            }),
            Loss::CodeSlip { noted } => Some(MisreadCode {
                noted: *noted,
                shown: &[],
            }),
            _ => None,
        })
    }
}
