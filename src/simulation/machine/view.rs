//! A read-only look at the machine, for screens and scripts. Reading it changes nothing.

use super::sound::Sounds;
use crate::controller::{ControlView, Lamps};

/// What can be seen, heard or felt on the machine at one moment.
#[derive(Clone, Copy, Debug, Default)]
pub struct MachineView<'a> {
    /// Ticks since the attempt began, as seconds.
    pub time_s: f64,
    /// The plug is in the outlet.
    pub plugged: bool,
    /// The lid is up.
    pub lid_open: bool,
    /// The bolt of the lid lock is out.
    pub lid_bolted: bool,
    /// Lamps lit now.
    pub lamps: Lamps,
    /// Where the knob points, in detents clockwise from the index.
    pub dial_position: u8,
    /// Water depth in the tub, mm.
    pub level_mm: f64,
    /// Water temperature, °C.
    pub water_c: f64,
    /// Hot and cold inflow, L/min.
    pub hot_l_min: f64,
    /// Cold inflow, L/min.
    pub cold_l_min: f64,
    /// Outflow through the drain hose, L/min.
    pub drain_l_min: f64,
    /// Water on the floor, L.
    pub floor_l: f64,
    /// Angle of the agitator since the start, revolutions.
    pub agitator_rev: f64,
    /// Angle of the basket since the start, revolutions.
    pub basket_rev: f64,
    /// Basket speed, rev/min.
    pub basket_rpm: f64,
    /// Motor speed, rev/min, negative for direction B.
    pub motor_rpm: f64,
    /// How far the cabinet shakes, mm.
    pub shake_mm: f64,
    /// What can be heard now.
    pub sounds: Sounds,
    /// What the control is doing: for the instructor and the lesson, not for the trainee's eyes.
    pub control: ControlView<'a>,
}
