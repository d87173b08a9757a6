//! When a skill is due again: FSRS, from its own crate, one card for each skill.
//!
//! FSRS is made for one look at a card now and then, a drill asks a dozen questions in a row. So the answers
//! of one sitting count as one review: those within [`SITTING_S`] of its first. FSRS counts in whole days,
//! and so the time from one sitting to the next is rounded to whole days; as a sitting is half a day long,
//! that is never less than one. No calendar and no time zone is needed.

use super::{Answer, Detail, Moment, Skill};
use chrono::{DateTime, Duration, Utc};
use rs_fsrs::{Card, FSRS, Parameters, Rating};

/// Answers within this time of the first belong to one sitting, s.
pub const SITTING_S: i64 = 12 * 3600;
/// Retention at which a review is due: FSRS's own default.
pub const DUE_RETENTION: f64 = 0.9;
/// Seconds in a day.
pub const DAY_S: i64 = 86_400;

/// Below this share right a sitting counts as forgotten (our own choice, as the next three).
const HARD_SHARE: f64 = 0.6;
/// From this share right a sitting went well.
const GOOD_SHARE: f64 = 0.8;
/// Fewest answers of a sitting that can count as easy.
const EASY_ANSWERS: usize = 3;
/// Share of a skill's usual time within which the mean answer of an easy sitting comes.
const EASY_PACE: f64 = 0.5;

/// Time that an answer usually takes, s (our own choice).
pub const fn usual_s(skill: Skill) -> f64 {
    match skill {
        Skill::EntryTiming => 10.0,
        Skill::LampReading => 8.0,
        Skill::Metering | Skill::NextTest | Skill::PartChoice | Skill::Proof => 30.0,
        Skill::CodeLookUp => 15.0,
        Skill::SafeWork => 40.0,
    }
}

/// The scheduler: the crate's parameters, no short steps within a day, no fuzz.
pub fn scheduler() -> FSRS {
    FSRS::new(Parameters {
        request_retention: DUE_RETENTION,
        enable_short_term: false,
        enable_fuzz: false,
        ..Parameters::default()
    })
}

/// Moments beyond what a calendar holds stand at its start; a profile's reader lets none through.
fn date(at: Moment) -> DateTime<Utc> {
    DateTime::from_timestamp(at.0, 0).unwrap_or_default()
}

/// The answers of one sitting to one skill.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Sitting {
    began: Moment,
    answers: usize,
    right: usize,
    took_s: f64,
    /// A whole job was among them: its time says nothing about the skill.
    job: bool,
}

impl Sitting {
    fn rating(&self, skill: Skill) -> Rating {
        let (answers, right) = (self.answers as f64, self.right as f64);
        let share = right / answers;
        let fast = self.took_s <= EASY_PACE * usual_s(skill) * answers;
        if share < HARD_SHARE {
            Rating::Again
        } else if share < GOOD_SHARE {
            Rating::Hard
        } else if self.right == self.answers && self.answers >= EASY_ANSWERS && fast && !self.job {
            Rating::Easy
        } else {
            Rating::Good
        }
    }
}

/// How well one skill is remembered.
#[derive(Clone, Debug, PartialEq)]
pub struct Memory {
    skill: Skill,
    /// Before the last sitting; none when that was the first.
    before: Option<Card>,
    sitting: Option<Sitting>,
    /// After the last sitting.
    after: Option<Card>,
}

impl Memory {
    /// Before the first answer.
    pub fn new(skill: Skill) -> Memory {
        Memory {
            skill,
            before: None,
            sitting: None,
            after: None,
        }
    }

    /// Whether an answer at `at` would begin a new sitting.
    pub fn begins_sitting(&self, at: Moment) -> bool {
        self.sitting
            .is_none_or(|sitting| at.0 - sitting.began.0 >= SITTING_S)
    }

