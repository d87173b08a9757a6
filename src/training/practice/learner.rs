//! What is known of a learner. Everything follows from the answers, in their order.

use super::review::DAY_S;
use super::{Answer, Confusion, Detail, Memory, Moment, Rates, Skill, Tracing};
use crate::lesson::{PASS_SAFETY_SHARE, PASS_SHARE};
use crate::reason::HandRecord;
use std::collections::BTreeMap;

/// Days on which an answer must have been right before a skill counts as mastered (our own choice). A day is a
/// sitting, as for the reviews: no calendar and no time zone is needed.
pub const MASTERY_DAYS: usize = 2;

/// One skill of one learner.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    skill: Skill,
    /// Belief after the last answer.
    pub tracing: Tracing,
    /// How well it is remembered.
    pub memory: Memory,
    /// Answers so far.
    pub answers: usize,
    /// Those of them that were right.
    pub right: usize,
    /// Sittings in which an answer was right: see [`Memory`] for what a sitting is.
    days_right: usize,
    /// An answer of this sitting was right.
    right_today: bool,
}

impl Standing {
    fn new(skill: Skill) -> Standing {
        Standing {
            skill,
            tracing: Tracing::new(Rates::of(skill)),
            memory: Memory::new(skill),
            answers: 0,
            right: 0,
            days_right: 0,
            right_today: false,
        }
    }

    /// A rest may lose what was known: FSRS says with which chance, and the belief begins a sitting with
    /// what is left. That is our own addition to knowledge tracing, which forgets nothing.
    fn note(&mut self, answer: &Answer) {
        if self.memory.begins_sitting(answer.at) {
            self.tracing
                .fade(self.memory.retention(answer.at).unwrap_or(1.0));
            self.right_today = false;
        }
        self.tracing.update(answer.right);
        self.memory.note(answer);
        self.answers += 1;
        self.right += usize::from(answer.right);
        self.days_right += usize::from(answer.right && !self.right_today);
        self.right_today |= answer.right;
    }

    /// How likely it is that the skill is known at `now`, 0 to 1.
    pub fn known(&self, now: Moment) -> f64 {
        self.tracing.known() * self.memory.retention(now).unwrap_or(1.0)
    }

    /// Chance that the next answer, given at `now`, is right.
    pub fn success(&self, now: Moment) -> f64 {
        self.tracing.rates().success(self.known(now))
    }

    /// Whether it was mastered when it was last practised: believed known, and answered rightly on
    /// [`MASTERY_DAYS`] days. What was right ten times in an evening may be gone in the morning.
    pub fn mastered(&self) -> bool {
        self.tracing.mastered() && self.days_right >= MASTERY_DAYS
    }

    /// Whether it is believed known, and only another day can show that it is mastered.
    pub fn waits_for_another_day(&self, now: Moment) -> bool {
        let today = self.right_today && !self.memory.begins_sitting(now);
        self.tracing.mastered() && !self.mastered() && today
    }

    /// How what is known at `now` will fade without practice: points of days from `now`, half a day apart, and
    /// chance that the skill is known then. None where nothing was ever answered: nothing is known of it.
    pub fn forgetting_curve(&self, now: Moment, days: u32) -> Option<Vec<(f64, f64)>> {
        let point = |half: u32| {
            let days = f64::from(half) / 2.0;
            let at = Moment(now.0 + (days * DAY_S as f64) as i64);
            (days, self.known(at))
        };
        (self.answers > 0).then(|| (0..=2 * days).map(point).collect())
    }

    /// When a review is due, if it was mastered once.
    pub fn due_at(&self) -> Option<Moment> {
        self.memory.due().filter(|_| self.mastered())
    }

    /// Whether it was mastered once and a review is due.
    pub fn due(&self, now: Moment) -> bool {
        self.due_at().is_some_and(|due| due <= now)
    }

    /// Which skill this is.
    pub fn skill(&self) -> Skill {
        self.skill
    }
}

