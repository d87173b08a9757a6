//! What a person can do to a machine: turn, press, unplug, open, measure, swap.

mod action;
mod part;
mod view;
pub use action::{Action, MeterMode, Report, Turn};
pub use part::Part;
pub use view::{BenchView, Caution, Display, Event, Happening, PartInHand, Reading, Refusal};
