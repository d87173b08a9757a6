//! The washer, its control and both wired together. Knows no clock, file, screen, thread or global: time
//! and input come in as arguments, so every run replays bit for bit.

pub mod controller;
pub mod interface;
pub mod machine;
pub mod plant;
pub mod units;
