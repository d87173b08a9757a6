//! Machine time as whole ticks, and the few constants and conversions that every room shares.
//!
//! Physical quantities are `f64` with the unit in the name (`level_mm`, `coil_ohms`). Time is the
//! one quantity that must never drift, so it is an integer with a type of its own.

mod names;
mod random;

pub use names::{UnknownName, by_name};
pub use random::uniform;

use serde::{Deserialize, Serialize};
use std::fmt;
use std::ops::{Add, AddAssign, Sub};

/// Length of one simulation step, in milliseconds.
pub const TICK_MS: u64 = 10;
/// Simulation steps in one second.
pub const TICKS_PER_S: u64 = 1000 / TICK_MS;
/// Length of one simulation step, in seconds.
pub const TICK_S: f64 = TICK_MS as f64 / 1000.0;

/// Standard acceleration of free fall, m/s² (3rd General Conference on Weights and Measures, 1901; ISO 80000-3;
/// both from memory).
pub const GRAVITY_M_S2: f64 = 9.806_65;
/// 0 °C in kelvin.
pub const ZERO_C_K: f64 = 273.15;

/// A moment: ticks since the attempt began.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
pub struct Time(pub u64);

/// A length of time: a number of ticks.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
)]
pub struct Span(pub u64);

impl Time {
    /// The beginning of an attempt.
    pub const ZERO: Time = Time(0);

    /// Time since `earlier`; zero when `earlier` lies ahead.
    pub fn since(self, earlier: Time) -> Span {
        Span(self.0.saturating_sub(earlier.0))
    }

    /// Seconds since the attempt began.
    pub fn seconds(self) -> f64 {
        self.0 as f64 * TICK_S
    }
}

impl Span {
    /// No time at all.
    pub const ZERO: Span = Span(0);

    /// The nearest whole number of ticks to `ms` milliseconds, rounded up.
    pub const fn from_ms(ms: u64) -> Span {
        Span(ms.div_ceil(TICK_MS))
    }

    /// Whole seconds; more than can be counted are the most that can.
    pub const fn from_s(s: u64) -> Span {
        Span(s.saturating_mul(TICKS_PER_S))
    }

    /// The sum, or the longest span that can be counted.
    pub const fn saturating_add(self, other: Span) -> Span {
        Span(self.0.saturating_add(other.0))
    }

    /// So many of them, or the longest span that can be counted.
    pub const fn saturating_mul(self, times: u64) -> Span {
        Span(self.0.saturating_mul(times))
    }

    /// Length in milliseconds.
    pub const fn ms(self) -> u64 {
        self.0 * TICK_MS
    }

    /// Length in seconds.
    pub fn seconds(self) -> f64 {
        self.0 as f64 * TICK_S
    }
}

impl Add<Span> for Time {
    type Output = Time;
    fn add(self, span: Span) -> Time {
        Time(self.0 + span.0)
    }
}

impl AddAssign<Span> for Time {
    fn add_assign(&mut self, span: Span) {
        self.0 += span.0;
    }
}

impl Sub<Span> for Time {
    type Output = Time;
    fn sub(self, span: Span) -> Time {
        Time(self.0.saturating_sub(span.0))
    }
}

impl Add for Span {
    type Output = Span;
    fn add(self, other: Span) -> Span {
        Span(self.0 + other.0)
    }
}

impl fmt::Display for Time {
    /// Minutes, seconds and hundredths: `12:03.40`. A moment too far off to be counted in
    /// milliseconds prints as the last one that can be.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let hundredths = self.0.saturating_mul(TICK_MS) / 10;
        write!(
            f,
            "{:02}:{:02}.{:02}",
            hundredths / 6000,
            hundredths / 100 % 60,
            hundredths % 100
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn time_prints_minutes_seconds_and_hundredths() {
        assert_eq!(
            (Time::ZERO + Span::from_ms(723_400)).to_string(),
            "12:03.40"
        );
    }

    #[test]
    fn a_moment_beyond_all_counting_still_prints() {
        let last_ms = u64::MAX / TICK_MS * TICK_MS;
        let last = Time(last_ms / TICK_MS).to_string();
        assert_eq!(Time(u64::MAX).to_string(), last);
        assert_eq!(last, format!("{}:51.61", last_ms / 60_000));
    }

    #[test]
    fn a_span_rounds_up_to_whole_ticks() {
        assert_eq!(Span::from_ms(11), Span(2));
        assert_eq!(Span::from_s(1).ms(), 1000);
    }
}
