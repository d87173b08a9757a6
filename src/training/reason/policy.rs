//! What a way of working costs under each hypothesis.

use super::plan::{Course, PlanError, PlanStep, Problem};

/// Where the belief that is left weighs less than this share, repairs alone are tried: looking ahead
/// there could not change the expected cost by more than this share of the last resort.
const LIGHT: f64 = 1e-4;

/// Mean of costs under a belief that adds up to 1.
pub fn expected(shares: &[f64], costs: &[f64]) -> f64 {
    let paid = |(share, cost): (&f64, &f64)| if *share > 0.0 { share * cost } else { 0.0 };
    shares.iter().zip(costs).map(paid).sum()
}

/// Cost under each hypothesis of trying repairs in this order until one cures, then the last
/// resort. Repairs that stand in it twice are made once.
pub fn order_costs(problem: &Problem, order: &[usize]) -> Vec<f64> {
    let mut costs = vec![0.0; problem.hypotheses];
    let mut cured = vec![false; problem.hypotheses];
    let (mut done, mut tried) = (0, 0_u128);
    for r in order {
        if tried & (1 << r) != 0 {
            continue;
        }
        tried |= 1 << r;
        let cost = problem.cost(PlanStep::Repair(*r), done);
        done |= problem.repairs[*r].needs;
        for (h, spent) in costs.iter_mut().enumerate() {
            if !cured[h] {
                *spent += cost;
            }
        }
        for h in &problem.repairs[*r].cures {
            cured[*h] = true;
        }
    }
    for (h, spent) in costs.iter_mut().enumerate() {
        if !cured[h] {
            *spent += problem.last_resort;
        }
    }
    costs
}

/// Expected cost under each hypothesis of always doing what [`Problem::plan`] puts first, with so
/// much `work` for each step.
///
/// # Errors
/// As [`Problem::check`].
pub fn best_costs(problem: &Problem, course: &Course, work: u32) -> Result<Vec<f64>, PlanError> {
    let total: f64 = course.weights.iter().sum();
    follow(problem, course, work, LIGHT * total)
}

fn follow(
    problem: &Problem,
    course: &Course,
    work: u32,
    light: f64,
) -> Result<Vec<f64>, PlanError> {
    let total: f64 = course.weights.iter().sum();
    if total < light {
        return Ok(repairs_alone(problem, course));
    }
    let step = problem.plan(course, work)?.next();
    let mut costs = vec![problem.cost(step, course.done); problem.hypotheses];
    for next in problem.after(course, step) {
        let further = follow(problem, &next, work, light)?;
        for h in 0..problem.hypotheses {
            // Of what is believed of this fault, this share comes this way.
            if course.weights[h] > 0.0 {
                costs[h] += next.weights[h] / course.weights[h] * further[h];
            }
        }
    }
    Ok(costs)
}

fn repairs_alone(problem: &Problem, course: &Course) -> Vec<f64> {
    let mut costs = vec![0.0; problem.hypotheses];
    let mut weights = course.weights.clone();
    let mut done = course.done;
    for step in problem.by_ratio(course) {
        let cost = problem.cost(step, done);
        for h in 0..problem.hypotheses {
            if weights[h] > 0.0 {
                costs[h] += cost;
            }
        }
        if let PlanStep::Repair(r) = step {
            done |= problem.repairs[r].needs;
            for h in &problem.repairs[r].cures {
                weights[*h] = 0.0;
            }
        }
    }
    costs
}
