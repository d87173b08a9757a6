//! The expected cost of repair and the next best action, after decision-theoretic troubleshooting
//! (Heckerman, Breese and Rommelse, 1995): one fault, repairs that surely cure some faults, tests that
//! cost something and tell some faults apart, and a last resort that cures everything.
//!
//! A belief is a list of weights that need not add up to 1: weights are multiplied by the chance of
//! what was seen, so their sum is the chance of getting there, and costs simply add up.

use std::cmp::Ordering;
use std::collections::BTreeMap;

/// Most repairs in one problem: as many as a set of tried ones has room for.
pub const MOST_REPAIRS: usize = 128;
/// Actions that are looked ahead at most; the work allowed ends the search long before.
const DEEPEST: u8 = 24;
/// Two costs this near to each other, in shares of themselves, are the same.
const SAME: f64 = 1e-9;

/// What has to be done once before an action, as bits: bit n stands for `setups[n]`.
pub type Needs = u8;

/// Something that cures.
#[derive(Clone, Debug, PartialEq)]
pub struct Repair {
    /// Cost, whole units of money, with the proof that it cured.
    pub cost: f64,
    /// Hypotheses that it cures, by number.
    pub cures: Vec<usize>,
    /// What has to be done before.
    pub needs: Needs,
}

/// Something that tells hypotheses apart.
#[derive(Clone, Debug, PartialEq)]
pub struct Test {
    /// Cost, whole units of money.
    pub cost: f64,
    /// For each outcome its chance under each hypothesis; over the outcomes they add up to 1.
    pub chances: Vec<Vec<f64>>,
    /// What has to be done before.
    pub needs: Needs,
}

/// Everything that can be done, and to what.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// Number of hypotheses.
    pub hypotheses: usize,
    /// Repairs, at most [`MOST_REPAIRS`].
    pub repairs: Vec<Repair>,
    /// Tests; each can be made once, its result would be the same again.
    pub tests: Vec<Test>,
    /// Cost of each thing that has to be done once, at most eight.
    pub setups: Vec<f64>,
    /// Cost of what cures everything; infinite where there is no such thing.
    pub last_resort: f64,
}

/// Why nothing can be planned.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum PlanError {
    /// No repair cures it and there is no last resort.
    #[error("nothing cures hypothesis {0}; add a repair or a last resort")]
    Incurable(usize),
    /// A list of another length than the number of hypotheses.
    #[error("test {0} has an outcome without one chance for each hypothesis")]
    Chances(usize),
    /// Chances that do not add up to 1.
    #[error("the outcomes of test {0} do not add up to 1 under hypothesis {1}")]
    Sum(usize, usize),
    /// More than there is room for.
    #[error("more than {MOST_REPAIRS} repairs or eight setups; leave some out")]
    TooMany,
    /// A cost that is negative or no number, or a cure or need that names nothing.
    #[error("repair or test {0} has a bad cost, cure or need")]
    Bad(usize),
}

/// One thing to do, by its place in the problem.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum PlanStep {
    /// Make this test.
    Test(usize),
    /// Make this repair.
    Repair(usize),
    /// Stop and do what cures everything.
    LastResort,
}

/// How far the work has come: what is believed and what was done.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// Weight of each hypothesis.
    pub weights: Vec<f64>,
    /// What was done once.
    pub done: Needs,
    /// Repairs made in vain, as bits.
    pub tried: u128,
    /// Tests made, with their outcomes, in order of the tests.
    pub seen: Vec<(u16, u16)>,
}

/// An action and what the repair costs from here if it is done now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// The action.
    pub step: PlanStep,
    /// No way of going on after it is cheaper than this.
    pub lower: f64,
    /// One way of going on after it costs this.
    pub upper: f64,
    /// Actions that were looked ahead, this one counted.
    pub depth: u8,
}

/// What to do next.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// Actions, best first.
    pub choices: Vec<Choice>,
    /// The least expected cost of repair is no less than this.
    pub lower: f64,
    /// And no more than this: there is a way that costs it.
    pub upper: f64,
}

impl Plan {
    /// The two bounds meet: the cost is exact and the first choice the best.
    pub fn is_exact(&self) -> bool {
        self.upper - self.lower <= SAME * self.upper.max(1.0)
    }

