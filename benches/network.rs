//! Full network solves with changed values, beside two rivals on the same 40-node ladder:
//! faer's sparse LU with its symbolic part done once, and ngspice's own AC sweep.

#[path = "../tests/spice/mod.rs"]
mod spice;

use divan::{Bencher, black_box};
use faer::dyn_stack::{MemBuffer, MemStack};
use faer::sparse::linalg::lu::{NumericLu, factorize_symbolic_lu};
use faer::sparse::{SparseColMat, Triplet};
use faer::{Conj, Mat, Par};
use num_complex::Complex64;
use spice::ladder::{self, Ladder};
use std::f64::consts::TAU;
use std::time::{Duration, Instant};

fn main() {
    divan::main();
    race_with_ngspice();
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

/// faer: one symbolic factorisation, then numeric factorisation and solve in memory that is kept.
/// The matrix is not even filled in anew, only scaled, so this flatters it.
#[divan::bench]
fn faer_sparse_lu(bencher: Bencher) {
    let mut matrix = nodal_matrix(TAU * 60.0);
    let symbolic =
        factorize_symbolic_lu(matrix.symbolic(), Default::default()).expect("a small pattern");
    let mut numeric = NumericLu::new();
    let scratch = symbolic.factorize_numeric_lu_scratch::<Complex64>(Par::Seq, Default::default());
    let scratch = scratch.or(symbolic.solve_in_place_scratch::<Complex64>(1, Par::Seq));
    let mut memory = MemBuffer::new(scratch);
    let mut x = Mat::<Complex64>::zeros(ladder::NODES, 1);
    bencher.bench_local(move || {
        let stack = MemStack::new(&mut memory);
        for value in matrix.val_mut() {
            *value *= 1.000_000_1;
        }
        let lu = symbolic
            .factorize_numeric_lu(
                &mut numeric,
                matrix.as_ref(),
                Par::Seq,
                stack,
                Default::default(),
            )
            .expect("a passive network");
        x.fill(Complex64::new(0.0, 0.0));
        x[(0, 0)] = Complex64::new(240.0, 0.0);
        lu.solve_in_place_with_conj(Conj::No, x.as_mut(), Par::Seq, stack);
        x[(ladder::NODES - 1, 0)]
    });
}

/// The ladder's nodal matrix.
fn nodal_matrix(omega: f64) -> SparseColMat<usize, Complex64> {
    let mut entries = vec![Triplet::new(
        0,
        0,
        Complex64::new(1.0 / ladder::SOURCE_OHMS, 0.0),
    )];
    for (a, b, element) in ladder::elements() {
        let y = element.admittance(omega);
        entries.push(Triplet::new(a - 1, a - 1, y));
        if b > 0 {
            entries.push(Triplet::new(b - 1, b - 1, y));
            entries.push(Triplet::new(a - 1, b - 1, -y));
            entries.push(Triplet::new(b - 1, a - 1, -y));
        }
    }
    SparseColMat::try_new_from_triplets(ladder::NODES, ladder::NODES, &entries)
        .expect("entries lie inside the matrix")
}

/// Angular frequencies that never repeat within a run.
fn omegas() -> impl Iterator<Item = f64> {
    (0u64..).map(|at| TAU * (50.0 + 1e-6 * at as f64))
}

const SHORT: usize = 20_000;
const LONG: usize = 220_000;
const ROUNDS: usize = 5;

/// The same sweep of 50 to 60 Hz by both, in turn, best of some rounds each. ngspice's start-up is
/// taken off by the difference of a long and a short sweep; it keeps one voltage in memory and
/// prints nothing, and the solver keeps the same voltage.
fn race_with_ngspice() {
    if !spice::available("the race with its AC sweep") {
        return;
    }
    let (mut ours, mut short, mut long) = (Duration::MAX, Duration::MAX, Duration::MAX);
    for _ in 0..ROUNDS {
        ours = ours.min(time(|| drop(black_box(sweep(LONG - SHORT)))));
        short = short.min(time(|| ngspice_sweep(SHORT)));
        long = long.min(time(|| ngspice_sweep(LONG)));
    }
    let points = (LONG - SHORT) as f64;
    let ours_per_s = points / ours.as_secs_f64();
    let theirs_per_s = points / (long - short).as_secs_f64();
    println!();
    println!(
        "AC sweep, {} nodes, {points} points, best of {ROUNDS}:",
        ladder::NODES
    );
    println!("  detent   {ours_per_s:>12.0} points/s");
    println!("  ngspice  {theirs_per_s:>12.0} points/s");
    println!(
        "  ratio    {:>12.2} (aim: at least 2)",
        ours_per_s / theirs_per_s
    );
}

fn sweep(points: usize) -> Vec<Complex64> {
    let mut ladder = Ladder::new();
    let step = 10.0 / (points - 1) as f64;
    let omegas = (0..points).map(|at| TAU * (50.0 + step * at as f64));
    omegas
        .map(|omega| {
            ladder.tune(omega);
            ladder.network.solve();
            ladder.network.voltage(ladder.last)
        })
        .collect()
}

fn ngspice_sweep(points: usize) {
    let last = ladder::NODES;
    let commands = format!("save v(n{last})\nac lin {points} 50 60\nprint length(v(n{last}))");
    let printed = spice::ngspice(&ladder::deck().text(&commands));
    let swept = (printed.lines())
        .filter(|line| line.starts_with("length("))
        .filter_map(|line| line.split_once('=')?.1.trim().parse::<f64>().ok())
        .any(|length| length == points as f64);
    assert!(swept, "ngspice did not sweep {points} points:\n{printed}");
}

fn time(run: impl FnOnce()) -> Duration {
    let start = Instant::now();
    run();
    start.elapsed()
}
