//! A look for leaks after the work. What was opened is tight again only when water has stood in it and the floor has
//! stayed dry (common practice, no source).

use detent_simulation::interface::Component;
use detent_simulation::units::Time;

/// A cloth laid under the machine feels wet from so much water on, L.
const FELT_L: f64 = 0.02;
/// Water that stands as high as this tries every joint of the tub, mm.
const STANDS_MM: f64 = 50.0;

/// One look under the machine.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeakCheck {
    /// When.
    pub at: Time,
    /// Water in the tub at that time, mm.
    pub level_mm: f64,
    /// Water on the floor since it was last wiped dry, L.
    pub floor_l: f64,
}

impl LeakCheck {
    /// The floor is wet.
    pub fn is_wet(&self) -> bool {
        self.floor_l >= FELT_L
    }

    /// Enough water stands in the tub to come out where anything is open.
    pub(super) fn has_water(&self) -> bool {
        self.level_mm >= STANDS_MM
    }
}

/// Whether work on a component opens something that water comes to. The air hose ends below the water too.
pub const fn holds_water(component: Component) -> bool {
    match component {
        Component::InletCold
        | Component::InletHot
        | Component::InletHoses
        | Component::DrainPump
        | Component::DrainHose
        | Component::PressureHose
        | Component::Tub => true,
        Component::Supply
        | Component::Cord
        | Component::LineFuse
        | Component::Filter
        | Component::Board
        | Component::Dial
        | Component::LidLock
        | Component::Motor
        | Component::RunCapacitor
        | Component::ClutchActuator
        | Component::Pickup
        | Component::PressureSensor
        | Component::Thermistor
        | Component::Belt
        | Component::Harness
        | Component::Laundry
        | Component::Taps
        | Component::Floor => false,
    }
}
