//! What stands on a meter's display.

use serde::{Deserialize, Serialize};

/// What a meter shows.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub enum Display {
    /// A value in the unit of the mode.
    Value(f64),
    /// Over range or open: the meter shows `OL`.
    OverRange,
    /// The meter's fuse has blown; it shows nothing until replaced.
    Dead,
}
