//! Which node to eliminate when, and which numbers that touches: worked out once, then replayed.
//!
//! Eliminating a node replaces the star of admittances around it by a mesh between its neighbours:
//! y(i,j) gains y(i,k)·y(k,j)/Σy(k,·). Ground counts as a neighbour like any other, so no diagonal
//! is ever stored: the divisor is the sum of what leaves the node. That is Gaussian elimination
//! in another bookkeeping, with the same number of operations, but where all admittances are
//! positive nothing is ever subtracted. A gigaohm beside a milliohm then keeps all its digits,
//! where a stored diagonal of 1000 S would round the 1e-9 S off to four. (The same device is known
//! for Markov chains: Grassmann, Taksar and Heyman, Operations Research 33, 1985.)
//!
//! There is no pivoting. The real part of a passive network's nodal matrix is positive definite
//! (v*·Y·v has the power taken up by the network as its real part, and the leak from every node to
//! ground makes it positive), and each mesh that replaces a star takes up the same power, so the
//! next matrix has the property again. A divisor is one diagonal element of such a matrix and
//! cannot be zero. It can be small where inductive and capacitive susceptance cancel to the last
//! digits, and then costs digits (a test has the worst case). An active two-port can break the
//! argument in principle; a motor's winding resistance keeps a machine's network clear of that.

use super::Scalar;
use std::collections::BTreeSet;

/// The plan. Values live in one flat array, one block for each node in order of elimination:
/// admittance to ground, then out to each neighbour still there, then in from each of them.
#[derive(Clone, Debug)]
pub(super) struct Elimination {
    /// Place in the order of elimination of each node (0 = first node after ground).
    position: Vec<u32>,
    steps: Vec<EliminationStep>,
    /// Neighbours by position, ascending, for all steps in turn.
    neighbours: Vec<u32>,
    /// Where the products go, counted from the end of the step's own block: for each neighbour i,
    /// its ground admittance, then y(i,j) for each other neighbour j.
    targets: Vec<u32>,
    /// Length of the array of values.
    len: usize,
}

#[derive(Clone, Copy, Debug)]
struct EliminationStep {
    /// Number of neighbours.
    degree: u32,
    /// Start of the block in the array of values.
    block: u32,
    /// Start in `neighbours`.
    first: u32,
}

impl Elimination {
    /// Plan for `nodes` nodes of which the pairs in `coupled` (smaller first) act on each other.
    pub fn plan(nodes: usize, coupled: &BTreeSet<(usize, usize)>) -> Elimination {
        let position = minimum_degree(nodes, coupled);
        let mut adjacent = vec![BTreeSet::new(); nodes];
        for (a, b) in coupled {
            let (a, b) = (position[*a], position[*b]);
            adjacent[a.min(b) as usize].insert(a.max(b));
        }
        let mut plan = Elimination {
            position,
            steps: Vec::with_capacity(nodes),
            neighbours: Vec::new(),
            targets: Vec::new(),
            len: 0,
        };
        for k in 0..nodes {
            let around: Vec<u32> = std::mem::take(&mut adjacent[k]).into_iter().collect();
            for (at, i) in around.iter().enumerate() {
                adjacent[*i as usize].extend(&around[at + 1..]);
            }
            plan.steps.push(EliminationStep {
                degree: around.len() as u32,
                block: plan.len as u32,
                first: plan.neighbours.len() as u32,
            });
            plan.len += 1 + 2 * around.len();
            plan.neighbours.extend(around);
        }
        for k in 0..nodes {
            let around = plan.around(k).to_vec();
            let end = plan.steps[k].block + 1 + 2 * plan.steps[k].degree;
            for i in &around {
                plan.targets.push(plan.ground_slot(*i) - end);
                for j in around.iter().filter(|j| *j != i) {
                    let slot = plan.slot(*i, *j);
                    plan.targets.push(slot - end);
                }
            }
        }
        plan
    }

    /// Place of node `index` (from 0, ground left out) in the order of elimination.
    pub fn position(&self, index: usize) -> u32 {
        self.position[index]
    }

    /// How many values the elimination works on.
    pub fn len(&self) -> usize {
        self.len
    }

    /// Where the admittance from position `i` to ground is kept.
    pub fn ground_slot(&self, i: u32) -> u32 {
        self.steps[i as usize].block
    }

