//! Detent: a training bench for people who repair washing machines.
//!
//! Each module is a room; no room uses one listed after it.

pub mod units;

pub mod plant;

pub mod controller;

pub mod machine;

pub mod bench;

pub mod lesson;

pub mod reason;

pub mod practice;

pub mod record;

pub mod content;

#[cfg(not(target_family = "wasm"))]
pub mod cli;

#[cfg(feature = "window")]
pub mod app;
