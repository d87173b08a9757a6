//! The parameters of knowledge tracing, fitted to answers by expectation maximization.
//!
//! Knowledge tracing is a hidden Markov model of two states in which what is known is not lost; its parameters are
//! estimated by the method of L. E. Baum, T. Petrie, G. Soules and N. Weiss, "A maximization technique occurring in
//! the statistical analysis of probabilistic functions of Markov chains", The Annals of Mathematical Statistics 41
//! (1970), 164–171, with the scaled forward and backward passes of L. R. Rabiner, "A tutorial on hidden Markov models
//! and selected applications in speech recognition", Proceedings of the IEEE 77 (1989), 257–286 (both from memory).
//! Each round of it makes the answers no less likely. Guess and slip stay below a half: without such a bound the two
//! states can change places, and the answers are as likely (J. E. Beck and K. Chang, "Identifiability: a fundamental
//! problem of student modeling", 2007, from memory).

use super::{Answer, Rates, Skill};
use libm::log;

/// Fewest learners that anything is estimated from (our own choice).
pub const FEWEST_LEARNERS: usize = 5;
/// Fewest answers to a skill that anything is estimated from (our own choice).
pub const FEWEST_ANSWERS: usize = 60;
/// Highest guess and slip.
pub const BOUND: f64 = 0.49;
/// Lowest value of any parameter: what is never seen is not impossible.
const LEAST: f64 = 0.001;
/// Highest value of the other two.
const MOST: f64 = 0.999;
/// Rounds at most.
const ROUNDS: usize = 2000;
/// A round that makes the answers less than this more likely, in natural logarithm, is the last.
const SETTLED: f64 = 1e-7;
/// Where the rounds begin: known, learn, slip, guess. The best end is taken.
const STARTS: [[f64; 4]; 3] = [
    [0.2, 0.1, 0.1, 0.2],
    [0.5, 0.3, 0.2, 0.1],
    [0.1, 0.05, 0.05, 0.35],
];

/// Parameters of one skill, and what they were fitted to.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// The skill.
    pub skill: Skill,
    /// Learners who answered.
    pub learners: usize,
    /// Their answers.
    pub answers: usize,
    /// The parameters.
    pub rates: Rates,
    /// Natural logarithm of how likely the answers are before each round and after the last: it never falls.
    pub log_likelihoods: Vec<f64>,
    /// The same under the parameters that the program brings.
    pub built_in: f64,
    /// Guess or slip ended at its bound: the answers do not tell them well apart.
    pub at_bound: bool,
}

/// Nothing can be fitted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "{skill}: {answers} answers of {learners} learners are too few; collect at least {FEWEST_ANSWERS} answers of {FEWEST_LEARNERS} learners"
)]
pub struct TooFew {
    /// The skill.
    pub skill: Skill,
    /// Learners who answered.
    pub learners: usize,
    /// Their answers.
    pub answers: usize,
}

/// Fits the parameters of a skill to the answers of several learners, each in the order in which they were given.
/// Answers of whole jobs count like others; what a rest forgets is left out of account.
///
/// # Errors
/// Too few learners or answers.
pub fn fit(skill: Skill, learners: &[Vec<Answer>]) -> Result<Fitted, TooFew> {
    let of_skill = |answers: &Vec<Answer>| -> Vec<bool> {
        let own = answers.iter().filter(|answer| answer.skill == skill);
        own.map(|answer| answer.right).collect()
    };
    let all: Vec<Vec<bool>> = (learners.iter().map(of_skill))
        .filter(|answers| !answers.is_empty())
        .collect();
    let answers = all.iter().map(Vec::len).sum();
    if all.len() < FEWEST_LEARNERS || answers < FEWEST_ANSWERS {
        return Err(TooFew {
            skill,
            learners: all.len(),
            answers,
        });
    }
    let climbs = STARTS.map(|start| climb(Four(start), &all));
    let best = climbs.into_iter().reduce(|best, other| {
        let end = |climb: &(Four, Vec<f64>)| climb.1.last().copied().unwrap_or(f64::NEG_INFINITY);
        if end(&other) > end(&best) {
            other
        } else {
            best
        }
    });
    let (four, log_likelihoods) = best.unwrap_or((Four(STARTS[0]), Vec::new()));
    let [known, learn, slip, guess] = four.0;
    let built_in = Rates::of(skill);
    let own = [
        built_in.known(),
        built_in.learn(),
        built_in.slip(),
        built_in.guess(),
    ];
    Ok(Fitted {
        skill,
        learners: all.len(),
        answers,
        // Within their bounds they are always sound.
        rates: Rates::new(known, learn, slip, guess).unwrap_or(built_in),
        log_likelihoods,
        built_in: expect(Four(own), &all).0,
        at_bound: slip >= BOUND || guess >= BOUND,
    })
}

