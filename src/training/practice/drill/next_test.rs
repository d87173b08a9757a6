//! Choosing the next test: what is believed after the codes and what was tried since, four things that could
//! be done now, and which of them makes the repair cheapest.

use super::{SuppliedBoard, SuppliedBoardId, below, draws, one_of, shuffle, supplied_board};
use crate::reason::evidence::{self, Outcome, Table};
use crate::reason::{Course, PlanStep, Posterior, Probe, Remedy, RepairCosts};
use detent_simulation::plant::FailureMode;
use detent_simulation::units::uniform;
use rand_chacha::ChaCha8Rng;

/// Things to choose from.
const CHOICES: usize = 4;
/// Causes that are shown.
const TOP: usize = 5;
/// Where one cause is likelier than this, share, there is little left to choose.
const SURE: f64 = 0.9;
/// Beliefs that the search for the best may look at.
const WORK: u32 = 1500;
/// An action whose expected cost is within this share of the best one's is as right.
const AS_GOOD: f64 = 0.02;
/// The others cost at least this share more than the best, whatever follows.
const WORSE: f64 = 0.03;
/// Situations drawn before the clearest so far is taken.
const DRAWS: u64 = 60;
/// Situations in which the cheapest thing is the best are asked about once in so many questions.
const CHEAPEST_IS_BEST: usize = 6;
/// At most so many tests were made before the question.
const TESTS_BEFORE: u32 = 4;

/// Something that could be done now.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// What, in the trade's words.
    pub deed: EarlierAction,
    /// What it costs by itself, with what has to be done before it, whole units of money.
    pub cost: f64,
    /// What the whole repair is expected to cost when this is done now, whole units of money: no less than
    /// the first, and no more than the second.
    pub repair: (f64, f64),
}

/// A repair or a test.
#[derive(Clone, Debug, PartialEq)]
pub enum EarlierAction {
    /// Repair.
    Repair(Remedy),
    /// Test.
    Test(Probe),
}

/// What is known, and what could be done.
#[derive(Clone, Debug, PartialEq)]
pub struct NextTestTask {
    /// Board and supply.
    pub place: SuppliedBoardId,
    /// Codes that the customer's wash stored, newest first.
    pub codes: Vec<u8>,
    /// Tests made since.
    pub tested: Vec<Probe>,
    /// The likeliest causes: failure mode by its id (none: nothing is wrong) and share.
    pub belief: Vec<(Option<String>, f64)>,
    /// Things to choose from.
    pub options: Vec<Choice>,
}

/// An answer, judged.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marked {
    /// Nothing offered makes the repair clearly cheaper.
    pub right: bool,
    /// The best, by its place among the options.
    pub should: usize,
    /// The one chosen.
    pub chosen: usize,
}

/// Draws a task, with the table of each board at its supply (`tables` may lack some; those boards are left out).
/// None where there is no table at all, or nothing clear was found.
pub fn ask<'t>(
    supplied_boards: &[SuppliedBoard<'_>],
    tables: impl Fn(&SuppliedBoardId) -> Option<&'t Table>,
    seed: u64,
) -> Option<NextTestTask> {
    let known: Vec<SuppliedBoard<'_>> = (supplied_boards.iter().copied())
        .filter(|supplied_board| tables(&supplied_board.place()).is_some())
        .collect();
    if known.is_empty() {
        return None;
    }
    let rng = &mut draws(seed);
    let any = below(CHEAPEST_IS_BEST, rng) == 0;
    let mut plain = None;
    for _ in 0..DRAWS {
        let supplied_board = supplied_board(&known, rng);
        let table = tables(&supplied_board.place())?;
        // Once there is a plain one, only another kind is worth a long look.
        let dear = !any && plain.is_some();
        let Some(task) = situation(supplied_board, table, dear, rng) else {
            continue;
        };
        if any || !mark(&task, cheapest(&task)).right {
            return Some(task);
        }
        plain.get_or_insert(task);
    }
    plain
}

/// The option that costs least by itself, by its place: what a bad habit takes.
pub fn cheapest(task: &NextTestTask) -> usize {
    let cost = |n: &usize| task.options[*n].cost;
    let least = |a: &usize, b: &usize| cost(a).total_cmp(&cost(b));
    (0..task.options.len()).min_by(least).unwrap_or_default()
}

/// Judges the choice, by its place among the options.
pub fn mark(task: &NextTestTask, chosen: usize) -> Marked {
    let cost = |n: usize| task.options.get(n).map_or(f64::INFINITY, |c| c.repair.1);
    let best = |a: &usize, b: &usize| cost(*a).total_cmp(&cost(*b));
    let should = (0..task.options.len()).min_by(best).unwrap_or_default();
    Marked {
        right: cost(chosen) <= cost(should) * (1.0 + AS_GOOD),
        should,
        chosen,
    }
}

