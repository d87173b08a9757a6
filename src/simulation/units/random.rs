//! Draws from the generator that is passed in.

use rand::Rng;

/// A draw from 0 up to, but never, 1.
pub fn uniform(rng: &mut impl Rng) -> f64 {
    f64::from(rng.next_u32()) / 4_294_967_296.0
}
