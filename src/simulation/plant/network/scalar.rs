//! The two kinds of number a network is solved in.

use num_complex::Complex64;
use std::fmt::Debug;
use std::ops::{Add, AddAssign, Mul, Neg, Sub};

/// A number that voltages, currents and admittances are made of: `f64` for direct current,
/// [`Complex64`] for phasors at one frequency.
pub trait Scalar:
    Copy
    + Debug
    + Add<Output = Self>
    + Sub<Output = Self>
    + Mul<Output = Self>
    + Neg<Output = Self>
    + AddAssign
    + 'static
{
    /// Nothing.
    const ZERO: Self;

    /// A number without imaginary part.
    fn real(value: f64) -> Self;

    /// One divided by this number.
    fn recip(self) -> Self;

    /// Equal bit for bit: tells 0 from −0, and takes a NaN as equal to itself.
    fn same_bits(self, other: Self) -> bool;
}

impl Scalar for f64 {
    const ZERO: f64 = 0.0;

    fn real(value: f64) -> f64 {
        value
    }

    #[inline]
    fn recip(self) -> f64 {
        1.0 / self
    }

    #[inline]
    fn same_bits(self, other: f64) -> bool {
        self.to_bits() == other.to_bits()
    }
}

impl Scalar for Complex64 {
    const ZERO: Complex64 = Complex64::new(0.0, 0.0);

    fn real(value: f64) -> Complex64 {
        Complex64::new(value, 0.0)
    }

    /// Written out so that every platform rounds alike. The squares neither overflow nor vanish:
    /// admittances here lie between the 1e-12 S of an open circuit and some 1e12 S.
    #[inline]
    fn recip(self) -> Complex64 {
        let scale = 1.0 / (self.re * self.re + self.im * self.im);
        Complex64::new(self.re * scale, -self.im * scale)
    }

    #[inline]
    fn same_bits(self, other: Complex64) -> bool {
        self.re.same_bits(other.re) && self.im.same_bits(other.im)
    }
}
