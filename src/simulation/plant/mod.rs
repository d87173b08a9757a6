//! The washer as physics. Knows no controller.

pub mod dial;
pub mod drive;
mod fault;
pub mod heat;
pub mod mains;
pub mod motor;
pub mod network;
mod params;
mod probe;
pub mod residual;
mod signal;
mod solution;
mod solution_cache;
pub mod supply;
mod washer;
pub mod water;

pub use fault::{FailureMode, FaultKind, Op, Presence, PresenceKind, Stress};
pub use params::{Param, Params};
pub use probe::{Probed, Probes};
pub use solution::LoadAmps;
pub use washer::{BoardPins, Plant, SolvePolicy};
