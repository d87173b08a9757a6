//! The bench, its score, its record and what is advised.

#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    clippy::disallowed_macros,
    reason = "tests open files, run programs, share what is slow to make, and print"
)]

mod bare_scenario;
mod blown_fuse;
mod by_hand;
mod calls;
mod complaints;
mod counter;
mod course;
mod described_boards;
mod determinism;
mod draws;
mod drills;
mod examination;
mod faults;
mod fit;
mod ground_faults;
mod guide;
mod hints;
mod house_water;
mod laundry;
mod meter;
mod practice;
mod proving_runs;
mod reasoning;
mod repairs;
mod replays;
mod resets;
mod review;
mod safe_work;
mod safety;
mod scoring;
#[path = "../stage/mod.rs"]
mod stage;
mod trade;
mod variants;
mod wash_traces;
