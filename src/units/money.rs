//! Money, held in whole cents (hundredths of the currency), so that a sum is exact.

use std::ops::{Add, AddAssign, Mul, Neg, Sub};

/// The most that `Money::try_of` takes: beyond it an `f64` no longer knows single cents.
const MOST: f64 = 9e13;

/// An amount of money in whole cents. Sums beyond the range of an `i64` stay at its end.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Money(i64);

impl Money {
    /// Nothing.
    pub const ZERO: Self = Self(0);

    /// From whole cents.
    #[must_use]
    pub const fn cents(cents: i64) -> Self {
        Self(cents)
    }

    /// From an amount, to the nearest cent, half away from zero.
    ///
    /// # Panics
    /// If the number is NaN or infinite.
    #[must_use]
    pub fn of(amount: f64) -> Self {
        assert!(amount.is_finite(), "Money must be a finite number");
        Self((amount * 100.0).round() as i64)
    }

    /// As [`Money::of`], for numbers from outside: `None` when NaN, infinite or too large to count in cents.
    #[must_use]
    pub fn try_of(amount: f64) -> Option<Self> {
        (amount.abs() <= MOST).then(|| Self::of(amount))
    }

    /// In whole cents.
    #[must_use]
    pub const fn to_cents(self) -> i64 {
        self.0
    }

    /// As an amount.
    #[must_use]
    pub fn to_f64(self) -> f64 {
        self.0 as f64 / 100.0
    }
}

impl Add for Money {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl AddAssign for Money {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl Sub for Money {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Neg for Money {
    type Output = Self;
    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}

/// To the nearest cent, half away from zero.
///
/// # Panics
/// If the factor is NaN or infinite.
impl Mul<f64> for Money {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        assert!(factor.is_finite(), "Money must be multiplied by a finite number");
        Self((self.0 as f64 * factor).round() as i64)
    }
}

impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
        items.fold(Self::ZERO, Add::add)
    }
}

impl<'a> std::iter::Sum<&'a Money> for Money {
    fn sum<I: Iterator<Item = &'a Self>>(items: I) -> Self {
        items.copied().sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cents_are_exact() {
        let dimes: Money = [Money::of(0.1); 3].iter().sum();
        assert_eq!(dimes, Money::of(0.3));
        assert_eq!(Money::cents(5) * 0.5, Money::cents(3));
        assert_eq!(Money::cents(-5) * 0.5, Money::cents(-3));
        assert_eq!(Money::of(-1.25).to_cents(), -125);
        assert_eq!(Money::cents(125).to_f64(), 1.25);
        assert_eq!(Money::try_of(f64::NAN), None);
        assert_eq!(Money::try_of(1e14), None);
    }
}
