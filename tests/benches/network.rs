//! Full network solves with changed values, beside two rivals on the same 40-node ladder:
//! faer's sparse LU with its symbolic part done once, and ngspice's own AC sweep.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "a benchmark looks at the clock"
)]

#[path = "../spice/mod.rs"]
mod spice;

use detent_simulation::plant::network::LEAK_S;
use divan::{Bencher, black_box};
use faer::dyn_stack::{MemBuffer, MemStack};
use faer::sparse::linalg::lu::{NumericLu, SymbolicLu, factorize_symbolic_lu};
use faer::sparse::{SparseColMat, Triplet};
use faer::{Conj, Mat, Par};
use num_complex::Complex64;
use spice::ladder::{self, Element, Ladder};
use std::f64::consts::TAU;
use std::time::{Duration, Instant};

fn main() {
    divan::main();
    race();
}

/// Every value changed, all eliminated anew, all solved.
#[divan::bench]
fn full_solve(bencher: Bencher) {
    let mut ladder = Ladder::new();
    let mut omegas = omegas();
    bencher.bench_local(move || {
        ladder.tune(omegas.next().expect("endless"));
        ladder.network.solve();
        ladder.network.voltage(ladder.last)
    });
}

/// Setting every value, without the solve: the share of the above that is not the solver's.
#[divan::bench]
fn set_values_only(bencher: Bencher) {
    let mut ladder = Ladder::new();
    let mut omegas = omegas();
    bencher.bench_local(move || ladder.tune(black_box(omegas.next().expect("endless"))));
}

/// Only the source changed: the elimination is kept.
#[divan::bench]
fn source_changed(bencher: Bencher) {
    let mut ladder = Ladder::new();
    ladder.tune(TAU * 60.0);
    let source = ladder.source;
    let mut volts = 100.0;
    bencher.bench_local(move || {
        volts += 1e-6;
        (ladder.network).set_emf(source, Complex64::new(volts, 0.0));
        ladder.network.solve();
        ladder.network.voltage(ladder.last)
    });
}

/// Nothing changed: the solve is left out.
#[divan::bench]
fn nothing_changed(bencher: Bencher) {
    let mut ladder = Ladder::new();
    ladder.tune(TAU * 60.0);
    bencher.bench_local(move || black_box(&mut ladder.network).solve());
}

/// The rival from the crate that also gives the solver its order of elimination.
#[divan::bench]
fn faer_sparse_lu(bencher: Bencher) {
    let mut rival = FaerLadder::new();
    let mut omegas = omegas();
    bencher.bench_local(move || rival.solve(omegas.next().expect("endless")));
}

/// The ladder in faer: one symbolic factorisation, then for each point the matrix filled in anew,
/// numeric factorisation and solve, all in memory that is kept.
struct FaerLadder {
    elements: Vec<Element>,
    /// For each element: where in the matrix its admittance is added, and where taken off.
    places: Vec<(Vec<usize>, Vec<usize>)>,
    /// The matrix's values before any element is added: the leaks and the source.
    base: Vec<Complex64>,
    matrix: SparseColMat<usize, Complex64>,
    symbolic: SymbolicLu<usize>,
    numeric: NumericLu<usize, Complex64>,
    memory: MemBuffer,
    x: Mat<Complex64>,
}

impl FaerLadder {
    fn new() -> FaerLadder {
        let zero = Complex64::new(0.0, 0.0);
        let stamps = |a: usize, b: usize| match b {
            0 => (vec![(a, a)], vec![]),
            b => (vec![(a, a), (b, b)], vec![(a, b), (b, a)]),
        };
        let elements = ladder::elements();
        let pattern: Vec<_> = (elements.iter())
            .flat_map(|(a, b, _)| {
                let (plus, minus) = stamps(*a, *b);
                plus.into_iter().chain(minus)
            })
            .map(|(row, column)| Triplet::new(row - 1, column - 1, zero))
            .collect();
        let matrix = SparseColMat::try_new_from_triplets(ladder::NODES, ladder::NODES, &pattern)
            .expect("entries lie inside the matrix");
        let place = |(row, column): (usize, usize)| {
            let range = matrix.symbolic().col_range(column - 1);
            let rows = &matrix.symbolic().row_idx()[range.clone()];
            range.start + rows.binary_search(&(row - 1)).expect("is in the pattern")
        };
        let places = (elements.iter())
            .map(|(a, b, _)| {
                let (plus, minus) = stamps(*a, *b);
                let places = |at: Vec<_>| at.into_iter().map(place).collect();
                (places(plus), places(minus))
            })
            .collect();
        let mut base = vec![zero; matrix.val().len()];
        for node in 1..=ladder::NODES {
            base[place((node, node))] += LEAK_S;
        }
        base[place((1, 1))] += 1.0 / ladder::SOURCE_OHMS;
        let symbolic =
            factorize_symbolic_lu(matrix.symbolic(), Default::default()).expect("a small pattern");
        let factor =
            symbolic.factorize_numeric_lu_scratch::<Complex64>(Par::Seq, Default::default());
        let scratch = factor.or(symbolic.solve_in_place_scratch::<Complex64>(1, Par::Seq));
        FaerLadder {
            elements: elements
                .into_iter()
                .map(|(_, _, element)| element)
                .collect(),
            places,
            base,
            symbolic,
            numeric: NumericLu::new(),
            memory: MemBuffer::new(scratch),
            x: Mat::zeros(ladder::NODES, 1),
            matrix,
        }
    }

