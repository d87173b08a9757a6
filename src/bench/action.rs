//! What a person can do to the machine, as data.

/// Which way the dial is turned.
pub use crate::controller::Rotation as Turn;
use crate::plant::{Button, Component, Connector, Pin};
use serde::{Deserialize, Serialize};

/// What the meter is set to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum MeterMode {
    /// Resistance, Ω.
    Ohms,
    /// Alternating voltage, V rms.
    VoltsAc,
    /// Direct voltage, V.
    VoltsDc,
    /// Alternating current by clamp around the wire of the red probe's pin, A rms.
    AmpsClamp,
    /// Frequency, Hz.
    Hertz,
}

/// One thing done at one moment. An attempt is a list of these with their times.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Action {
    /// Put the plug in the outlet.
    Plug,
    /// Pull the plug.
    Unplug,
    /// Lift the lid.
    OpenLid,
    /// Put the lid down.
    CloseLid,
    /// Turn the dial by one detent.
    Detent(Turn),
    /// Push a button down.
    Down(Button),
    /// Let a button go.
    Up(Button),
    /// Take the cabinet panels off.
    OpenCabinet,
    /// Put the cabinet panels back.
    CloseCabinet,
    /// Bleed the stored charge through a resistor and check it with the meter.
    Discharge,
    /// Bail the tub out by hand.
    BailOut,
    /// Pull a connector.
    Pull(Connector),
    /// Push a connector back on.
    Seat(Connector),
    /// Put the probes on two pins and leave them there; the reading settles and is noted.
    Probe {
        /// Meter setting.
        mode: MeterMode,
        /// Pin under the red probe (for the clamp: the wire clamped).
        red: Pin,
        /// Pin under the black probe (ignored by the clamp).
        black: Pin,
    },
    /// Take the probes off.
    LiftProbes,
    /// Put a new fuse in the meter.
    ReplaceMeterFuse,
    /// Look at a component, feel it, turn it by hand; what is found is noted.
    Inspect(Component),
    /// Put right what needs no part: open a tap, lay a hose, level the feet, sort the load.
    PutRight(Component),
    /// Buy a part at the counter, by part number.
    Order(String),
    /// Fit an ordered part.
    Fit(String),
    /// Write down the two-digit code that the lamps show, as the trainee reads it.
    NoteCode(u8),
    /// Write the report and hand the machine back.
    Report(Report),
}

/// The written report at the end of the job.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Report {
    /// The failure mode named as the cause, or none for "nothing wrong".
    pub cause: Option<String>,
    /// The part that was needed, or none.
    pub part: Option<String>,
    /// Readings in the notebook, by number, that prove it.
    pub proof: Vec<usize>,
}