/// One situation, if four things stand out clearly enough in it; with `dear`, only one in which a first look does not
/// take the cheapest thing for the best.
fn situation(
    supplied_board: &SuppliedBoard<'_>,
    table: &Table,
    dear: bool,
    rng: &mut ChaCha8Rng,
) -> Option<NextTestTask> {
    let library = &supplied_board.library;
    let hidden = hidden(library.modes, rng)?;
    let washes: Vec<&Outcome> = table.seen.get(hidden + 1)?.washes.iter().collect();
    let wash = one_of(&washes, rng)?;
    let mut belief = Posterior::from_weights(&evidence::prior(library.modes)).ok()?;
    belief.update(&table.wash(wash)).ok()?;
    let repair_costs = RepairCosts::of(library, table, true);
    let problem = &repair_costs.problem;
    let mut course = Course::begin(&belief.shares());
    let mut tested = Vec::new();
    for _ in 0..(uniform(rng) * f64::from(TESTS_BEFORE + 1)) as u32 {
        let PlanStep::Test(test) = problem.plan(&course, WORK / 10).ok()?.next() else {
            break;
        };
        let outcome = drawn(&problem.tests[test].chances, hidden + 1, rng);
        let seen = (test as u16, outcome as u16);
        let after = problem.after(&course, PlanStep::Test(test));
        course = after.into_iter().find(|next| next.seen.contains(&seen))?;
        tested.push(repair_costs.probes[test].clone());
    }
    let total: f64 = course.weights.iter().sum();
    let likeliest = course.weights.iter().copied().fold(0.0, f64::max);
    if likeliest > SURE * total {
        return None;
    }
    if dear {
        let first = problem.plan(&course, WORK / 10).ok()?;
        let cost = |step| problem.cost(step, course.done);
        let best = cost(first.next());
        if !first.choices.iter().any(|other| cost(other.step) < best) {
            return None;
        }
    }
    let plan = problem.plan(&course, WORK).ok()?;
    let best = *plan.choices.first()?;
    let choice = |choice: &crate::reason::Choice| {
        Some(Choice {
            deed: match choice.step {
                PlanStep::Repair(r) => EarlierAction::Repair(repair_costs.remedies[r].clone()),
                PlanStep::Test(t) => EarlierAction::Test(repair_costs.probes[t].clone()),
                PlanStep::LastResort => return None,
            },
            cost: problem.cost(choice.step, course.done),
            repair: (choice.lower, choice.upper),
        })
    };
    // Whatever is done after one of these, it stays dearer.
    let mut worse: Vec<Choice> = (plan.choices[1..].iter())
        .filter(|other| other.lower > best.upper * (1.0 + WORSE))
        .filter_map(choice)
        .collect();
    // The nearest ones are the interesting ones; something cheaper than the best stands beside it where there
    // is such a thing, or else something as cheap: the price by itself tells nothing.
    worse.sort_by(|a, b| a.repair.1.total_cmp(&b.repair.1));
    let price = problem.cost(best.step, course.done);
    let as_cheap = (worse.iter().position(|other| other.cost < price))
        .or_else(|| worse.iter().position(|other| other.cost <= price));
    let cheap = as_cheap.map(|at| worse.remove(at));
    worse.truncate(3 * CHOICES);
    shuffle(&mut worse, rng);
    worse.truncate(CHOICES - 1 - usize::from(cheap.is_some()));
    worse.extend(cheap);
    let mut options: Vec<Choice> = choice(&best).into_iter().chain(worse).collect();
    if options.len() < CHOICES {
        return None;
    }
    shuffle(&mut options, rng);
    let mut ranked: Vec<(usize, f64)> = course.weights.iter().copied().enumerate().collect();
    ranked.sort_by(|a, b| b.1.total_cmp(&a.1).then(a.0.cmp(&b.0)));
    let name = |n: usize| n.checked_sub(1).map(|n| library.modes[n].id.clone());
    Some(NextTestTask {
        place: supplied_board.place(),
        codes: wash.codes.clone(),
        tested,
        belief: (ranked.into_iter().take(TOP))
            .map(|(n, weight)| (name(n), weight / total))
            .collect(),
        options,
    })
}

/// Draws a failure mode by its weight.
fn hidden(modes: &[FailureMode], rng: &mut ChaCha8Rng) -> Option<usize> {
    let total: f64 = modes.iter().map(|mode| mode.weight).sum();
    let mut left = total * uniform(rng);
    modes.iter().position(|mode| {
        left -= mode.weight;
        left < 0.0
    })
}

/// Draws an outcome by its chances under a hypothesis.
fn drawn(chances: &[Vec<f64>], hypothesis: usize, rng: &mut ChaCha8Rng) -> usize {
    let mut left = uniform(rng);
    let at = chances.iter().position(|row| {
        left -= row[hypothesis];
        left < 0.0
    });
    at.unwrap_or_default()
}
