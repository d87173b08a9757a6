//! What the plant reads from a solved mains network.

use crate::interface::Component;
use num_complex::Complex64;

/// Currents of the loads after the last solution, A rms.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct LoadAmps {
    /// Cold valve.
    pub cold: f64,
    /// Hot valve.
    pub hot: f64,
    /// Drain pump.
    pub pump: f64,
    /// Clutch actuator.
    pub clutch: f64,
    /// Lock actuator.
    pub lock: f64,
    /// Motor, common lead.
    pub motor: f64,
    /// Whole machine.
    pub line: f64,
}

impl LoadAmps {
    /// Each electrical load and its current, A rms.
    pub const fn each(&self) -> [(Component, f64); 6] {
        [
            (Component::InletCold, self.cold),
            (Component::InletHot, self.hot),
            (Component::DrainPump, self.pump),
            (Component::Motor, self.motor),
            (Component::ClutchActuator, self.clutch),
            (Component::LidLock, self.lock),
        ]
    }
}

/// What the plant reads from a solution.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Solution {
    /// Load currents.
    pub amps: LoadAmps,
    /// Currents of motor windings A and B, A.
    pub windings: [Complex64; 2],
    /// Voltage between the board's rails, V rms.
    pub board_v: f64,
    /// Voltage behind the lid lock, V rms.
    pub locked_v: f64,
    /// Voltage at the pump, V rms.
    pub pump_v: f64,
    /// Current to ground, A rms.
    pub residual_a: f64,
}
