//! A length in millimetres that is always a finite number.

use core::fmt;
use core::iter::Sum;
use core::ops::{Add, AddAssign, Div, Mul, Neg, Sub};

use serde::{Serialize, Serializer};

/// A length in millimetres; never `NaN`, never infinite.
///
/// Sums and products saturate at ±10⁹ mm, far beyond every bound in [`crate::limits`]; dividing by
/// zero saturates likewise and `0 / 0` is zero, so that no input can smuggle in a non-number.
#[derive(Clone, Copy, Debug, Default)]
pub struct Mm(f64);

/// Wood and saws know nothing smaller: two lengths within one micrometre are the same length.
const SAME: f64 = 1e-3;
/// What twelve decimals of arithmetic leave behind; for comparisons that must not forgive a micrometre.
const ROUND_OFF: f64 = 1e-9;
/// Two decimals in millimetres and three in inches are shown.
const SHOWN: f64 = 0.02;
const FARTHEST: f64 = 1e9;
const LARGEST_RATIO: f64 = 1e15;

impl Mm {
    /// No length.
    pub const ZERO: Self = Self(0.0);
    /// One inch, exactly 25.4 mm (NIST SP 811).
    pub const INCH: Self = Self(25.4);

    /// The length of `mm` millimetres, if that is a finite number.
    #[must_use]
    pub fn new(mm: f64) -> Option<Self> {
        mm.is_finite().then(|| Self::saturating(mm))
    }

    /// A constant known when the program is written.
    ///
    /// # Panics
    /// At compile time, for a number that is not finite; there is no other way to call it from a constant.
    #[must_use]
    pub const fn constant(mm: f64) -> Self {
        assert!(mm.is_finite());
        Self(mm)
    }

    fn saturating(mm: f64) -> Self {
        if mm.is_nan() {
            return Self::ZERO;
        }
        // Adding zero turns −0 into 0, so that no reading is ever shown as "-0".
        Self(crate::math::within(mm, -FARTHEST, FARTHEST) + 0.0)
    }

    /// The number of millimetres.
    #[must_use]
    pub const fn mm(self) -> f64 {
        self.0
    }

    /// The same distance without its sign.
    #[must_use]
    pub fn abs(self) -> Self {
        Self(self.0.abs())
    }

    /// The lesser of two lengths.
    #[must_use]
    pub fn min(self, other: Self) -> Self {
        Self(self.0.min(other.0))
    }

    /// The greater of two lengths.
    #[must_use]
    pub fn max(self, other: Self) -> Self {
        Self(self.0.max(other.0))
    }

    /// Whether both are the same within one micrometre.
    #[must_use]
    pub fn is_same(self, other: Self) -> bool {
        (self.0 - other.0).abs() <= SAME
    }

    /// Whether this is less than `other` by more than arithmetic's own noise (10⁻⁹ mm).
    #[must_use]
    pub fn is_below(self, other: Self) -> bool {
        self.0 < other.0 - ROUND_OFF
    }

    /// Whether this is greater than `other` by more than arithmetic's own noise (10⁻⁹ mm).
    #[must_use]
    pub fn is_above(self, other: Self) -> bool {
        other.is_below(self)
    }

    /// Whether this is greater than a bound by more than is lost when the bound is shown (0.02 mm): what a
    /// refusal proposes must be accepted as it was read.
    #[must_use]
    pub fn is_beyond(self, bound: Self) -> bool {
        self.0 > bound.0 + SHOWN
    }
}

impl Add for Mm {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::saturating(self.0 + other.0)
    }
}

impl AddAssign for Mm {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for Mm {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::saturating(self.0 - other.0)
    }
}

impl Neg for Mm {
    type Output = Self;
    fn neg(self) -> Self {
        Self::saturating(-self.0)
    }
}

impl Mul<f64> for Mm {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::saturating(self.0 * factor)
    }
}

impl Div<f64> for Mm {
    type Output = Self;
    fn div(self, divisor: f64) -> Self {
        Self::saturating(self.0 / divisor)
    }
}

impl Div for Mm {
    /// A plain ratio, held within ±10¹⁵ so that it is finite too and counts whole steps exactly.
    type Output = f64;
    fn div(self, other: Self) -> f64 {
        let ratio = self.0 / other.0;
        if ratio.is_nan() {
            0.0
        } else {
            crate::math::within(ratio, -LARGEST_RATIO, LARGEST_RATIO)
        }
    }
}

impl Sum for Mm {
    fn sum<I: Iterator<Item = Self>>(lengths: I) -> Self {
        lengths.fold(Self::ZERO, Self::add)
    }
}

impl PartialEq for Mm {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}

impl Eq for Mm {}

impl PartialOrd for Mm {
    fn partial_cmp(&self, other: &Self) -> Option<core::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Mm {
    fn cmp(&self, other: &Self) -> core::cmp::Ordering {
        self.0.total_cmp(&other.0)
    }
}

impl fmt::Display for Mm {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} mm", super::write_number(self.0, 6))
    }
}

impl Serialize for Mm {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_f64(self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::Mm;

    #[test]
    fn only_finite_numbers_become_lengths() {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(Mm::new(bad), None);
        }
        assert_eq!(Mm::new(19.05).map(Mm::mm), Some(19.05));
    }

    #[test]
    fn arithmetic_stays_finite() {
        let far = Mm::new(f64::MAX).unwrap();
        for length in [far + far, far * f64::MAX, Mm::INCH / 0.0, Mm::ZERO / 0.0] {
            assert!(length.mm().is_finite(), "{length:?}");
        }
        assert!((Mm::INCH / Mm::ZERO).is_finite());
    }

    #[test]
    fn a_micrometre_is_the_same_and_two_are_not() {
        let inch = Mm::INCH;
        assert!(inch.is_same(inch + Mm::constant(0.000_9)));
        assert!(!inch.is_same(inch + Mm::constant(0.002)));
    }
}
