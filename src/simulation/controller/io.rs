//! All that the control can see and do: its inputs and its outputs.

use crate::interface::{Button, Relays};
use serde::{Deserialize, Serialize};

/// What the board's input pins carry during one tick, before any debounce.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Inputs {
    /// Voltage on the control's bulk capacitor, V.
    pub bulk_v: f64,
    /// Its switching supply works.
    pub supplied: bool,
    /// Detents that a dial's contacts reported this tick; positive is right.
    pub dial_steps: i8,
    /// True in the tick in which the dial passed its index contact (position 0).
    pub dial_index: bool,
    /// Where the contacts of a rotary switch stand; none on other panels.
    pub switch_at: Option<u8>,
    /// Button contacts closed, by [`Button::index`].
    pub buttons: [bool; Button::ALL.len()],
    /// Lid switch contact closed (lid down).
    pub lid_closed: bool,
    /// Mains seen on the line that comes back through the lock's contact.
    pub locked_line: bool,
    /// Cam switch of the clutch actuator closed.
    pub cam: bool,
    /// Pulses from the speed pickup during this tick.
    pub pickup_pulses: u16,
    /// Voltage at the pressure input, V.
    pub pressure_v: f64,
    /// Voltage at the thermistor input, V.
    pub thermistor_v: f64,
    /// Current in the motor's return, A rms.
    pub motor_a: f64,
}

/// Lamps as they are lit right now; blinking has already been applied.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Lamps {
    /// The lamps that show numbers, a bit each, as [`super::Signs`] lays them out.
    pub code: u16,
    /// The separate lock lamp, on panels that have one.
    pub lock: bool,
}

/// What the control drives.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Outputs {
    /// Relays driven closed.
    pub relays: Relays,
    /// Lamps lit.
    pub lamps: Lamps,
}
