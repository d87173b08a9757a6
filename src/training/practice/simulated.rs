//! Learners who do not exist: each skill is known or not, and nobody but the simulation sees which.
//!
//! They learn, slip and guess with known rates, as knowledge tracing supposes, and forget overnight, which
//! it does not. So it can be said whether the model finds out what they know, and how many exercises a way of
//! choosing needs until they know everything. All of them are our own invention, as are their rates.

use super::review::DAY_S;
use super::{
    Answer, Choice, Detail, Exercise, Learner, MASTERY, Moment, Rates, Skill, Target, choose,
};
use detent_simulation::units::uniform;
use rand::{Rng, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Exercises in a session; one session a day.
pub const SESSION: usize = 10;
/// Chance that a skill which is known is lost in a night without practice of it.
pub const LOST_OVERNIGHT: f64 = 0.005;
/// Exercises after which a learner is given up who has still not mastered everything.
const LONGEST: usize = 20_000;

/// The skills, each with its drill, in the order of the course.
pub fn drills() -> Vec<Skill> {
    Skill::ALL.to_vec()
}

/// A way of choosing the next exercise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Policy {
    /// [`choose`], with this target.
    Adaptive(Target),
    /// So many exercises of each skill in the order of the course, then from the start again.
    Fixed(usize),
    /// Any of them, each as likely.
    Random,
    /// One skill after the other, each until the model holds it mastered, then from the start again those
    /// that are not any more.
    OneByOne,
}

/// A learner whose rates are known.
#[derive(Clone, Debug)]
pub struct Simulated {
    rates: Vec<Rates>,
    knows: Vec<bool>,
    practised: Vec<bool>,
    forgets: f64,
    rng: ChaCha8Rng,
}

impl Simulated {
    /// A learner drawn from `seed`. Each rate is the program's own times a factor drawn from `1 - spread` to
    /// `1 + spread`, so that with `spread` 0 the model knows the rates, and otherwise not. `forgets` is the
    /// chance to lose a skill overnight.
    pub fn new(seed: u64, spread: f64, forgets: f64) -> Simulated {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        let rates: Vec<Rates> = drills()
            .into_iter()
            .map(|skill| {
                let own = Rates::of(skill);
                let mut near = |rate: f64| {
                    (rate * (1.0 + spread * (2.0 * uniform(&mut rng) - 1.0))).clamp(0.0, 0.45)
                };
                let drawn = Rates::new(
                    near(own.known()),
                    near(own.learn()),
                    near(own.slip()),
                    near(own.guess()),
                );
                drawn.unwrap_or(own)
            })
            .collect();
        let knows = rates.iter().map(|r| uniform(&mut rng) < r.known());
        let knows: Vec<bool> = knows.collect();
        Simulated {
            practised: vec![false; knows.len()],
            rates,
            knows,
            forgets,
            rng,
        }
    }

    /// Whether the answer to an exercise of the `n`-th drill is right; it may teach.
    fn answer(&mut self, n: usize) -> bool {
        let rates = self.rates[n];
        let known = if self.knows[n] { 1.0 } else { 0.0 };
        let right = uniform(&mut self.rng) < rates.success(known);
        self.knows[n] |= uniform(&mut self.rng) < rates.learn();
        self.practised[n] = true;
        right
    }

    /// Whether the `n`-th skill goes well in a job, which teaches nothing by itself.
    fn does(&mut self, n: usize) -> bool {
        let known = if self.knows[n] { 1.0 } else { 0.0 };
        uniform(&mut self.rng) < self.rates[n].success(known)
    }

    /// Does the `n`-th drill, with a hint or without.
    fn drills(&mut self, n: usize, hint: bool) {
        let teaches = if hint { HINT_TEACHES } else { 1.0 };
        self.knows[n] |= uniform(&mut self.rng) < teaches * self.rates[n].learn();
        self.practised[n] = true;
    }

    fn sleep(&mut self) {
        for (knows, practised) in self.knows.iter_mut().zip(&mut self.practised) {
            let lost = uniform(&mut self.rng) < self.forgets;
            *knows &= *practised || !lost;
            *practised = false;
        }
    }

    /// Whether the skill of the `n`-th drill is truly known.
    pub fn knows(&self, n: usize) -> bool {
        self.knows[n]
    }
}

/// A simulated learner at practice, and what the model makes of the answers.
struct Course {
    simulated: Simulated,
    learner: Learner,
    policy: Policy,
    drills: Vec<Skill>,
    done: usize,
    /// Draws of the policy, apart from the learner's.
    rng: ChaCha8Rng,
}

impl Course {
    fn new(simulated: Simulated, policy: Policy, seed: u64) -> Course {
        Course {
            simulated,
            learner: Learner::default(),
            policy,
            drills: drills(),
            done: 0,
            rng: ChaCha8Rng::seed_from_u64(seed ^ 0x0D15_C0DE),
        }
    }

    fn now(&self) -> Moment {
        let (day, within) = (self.done / SESSION, self.done % SESSION);
        Moment(day as i64 * DAY_S + within as i64 * 60)
    }

