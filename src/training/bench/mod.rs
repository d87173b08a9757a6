//! What a person can do to a machine: turn, press, unplug, open, measure, swap.

mod action;
pub mod cost;
mod inspect;
mod landmark;
pub mod meter;
mod part;
mod report;
pub mod script;
mod view;
mod workplace;
pub use action::{Action, Grip, MeterMode, Turn};
pub use inspect::{Finding, Found, look};
pub use landmark::{Landmark, LandmarkKind};
pub use part::{Condition, Part, Rates, cure, current};
pub use report::{Advice, Report, Verdict};
pub use view::{
    BenchView, Caution, Display, Event, Happening, MeterTest, PartInHand, Reading, Refusal,
};
pub use workplace::{Bench, Setup};