/// One attempt at a job.
#[derive(Clone, Copy, Debug, PartialEq)]
struct HandedIn {
    at: Moment,
    /// Sum over its sides of the share of points kept.
    kept: f64,
    sides: usize,
    /// Enough of the points for safety was kept. What hurts or floods takes more than that.
    safe: bool,
}

impl HandedIn {
    fn passed(&self) -> bool {
        self.safe && self.kept >= PASS_SHARE * self.sides as f64
    }

    /// Mean share of its sides, 0 to 1.
    fn share(&self) -> f64 {
        self.kept / self.sides as f64
    }
}

/// All that is known of a learner.
#[derive(Clone, Debug, PartialEq)]
pub struct Learner {
    standings: Vec<Standing>,
    confusion: Confusion,
    /// Jobs handed in, by file.
    jobs: BTreeMap<String, Vec<HandedIn>>,
}

impl Default for Learner {
    fn default() -> Learner {
        Learner {
            standings: Skill::ALL.iter().map(|s| Standing::new(*s)).collect(),
            confusion: Confusion::default(),
            jobs: BTreeMap::new(),
        }
    }
}

impl Learner {
    /// What these answers say.
    pub fn of(answers: &[Answer]) -> Learner {
        let mut learner = Learner::default();
        for answer in answers {
            learner.note(answer);
        }
        learner
    }

    /// Takes in one more answer.
    pub fn note(&mut self, answer: &Answer) {
        self.standings[answer.skill.index()].note(answer);
        match &answer.detail {
            Detail::Lamps { shown, read } => self.confusion.note(*shown, *read),
            Detail::Job { file, kept } => {
                let safe = answer.skill != Skill::SafeWork || *kept >= PASS_SAFETY_SHARE;
                self.note_job(answer.at, file, *kept, safe);
            }
            Detail::Rhythm { .. } | Detail::None => {}
        }
    }

    fn note_job(&mut self, at: Moment, file: &str, kept: f64, safe: bool) {
        let attempts = self.jobs.entry(file.to_owned()).or_default();
        match attempts.last_mut().filter(|attempt| attempt.at == at) {
            Some(attempt) => {
                attempt.kept += kept;
                attempt.sides += 1;
                attempt.safe &= safe;
            }
            None => attempts.push(HandedIn {
                at,
                kept,
                sides: 1,
                safe,
            }),
        }
    }

    /// How one skill stands.
    pub fn standing(&self, skill: Skill) -> &Standing {
        &self.standings[skill.index()]
    }

    /// How every skill stands, in order.
    pub fn standings(&self) -> &[Standing] {
        &self.standings
    }

    /// Which digits were read as which.
    pub fn confusion(&self) -> &Confusion {
        &self.confusion
    }

    /// Whether the job of this file name was handed in.
    pub fn tried(&self, file: &str) -> bool {
        self.jobs.contains_key(file)
    }

    /// Whether the job of this file name was passed: in one attempt the mean share kept of its sides was
    /// a pass, and that of its safety not too little for one.
    pub fn passed(&self, file: &str) -> bool {
        let mut attempts = self.jobs.get(file).into_iter().flatten();
        attempts.any(HandedIn::passed)
    }

    /// The best attempt at the job of this file name, by the mean share kept of its sides, 0 to 1: from
    /// [`PASS_SHARE`] on it is passed. None where it was never handed in.
    pub fn best_share(&self, file: &str) -> Option<f64> {
        let attempts = self.jobs.get(file).into_iter().flatten();
        attempts.map(HandedIn::share).reduce(f64::max)
    }

    /// Jobs handed in, each attempt counted.
    pub fn jobs_done(&self) -> usize {
        self.jobs.values().flatten().count()
    }

    /// Those of them that were passed, as [`Self::passed`] says.
    pub fn jobs_passed(&self) -> usize {
        let attempts = self.jobs.values().flatten();
        attempts.filter(|attempt| attempt.passed()).count()
    }
}

/// The hand's rhythm at the entry gesture on one day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DayRhythm {
    /// Days since 1970 began, on the learner's own calendar.
    pub day: i64,
    /// Tries.
    pub tries: usize,
    /// Mean over the tries of the time from one step to the next, ms.
    pub mean_ms: f64,
    /// Mean over the tries of its standard deviation, ms.
    pub spread_ms: f64,
}

