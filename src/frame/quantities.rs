//! Stiffnesses the units room has no name for: second moment of area, springs.
use crate::units::{Angle, Force, Length, MILLIMETRES_PER_INCH, Moment, NEWTONS_PER_POUND};

/// Kilonewtons a millimetre in one pound an inch.
const KILONEWTONS_PER_MILLIMETRE: f64 = NEWTONS_PER_POUND / (1000.0 * MILLIMETRES_PER_INCH);
/// mm⁴ in one in⁴.
const MILLIMETRES_4: f64 = MILLIMETRES_PER_INCH * MILLIMETRES_PER_INCH * MILLIMETRES_PER_INCH * MILLIMETRES_PER_INCH;

macro_rules! held {
    ($(#[$doc:meta])* $name:ident, $unit:literal, $new:ident, $try_new:ident, $to:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("Made from ", $unit, ".")]
            ///
            /// # Panics
            /// If the number is NaN or infinite.
            #[must_use]
            pub const fn $new(value: f64) -> Self {
                assert!(value.is_finite(), concat!(stringify!($name), " must be a finite number"));
                Self(value)
            }

            #[doc = concat!("Made from ", $unit, " that come from outside: `None` when NaN or infinite.")]
            #[must_use]
            pub const fn $try_new(value: f64) -> Option<Self> {
                if value.is_finite() { Some(Self(value)) } else { None }
            }

            #[doc = concat!("In ", $unit, ".")]
            #[must_use]
            pub const fn $to(self) -> f64 {
                self.0
            }
        }
    };
}

held! {
    /// Second moment of area, held in in⁴.
    Inertia, "in⁴", inches_4, try_inches_4, to_inches_4
}
held! {
    /// Force by movement, held in pounds an inch.
    Spring, "pounds an inch", pounds_per_inch, try_pounds_per_inch, to_pounds_per_inch
}
held! {
    /// Moment by rotation, held in pound-inches a radian.
    TurnSpring, "pound-inches a radian", pound_inches_per_radian, try_pound_inches_per_radian, to_pound_inches_per_radian
}

impl Spring {
    /// The same, stiffer or softer by a factor.
    #[must_use]
    pub fn times(self, factor: f64) -> Self {
        Self::pounds_per_inch(self.0 * factor)
    }
}

impl Inertia {
    /// Of a solid rectangle about the axis across its depth: b·d³/12.
    #[must_use]
    pub fn rectangle(breadth: Length, depth: Length) -> Self {
        let depth = depth.to_inches();
        Self::inches_4(breadth.to_inches() * depth * depth * depth / 12.0)
    }

    /// Made from mm⁴.
    ///
    /// # Panics
    /// If the number is NaN or infinite.
    #[must_use]
    pub const fn millimetres_4(value: f64) -> Self {
        Self::inches_4(value / MILLIMETRES_4)
    }
}

impl Spring {
    /// Made from kilonewtons a millimetre.
    ///
    /// # Panics
    /// If the number is NaN or infinite.
    #[must_use]
    pub const fn kilonewtons_per_millimetre(value: f64) -> Self {
        Self::pounds_per_inch(value / KILONEWTONS_PER_MILLIMETRE)
    }
}

/// A kind of result: it has a held unit and can be read back from a bare number in it.
pub trait Measured: Copy + PartialOrd + std::ops::Sub<Output = Self> + std::ops::Add<Output = Self> {
    /// From a finite number in inches, pounds and radians. The solver lets no other number out.
    fn of(value: f64) -> Self;
    /// In inches, pounds and radians.
    fn bare(self) -> f64;
}

macro_rules! measured {
    ($name:ident, $new:ident, $to:ident) => {
        impl Measured for $name {
            fn of(value: f64) -> Self {
                Self::$new(value)
            }

            fn bare(self) -> f64 {
                self.$to()
            }
        }
    };
}
measured!(Force, pounds, to_pounds);
measured!(Moment, pound_inches, to_pound_inches);
measured!(Length, inches, to_inches);
measured!(Angle, radians, to_radians);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units() {
        assert_eq!(Inertia::rectangle(Length::inches(8.0), Length::inches(10.0)).to_inches_4(), 8.0 * 1000.0 / 12.0);
        // 25.4⁴ = 416231.4256, multiplied out by hand.
        assert!((Inertia::millimetres_4(416_231.425_6).to_inches_4() - 1.0).abs() < 1e-12);
        // 1 kN/mm = 25.4 kN/in = 25400 N / 4.4482216152605 = 5710.147 lb/in.
        assert!((Spring::kilonewtons_per_millimetre(1.0).to_pounds_per_inch() - 5_710.147_154_7).abs() < 1e-6);
        assert!(Inertia::try_inches_4(f64::NAN).is_none() && Spring::try_pounds_per_inch(f64::INFINITY).is_none());
        assert_eq!(TurnSpring::pound_inches_per_radian(5.0).to_pound_inches_per_radian(), 5.0);
    }
}
