//! The washer as physics. Knows no controller.

mod fault;
pub mod ids;
pub mod network;
mod params;
pub use fault::{FailureMode, Op, Presence};
pub use ids::{Button, Component, Connector, Pin, Relay, Relays, Side, Terminal, UnknownName};
pub use params::{Param, Params};
