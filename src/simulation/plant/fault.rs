//! Faults as changes to component parameters. The physics never asks whether there is one.

use super::params::Param;
use crate::interface::Component;
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

    /// The value changed by a share of the whole change, 0 (not at all) to 1 (wholly).
    pub fn apply_share(self, value: f64, share: f64) -> f64 {
        if share >= 1.0 {
            self.apply(value)
        } else {
            value + (self.apply(value) - value) * share
        }
    }
}

/// What brings out a fault that otherwise sleeps.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Stress {
    /// The motor's winding is warmer than this, °C.
    HotWinding {
        /// Bound, °C.
        above_c: f64,
    },
    /// The control board is warmer than this, °C.
    HotBoard {
        /// Bound, °C.
        above_c: f64,
    },
    /// The basket turns faster than this, rev/min.
    Spinning {
        /// Bound, rev/min.
        above_rpm: f64,
    },
    /// The water stands higher in the tub than this, mm.
    Wet {
        /// Bound, mm.
        above_mm: f64,
    },
}

/// When a fault is present: always, in spells drawn by its own random process, or more and more.
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
        /// The spells come under this stress only; without one, at any time.
        #[serde(default)]
        under: Option<Stress>,
    },
    /// Grows from nothing with the time that the machine works.
    Drift {
        /// Working time until the change is whole, s.
        full_after_s: f64,
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
    /// The part that cures it; empty where no part does.
    #[serde(default)]
    pub cured_by: String,
    /// Hands put it right without a part: cleaning, reseating, bending back.
    #[serde(default)]
    pub by_hand: bool,
    /// What changes in the component.
    pub changes: Vec<(Param, Op)>,
    /// Steady, intermittent or growing.
    #[serde(default)]
    pub presence: Presence,
}

impl FailureMode {
    /// It is put right, or learned anew, without a part, though a new one might end it as well.
    pub fn needs_no_part(&self) -> bool {
        self.by_hand || self.cured_by.is_empty()
    }

    /// It lets current out of the circuit into the cabinet, and so to ground.
    pub fn leaks_to_ground(&self) -> bool {
        self.changes.iter().any(|(param, _)| param.is_insulation())
    }

    /// The same fault, whole and all the time: how it looks at its worst.
    #[must_use]
    pub fn at_its_worst(&self) -> FailureMode {
        FailureMode {
            presence: Presence::Steady,
            ..self.clone()
        }
    }
}