    /// The drill to do next, by its place among them.
    fn next(&mut self) -> usize {
        let count = self.drills.len();
        match self.policy {
            Policy::Adaptive(target) => {
                let Choice { exercise, .. } = choose(&self.learner, &[], target, self.now());
                let chosen = |skill: &Skill| exercise == Exercise::Drill(*skill);
                self.drills.iter().position(chosen).unwrap_or(0)
            }
            Policy::Fixed(block) => self.done / block.max(1) % count,
            Policy::Random => (self.rng.next_u32() as usize) % count,
            Policy::OneByOne => {
                let open = |skill: &Skill| !self.learner.standing(*skill).mastered();
                let first = self.drills.iter().position(open);
                first.unwrap_or(self.done % count)
            }
        }
    }

    fn exercise(&mut self) {
        let n = self.next();
        self.exercise_at(n);
    }

    /// Does the `n`-th drill; whether the answer was right.
    fn exercise_at(&mut self, n: usize) -> bool {
        let right = self.simulated.answer(n);
        self.learner.note(&Answer {
            at: self.now(),
            skill: self.drills[n],
            right,
            took_s: super::review::usual_s(self.drills[n]),
            detail: Detail::None,
        });
        self.done += 1;
        if self.done.is_multiple_of(SESSION) {
            self.simulated.sleep();
        }
        right
    }

    /// The model holds every skill mastered, and every skill is known.
    fn finished(&self) -> bool {
        let one = |(n, skill): (usize, &Skill)| {
            self.learner.standing(*skill).mastered() && self.simulated.knows(n)
        };
        self.drills.iter().enumerate().all(one)
    }
}

/// How many exercises a learner needs until the model holds every skill mastered and every skill is truly
/// known; none when that takes far too long.
pub fn exercises_to_mastery(simulated: Simulated, policy: Policy, seed: u64) -> Option<usize> {
    let mut course = Course::new(simulated, policy, seed);
    while !course.finished() {
        if course.done == LONGEST {
            return None;
        }
        course.exercise();
    }
    Some(course.done)
}

/// How well the model's belief agrees with the truth, over many looks at many learners.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Recovery {
    /// By tenths of belief, from 0 to 1: looks, sum of the beliefs, how often it was truly known.
    bins: [(u64, f64, u64); 10],
    squares: f64,
    /// Held mastered: how often, and how often truly known.
    mastered: (u64, u64),
}

impl Recovery {
    fn compare(&mut self, belief: f64, mastered: bool, knows: bool) {
        let bin = &mut self.bins[((belief * 10.0) as usize).min(9)];
        let truth = u64::from(knows);
        bin.0 += 1;
        bin.1 += belief;
        bin.2 += truth;
        let error = belief - truth as f64;
        self.squares += error * error;
        if mastered {
            self.mastered.0 += 1;
            self.mastered.1 += truth;
        }
    }

    /// Takes in what another one saw.
    pub fn add(&mut self, other: &Recovery) {
        for (mine, theirs) in self.bins.iter_mut().zip(&other.bins) {
            mine.0 += theirs.0;
            mine.1 += theirs.1;
            mine.2 += theirs.2;
        }
        self.squares += other.squares;
        self.mastered.0 += other.mastered.0;
        self.mastered.1 += other.mastered.1;
    }

    /// Looks taken: one at each skill after each session.
    pub fn looks(&self) -> u64 {
        self.bins.iter().map(|bin| bin.0).sum()
    }

    /// Mean belief.
    pub fn believed(&self) -> f64 {
        let sum: f64 = self.bins.iter().map(|bin| bin.1).sum();
        sum / self.looks().max(1) as f64
    }

    /// Share truly known.
    pub fn known(&self) -> f64 {
        let sum: u64 = self.bins.iter().map(|bin| bin.2).sum();
        sum as f64 / self.looks().max(1) as f64
    }

    /// Root of the mean squared difference between belief and truth (1 or 0).
    pub fn rmse(&self) -> f64 {
        (self.squares / self.looks().max(1) as f64).sqrt()
    }

    /// Of the skills held mastered, the share truly known.
    pub fn verdict(&self) -> f64 {
        self.mastered.1 as f64 / self.mastered.0.max(1) as f64
    }

    /// Belief beside truth, in tenths of belief that occurred: looks, mean belief, share truly known.
    pub fn calibration(&self) -> Vec<(u64, f64, f64)> {
        let seen = self.bins.iter().filter(|bin| bin.0 > 0);
        let mean = |bin: &(u64, f64, u64)| {
            let looks = bin.0 as f64;
            (bin.0, bin.1 / looks, bin.2 as f64 / looks)
        };
        seen.map(mean).collect()
    }
}

