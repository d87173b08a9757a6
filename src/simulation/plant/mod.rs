//! The washer as physics. Knows no controller.

pub mod dial;
pub mod drive;
mod fault;
pub mod heat;
pub mod mains;
mod memo;
pub mod motor;
pub mod network;
mod params;
mod probe;
mod signal;
pub mod supply;
mod washer;
pub mod water;

pub use fault::{FailureMode, Op, Presence, Stress};
pub use params::{Param, Params};
pub use probe::Probed;
pub use washer::{BoardPins, LoadAmps, Plant, SolvePolicy};
