//! The residual current device in the outlet: it opens both conductors once the current that does not come back
//! through them is too large. Where it goes is to ground, through a person or through failed insulation.

use crate::units::Span;
use serde::{Deserialize, Serialize};

/// Time for which the residual current has to last. Our own; the standards allow more at every current that the
/// machine can leak (see the tests).
const TRIP: Span = Span(2);

/// The device.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct ResidualDevice {
    /// It has opened the circuit, and its button stands out.
    pub tripped: bool,
    /// Ticks for which the current has been too large.
    over: u64,
}

impl ResidualDevice {
    /// One tick with so much residual current, A rms, in a device that trips at `trip_a`.
    pub fn step(&mut self, residual_a: f64, trip_a: f64) {
        self.over = if residual_a >= trip_a {
            self.over + 1
        } else {
            0
        };
        self.tripped |= self.over >= TRIP.0;
    }

    /// Pushes its button back in. It stays in only if nothing leaks.
    pub fn reset(&mut self) {
        *self = ResidualDevice::default();
    }
}

/// The longest that a class A device may take at `residual_a`, s: (20 mA / I) to the power of 1.43 (UL 943, from
/// memory).
pub fn class_a_longest_s(residual_a: f64) -> f64 {
    libm::pow(0.020 / residual_a, 1.43)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::TICK_S;

    /// Time until a device trips, s; none if it holds for ten seconds.
    fn trips_after_s(residual_a: f64, trip_a: f64) -> Option<f64> {
        let mut device = ResidualDevice::default();
        (1..=1000).find_map(|tick| {
            device.step(residual_a, trip_a);
            device.tripped.then_some(tick as f64 * TICK_S)
        })
    }

    /// UL 943, from memory: a class A device must not trip up to 4 mA, must from 6 mA on, and in time.
    #[test]
    fn a_class_a_device_trips_between_four_and_six_milliamperes_and_in_time() {
        let trip_a = 0.005;
        assert_eq!(trips_after_s(0.004, trip_a), None);
        for residual_a in [0.006, 0.020, 0.060, 0.200] {
            let after_s = trips_after_s(residual_a, trip_a);
            assert!(
                after_s.is_some_and(|s| s <= class_a_longest_s(residual_a)),
                "{residual_a} A: {after_s:?}"
            );
        }
        // One point of the formula by itself: 6 mA, 5.6 s.
        assert!((class_a_longest_s(0.006) - 5.59).abs() < 0.01);
    }

    /// IEC 61008-1, from memory: 30 mA devices hold at half of it, and trip within 0.3 s at 30 mA, 0.15 s at twice
    /// and 0.04 s at five times that.
    #[test]
    fn a_thirty_milliampere_device_trips_between_half_and_all_of_it_and_in_time() {
        let trip_a = 0.022;
        assert_eq!(trips_after_s(0.015, trip_a), None);
        for (residual_a, longest_s) in [(0.030, 0.3), (0.060, 0.15), (0.150, 0.04)] {
            let after_s = trips_after_s(residual_a, trip_a);
            assert!(
                after_s.is_some_and(|s| s <= longest_s),
                "{residual_a} A: {after_s:?}"
            );
        }
    }

    #[test]
    fn it_stays_open_until_it_is_reset() {
        let mut device = ResidualDevice::default();
        for _ in 0..3 {
            device.step(0.1, 0.005);
        }
        device.step(0.0, 0.005);
        assert!(device.tripped);
        device.reset();
        device.step(0.0, 0.005);
        assert!(!device.tripped);
    }
}