/// A learner practises adaptively for so many sessions, one a day; after each the model's belief at that
/// moment is held against the truth. The first is of the first `early` sessions alone, the second of all.
pub fn recover(
    simulated: Simulated,
    target: Target,
    seed: u64,
    early: usize,
    sessions: usize,
) -> [Recovery; 2] {
    let mut course = Course::new(simulated, Policy::Adaptive(target), seed);
    let mut seen = [Recovery::default(), Recovery::default()];
    for session in 0..sessions {
        for _ in 0..SESSION {
            course.exercise();
        }
        let now = course.now();
        for (n, skill) in course.drills.iter().enumerate() {
            let standing = course.learner.standing(*skill);
            let known = standing.known(now);
            let (mastered, knows) = (known >= MASTERY, course.simulated.knows(n));
            let kinds = if session < early { 0..2 } else { 1..2 };
            seen[kinds]
                .iter_mut()
                .for_each(|one| one.compare(known, mastered, knows));
        }
    }
    seen
}

/// Invented answers of a simulated learner, so many sessions on so many days before `until`: for pictures and
/// tests of what is shown. Digits alike in lamps are confused now and then, and the rhythm at the gesture
/// grows steadier.
pub fn invented(seed: u64, days: u32, until: Moment) -> Vec<Answer> {
    let mut course = Course::new(
        Simulated::new(seed, 0.0, LOST_OVERNIGHT),
        Policy::Adaptive(Target::default()),
        seed,
    );
    let mut rng = ChaCha8Rng::seed_from_u64(seed ^ 0x1477);
    let start = until.0 - i64::from(days) * DAY_S;
    let mut answers = Vec::new();
    for day in 0..days {
        for _ in 0..SESSION {
            let before = course.now();
            let n = course.next();
            let right = course.exercise_at(n);
            let skill = course.drills[n];
            let mut up_to = |most: f64| uniform(&mut rng) * most;
            let detail = match skill {
                Skill::LampReading => {
                    let shown = up_to(100.0) as u8;
                    let near = [4, 1, 8, 2][up_to(4.0) as usize];
                    // One lamp of the units taken for lit or dark.
                    let units = (shown % 10) ^ near;
                    let read = if right {
                        shown
                    } else {
                        shown / 10 * 10 + units % 10
                    };
                    Detail::Lamps { shown, read }
                }
                Skill::EntryTiming => Detail::Rhythm {
                    mean_ms: 190.0 + up_to(40.0),
                    spread_ms: (80.0 + up_to(20.0)) / (1.0 + 0.2 * f64::from(day)),
                    odds: 0.6 + up_to(0.4),
                },
                _ => Detail::None,
            };
            answers.push(Answer {
                at: Moment(start + before.0),
                skill,
                right,
                took_s: super::review::usual_s(skill),
                detail,
            });
        }
    }
    answers
}

/// Answers of a learner with these rates to one skill, one a minute.
pub fn answers_with(rates: Rates, skill: Skill, count: usize, seed: u64) -> Vec<Answer> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let mut knows = uniform(&mut rng) < rates.known();
    let mut answer = |n: usize| {
        let known = if knows { 1.0 } else { 0.0 };
        let right = uniform(&mut rng) < rates.success(known);
        knows |= uniform(&mut rng) < rates.learn();
        Answer {
            at: Moment(60 * n as i64),
            skill,
            right,
            took_s: super::review::usual_s(skill),
            detail: Detail::None,
        }
    };
    (0..count).map(&mut answer).collect()
}

/// What helps a beginner.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Help {
    /// Hints can be taken.
    pub hints: bool,
    /// After each job somebody names what went wrong in it.
    pub coach: bool,
}

/// Chance that a beginner who does not know takes a hint (our own guess).
const TAKES_HINT: f64 = 0.5;
/// An exercise with a hint teaches so many times as likely as one without (our own guess; no study of ours stands
/// behind it).
const HINT_TEACHES: f64 = 1.5;

/// How many exercises a beginner needs until every skill is truly known; none when that takes far too long.
///
/// The model, of our own invention: a beginner knows nothing at first, and learns, slips and guesses with the rates
/// of the program. A session is a job and then drills, ten exercises in all, one session a day, and what is known
/// may be lost overnight. A job uses every skill once and teaches nothing by itself. With the coach the drills are of
/// the skills that went wrong in the job, in turn; without, or where nothing went wrong, of any skill, each as likely.
/// A hint makes an exercise teach better; that hints can also keep somebody from thinking is left out, so that this
/// says how much they save at best.
pub fn exercises_of_beginner(help: Help, seed: u64) -> Option<usize> {
    let mut beginner = Simulated::new(seed, 0.0, LOST_OVERNIGHT);
    beginner.knows.fill(false);
    let mut rng = ChaCha8Rng::seed_from_u64(seed ^ 0x4E11);
    let count = beginner.knows.len();
    let mut done = 0;
    while done < LONGEST {
        let wrong: Vec<usize> = (0..count).filter(|n| !beginner.does(*n)).collect();
        done += 1;
        for drill in 0..SESSION - 1 {
            let any = (uniform(&mut rng) * count as f64) as usize;
            let named = wrong.get(drill % wrong.len().max(1)).copied();
            let n = named.filter(|_| help.coach).unwrap_or(any);
            let takes = uniform(&mut rng) < TAKES_HINT;
            beginner.drills(n, help.hints && takes);
            done += 1;
            if beginner.knows.iter().all(|knows| *knows) {
                return Some(done);
            }
        }
        beginner.sleep();
    }
    None
}
