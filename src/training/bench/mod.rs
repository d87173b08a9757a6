//! What a person can do to a machine: turn, press, unplug, open, measure, swap.

mod action;
pub mod cost;
mod display;
mod inspect;
mod log;
pub mod meter;
mod milestone;
mod part;
mod proof;
mod quote;
mod report;
pub mod script;
mod view;
mod workplace;
pub use action::{Action, Grip, MeterMode};
pub use display::Display;
pub use inspect::{Finding, Found, visible_findings};
pub use log::{BenchLog, Entries, LogEntry, Repair};
pub use meter::MeterTest;
pub use milestone::{Milestone, MilestoneKind};
pub use part::{Billing, Condition, Part, Rates, cure, current};
pub use proof::DeadProof;
pub use quote::{Quote, QuoteGiven};
pub use report::{Advice, Report, Verdict};
pub use view::{BenchView, Caution, Event, Incident, PartInHand, Reading, Refusal, SignalWord};
pub use workplace::{Bench, Setup, TOUCH_V, hands_inside};
