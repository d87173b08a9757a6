//! The vocabulary that the washer, its control and whoever works at them share: names of parts, pins,
//! relays and buttons, and the mains. Nothing in it has a state.

mod mains;
mod panel;
mod parts;
mod relay;

pub use mains::{Mains, Rating};
pub use panel::{Button, Direction};
pub use parts::{Component, Connector, Pin, Side, Terminal, WaterPipe};
pub use relay::{Relay, Relays};