    /// Takes in an answer to this skill. Answers come in the order of their moments; one that seems to come
    /// from before, because a clock was set back, belongs to the sitting at hand.
    pub fn note(&mut self, answer: &Answer) {
        if self.begins_sitting(answer.at) {
            self.before = self.after.take();
            self.sitting = Some(Sitting {
                began: answer.at,
                answers: 0,
                right: 0,
                took_s: 0.0,
                job: false,
            });
        }
        let Some(sitting) = &mut self.sitting else {
            return;
        };
        sitting.answers += 1;
        sitting.right += usize::from(answer.right);
        sitting.took_s += answer.took_s;
        sitting.job |= matches!(answer.detail, Detail::Job { .. });
        // The sitting is one review, judged again with each of its answers.
        let at = date(sitting.began);
        let mut card = self.before.clone().unwrap_or(Card {
            due: at,
            last_review: at,
            ..Card::default()
        });
        let days = at.signed_duration_since(card.last_review).num_seconds() as f64 / DAY_S as f64;
        card.last_review = at - Duration::days(days.round() as i64);
        let next = scheduler().next(card, at, sitting.rating(self.skill));
        self.after = Some(next.card);
    }

    /// Share of what was known that is still there at `at`, 0 to 1; none before the first answer. Between
    /// whole days FSRS's curve is followed too.
    pub fn retention(&self, at: Moment) -> Option<f64> {
        let card = self.after.as_ref()?;
        let rested_s = (at.0 - card.last_review.timestamp()).max(0);
        let days = rested_s as f64 / DAY_S as f64;
        Some(Parameters::forgetting_curve(days, card.stability))
    }

    /// When the next review is due; none before the first answer.
    pub fn due(&self) -> Option<Moment> {
        Some(Moment(self.after.as_ref()?.due.timestamp()))
    }

    /// Days after which nine tenths are still there; none before the first answer.
    pub fn stability_days(&self) -> Option<f64> {
        Some(self.after.as_ref()?.stability)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn answer(at: i64, right: bool, took_s: f64) -> Answer {
        Answer {
            at: Moment(at),
            skill: Skill::LampReading,
            right,
            took_s,
            detail: Detail::None,
        }
    }

    fn memory(answers: &[(i64, bool, f64)]) -> Memory {
        let mut memory = Memory::new(Skill::LampReading);
        for (at, right, took_s) in answers {
            memory.note(&answer(*at, *right, *took_s));
        }
        memory
    }

    /// First stabilities of FSRS-5 for again, hard, good and easy: the first four of its parameters.
    #[test]
    fn a_sitting_is_one_review_rated_by_share_and_speed() {
        for (right, wrong, took_s, stability) in [
            (1, 1, 8.0, 0.4072),
            (3, 1, 8.0, 1.1829),
            (4, 1, 8.0, 3.1262),
            (4, 0, 8.0, 3.1262),
            (2, 0, 2.0, 3.1262),
            (4, 0, 2.0, 15.4722),
        ] {
            let mut answers = vec![(1000, true, took_s); right];
            answers.extend(vec![(1000, false, took_s); wrong]);
            let days = memory(&answers).stability_days();
            assert_eq!(days, Some(stability), "{right} right, {wrong} wrong");
        }
    }

    #[test]
    fn a_new_sitting_begins_half_a_day_after_the_last_one_began() {
        let one = memory(&[(0, true, 8.0), (SITTING_S - 1, true, 8.0)]);
        assert_eq!(one, {
            let mut same = memory(&[(0, true, 8.0), (60, true, 8.0)]);
            same.sitting = one.sitting;
            same
        });
        let two = memory(&[(0, true, 8.0), (SITTING_S, true, 8.0)]);
        // Half a day counts as one.
        let (one, two) = (one.stability_days(), two.stability_days());
        assert!(two > one, "{two:?} {one:?}");
    }

    #[test]
    fn nine_tenths_are_left_when_it_is_due() {
        let memory = memory(&[(0, true, 8.0)]);
        let due = memory.due().expect("it was answered");
        // 3.1262 days of stability make three whole days.
        assert_eq!(due, Moment(3 * DAY_S));
        let retention = memory.retention(due).expect("it was answered");
        assert!((retention - DUE_RETENTION).abs() < 0.005, "{retention}");
        assert_eq!(memory.retention(Moment(0)), Some(1.0));
    }

    #[test]
    fn a_clock_that_was_set_back_does_no_harm() {
        let memory = memory(&[(10 * DAY_S, true, 8.0), (0, true, 8.0)]);
        assert_eq!(memory.retention(Moment(-5)), Some(1.0));
        assert_eq!(memory.due(), Some(Moment(13 * DAY_S)));
    }
}
