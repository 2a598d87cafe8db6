//! The parts every quantity shares: one held number, its constructors and the operators that keep the kind.

/// Defines a quantity held as one finite `f64`, with the operators that keep its kind.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            /// None of it.
            pub const ZERO: Self = Self(0.0);

            /// # Panics
            /// If the number is NaN or infinite.
            #[inline(always)]
            pub(in crate::units) const fn held(value: f64) -> Self {
                // Not a number less itself, and infinity less itself, is not a number: shorter than the two comparisons.
                if (value - value).is_nan() {
                    Self::not_finite();
                }
                Self(value)
            }

            #[cold]
            #[inline(never)]
            const fn not_finite() -> ! {
                panic!(concat!(stringify!($name), " must be a finite number"));
            }

            pub(in crate::units) const fn try_held(value: f64) -> Option<Self> {
                if value.is_finite() { Some(Self(value)) } else { None }
            }

            pub(in crate::units) const fn bare(self) -> f64 {
                self.0
            }

            /// The same size without its sign.
            #[must_use]
            pub const fn abs(self) -> Self {
                Self(self.0.abs())
            }

            /// The smaller of the two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self {
                if other.0 < self.0 { other } else { self }
            }

            /// The larger of the two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self {
                if other.0 > self.0 { other } else { self }
            }

            /// Kept between two limits; where the limits cross, the upper one wins.
            #[must_use]
            pub const fn clamp(self, low: Self, high: Self) -> Self {
                self.max(low).min(high)
            }

            /// Whether the two differ by no more than the tolerance.
            #[must_use]
            pub const fn is_near(self, other: Self, tolerance: Self) -> bool {
                (self.0 - other.0).abs() <= tolerance.0
            }

            /// Whether it is below zero.
            #[must_use]
            pub const fn is_negative(self) -> bool {
                self.0 < 0.0
            }
        }

        // Numbers that a product or a constructor has found finite stay so in a sum: no second look there, where half of
        // all work is.
        impl std::ops::Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl std::ops::AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                *self = *self + other;
            }
        }

        impl std::ops::Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl std::ops::SubAssign for $name {
            fn sub_assign(&mut self, other: Self) {
                *self = *self - other;
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
                Self::held(self.0 * factor)
            }
        }

        impl std::ops::Mul<$name> for f64 {
            type Output = $name;
            fn mul(self, quantity: $name) -> $name {
                quantity * self
            }
        }

        impl std::ops::Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self::held(self.0 / divisor)
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

        impl<'a> std::iter::Sum<&'a $name> for $name {
            fn sum<I: Iterator<Item = &'a Self>>(items: I) -> Self {
                items.copied().sum()
            }
        }
    };
}

/// Adds the constructors and the reading of one unit. The first brackets turn the unit into the held one, the second turn it back.
macro_rules! unit {
    ($name:ident, $unit:literal, $new:ident, $try_new:ident, $to:ident, ($($in:tt)+), ($($out:tt)+)) => {
        impl $name {
            #[doc = concat!("Made from ", $unit, ".")]
            ///
            /// # Panics
            /// If the number is NaN or infinite.
            #[must_use]
            pub const fn $new(value: f64) -> Self {
                Self::held(value $($in)+)
            }

            #[doc = concat!("Made from ", $unit, " that come from outside: `None` when the number is NaN or infinite.")]
            #[must_use]
            pub const fn $try_new(value: f64) -> Option<Self> {
                Self::try_held(value $($in)+)
            }

            #[doc = concat!("In ", $unit, ".")]
            #[must_use]
            pub const fn $to(self) -> f64 {
                self.bare() $($out)+
            }
        }
    };
}

/// `A × B = C` in both orders; the factor turns the product of the held units into the held unit of `C`.
macro_rules! product {
    ($a:ident * $b:ident = $c:ident, $factor:expr) => {
        impl std::ops::Mul<$b> for $a {
            type Output = $c;
            fn mul(self, other: $b) -> $c {
                $c::held(self.bare() * other.bare() * $factor)
            }
        }

        impl std::ops::Mul<$a> for $b {
            type Output = $c;
            fn mul(self, other: $a) -> $c {
                other * self
            }
        }
    };
}

/// `C ÷ A = B`, the reverse of [`product`] with the same factor.
macro_rules! quotient {
    ($c:ident / $a:ident = $b:ident, $factor:expr) => {
        impl std::ops::Div<$a> for $c {
            type Output = $b;
            fn div(self, other: $a) -> $b {
                $b::held(self.bare() / (other.bare() * $factor))
            }
        }
    };
}

pub(super) use {product, quantity, quotient, unit};
