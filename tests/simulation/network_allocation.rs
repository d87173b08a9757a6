//! Once built, a network is solved without asking for memory.

use crate::spice::ladder::{Ladder, NODES};
use num_complex::Complex64;
use std::alloc::{GlobalAlloc, Layout, System};
use std::cell::Cell;
use std::f64::consts::TAU;

/// The system's allocator, counting what each thread asks for.
struct Counting;

thread_local! {
    static ASKED: Cell<u64> = const { Cell::new(0) };
}

#[global_allocator]
static COUNTING: Counting = Counting;

// SAFETY: every call goes to the system's allocator unchanged.
#[allow(unsafe_code, reason = "an allocator that counts has to be one")]
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        ASKED.set(ASKED.get() + 1);
        unsafe { System.alloc(layout) }
    }

    unsafe fn dealloc(&self, pointer: *mut u8, layout: Layout) {
        unsafe { System.dealloc(pointer, layout) }
    }
}

#[test]
fn solving_allocates_nothing() {
    let before = ASKED.get();
    let mut ladder = Ladder::new();
    assert!(ASKED.get() > before, "the count does not work");
    let before = ASKED.get();
    for hz in [50.0, 60.0, 70.0] {
        ladder.tune(TAU * hz);
        ladder.network.solve();
        // An EMF in a branch that never had one is new to the list of sources.
        for at in 0..NODES {
            let branch = ladder.branch(at);
            ladder.network.set_emf(branch, Complex64::new(hz, 0.0));
        }
        ladder.network.solve_always();
    }
    assert_eq!(ASKED.get() - before, 0);
}