    /// Voltage at the last node.
    fn solve(&mut self, omega: f64) -> Complex64 {
        let source = Complex64::new(1.0 / ladder::SOURCE_OHMS, 0.0);
        let values = self.matrix.val_mut();
        values.copy_from_slice(&self.base);
        for (element, (plus, minus)) in self.elements.iter().zip(&self.places) {
            let y = element.admittance(omega);
            plus.iter().for_each(|at| values[*at] += y);
            minus.iter().for_each(|at| values[*at] -= y);
        }
        self.x.fill(Complex64::new(0.0, 0.0));
        self.x[(0, 0)] = source * ladder::SOURCE_V;
        let stack = MemStack::new(&mut self.memory);
        let (matrix, options) = (self.matrix.as_ref(), Default::default());
        (self.symbolic)
            .factorize_numeric_lu(&mut self.numeric, matrix, Par::Seq, stack, options)
            .expect("a passive network")
            .solve_in_place_with_conj(Conj::No, self.x.as_mut(), Par::Seq, stack);
        self.x[(ladder::NODES - 1, 0)]
    }
}

/// Angular frequencies that never repeat within a run.
fn omegas() -> impl Iterator<Item = f64> {
    (0u64..).map(|at| TAU * (50.0 + 1e-6 * at as f64))
}

const SHORT: usize = 20_000;
const LONG: usize = 220_000;
const ROUNDS: usize = 8;

/// The same sweep of 50 to 60 Hz by all, in turn, best of some rounds each. ngspice's start-up is
/// taken off by the difference of a long and a short sweep; it keeps one voltage in memory and
/// prints nothing, and the others keep the same voltage.
fn race() {
    let ngspice_there = spice::available("the race with its AC sweep");
    let (mut ours, mut faer) = (Duration::MAX, Duration::MAX);
    let (mut short, mut long) = (Duration::MAX, Duration::MAX);
    for _ in 0..ROUNDS {
        let mut ladder = Ladder::new();
        let (our_time, our_answers) = sweep(|omega| {
            ladder.tune(omega);
            ladder.network.solve();
            ladder.network.voltage(ladder.last)
        });
        let mut rival = FaerLadder::new();
        let (faer_time, faer_answers) = sweep(|omega| rival.solve(omega));
        for (our, faer) in our_answers.iter().zip(&faer_answers) {
            let off = (our - faer).norm() / faer.norm();
            assert!(off < 1e-9, "the racers disagree: {our} and {faer}");
        }
        ours = ours.min(our_time);
        faer = faer.min(faer_time);
        if ngspice_there {
            short = short.min(ngspice_sweep(SHORT));
            long = long.min(ngspice_sweep(LONG));
        }
    }
    let points = (LONG - SHORT) as f64;
    let rate = |time: Duration| points / time.as_secs_f64();
    println!();
    println!(
        "AC sweep, {} nodes, {points} points, best of {ROUNDS}:",
        ladder::NODES
    );
    println!("  detent      {:>10.0} points/s", rate(ours));
    println!("  faer        {:>10.0} points/s", rate(faer));
    if ngspice_there {
        let ngspice = rate(long - short);
        println!("  ngspice     {ngspice:>10.0} points/s");
        println!(
            "  detent/ngspice {:>7.2} (aim: at least 2)",
            rate(ours) / ngspice
        );
        println!("  faer/ngspice   {:>7.2}", rate(faer) / ngspice);
    }
}

fn sweep(mut solve: impl FnMut(f64) -> Complex64) -> (Duration, Vec<Complex64>) {
    let points = LONG - SHORT;
    let step = 10.0 / (points - 1) as f64;
    let start = Instant::now();
    let answers = (0..points)
        .map(|at| solve(TAU * (50.0 + step * at as f64)))
        .collect();
    (start.elapsed(), answers)
}

fn ngspice_sweep(points: usize) -> Duration {
    let last = ladder::NODES;
    let commands = format!("save v(n{last})\nac lin {points} 50 60\nprint length(v(n{last}))");
    let text = ladder::deck().text(&commands);
    let start = Instant::now();
    let printed = spice::ngspice(&text);
    let time = start.elapsed();
    let swept = (printed.lines())
        .filter(|line| line.starts_with("length("))
        .filter_map(|line| line.split_once('=')?.1.trim().parse::<f64>().ok())
        .any(|length| length == points as f64);
    assert!(swept, "ngspice did not sweep {points} points:\n{printed}");
    time
}
