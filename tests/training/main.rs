//! The bench, its score, its record and what is advised.

mod by_hand;
mod counter;
mod course;
mod determinism;
mod draws;
mod drills;
mod faults;
mod meter;
mod practice;
mod reasoning;
mod repairs;
mod replays;
mod review;
mod safety;
mod scoring;
#[path = "../stage/mod.rs"]
mod stage;
mod trade;
