//! What the control can be doing, and the parts of a program.

use crate::names;

names! {
    /// What the control is doing.
    ControlMode {
        /// Without supply: nothing volatile is left.
        Off = "off",
        /// The supply is too low to work but not yet low enough to forget.
        Starved = "starved",
        /// It waits for a program to be chosen.
        Idle = "idle",
        /// A program runs or waits.
        Program = "program",
        /// It has stopped with a fault.
        Hold = "hold",
        /// Service mode.
        Service = "service",
    }
}

impl ControlMode {
    /// It has too little supply to do anything.
    pub const fn is_without_supply(self) -> bool {
        match self {
            ControlMode::Off | ControlMode::Starved => true,
            ControlMode::Idle | ControlMode::Program | ControlMode::Hold | ControlMode::Service => {
                false
            }
        }
    }
}

names! {
    /// A kind of [`super::Phase`].
    PhaseKind {
        /// Water comes in.
        Fill = "fill",
        /// Strokes to and fro.
        Agitate = "agitate",
        /// The laundry stands in the water.
        Soak = "soak",
        /// The water is pumped out.
        Drain = "drain",
        /// Spins.
        Spin = "spin",
        /// Nothing moves.
        Rest = "rest",
    }
}

impl Default for ControlMode {
    /// As it is before power comes.
    fn default() -> ControlMode {
        ControlMode::Off
    }
}
