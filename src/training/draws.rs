//! Draws from a list or a range.

use detent_simulation::units::uniform;
use rand_chacha::ChaCha8Rng;

/// Draws one of these; none of nothing.
pub(crate) fn one_of<T: Copy>(all: &[T], rng: &mut ChaCha8Rng) -> Option<T> {
    all.get(below(all.len(), rng)).copied()
}

/// Draws a number below `end`; 0 where there is none.
pub(crate) fn below(end: usize, rng: &mut ChaCha8Rng) -> usize {
    ((uniform(rng) * end as f64) as usize).min(end.saturating_sub(1))
}

/// Draws a number from `least` to `most`.
pub(crate) fn between(least: u32, most: u32, rng: &mut ChaCha8Rng) -> u32 {
    least + below((most - least + 1) as usize, rng) as u32
}

/// Draws a value from `low` up to `high`.
pub(crate) fn within(low: f64, high: f64, rng: &mut ChaCha8Rng) -> f64 {
    low + (high - low) * uniform(rng)
}

/// Puts them in an order drawn at random (Fisher and Yates).
pub(crate) fn shuffle<T>(all: &mut [T], rng: &mut ChaCha8Rng) {
    for last in (1..all.len()).rev() {
        all.swap(last, below(last + 1, rng));
    }
}