/// Known, learn, slip, guess.
#[derive(Clone, Copy)]
struct Four([f64; 4]);

/// Rounds from a start until they settle: the parameters, and how likely the answers were on the way.
fn climb(start: Four, all: &[Vec<bool>]) -> (Four, Vec<f64>) {
    let mut four = start;
    let (mut likelihood, mut next) = expect(four, all);
    let mut likelihoods = vec![likelihood];
    for _ in 0..ROUNDS {
        let (after, further) = expect(next, all);
        // Only rounding can make it fall, once it is at its top.
        if after < likelihood {
            break;
        }
        (four, next) = (next, further);
        likelihoods.push(after);
        if after - likelihood < SETTLED {
            break;
        }
        likelihood = after;
    }
    (four, likelihoods)
}

/// How likely the answers are with these parameters, in natural logarithm, and the parameters of the next round.
fn expect(Four([known, learn, slip, guess]): Four, all: &[Vec<bool>]) -> (f64, Four) {
    let mut likelihood = 0.0;
    // Expected counts: begun known; taught while unknown, of all steps from unknown; wrong while known, of all
    // answers while known; right while unknown, of all answers while unknown.
    let mut begun = 0.0;
    let (mut taught, mut untaught_steps) = (0.0, 0.0);
    let (mut slipped, mut while_known) = (0.0, 0.0);
    let (mut guessed, mut while_unknown) = (0.0, 0.0);
    for answers in all {
        let chance = |right: bool| -> [f64; 2] {
            if right {
                [guess, 1.0 - slip]
            } else {
                [1.0 - guess, slip]
            }
        };
        // Forward, scaled: chances of unknown and known with all answers so far.
        let mut forward = Vec::with_capacity(answers.len());
        let mut scales = Vec::with_capacity(answers.len());
        let mut before = [1.0 - known, known];
        for right in answers {
            let seen = chance(*right);
            let joint = [before[0] * seen[0], before[1] * seen[1]];
            let scale = joint[0] + joint[1];
            likelihood += log(scale);
            let now = [joint[0] / scale, joint[1] / scale];
            forward.push(now);
            scales.push(scale);
            before = [now[0] * (1.0 - learn), now[1] + now[0] * learn];
        }
        // Backward, with the same scales.
        let mut backward = [1.0, 1.0];
        for n in (0..answers.len()).rev() {
            let both = [forward[n][0] * backward[0], forward[n][1] * backward[1]];
            let total = both[0] + both[1];
            let (unknown, knows) = (both[0] / total, both[1] / total);
            while_unknown += unknown;
            while_known += knows;
            if answers[n] {
                guessed += unknown;
            } else {
                slipped += knows;
            }
            if n == 0 {
                begun += knows;
                continue;
            }
            let seen = chance(answers[n]);
            let onward = [
                seen[0] * backward[0] / scales[n],
                seen[1] * backward[1] / scales[n],
            ];
            taught += forward[n - 1][0] * learn * onward[1];
            untaught_steps += forward[n - 1][0] * (learn * onward[1] + (1.0 - learn) * onward[0]);
            backward = [(1.0 - learn) * onward[0] + learn * onward[1], onward[1]];
        }
    }
    let share = |part: f64, of: f64, old: f64, most: f64| {
        let share = if of > 0.0 { part / of } else { old };
        share.clamp(LEAST, most)
    };
    let next = [
        share(begun, all.len() as f64, known, MOST),
        share(taught, untaught_steps, learn, MOST),
        share(slipped, while_known, slip, BOUND),
        share(guessed, while_unknown, guess, BOUND),
    ];
    (likelihood, Four(next))
}
