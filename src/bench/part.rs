//! A part at the counter.

use crate::plant::Component;
use serde::{Deserialize, Serialize};

/// One part that can be bought. Numbers and prices are invented.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// Part number, unique.
    pub number: String,
    /// The component it replaces.
    pub component: Component,
    /// Text key of its name.
    pub name_key: String,
    /// Price, whole units of money.
    pub price: f64,
    /// How long it takes to come, h.
    pub wait_hours: f64,
    /// Made for this machine. One that is not can be bought all the same, and does not fit.
    pub fits: bool,
    /// Text key of a note on the counter's card, if any.
    #[serde(default)]
    pub note_key: Option<String>,
}