    /// What to do now; the last resort where nothing else is left.
    pub fn next(&self) -> PlanStep {
        self.choices
            .first()
            .map_or(PlanStep::LastResort, |c| c.step)
    }
}

/// Bounds of a cost, times the weight of the belief.
#[derive(Clone, Copy, Debug)]
struct Bounds {
    lower: f64,
    upper: f64,
}

/// Ran out of the work that was allowed.
struct Exhausted;

impl Course {
    /// The beginning.
    pub fn begin(weights: &[f64]) -> Course {
        Course {
            weights: weights.to_vec(),
            done: 0,
            tried: 0,
            seen: Vec::new(),
        }
    }

    fn total(&self) -> f64 {
        self.weights.iter().sum()
    }

    /// Takes a test for made whose outcome is in the weights already.
    pub fn tick_off(&mut self, test: usize) {
        let place = (self.seen).partition_point(|(other, _)| usize::from(*other) < test);
        if !self.has_tested(test) {
            self.seen.insert(place, (test as u16, u16::MAX));
        }
    }

    fn has_tested(&self, test: usize) -> bool {
        self.seen.iter().any(|(t, _)| usize::from(*t) == test)
    }
}

impl Problem {
    /// Looks for mistakes.
    ///
    /// # Errors
    /// The first one.
    pub fn check(&self) -> Result<(), PlanError> {
        if self.repairs.len() > MOST_REPAIRS || self.setups.len() > 8 {
            return Err(PlanError::TooMany);
        }
        let fits = |needs: Needs| needs.checked_shr(self.setups.len() as u32).unwrap_or(0) == 0;
        let sound = |cost: f64| cost >= 0.0 && cost.is_finite();
        for (n, repair) in self.repairs.iter().enumerate() {
            let known = repair.cures.iter().all(|h| *h < self.hypotheses);
            if !sound(repair.cost) || !known || !fits(repair.needs) {
                return Err(PlanError::Bad(n));
            }
        }
        for (n, test) in self.tests.iter().enumerate() {
            if !sound(test.cost) || !fits(test.needs) {
                return Err(PlanError::Bad(n));
            }
            if test.chances.iter().any(|c| c.len() != self.hypotheses) {
                return Err(PlanError::Chances(n));
            }
            for h in 0..self.hypotheses {
                let sum: f64 = test.chances.iter().map(|c| c[h]).sum();
                // Not a number is no sum either.
                if sum.is_nan() || (sum - 1.0).abs() > 1e-6 {
                    return Err(PlanError::Sum(n, h));
                }
            }
        }
        let cured = |h: &usize| self.repairs.iter().any(|r| r.cures.contains(h));
        let never = (0..self.hypotheses).find(|h| !cured(h));
        match never.filter(|_| !self.last_resort.is_finite()) {
            Some(h) => Err(PlanError::Incurable(h)),
            None => Ok(()),
        }
    }

    /// Cost of an action here, with what has to be done before it and was not yet.
    pub fn cost(&self, step: PlanStep, done: Needs) -> f64 {
        let (cost, needs) = match step {
            PlanStep::Test(t) => (self.tests[t].cost, self.tests[t].needs),
            PlanStep::Repair(r) => (self.repairs[r].cost, self.repairs[r].needs),
            PlanStep::LastResort => return self.last_resort,
        };
        cost + self.setting_up(needs & !done)
    }

    fn setting_up(&self, needs: Needs) -> f64 {
        let wanted = |(n, _): &(usize, &f64)| needs & (1 << n) != 0;
        let costs = self.setups.iter().enumerate().filter(wanted);
        costs.map(|(_, cost)| cost).sum()
    }

