//! What to practise next: the exercise whose expected success lies nearest the target.

use super::{Learner, Moment, Skill, Standing, skills_of};
use crate::lesson::{Dimension, Points};

/// The share of right answers to aim at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Target(f64);

/// A target that cannot be aimed at.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
#[error("the target {0} is out of range; write a share from 0.5 to 0.95")]
pub struct TargetError(pub f64);

impl Target {
    /// Lowest: half the answers wrong is enough discouragement.
    pub const LOWEST: f64 = 0.5;
    /// Highest: a skill that is known comes no nearer to 1.
    pub const HIGHEST: f64 = 0.95;

    /// A share from [`Self::LOWEST`] to [`Self::HIGHEST`].
    ///
    /// # Errors
    /// Another share.
    pub fn new(share: f64) -> Result<Target, TargetError> {
        if (Self::LOWEST..=Self::HIGHEST).contains(&share) {
            Ok(Target(share))
        } else {
            Err(TargetError(share))
        }
    }

    /// The share.
    pub const fn share(self) -> f64 {
        self.0
    }
}

impl Default for Target {
    /// Three in four right (our own choice).
    fn default() -> Target {
        Target(0.75)
    }
}

/// A job that the course offers.
#[derive(Clone, Debug, PartialEq)]
pub struct CourseJob {
    /// The scenario's file name without folder and ending.
    pub file: String,
    /// Jobs to pass before, by the same names.
    pub after: Vec<String>,
    /// Highest points for each side.
    pub points: Points,
}

impl CourseJob {
    /// Share of the points that is to be expected: the mean over its skills' chances of success, weighted by
    /// the points of the sides that speak for them (our own rule). None for a job that speaks for no skill.
    pub fn expected(&self, learner: &Learner, now: Moment) -> Option<f64> {
        let p = &self.points;
        let sides = [
            (Dimension::Entry, p.entry),
            (Dimension::Reading, p.reading),
            (Dimension::Reasoning, p.reasoning),
            (Dimension::Safety, p.safety),
            (Dimension::Proof, p.proof),
        ];
        let (mut all, mut kept) = (0.0, 0.0);
        for (side, points) in sides {
            let skills = skills_of(side);
            for skill in skills {
                let weight = points / skills.len() as f64;
                all += weight;
                kept += weight * learner.standing(*skill).success(now);
            }
        }
        (all > 0.0).then(|| kept / all)
    }

    /// Not passed yet, and all that comes before it is.
    pub(super) fn open(&self, learner: &Learner) -> bool {
        !learner.passed(&self.file) && self.after.iter().all(|file| learner.passed(file))
    }
}

/// Something to practise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Exercise {
    /// The drill of a skill.
    Drill(Skill),
    /// A whole job, by the scenario's file name without folder and ending.
    Job(String),
}

/// Why an exercise was chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// The skill was mastered, and a review is due.
    Review,
    /// Nothing was answered yet: whoever cannot enter service mode reads no codes.
    First,
    /// Nothing was answered to it yet, and it lies nearest the target.
    New,
    /// Of what is not mastered it lies nearest the target.
    Nearest,
    /// All is mastered and nothing due: what fades first.
    FadesFirst,
}

impl Why {
    /// Every reason.
    pub const ALL: [Why; 5] = [
        Why::First,
        Why::Review,
        Why::New,
        Why::Nearest,
        Why::FadesFirst,
    ];

    /// Text key of the sentence. It takes `exercise`, `expected` and `target` (the shares in per cent).
    pub const fn key(self) -> &'static str {
        match self {
            Why::First => "practice-why-first",
            Why::Review => "practice-why-review",
            Why::New => "practice-why-new",
            Why::Nearest => "practice-why-nearest",
            Why::FadesFirst => "practice-why-fades-first",
        }
    }
}

/// The next exercise.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// What to do.
    pub exercise: Exercise,
    /// Chance of a right answer, or share of a job's points that is to be expected, 0 to 1.
    pub expected: f64,
    /// Why this one.
    pub why: Why,
}

