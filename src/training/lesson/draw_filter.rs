//! Which failure modes a job draws its fault from, where they are described and not named one by one.

use detent_simulation::controller::{Code, Monitor};
use detent_simulation::interface::Component;
use detent_simulation::plant::{FailureMode, FaultKind, PresenceKind};
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The greatest weight: no fault is a million times as common as another.
pub const MOST_WEIGHT: f64 = 1e6;

/// The failure modes, by name, that a watch of the control finds in the customer's wash on one of the built-in machines
/// at least.
pub type FoundBy = BTreeMap<Monitor, Vec<String>>;

/// Failure modes by what they have in common: those for which everything holds that is said here. A list that is empty
/// or not there asks for nothing.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct DrawFilter {
    /// They are in one of these components.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub components: Vec<Component>,
    /// The watch behind one of these codes of the job's board finds them in the customer's wash.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub codes: Vec<u8>,
    /// They are of one of these kinds.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub kinds: Vec<FaultKind>,
    /// They are there all the time, in spells, or more and more.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub presences: Vec<PresenceKind>,
    /// They are at least so common: the catalogue's weight, no unit.
    #[serde(default, skip_serializing_if = "is_no_least")]
    pub least_weight: f64,
    /// They are at most so common.
    #[serde(default = "most_weight", skip_serializing_if = "is_no_most")]
    pub most_weight: f64,
    /// They are none of these, by name.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub without: Vec<String>,
}

fn most_weight() -> f64 {
    MOST_WEIGHT
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde hands a reference over"
)]
fn is_no_least(weight: &f64) -> bool {
    *weight == 0.0
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde hands a reference over"
)]
fn is_no_most(weight: &f64) -> bool {
    *weight == MOST_WEIGHT
}

/// It asks for nothing.
impl Default for DrawFilter {
    fn default() -> DrawFilter {
        DrawFilter {
            components: Vec::new(),
            codes: Vec::new(),
            kinds: Vec::new(),
            presences: Vec::new(),
            least_weight: 0.0,
            most_weight: MOST_WEIGHT,
            without: Vec::new(),
        }
    }
}

impl DrawFilter {
    /// Whether this failure mode may be drawn on a board with these codes.
    pub fn takes(&self, mode: &FailureMode, codes: &[Code], found_by: &FoundBy) -> bool {
        fn one_of<T: PartialEq>(asked: &[T], is: T) -> bool {
            asked.is_empty() || asked.contains(&is)
        }
        let found = |code: &u8| {
            let watch = codes.iter().find(|c| c.code == *code);
            let found = watch.and_then(|code| found_by.get(&code.monitor));
            found.is_some_and(|modes| modes.contains(&mode.id))
        };
        one_of(&self.components, mode.component)
            && one_of(&self.kinds, mode.kind())
            && one_of(&self.presences, mode.presence.kind())
            && (self.least_weight..=self.most_weight).contains(&mode.weight)
            && !self.without.contains(&mode.id)
            && (self.codes.is_empty() || self.codes.iter().any(found))
    }
}