    /// What can follow an action: after a test each outcome, after a repair that it cured nothing. Weights
    /// that the way here does not have any more are left out with their branch.
    pub fn after(&self, course: &Course, step: PlanStep) -> Vec<Course> {
        match step {
            PlanStep::LastResort => Vec::new(),
            PlanStep::Repair(r) => {
                let mut next = course.clone();
                next.tried |= 1 << r;
                next.done |= self.repairs[r].needs;
                for h in &self.repairs[r].cures {
                    next.weights[*h] = 0.0;
                }
                Vec::from_iter((next.total() > 0.0).then_some(next))
            }
            PlanStep::Test(t) => {
                let outcomes = self.tests[t].chances.iter().enumerate();
                let branch = |(outcome, chances): (usize, &Vec<f64>)| {
                    let weights = course.weights.iter().zip(chances);
                    let mut next = Course {
                        weights: weights.map(|(w, c)| w * c).collect(),
                        done: course.done | self.tests[t].needs,
                        tried: course.tried,
                        seen: course.seen.clone(),
                    };
                    let place = next
                        .seen
                        .partition_point(|(other, _)| usize::from(*other) < t);
                    next.seen.insert(place, (t as u16, outcome as u16));
                    (next.total() > 0.0).then_some(next)
                };
                outcomes.filter_map(branch).collect()
            }
        }
    }

    /// Repairs alone, each next one that with the most chance for its cost (the best order where the
    /// repairs cure different faults), and the last resort where going on costs more.
    pub fn by_ratio(&self, course: &Course) -> Vec<PlanStep> {
        let mut steps = Vec::new();
        let end = self.repairs_only(course, &mut |step| steps.push(step)).1;
        steps.truncate(end);
        let cured = |h: usize| {
            let cures = |s: &PlanStep| matches!(s, PlanStep::Repair(r) if self.repairs[*r].cures.contains(&h));
            steps.iter().any(cures)
        };
        if (0..self.hypotheses).any(|h| course.weights[h] > 0.0 && !cured(h)) {
            steps.push(PlanStep::LastResort);
        }
        steps
    }

    /// Cost of [`Self::by_ratio`] times the weight, and after how many repairs it gives up or has cured.
    fn repairs_only(&self, course: &Course, each: &mut dyn FnMut(PlanStep)) -> (f64, usize) {
        let mut weights = course.weights.clone();
        let (mut done, mut tried) = (course.done, course.tried);
        let mut best = (f64::INFINITY, 0);
        let mut spent = 0.0;
        for made in 0.. {
            let left: f64 = weights.iter().sum();
            let with_last = spent
                + if left > 0.0 {
                    left * self.last_resort
                } else {
                    0.0
                };
            if with_last < best.0 {
                best = (with_last, made);
            }
            if left <= 0.0 {
                break;
            }
            let mut pick: Option<(f64, usize, f64)> = None;
            for (r, repair) in self.repairs.iter().enumerate() {
                let gain: f64 = if tried & (1 << r) == 0 {
                    repair.cures.iter().map(|h| weights[*h]).sum()
                } else {
                    0.0
                };
                if gain > 0.0 {
                    let cost = repair.cost + self.setting_up(repair.needs & !done);
                    let ratio = gain / cost.max(f64::MIN_POSITIVE);
                    if pick.is_none_or(|(most, ..)| ratio > most) {
                        pick = Some((ratio, r, cost));
                    }
                }
            }
            let Some((_, r, cost)) = pick else { break };
            each(PlanStep::Repair(r));
            spent += left * cost;
            tried |= 1 << r;
            done |= self.repairs[r].needs;
            for h in &self.repairs[r].cures {
                weights[*h] = 0.0;
            }
        }
        best
    }

    /// Every action that can change something here.
    fn actions(&self, course: &Course) -> Vec<PlanStep> {
        let repairs = (0..self.repairs.len()).filter(|r| {
            let cures = &self.repairs[*r].cures;
            course.tried & (1 << r) == 0 && cures.iter().any(|h| course.weights[*h] > 0.0)
        });
        let tests = (0..self.tests.len()).filter(|t| !course.has_tested(*t));
        repairs
            .map(PlanStep::Repair)
            .chain(tests.map(PlanStep::Test))
            .collect()
    }

