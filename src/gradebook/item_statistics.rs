//! What a class says about its jobs: classical item statistics, and what went wrong most often.

use super::{Gradebook, GradedAttempt};
use detent_training::lesson::{Dimension, LossKind};
use std::collections::BTreeMap;

/// Fewest learners from which a discrimination is told. Our own choice: with fewer one learner turns its sign.
pub const FEWEST_LEARNERS: usize = 5;

/// What a class says about one job. One learner counts once, by the attempt that counts.
#[derive(Clone, Debug, PartialEq)]
pub struct ItemStatistics {
    /// The job.
    pub job: String,
    /// Learners with a verified attempt at it.
    pub learners: usize,
    /// Those who passed.
    pub passed: usize,
    /// Classical difficulty: the mean share of the points, 0 to 1, so that an easy job has a high one.
    pub difficulty: Option<f64>,
    /// Discrimination: the corrected item-total correlation, -1 to 1; none for fewer than [`FEWEST_LEARNERS`], or where
    /// all did the same.
    pub discrimination: Option<f64>,
    /// Reasons for lost points but for unsafe acts, those of most learners first.
    pub losses: Vec<LossCount>,
    /// Unsafe acts, those of most learners first.
    pub unsafe_acts: Vec<LossCount>,
    /// Codes that were noted and never shown, those of most learners first.
    pub misread: Vec<MisreadCount>,
}

/// How often a reason came up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LossCount {
    /// The reason.
    pub kind: LossKind,
    /// Learners to whom it happened.
    pub learners: usize,
    /// Points that it cost all of them together.
    pub points: f64,
}

/// How often a code was misread.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MisreadCount {
    /// The code noted.
    pub noted: u8,
    /// Learners who noted it.
    pub learners: usize,
    /// Codes that were shown to them, each once, in their order.
    pub shown: Vec<u8>,
}

/// Mean of the shares, 0 to 1; none without one.
pub fn difficulty(shares: &[f64]) -> Option<f64> {
    (!shares.is_empty()).then(|| shares.iter().sum::<f64>() / shares.len() as f64)
}

/// Correlation of this item with the rest of the test: Pearson's, between the shares of the item and the mean share of the
/// same learner's other items, so that an item is never held against itself. `rows` has one row a learner, one column an
/// item. Whoever lacks the item, or has no other, is left out; where all did all of them, the mean of the others comes to
/// the same as their sum.
///
/// None with fewer than [`FEWEST_LEARNERS`] learners left, or where one of both does not vary.
pub fn corrected_item_total(rows: &[Vec<Option<f64>>], item: usize) -> Option<f64> {
    let pairs: Vec<(f64, f64)> = (rows.iter())
        .filter_map(|row| {
            let own = (*row.get(item)?)?;
            let others = row.iter().enumerate().filter(|(n, _)| *n != item);
            let others: Vec<f64> = others.filter_map(|(_, share)| *share).collect();
            Some((own, difficulty(&others)?))
        })
        .collect();
    if pairs.len() < FEWEST_LEARNERS {
        return None;
    }
    let count = pairs.len() as f64;
    let mean = |side: fn(&(f64, f64)) -> f64| pairs.iter().map(side).sum::<f64>() / count;
    let (mean_own, mean_rest) = (mean(|pair| pair.0), mean(|pair| pair.1));
    let (mut own_squares, mut rest_squares, mut products) = (0.0, 0.0, 0.0);
    for (own, rest) in &pairs {
        let (own, rest) = (own - mean_own, rest - mean_rest);
        own_squares += own * own;
        rest_squares += rest * rest;
        products += own * rest;
    }
    // What does not vary is left with the rounding of its mean.
    const NOTHING: f64 = 1e-20;
    (own_squares > NOTHING && rest_squares > NOTHING)
        .then(|| products / (own_squares * rest_squares).sqrt())
}

/// What this class says about each of its jobs, in their order. `seats` are its learners.
pub fn item_statistics(book: &Gradebook, seats: &[u32]) -> Vec<ItemStatistics> {
    let counting = |seat: u32| {
        let jobs = book.jobs().iter();
        jobs.map(move |job| book.counting(seat, job)).collect()
    };
    let attempts: Vec<Vec<Option<&GradedAttempt>>> =
        seats.iter().map(|seat| counting(*seat)).collect();
    let share = |attempt: &&GradedAttempt| attempt.result.share();
    let shares: Vec<Vec<Option<f64>>> = (attempts.iter())
        .map(|row| {
            row.iter()
                .map(|attempt| attempt.as_ref().map(share))
                .collect()
        })
        .collect();
    let jobs = book.jobs().iter().enumerate();
    jobs.map(|(item, job)| {
        let of_job: Vec<&GradedAttempt> = attempts.iter().filter_map(|row| row[item]).collect();
        let shares_of_job: Vec<f64> = shares.iter().filter_map(|row| row[item]).collect();
        ItemStatistics {
            job: job.clone(),
            learners: of_job.len(),
            passed: of_job
                .iter()
                .filter(|attempt| attempt.result.passed)
                .count(),
            difficulty: difficulty(&shares_of_job),
            discrimination: corrected_item_total(&shares, item),
            losses: losses(&of_job, |side| side != Dimension::Safety),
            unsafe_acts: losses(&of_job, |side| side == Dimension::Safety),
            misread: misread(&of_job),
        }
    })
    .collect()
}

/// Reasons for points that were lost on these sides.
fn losses(attempts: &[&GradedAttempt], counts: impl Fn(Dimension) -> bool) -> Vec<LossCount> {
    let mut found: BTreeMap<LossKind, (usize, f64)> = BTreeMap::new();
    for attempt in attempts {
        let mut of_learner: BTreeMap<LossKind, f64> = BTreeMap::new();
        for (_, lost) in attempt.result.lost().filter(|(side, _)| counts(*side)) {
            *of_learner.entry(lost.loss.kind()).or_default() += lost.points;
        }
        for (kind, points) in of_learner {
            let (learners, all) = found.entry(kind).or_default();
            *learners += 1;
            *all += points;
        }
    }
    let mut found: Vec<LossCount> = (found.into_iter())
        .map(|(kind, (learners, points))| LossCount {
            kind,
            learners,
            points,
        })
        .collect();
    // The sort is stable: of equals the kind that stands first in the list of kinds comes first.
    found.sort_by(|a, b| (b.learners.cmp(&a.learners)).then(b.points.total_cmp(&a.points)));
    found
}

/// Codes that were misread.
fn misread(attempts: &[&GradedAttempt]) -> Vec<MisreadCount> {
    let mut found: BTreeMap<u8, MisreadCount> = BTreeMap::new();
    for attempt in attempts {
        let mut of_learner: BTreeMap<u8, Vec<u8>> = BTreeMap::new();
        for code in attempt.result.misread() {
            of_learner.entry(code.noted).or_default().extend(code.shown);
        }
        for (noted, shown) in of_learner {
            let count = found.entry(noted).or_insert_with(|| MisreadCount {
                noted,
                learners: 0,
                shown: Vec::new(),
            });
            count.learners += 1;
            count.shown.extend(shown);
        }
    }
    let mut found: Vec<MisreadCount> = found.into_values().collect();
    for count in &mut found {
        count.shown.sort_unstable();
        count.shown.dedup();
    }
    found.sort_by_key(|count| std::cmp::Reverse(count.learners));
    found
}

#[cfg(test)]
mod tests;