    /// Where the admittance by which the voltage at position `j` drives current into position `i`
    /// is kept. The two must be coupled or become so.
    pub fn slot(&self, i: u32, j: u32) -> u32 {
        let (early, late) = (i.min(j), i.max(j));
        let step = self.steps[early as usize];
        let at = self
            .around(early as usize)
            .binary_search(&late)
            .expect("the plan holds every coupled pair") as u32;
        let out = step.block + 1 + at;
        if i == early { out } else { out + step.degree }
    }

    /// Eliminate all nodes, and turn the currents `x` fed into each position into what is fed into
    /// it once the earlier ones are gone. On return `inverses` holds 1/Σy of each, and the entries
    /// in from each neighbour are multiplied by it.
    ///
    /// Doing both at once costs little more than the elimination alone: the divisions are a chain
    /// that the processor waits for, and the currents fill the waiting.
    pub fn factor<T: Scalar>(&self, values: &mut [T], inverses: &mut [T], x: &mut [T]) {
        let mut rest = values;
        let mut targets = &self.targets[..];
        let mut neighbours = &self.neighbours[..];
        for (k, (step, inverse)) in self.steps.iter().zip(inverses).enumerate() {
            let degree = step.degree as usize;
            let (block, later) = rest.split_at_mut(1 + 2 * degree);
            let (star, inward) = block.split_at_mut(1 + degree);
            let (around, further) = neighbours.split_at(degree);
            let mut sum = star[0];
            for y in &star[1..] {
                sum += *y;
            }
            *inverse = sum.recip();
            let current = x[k];
            for (row, (y_in, i)) in inward.iter_mut().zip(around).enumerate() {
                let share = *y_in * *inverse;
                *y_in = share;
                x[*i as usize] += share * current;
                let (own, others) = targets.split_at(degree);
                targets = others;
                let before = star[..=row].iter();
                let after = star[row + 2..].iter();
                for (target, y_out) in own.iter().zip(before.chain(after)) {
                    later[*target as usize] += share * *y_out;
                }
            }
            rest = later;
            neighbours = further;
        }
    }

    /// What [`Elimination::factor`] does to the currents, alone, with what it left in `values`.
    pub fn feed<T: Scalar>(&self, values: &[T], x: &mut [T]) {
        for (k, step) in self.steps.iter().enumerate() {
            let current = x[k];
            let inward = step.block as usize + 1 + step.degree as usize;
            let shares = &values[inward..inward + step.degree as usize];
            for (i, share) in self.around(k).iter().zip(shares) {
                x[*i as usize] += *share * current;
            }
        }
    }

    /// Turn the currents that `factor` or `feed` left into voltages, last node first.
    pub fn substitute<T: Scalar>(&self, values: &[T], inverses: &[T], x: &mut [T]) {
        let steps = self.steps.iter().zip(inverses).enumerate().rev();
        for (k, (step, inverse)) in steps {
            let outward = step.block as usize + 1;
            let star = &values[outward..outward + step.degree as usize];
            let mut current = x[k];
            for (j, y) in self.around(k).iter().zip(star) {
                current += *y * x[*j as usize];
            }
            x[k] = current * *inverse;
        }
    }

    #[inline]
    fn around(&self, k: usize) -> &[u32] {
        let step = self.steps[k];
        &self.neighbours[step.first as usize..(step.first + step.degree) as usize]
    }
}

/// Order of elimination with little fill: place of each node.
fn minimum_degree(nodes: usize, coupled: &BTreeSet<(usize, usize)>) -> Vec<u32> {
    // The crate counts entries beside a full diagonal.
    let mut columns: Vec<Vec<usize>> = (0..nodes).map(|node| vec![node]).collect();
    for (a, b) in coupled {
        columns[*a].push(*b);
        columns[*b].push(*a);
    }
    let mut starts = vec![0];
    let mut rows = Vec::new();
    for column in &mut columns {
        column.sort_unstable();
        rows.append(column);
        starts.push(rows.len());
    }
    let (_, position, _) = amd::order(nodes, &starts, &rows, &amd::Control::default())
        .expect("columns are sorted and every entry lies in the matrix");
    position.into_iter().map(|p| p as u32).collect()
}