/// The rhythm day by day. `ahead_s` is how far the learner's clocks are ahead of UTC, s.
pub fn rhythm_by_day(answers: &[Answer], ahead_s: i64) -> Vec<DayRhythm> {
    let mut days: BTreeMap<i64, Vec<(f64, f64)>> = BTreeMap::new();
    for answer in answers {
        if let Detail::Rhythm {
            mean_ms, spread_ms, ..
        } = answer.detail
        {
            let day = (answer.at.0 + ahead_s).div_euclid(DAY_S);
            days.entry(day).or_default().push((mean_ms, spread_ms));
        }
    }
    let mean = |all: &[(f64, f64)], of: fn(&(f64, f64)) -> f64| {
        all.iter().map(of).sum::<f64>() / all.len() as f64
    };
    days.into_iter()
        .map(|(day, all)| DayRhythm {
            day,
            tries: all.len(),
            mean_ms: mean(&all, |one| one.0),
            spread_ms: mean(&all, |one| one.1),
        })
        .collect()
}

/// How the hand did at the entry gesture in the latest tries of the drill. A whole job says too little of the hand
/// and is left out.
pub fn hand_record(answers: &[Answer]) -> HandRecord {
    let is_try = |answer: &&Answer| {
        answer.skill == Skill::EntryTiming && !matches!(answer.detail, Detail::Job { .. })
    };
    HandRecord::of(
        (answers.iter().rev())
            .filter(is_try)
            .map(|answer| answer.right),
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::practice::answer::given as answer;

    #[test]
    fn a_rest_lowers_the_belief_and_answers_raise_it_again() {
        let skill = Skill::LampReading;
        let right = |at| answer(at, skill, true, Detail::None);
        let next = |n| right(DAY_S + n);
        let mut learner = Learner::of(&[right(0), next(0), next(10), next(20), next(30)]);
        let standing = learner.standing(skill);
        let (soon, late) = (Moment(DAY_S + 60), Moment(400 * DAY_S));
        assert!(standing.mastered() && !standing.due(soon));
        assert!(standing.known(soon) > 0.99 * standing.tracing.known());
        assert!(standing.due(late) && standing.known(late) < 0.7);
        assert!(standing.success(late) < standing.success(soon));
        learner.note(&answer(late.0, skill, false, Detail::None));
        assert!(!learner.standing(skill).mastered());
        for n in 1..8 {
            learner.note(&right(late.0 + n));
        }
        assert!(learner.standing(skill).mastered());
    }

    #[test]
    fn mastery_takes_right_answers_on_two_days() {
        let skill = Skill::Metering;
        let at = |s, right| answer(s, skill, right, Detail::None);
        let evening: Vec<Answer> = (0..20).map(|n| at(60 * n, true)).collect();
        let mut learner = Learner::of(&evening);
        let standing = learner.standing(skill);
        assert!(standing.tracing.mastered() && !standing.mastered());
        assert!(standing.waits_for_another_day(Moment(1300)));
        assert!(!standing.waits_for_another_day(Moment(DAY_S)));
        // A wrong answer is none, on whatever day.
        learner.note(&at(DAY_S, false));
        assert!(!learner.standing(skill).mastered());
        for n in 1..4 {
            learner.note(&at(DAY_S + n, true));
        }
        assert!(learner.standing(skill).mastered());
    }

    #[test]
    fn a_forgetting_curve_starts_at_what_is_known_and_needs_an_answer() {
        let skill = Skill::PartChoice;
        let learner = Learner::of(&[answer(0, skill, true, Detail::None)]);
        let (now, standing) = (Moment(3600), learner.standing(skill));
        let curve = standing.forgetting_curve(now, 30).expect("it was answered");
        assert_eq!(curve[0], (0.0, standing.known(now)));
        // One right answer proves little, however fresh it is.
        assert!(curve[0].1 < 0.5);
        assert!(curve.is_sorted_by(|a, b| a.0 < b.0 && a.1 >= b.1));
        assert_eq!(curve.last().map(|last| last.0), Some(30.0));
        let never = learner.standing(Skill::NextTest);
        assert_eq!(never.forgetting_curve(now, 30), None);
    }

    #[test]
    fn nothing_but_the_answers_counts() {
        let answers: Vec<Answer> = (0..60)
            .map(|n| {
                let skill = Skill::ALL[n % Skill::ALL.len()];
                answer(n as i64 * 9000, skill, n % 3 > 0, Detail::None)
            })
            .collect();
        let mut one_by_one = Learner::default();
        answers.iter().for_each(|answer| one_by_one.note(answer));
        assert_eq!(Learner::of(&answers), one_by_one);
    }

    #[test]
    fn a_job_is_passed_by_its_sides_in_one_attempt() {
        let side = |at, kept| {
            let file = "drain-code".to_owned();
            answer(at, Skill::Proof, kept > 0.7, Detail::Job { file, kept })
        };
        let mut learner = Learner::of(&[side(0, 0.9), side(0, 0.2)]);
        assert!(!learner.passed("drain-code"));
        let best = |learner: &Learner| {
            learner
                .best_share("drain-code")
                .map(|share| (100.0 * share).round())
        };
        assert_eq!(best(&learner), Some(55.0));
        learner.note(&side(50, 0.6));
        learner.note(&side(50, 0.9));
        assert!(learner.passed("drain-code") && !learner.passed("entry-worn-dial"));
        learner.note(&side(90, 0.1));
        assert_eq!(best(&learner), Some(75.0));
        assert_eq!(learner.best_share("entry-worn-dial"), None);
        // Too little of the safety is no pass, whatever else was kept.
        for (kept, passed) in [(PASS_SAFETY_SHARE, true), (0.3, false)] {
            let file = "drain-code".to_owned();
            let safety = answer(90, Skill::SafeWork, false, Detail::Job { file, kept });
            let learner = Learner::of(&[side(90, 1.0), side(90, 1.0), safety]);
            assert_eq!(learner.passed("drain-code"), passed, "{kept}");
        }
    }

    #[test]
    fn the_record_of_a_hand_is_made_of_its_latest_tries_in_the_drill() {
        let rhythm = || Detail::Rhythm {
            mean_ms: 200.0,
            spread_ms: 20.0,
            odds: 0.9,
        };
        let file = "entry-worn-dial".to_owned();
        let mut answers = vec![answer(0, Skill::EntryTiming, true, rhythm()); 30];
        answers.extend([
            answer(1, Skill::EntryTiming, false, rhythm()),
            // The dial was not turned.
            answer(2, Skill::EntryTiming, false, Detail::None),
            answer(3, Skill::LampReading, false, Detail::None),
            answer(
                4,
                Skill::EntryTiming,
                false,
                Detail::Job { file, kept: 0.1 },
            ),
        ]);
        let (entered, tries) = (18, 20);
        assert_eq!(hand_record(&answers), HandRecord { entered, tries });
        assert_eq!(hand_record(&[]), HandRecord::default());
    }

    #[test]
    fn rhythm_goes_by_the_learner_s_own_calendar() {
        let try_at = |at, mean_ms| {
            let detail = Detail::Rhythm {
                mean_ms,
                spread_ms: mean_ms / 10.0,
                odds: 0.9,
            };
            answer(at, Skill::EntryTiming, true, detail)
        };
        // Half past eleven in the evening and half past midnight, UTC.
        let tries = [try_at(23 * 3600 + 1800, 200.0), try_at(DAY_S + 1800, 300.0)];
        let utc: Vec<i64> = rhythm_by_day(&tries, 0).iter().map(|d| d.day).collect();
        assert_eq!(utc, [0, 1]);
        let west = rhythm_by_day(&tries, -6 * 3600);
        let expected = DayRhythm {
            day: 0,
            tries: 2,
            mean_ms: 250.0,
            spread_ms: 25.0,
        };
        assert_eq!(west, [expected]);
    }
}
