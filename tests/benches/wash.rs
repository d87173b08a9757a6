//! A whole wash on one core with the network live, the answer to a turned detent, and what one
//! machine takes in memory.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "a benchmark looks at the clock"
)]

#[path = "../stage/mod.rs"]
mod stage;

use detent_simulation::interface::Direction;
use detent_simulation::machine::Machine;
use detent_simulation::plant::{Plant, SolvePolicy};
use detent_simulation::units::{Span, TICKS_PER_S};
use detent_training::bench::Bench;
use detent_training::lesson::{Mains, start_wash};
use divan::Bencher;
use divan::counter::ItemsCount;
use stage::{MAINS, Stage};
use std::alloc::{GlobalAlloc, Layout, System};
use std::hint::black_box;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Instant;

const WASH_TICKS: u64 = 45 * 60 * TICKS_PER_S;

fn main() {
    divan::main();
    wash_report();
    answer_to_a_detent();
    memory_of_one_machine();
}

fn begun(stage: &Stage, mains: Mains, policy: SolvePolicy) -> Bench {
    let mut bench = stage.bench(mains, None, 1);
    bench.machine_mut().plant_mut().set_policy(policy);
    start_wash(&mut bench);
    bench
}

fn wash(stage: &Stage, mains: Mains, policy: SolvePolicy) -> Bench {
    let mut bench = begun(stage, mains, policy);
    bench.wait(Span(WASH_TICKS - bench.now().0));
    bench
}

/// The customer's wash for 45 minutes of machine time, what a person at the bench has.
#[divan::bench(sample_count = 20)]
fn wash_of_45_minutes(bencher: Bencher) {
    let stage = Stage::new();
    bencher
        .counter(ItemsCount::new(WASH_TICKS as usize))
        .bench_local(|| wash(&stage, MAINS[0], SolvePolicy::OnChange).now());
}

/// The same with every solve made, needed or not.
#[divan::bench(sample_count = 5)]
fn wash_of_45_minutes_always_solving(bencher: Bencher) {
    let stage = Stage::new();
    bencher
        .counter(ItemsCount::new(WASH_TICKS as usize))
        .bench_local(|| wash(&stage, MAINS[0], SolvePolicy::Always).now());
}

fn wash_report() {
    for stage in Stage::every() {
        for mains in &stage.board().mains {
            let mut best_s = f64::INFINITY;
            let mut solves = (0, 0);
            for _ in 0..5 {
                let began = Instant::now();
                let bench = black_box(wash(&stage, *mains, SolvePolicy::OnChange));
                best_s = best_s.min(began.elapsed().as_secs_f64());
                solves = bench.machine().plant().solves();
                assert_eq!(bench.now().0, WASH_TICKS);
            }
            let (mains_solves, signal_solves) = solves;
            println!(
                "{} {mains:?}: 45 min of wash in {best_s:.4} s (best of 5), {:.0} ns a tick, \
                 {WASH_TICKS} ticks, {mains_solves} mains solves, {signal_solves} low-voltage solves",
                stage.board().id,
                best_s * 1e9 / WASH_TICKS as f64
            );
        }
    }
}

/// Ticks from the turn of a detent to the lamps' new state, idle machine, lamps rested.
fn answer_to_a_detent() {
    let stage = Stage::new();
    let mut bench = stage.bench(MAINS[0], None, 1);
    bench.wait(Span::from_s(3));
    bench.machine_mut().detent(Direction::Right);
    bench.wait(Span::from_s(1));
    // From a place without a program, whose arc is dark, to one that shows its length.
    let before = bench.machine().outputs().lamps;
    let program = bench.machine().board().programs[0].position;
    assert_eq!(bench.machine().plant().dial_position() + 1, program);
    bench.machine_mut().detent(Direction::Right);
    let mut ticks = 0;
    while bench.machine().outputs().lamps == before {
        bench.step();
        ticks += 1;
        assert!(ticks < 100, "the lamps do not answer");
    }
    println!("a turned detent shows on the lamps after {ticks} tick(s)");
}

/// Counts what is on the heap.
struct Counting;

static HELD: AtomicUsize = AtomicUsize::new(0);

// SAFETY: every call goes to the system's allocator unchanged.
#[allow(unsafe_code, reason = "an allocator that counts has to be one")]
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        HELD.fetch_add(layout.size(), Ordering::Relaxed);
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, pointer: *mut u8, layout: Layout) {
        HELD.fetch_sub(layout.size(), Ordering::Relaxed);
        unsafe { System.dealloc(pointer, layout) }
    }
}

#[global_allocator]
static ALLOCATOR: Counting = Counting;

fn memory_of_one_machine() {
    for stage in Stage::every() {
        let mains = stage.board().mains[0];
        let library = stage.library(mains);
        let held = || HELD.load(Ordering::Relaxed);
        let before = held();
        let plant = Plant::new(library.sound, mains.rating(), 1);
        let of_plant = held() - before;
        let machine = Machine::new(plant, library.board, Default::default());
        let of_machine = held() - before;
        println!(
            "{}: one machine: {} bytes itself (of them {} the plant) and {of_machine} on the heap \
             (of them {of_plant} the plant's)",
            stage.board().id,
            size_of::<Machine>(),
            size_of::<Plant>(),
        );
        drop(machine);
        let before = held();
        let bench = black_box(wash(&stage, mains, SolvePolicy::OnChange));
        println!(
            "{}: a bench at minute {:.0} of a wash, machine, catalogue and counter included: {} \
             bytes itself and {} on the heap",
            stage.board().id,
            bench.now().seconds() / 60.0,
            size_of::<Bench>(),
            held() - before,
        );
    }
}
