//! Faults as changes to component parameters. The physics never asks whether there is one.

use super::ids::Component;
use super::params::Param;
use serde::{Deserialize, Serialize};

/// How one parameter is changed.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Op {
    /// Replace the value.
    Set(f64),
    /// Multiply the value.
    Scale(f64),
    /// Add to the value.
    Add(f64),
}

impl Op {
    /// The changed value.
    pub fn apply(self, value: f64) -> f64 {
        match self {
            Op::Set(new) => new,
            Op::Scale(factor) => value * factor,
            Op::Add(term) => value + term,
        }
    }
}

/// When a fault is present: always, or in spells drawn by its own random process.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub enum Presence {
    /// There all the time.
    #[default]
    Steady,
    /// Comes and goes: mean length of a good and of a bad spell, seconds.
    Intermittent {
        /// Mean length of a spell in which the component works, s.
        good_s: f64,
        /// Mean length of a spell in which it does not, s.
        bad_s: f64,
    },
}

/// One way in which one component fails.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FailureMode {
    /// Unique name, such as `drain-pump.open-winding`.
    pub id: String,
    /// The component that fails.
    pub component: Component,
    /// How often this happens beside the others (no unit; our own invention).
    pub weight: f64,
    /// The part that cures it.
    pub cured_by: String,
    /// What changes in the component.
    pub changes: Vec<(Param, Op)>,
    /// Steady or intermittent.
    #[serde(default)]
    pub presence: Presence,
}