    /// Ranks every action by the expected cost of repair when it is done now. The search looks further
    /// and further ahead until the bounds meet or it has looked at `work` beliefs; where it stops, the
    /// cost of repairs alone bounds the rest from above and the cost for one who knows the fault from below.
    ///
    /// # Errors
    /// As [`Self::check`].
    pub fn plan(&self, course: &Course, work: u32) -> Result<Plan, PlanError> {
        self.check()?;
        let mut search = Search::new(self, course, work);
        let total = course.total();
        let stop = Choice {
            step: PlanStep::LastResort,
            lower: self.last_resort * total,
            upper: self.last_resort * total,
            depth: 1,
        };
        let mut choices: Vec<Choice> = (search.useful.iter())
            .map(|step| Choice {
                step: *step,
                lower: search.optimistic(course, *step),
                upper: f64::INFINITY,
                depth: 0,
            })
            .collect();
        'deeper: for depth in 1..=DEEPEST {
            let best = |choices: &[Choice]| {
                let least = |a: f64, c: &Choice| a.min(c.upper);
                choices.iter().fold(stop.upper, least)
            };
            let mut settled = true;
            for n in 0..choices.len() {
                let open =
                    depth == 1 || choices[n].upper - choices[n].lower > SAME * choices[n].upper;
                let hopeless = depth > 1 && choices[n].lower >= best(&choices);
                if !open || hopeless {
                    continue;
                }
                settled = false;
                // The first round is never cut short: every action gets a bound.
                search.limited = depth > 1;
                match search.after(course, choices[n].step, depth - 1) {
                    Ok(bounds) => {
                        choices[n] = Choice {
                            step: choices[n].step,
                            lower: bounds.lower.max(choices[n].lower).min(bounds.upper),
                            upper: bounds.upper.min(choices[n].upper),
                            depth,
                        };
                    }
                    Err(Exhausted) => break 'deeper,
                }
            }
            choices.sort_by(by_cost);
            if settled {
                break;
            }
        }
        if self.last_resort.is_finite() && total > 0.0 {
            choices.push(stop);
        }
        choices.sort_by(by_cost);
        let scale = if total > 0.0 { total } else { 1.0 };
        for choice in &mut choices {
            choice.lower /= scale;
            choice.upper /= scale;
        }
        let least = |of: fn(&Choice) -> f64| choices.iter().map(of).reduce(f64::min);
        Ok(Plan {
            lower: least(|c| c.lower).unwrap_or(0.0),
            upper: least(|c| c.upper).unwrap_or(0.0),
            choices,
        })
    }
}

fn by_cost(a: &Choice, b: &Choice) -> Ordering {
    (a.upper.total_cmp(&b.upper))
        .then(a.lower.total_cmp(&b.lower))
        .then(a.step.cmp(&b.step))
}

/// What was done on the way, in no order: the same belief however it was reached.
type Way = (Vec<(u16, u16)>, u128, u8);

struct Search<'a> {
    problem: &'a Problem,
    /// Actions worth looking at from here on; of tests that tell the same, the cheapest.
    useful: Vec<PlanStep>,
    /// For each set of things done once, the cheapest cure of each hypothesis.
    cheapest: Vec<Vec<f64>>,
    known: BTreeMap<Way, Bounds>,
    left: u32,
    limited: bool,
}