/// What to practise at `now`. A new learner begins with the entry gesture, as every job does, and not with what is
/// easiest to guess. Reviews that are due come first; then drills of what is not mastered, but for what only another
/// day can show to be, and jobs that are open and not passed; then, when all is done, the drill of what fades first. Within each the one
/// nearest the target is taken, of equals the first.
pub fn choose(learner: &Learner, jobs: &[CourseJob], target: Target, now: Moment) -> Choice {
    let drills = learner.standings();
    let choice = |standing: &Standing, why| Choice {
        exercise: Exercise::Drill(standing.skill()),
        expected: standing.success(now),
        why,
    };
    if drills.iter().all(|standing| standing.answers == 0) {
        return choice(learner.standing(Skill::EntryTiming), Why::First);
    }
    let due = drills.iter().filter(|standing| standing.due(now));
    let due = due.map(|standing| choice(standing, Why::Review));
    if let Some(nearest) = nearest(due, target) {
        return nearest;
    }
    let unknown = drills.iter();
    let unknown = unknown.filter(|s| !s.mastered() && !s.waits_for_another_day(now));
    let unknown = unknown.map(|standing| {
        let new = standing.answers == 0;
        choice(standing, if new { Why::New } else { Why::Nearest })
    });
    let open = jobs.iter().filter(|job| job.open(learner));
    let open = open.filter_map(|job| {
        Some(Choice {
            exercise: Exercise::Job(job.file.clone()),
            expected: job.expected(learner, now)?,
            why: Why::Nearest,
        })
    });
    if let Some(nearest) = nearest(unknown.chain(open), target) {
        return nearest;
    }
    let left = |standing: &&Standing| standing.memory.retention(now).unwrap_or(1.0);
    let fades = drills.iter().min_by(|a, b| left(a).total_cmp(&left(b)));
    match fades {
        Some(standing) => choice(standing, Why::FadesFirst),
        // There are always drills; were there none, a look at the first skill does no harm.
        None => choice(learner.standing(Skill::EntryTiming), Why::FadesFirst),
    }
}

