//! The mains that a machine is made for.

use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// Rated supply.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rating {
    /// Rated voltage, V rms.
    pub volts: f64,
    /// Frequency, Hz.
    pub hz: f64,
}

/// Mains supply at the customer's home.
#[derive(
    Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize, JsonSchema,
)]
pub enum Mains {
    /// 120 V, 60 Hz.
    V120Hz60,
    /// 230 V, 50 Hz.
    V230Hz50,
}

impl Mains {
    /// Every supply.
    pub const ALL: [Mains; 2] = [Mains::V120Hz60, Mains::V230Hz50];

    /// Rated supply.
    pub const fn rating(self) -> Rating {
        let (volts, hz) = match self {
            Mains::V120Hz60 => (120.0, 60.0),
            Mains::V230Hz50 => (230.0, 50.0),
        };
        Rating { volts, hz }
    }
}