impl<'a> Search<'a> {
    fn new(problem: &'a Problem, course: &Course, work: u32) -> Search<'a> {
        let cheapest = (0..1_usize << problem.setups.len())
            .map(|done| {
                let mut least = vec![problem.last_resort; problem.hypotheses];
                for (r, repair) in problem.repairs.iter().enumerate() {
                    if course.tried & (1 << r) == 0 {
                        let cost = problem.cost(PlanStep::Repair(r), done as Needs);
                        for h in &repair.cures {
                            least[*h] = least[*h].min(cost);
                        }
                    }
                }
                least
            })
            .collect();
        let mut search = Search {
            problem,
            useful: Vec::new(),
            cheapest,
            known: BTreeMap::new(),
            left: work,
            limited: true,
        };
        search.useful = search.different(course);
        search
    }

    /// The actions left when tests that tell nothing, or the same as a cheaper one, are left out.
    fn different(&self, course: &Course) -> Vec<PlanStep> {
        let problem = self.problem;
        let live: Vec<usize> = (0..problem.hypotheses)
            .filter(|h| course.weights[*h] > 0.0)
            .collect();
        // Outcomes in the order of what they say, so that their numbering does not count.
        let told = |t: usize| -> Vec<Vec<i64>> {
            let rows = problem.tests[t].chances.iter();
            let rows = rows.map(|row| live.iter().map(|h| (row[*h] * 1e6) as i64).collect());
            let mut rows: Vec<Vec<i64>> = rows.collect();
            rows.retain(|row| row.iter().any(|c| *c > 0));
            rows.sort();
            rows
        };
        let mut kept: BTreeMap<(Vec<Vec<i64>>, Needs), usize> = BTreeMap::new();
        let mut steps = Vec::new();
        for step in problem.actions(course) {
            let PlanStep::Test(t) = step else {
                steps.push(step);
                continue;
            };
            let rows = told(t);
            let says_nothing = rows
                .iter()
                .all(|row| row.windows(2).all(|two| two[0] == two[1]));
            if !says_nothing {
                let best = kept.entry((rows, problem.tests[t].needs)).or_insert(t);
                if problem.tests[t].cost < problem.tests[*best].cost {
                    *best = t;
                }
            }
        }
        let mut tests: Vec<usize> = kept.into_values().collect();
        tests.sort_unstable();
        steps.extend(tests.into_iter().map(PlanStep::Test));
        steps
    }

    /// What it would cost someone who knows the fault.
    fn for_one_who_knows(&self, weights: &[f64], done: Needs) -> f64 {
        let least = &self.cheapest[usize::from(done)];
        (weights.iter().zip(least))
            .map(|(w, cost)| if *w > 0.0 { w * cost } else { 0.0 })
            .sum()
    }

    /// No way of going on after `step` is cheaper than this.
    fn optimistic(&self, course: &Course, step: PlanStep) -> f64 {
        let problem = self.problem;
        let paid = problem.cost(step, course.done) * course.total();
        match step {
            PlanStep::LastResort => paid,
            PlanStep::Test(t) => {
                let done = course.done | problem.tests[t].needs;
                paid + self.for_one_who_knows(&course.weights, done)
            }
            PlanStep::Repair(r) => {
                let repair = &problem.repairs[r];
                let done = course.done | repair.needs;
                let least = &self.cheapest[usize::from(done)];
                let cured: f64 = (repair.cures.iter())
                    .filter(|h| course.weights[**h] > 0.0)
                    .map(|h| course.weights[*h] * least[*h])
                    .sum();
                paid + self.for_one_who_knows(&course.weights, done) - cured
            }
        }
    }

    /// Bounds when `step` is done now and `depth` more actions are looked at.
    fn after(&mut self, course: &Course, step: PlanStep, depth: u8) -> Result<Bounds, Exhausted> {
        let paid = self.problem.cost(step, course.done) * course.total();
        let mut sum = Bounds {
            lower: paid,
            upper: paid,
        };
        for next in self.problem.after(course, step) {
            let bounds = self.solve(&next, depth)?;
            sum.lower += bounds.lower;
            sum.upper += bounds.upper;
        }
        Ok(sum)
    }

    fn solve(&mut self, course: &Course, depth: u8) -> Result<Bounds, Exhausted> {
        if self.limited {
            self.left = self.left.checked_sub(1).ok_or(Exhausted)?;
        }
        let mut bounds = Bounds {
            lower: self.for_one_who_knows(&course.weights, course.done),
            upper: self.problem.repairs_only(course, &mut |_| ()).0,
        };
        // Rounding must not turn the two round.
        bounds.lower = bounds.lower.min(bounds.upper);
        if depth == 0 || bounds.upper - bounds.lower <= SAME * bounds.upper {
            return Ok(bounds);
        }
        let way = (course.seen.clone(), course.tried, depth);
        if let Some(known) = self.known.get(&way) {
            return Ok(*known);
        }
        let mut hopes: Vec<(f64, PlanStep)> = (self.useful.iter())
            .filter(|step| match step {
                PlanStep::Test(t) => !course.has_tested(*t),
                PlanStep::Repair(r) => {
                    let cures = &self.problem.repairs[*r].cures;
                    course.tried & (1 << r) == 0 && cures.iter().any(|h| course.weights[*h] > 0.0)
                }
                PlanStep::LastResort => false,
            })
            .map(|step| (self.optimistic(course, *step), *step))
            .collect();
        hopes.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
        let mut lower = self.problem.last_resort * course.total();
        for (hope, step) in hopes {
            // All that follow cost at least as much as a way that is known.
            if hope >= bounds.upper {
                break;
            }
            let found = self.after(course, step, depth - 1)?;
            lower = lower.min(found.lower);
            bounds.upper = bounds.upper.min(found.upper);
        }
        bounds.lower = bounds.lower.max(lower.min(bounds.upper));
        self.known.insert(way, bounds);
        Ok(bounds)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Work that no case here needs.
    const AMPLE: u32 = 2_000_000;

    fn repair(cost: f64, cures: &[usize]) -> Repair {
        Repair {
            cost,
            cures: cures.to_vec(),
            needs: 0,
        }
    }

    fn one_each(costs: &[f64]) -> Problem {
        Problem {
            hypotheses: costs.len(),
            repairs: (costs.iter().enumerate())
                .map(|(h, cost)| repair(*cost, &[h]))
                .collect(),
            tests: Vec::new(),
            setups: Vec::new(),
            last_resort: f64::INFINITY,
        }
    }

    #[track_caller]
    fn check_order(p: &[f64], costs: &[f64], order: &[usize], expected: f64) {
        let problem = one_each(costs);
        let course = Course::begin(p);
        let steps: Vec<PlanStep> = order.iter().map(|n| PlanStep::Repair(n - 1)).collect();
        assert_eq!(problem.by_ratio(&course), steps);
        let plan = problem.plan(&course, AMPLE).expect("sound");
        assert!(plan.is_exact(), "{plan:?}");
        assert!((plan.upper - expected).abs() < 1e-9, "{plan:?}");
        assert_eq!(plan.next(), steps[0]);
    }

    #[test]
    fn repairs_of_single_faults_are_best_tried_by_chance_over_cost() {
        // Theorem: Heckerman, Breese and Rommelse, "Decision-Theoretic Troubleshooting" (1995), abstract; the
        // numbers are independent arithmetic.
        check_order(&[0.5, 0.3, 0.2], &[10.0, 3.0, 1.0], &[3, 2, 1], 8.4);
        check_order(
            &[0.4, 0.3, 0.2, 0.1],
            &[8.0, 2.0, 5.0, 1.0],
            &[2, 4, 1, 3],
            8.5,
        );
        // The same search for one prize in boxes, worked in print: cs.stackexchange.com, question 144646.
        check_order(&[0.8, 0.2], &[3.0, 2.0], &[1, 2], 3.4);
    }

    #[test]
    fn the_worse_orders_cost_what_they_are_said_to() {
        // As above: 1, 2, 3 costs 11.7; in the worked example 2, 1 costs 4.4.
        let cost = |p: &[f64], costs: &[f64], order: &[usize]| -> f64 {
            let problem = one_each(costs);
            let spent = super::super::policy::order_costs(&problem, order);
            super::super::policy::expected(p, &spent)
        };
        assert!((cost(&[0.5, 0.3, 0.2], &[10.0, 3.0, 1.0], &[0, 1, 2]) - 11.7).abs() < 1e-9);
        assert!((cost(&[0.8, 0.2], &[3.0, 2.0], &[1, 0]) - 4.4).abs() < 1e-9);
    }

    #[test]
    fn a_test_is_made_when_it_is_worth_more_than_it_costs() {
        let mut problem = one_each(&[100.0, 100.0]);
        let sure = vec![vec![1.0, 0.0], vec![0.0, 1.0]];
        for (cost, first, expected) in [
            (40.0, PlanStep::Test(0), 140.0),
            // Half the time the first repair is in vain: knowing is worth 50.
            (60.0, PlanStep::Repair(0), 150.0),
        ] {
            let chances = sure.clone();
            problem.tests = vec![Test {
                cost,
                chances,
                needs: 0,
            }];
            let plan = problem
                .plan(&Course::begin(&[0.5, 0.5]), AMPLE)
                .expect("sound");
            assert_eq!(plan.next(), first);
            assert!(
                plan.is_exact() && (plan.upper - expected).abs() < 1e-9,
                "{plan:?}"
            );
        }
    }

    #[test]
    fn what_is_done_once_is_paid_once() {
        let mut problem = one_each(&[10.0, 10.0]);
        problem.setups = vec![7.0];
        problem.repairs[0].needs = 1;
        problem.repairs[1].needs = 1;
        let plan = problem
            .plan(&Course::begin(&[0.5, 0.5]), AMPLE)
            .expect("sound");
        assert!(
            (plan.upper - (7.0 + 10.0 + 0.5 * 10.0)).abs() < 1e-9,
            "{plan:?}"
        );
    }

    #[test]
    fn the_last_resort_ends_what_would_cost_more() {
        let mut problem = one_each(&[10.0, 10.0, 500.0]);
        problem.last_resort = 100.0;
        let course = Course::begin(&[0.5, 0.3, 0.2]);
        let plan = problem.plan(&course, AMPLE).expect("sound");
        assert!(
            (plan.upper - (10.0 + 0.5 * 10.0 + 0.2 * 100.0)).abs() < 1e-9,
            "{plan:?}"
        );
        let ends = [
            PlanStep::Repair(0),
            PlanStep::Repair(1),
            PlanStep::LastResort,
        ];
        assert_eq!(problem.by_ratio(&course), ends);
    }

    #[test]
    fn mistakes_in_a_problem_are_named() {
        let mut problem = one_each(&[1.0, 1.0]);
        problem.hypotheses = 3;
        assert_eq!(problem.check(), Err(PlanError::Incurable(2)));
        problem.hypotheses = 2;
        problem.repairs[1].needs = 1;
        assert_eq!(problem.check(), Err(PlanError::Bad(1)));
        problem.repairs[1].needs = 0;
        problem.tests = vec![Test {
            cost: 1.0,
            chances: vec![vec![0.5, 0.5], vec![0.5, 0.4]],
            needs: 0,
        }];
        assert_eq!(problem.check(), Err(PlanError::Sum(0, 1)));
        problem.tests[0].chances[1] = vec![0.5];
        assert_eq!(problem.check(), Err(PlanError::Chances(0)));
        problem.repairs = vec![repair(1.0, &[0, 1]); MOST_REPAIRS + 1];
        assert_eq!(problem.check(), Err(PlanError::TooMany));
    }

    /// Every strategy there is, tried to its end: normalised belief, no memory, no bound, no order.
    fn exhaustive(problem: &Problem, belief: &[f64], open: &[PlanStep], done: Needs) -> f64 {
        if belief.iter().all(|p| *p == 0.0) {
            return 0.0;
        }
        let mut least = problem.last_resort;
        for step in open {
            let rest: Vec<PlanStep> = open.iter().copied().filter(|s| s != step).collect();
            let (needs, mut cost) = match *step {
                PlanStep::Repair(r) => (problem.repairs[r].needs, problem.repairs[r].cost),
                PlanStep::Test(t) => (problem.tests[t].needs, problem.tests[t].cost),
                PlanStep::LastResort => continue,
            };
            for (n, setup) in problem.setups.iter().enumerate() {
                if needs & !done & (1 << n) != 0 {
                    cost += setup;
                }
            }
            let branches: Vec<Vec<f64>> = match *step {
                PlanStep::Repair(r) => {
                    let uncured = |(h, p): (usize, &f64)| {
                        if problem.repairs[r].cures.contains(&h) {
                            0.0
                        } else {
                            *p
                        }
                    };
                    vec![belief.iter().enumerate().map(uncured).collect()]
                }
                PlanStep::Test(t) => (problem.tests[t].chances.iter())
                    .map(|row| belief.iter().zip(row).map(|(p, c)| p * c).collect())
                    .collect(),
                PlanStep::LastResort => continue,
            };
            for branch in branches {
                let chance: f64 = branch.iter().sum();
                if chance > 0.0 {
                    let next: Vec<f64> = branch.iter().map(|p| p / chance).collect();
                    cost += chance * exhaustive(problem, &next, &rest, done | needs);
                }
            }
            least = least.min(cost);
        }
        least
    }

    /// Problems small enough to try everything: 2 to 4 faults, 2 to 4 repairs, none to 2 tests, two setups.
    fn small() -> impl Strategy<Value = (Problem, Vec<f64>)> {
        (2..5_usize, 2..5_usize, 0..3_usize).prop_flat_map(|(hypotheses, repairs, tests)| {
            let repair = (
                1.0..100.0f64,
                proptest::collection::vec(any::<bool>(), hypotheses),
                0..4_u8,
            );
            let row = proptest::collection::vec(
                prop_oneof![Just(0.0), Just(1.0), 0.0..1.0f64],
                hypotheses,
            );
            let test = (0.5..40.0f64, row, 0..4_u8);
            (
                proptest::collection::vec(repair, repairs),
                proptest::collection::vec(test, tests),
                proptest::collection::vec(0.0..20.0f64, 2),
                50.0..300.0f64,
                proptest::collection::vec(0.01..1.0f64, hypotheses),
            )
                .prop_map(move |(repairs, tests, setups, last_resort, weights)| {
                    let total: f64 = weights.iter().sum();
                    let cures = |marks: Vec<bool>| (0..hypotheses).filter(|h| marks[*h]).collect();
                    let problem = Problem {
                        hypotheses,
                        repairs: repairs
                            .into_iter()
                            .map(|(cost, marks, needs)| Repair {
                                cost,
                                cures: cures(marks),
                                needs,
                            })
                            .collect(),
                        tests: tests
                            .into_iter()
                            .map(|(cost, row, needs)| {
                                let other = row.iter().map(|c| 1.0 - c).collect();
                                Test {
                                    cost,
                                    chances: vec![row, other],
                                    needs,
                                }
                            })
                            .collect(),
                        setups,
                        last_resort,
                    };
                    (problem, weights.iter().map(|w| w / total).collect())
                })
        })
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn no_strategy_is_cheaper_than_the_plan((problem, weights) in small()) {
            let course = Course::begin(&weights);
            let open = problem.actions(&course);
            let least = exhaustive(&problem, &weights, &open, 0);
            let plan = problem.plan(&course, AMPLE).expect("sound");
            prop_assert!(plan.is_exact(), "{plan:?}");
            prop_assert!((plan.upper - least).abs() < 1e-6 * least, "{least} {plan:?}");
            // Doing what it says, again and again, costs what it says.
            let spent = super::super::policy::best_costs(&problem, &course, AMPLE).expect("sound");
            let paid = super::super::policy::expected(&weights, &spent);
            prop_assert!((paid - least).abs() < 1e-6 * least, "{least} {paid}");
        }

        #[test]
        fn a_dearer_copy_of_an_action_is_never_ranked_above_it(
            (problem, weights) in small(), which in any::<prop::sample::Index>(), more in 0.1..50.0f64,
        ) {
            let course = Course::begin(&weights);
            let mut problem = problem;
            let n = which.index(problem.repairs.len() + problem.tests.len());
            let (better, worse) = if n < problem.repairs.len() {
                let mut copy = problem.repairs[n].clone();
                copy.cost += more;
                problem.repairs.push(copy);
                (PlanStep::Repair(n), PlanStep::Repair(problem.repairs.len() - 1))
            } else {
                let n = n - problem.repairs.len();
                let mut copy = problem.tests[n].clone();
                copy.cost += more;
                problem.tests.push(copy);
                (PlanStep::Test(n), PlanStep::Test(problem.tests.len() - 1))
            };
            let plan = problem.plan(&course, AMPLE).expect("sound");
            let upper = |step| plan.choices.iter().find(|c| c.step == step).map(|c| c.upper);
            prop_assert!(plan.next() != worse, "{plan:?}");
            if let Some((better, worse)) = upper(better).zip(upper(worse)) {
                prop_assert!(better <= worse + 1e-9, "{plan:?}");
            }
        }

        #[test]
        fn short_of_work_its_bounds_still_hold((problem, weights) in small(), work in 0..30_u32) {
            let course = Course::begin(&weights);
            let open = problem.actions(&course);
            let least = exhaustive(&problem, &weights, &open, 0);
            let plan = problem.plan(&course, work).expect("sound");
            prop_assert!(plan.lower <= least * (1.0 + 1e-9), "{least} {plan:?}");
            prop_assert!(plan.upper >= least * (1.0 - 1e-9), "{least} {plan:?}");
        }
    }
}