fn nearest(choices: impl Iterator<Item = Choice>, target: Target) -> Option<Choice> {
    let distance = |choice: &Choice| (choice.expected - target.share()).abs();
    choices.min_by(|a, b| distance(a).total_cmp(&distance(b)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::review::DAY_S;
    use crate::practice::{Answer, Detail};

    /// Right answers to these skills, so many each, one a second.
    fn practised(skills: &[(Skill, usize)]) -> Vec<Answer> {
        let each = skills.iter();
        let each = each.flat_map(|(skill, count)| std::iter::repeat_n(*skill, *count));
        (0..)
            .zip(each)
            .map(|(n, skill)| Answer {
                at: Moment(n),
                skill,
                right: true,
                took_s: 10.0,
                detail: Detail::None,
            })
            .collect()
    }

    fn all_mastered() -> Vec<Answer> {
        let each: Vec<_> = Skill::ALL.iter().map(|skill| (*skill, 12)).collect();
        on_two_days(practised(&each))
    }

    /// The same answers once more the day after.
    fn on_two_days(mut answers: Vec<Answer>) -> Vec<Answer> {
        let again = answers.clone();
        answers.extend(again.into_iter().map(|answer| Answer {
            at: Moment(answer.at.0 + DAY_S),
            ..answer
        }));
        answers
    }

    fn job(file: &str, after: &[&str]) -> CourseJob {
        CourseJob {
            file: file.to_owned(),
            after: after.iter().map(|file| (*file).to_owned()).collect(),
            points: Points {
                reading: 60.0,
                safety: 20.0,
                cost: 20.0,
                ..Points::default()
            },
        }
    }

    #[test]
    fn a_target_outside_its_range_is_refused() {
        assert_eq!(Target::new(0.75), Ok(Target::default()));
        for share in [0.49, 0.96, f64::NAN] {
            assert!(Target::new(share).is_err(), "{share}");
        }
    }

    #[test]
    fn the_exercise_nearest_the_target_is_chosen() {
        let now = Moment(100);
        for share in [0.5, 0.65, 0.8, 0.95] {
            let target = Target::new(share).expect("in range");
            let learner = Learner::of(&practised(&[(Skill::Metering, 1), (Skill::CodeLookUp, 2)]));
            let chosen = choose(&learner, &[], target, now);
            let open = learner.standings().iter();
            let open = open.filter(|s| !s.mastered() && !s.waits_for_another_day(now));
            let least = open
                .map(|s| (s.success(now) - share).abs())
                .fold(f64::INFINITY, f64::min);
            assert_eq!((chosen.expected - share).abs(), least, "{share}");
        }
    }

    #[test]
    fn a_new_learner_begins_with_the_gesture_whatever_the_target() {
        let now = Moment(100);
        for share in [0.5, 0.75, 0.95] {
            let target = Target::new(share).expect("in range");
            let fresh = choose(&Learner::default(), &[job("first", &[])], target, now);
            assert_eq!(fresh.exercise, Exercise::Drill(Skill::EntryTiming));
            assert_eq!(fresh.why, Why::First);
        }
        let once = Learner::of(&practised(&[(Skill::EntryTiming, 1)]));
        assert_ne!(choose(&once, &[], Target::default(), now).why, Why::First);
    }

    #[test]
    fn what_only_another_day_can_show_is_left_for_that_day() {
        let evening = Learner::of(&practised(&[(Skill::LampReading, 12)]));
        let easy = Target::new(Target::HIGHEST).expect("in range");
        let reading = Exercise::Drill(Skill::LampReading);
        assert_ne!(choose(&evening, &[], easy, Moment(60)).exercise, reading);
        let next_day = choose(&evening, &[], easy, Moment(DAY_S));
        assert_eq!((next_day.exercise, next_day.why), (reading, Why::Nearest));
    }

    #[test]
    fn a_review_that_is_due_comes_first() {
        let learner = Learner::of(&on_two_days(practised(&[(Skill::LampReading, 12)])));
        let soon = choose(&learner, &[], Target::default(), Moment(DAY_S + 60));
        assert_ne!(soon.exercise, Exercise::Drill(Skill::LampReading));
        let late = Moment(300 * DAY_S);
        let late = choose(&learner, &[], Target::default(), late);
        assert_eq!(late.exercise, Exercise::Drill(Skill::LampReading));
        assert_eq!(late.why, Why::Review);
    }

    #[test]
    fn jobs_open_in_the_course_s_order_once_their_drills_are_mastered() {
        let jobs = [job("first", &[]), job("second", &["first"])];
        let now = Moment(DAY_S + 200);
        let mut answers = all_mastered();
        let learner = Learner::of(&answers);
        let chosen = choose(&learner, &jobs, Target::default(), now);
        assert_eq!(chosen.exercise, Exercise::Job("first".to_owned()));
        let (reading, safe) = (Skill::LampReading, Skill::SafeWork);
        let success = |skill| learner.standing(skill).success(now);
        let mean = (60.0 * success(reading) + 20.0 * success(safe)) / 80.0;
        assert!((chosen.expected - mean).abs() < 1e-12);
        for (file, next) in [("first", Some("second")), ("second", None)] {
            answers.push(Answer {
                at: now,
                skill: safe,
                right: true,
                took_s: 1800.0,
                detail: Detail::Job {
                    file: file.to_owned(),
                    kept: 0.9,
                },
            });
            let chosen = choose(&Learner::of(&answers), &jobs, Target::default(), now);
            match next {
                Some(next) => assert_eq!(chosen.exercise, Exercise::Job(next.to_owned())),
                None => assert_eq!(chosen.why, Why::FadesFirst),
            }
        }
    }
}
