//! Distances level and along a roof slope: two kinds, so that one is never taken for the other.

use super::{Length, Slope};

/// Defines a distance of one kind around a [`Length`].
macro_rules! distance {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(Length);

        impl $name {
            /// None of it.
            pub const ZERO: Self = Self(Length::ZERO);

            /// This kind of distance, of the given length.
            #[must_use]
            pub const fn of(length: Length) -> Self {
                Self(length)
            }

            /// The length without its kind.
            #[must_use]
            pub const fn length(self) -> Length {
                self.0
            }
        }

        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl std::ops::Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                Self(-self.0)
            }
        }

        impl std::ops::Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }

        impl std::ops::Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                items.fold(Self::ZERO, |sum, item| sum + item)
            }
        }
    };
}

distance! {
    /// A level distance, square to the wall.
    Run
}
distance! {
    /// A distance along the roof slope.
    SlopeLength
}

impl Run {
    /// The distance along the slope above this run: run ÷ cos θ.
    #[must_use]
    pub fn along(self, slope: Slope) -> SlopeLength {
        SlopeLength(self.0 / slope.cos())
    }

    /// How far the slope rises over this run: run × tan θ.
    #[must_use]
    pub fn rise(self, slope: Slope) -> Length {
        self.0 * slope.tan()
    }
}

impl SlopeLength {
    /// The level distance under it: slope length × cos θ.
    #[must_use]
    pub fn level(self, slope: Slope) -> Run {
        Run(self.0 * slope.cos())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(found: Length, expected_inches: f64) {
        assert!((found.to_inches() - expected_inches).abs() < 1e-12, "{found:?} is not {expected_inches} in");
    }

    /// A 5-12-13 triangle: 5 in 12 over 12 in of run is 13 in along the slope.
    #[test]
    fn five_twelve_thirteen() {
        let slope = Slope::in_twelve(5.0);
        check(Run::of(Length::inches(12.0)).along(slope).length(), 13.0);
        check(Run::of(Length::inches(12.0)).rise(slope), 5.0);
        check(SlopeLength::of(Length::inches(13.0)).level(slope).length(), 12.0);
    }
}
