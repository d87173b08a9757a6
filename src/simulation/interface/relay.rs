//! What the control switches.

use crate::names;
use serde::{Deserialize, Serialize};

names! {
    /// A board output that switches line to a load.
    Relay { Cold = "cold", Hot = "hot", Pump = "pump", MotorA = "motor-a", MotorB = "motor-b", Clutch = "clutch", Lock = "lock" }
}

/// A bit for each relay: 1 = the control drives it closed. Bit number is [`Relay::index`].
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Relays(pub u8);

impl Relays {
    /// Every relay open.
    pub const NONE: Relays = Relays(0);

    /// Whether the control drives `relay` closed.
    pub const fn has(self, relay: Relay) -> bool {
        self.0 & (1 << relay.index()) != 0
    }

    /// The same set with `relay` driven or released.
    #[must_use]
    pub const fn with(self, relay: Relay, driven: bool) -> Relays {
        let bit = 1 << relay.index();
        Relays(if driven { self.0 | bit } else { self.0 & !bit })
    }
}
