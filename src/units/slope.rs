//! The slope of a roof, held as rise over run.

use super::{Angle, Length};

/// How steep a roof is: rise ÷ run, without a unit. Finite, so always less than upright.
#[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
pub struct Slope(f64);

impl Slope {
    /// Level.
    pub const LEVEL: Self = Self(0.0);

    /// Rise over run as a plain ratio.
    ///
    /// # Panics
    /// If the number is NaN or infinite.
    #[must_use]
    pub const fn ratio(rise_over_run: f64) -> Self {
        assert!(rise_over_run.is_finite(), "Slope must be a finite number");
        Self(rise_over_run)
    }

    /// As [`Slope::ratio`], for numbers from outside: `None` when NaN or infinite.
    #[must_use]
    pub const fn try_ratio(rise_over_run: f64) -> Option<Self> {
        if rise_over_run.is_finite() { Some(Self(rise_over_run)) } else { None }
    }

    /// Inches of rise in twelve of run.
    ///
    /// # Panics
    /// If the number is NaN or infinite.
    #[must_use]
    pub const fn in_twelve(rise: f64) -> Self {
        Self::ratio(rise / 12.0)
    }

    /// Rise in a hundred of run.
    ///
    /// # Panics
    /// If the number is NaN or infinite.
    #[must_use]
    pub const fn percent(percent: f64) -> Self {
        Self::ratio(percent / 100.0)
    }

    /// Degrees above level.
    ///
    /// # Panics
    /// If the angle is NaN or not between -90 and 90 degrees.
    #[must_use]
    pub fn degrees(degrees: f64) -> Self {
        assert!(degrees.abs() < 90.0, "Slope must be less than upright");
        Self::ratio(Angle::degrees(degrees).tan())
    }

    /// As [`Slope::degrees`], for numbers from outside: `None` for NaN and for upright or more.
    #[must_use]
    pub fn try_degrees(degrees: f64) -> Option<Self> {
        if degrees.abs() < 90.0 { Self::try_ratio(Angle::degrees(degrees).tan()) } else { None }
    }

    /// From a rise and the run it is measured over; `None` when the run is zero.
    #[must_use]
    pub fn from_rise_run(rise: Length, run: Length) -> Option<Self> {
        Self::try_ratio(rise / run)
    }

    /// Inches of rise in twelve of run.
    #[must_use]
    pub const fn to_in_twelve(self) -> f64 {
        self.0 * 12.0
    }

    /// Rise in a hundred of run.
    #[must_use]
    pub const fn to_percent(self) -> f64 {
        self.0 * 100.0
    }

    /// Degrees above level.
    #[must_use]
    pub fn to_degrees(self) -> f64 {
        self.angle().to_degrees()
    }

    /// The angle above level.
    #[must_use]
    pub fn angle(self) -> Angle {
        Angle::radians(self.0.atan())
    }

    /// tan θ = rise ÷ run.
    #[must_use]
    pub const fn tan(self) -> f64 {
        self.0
    }

    /// sin θ = t ÷ √(1 + t²) with t = tan θ: a square root alone, so every platform gives the same bits.
    #[must_use]
    pub fn sin(self) -> f64 {
        self.0 * self.cos()
    }

    /// cos θ = 1 ÷ √(1 + t²) with t = tan θ: a square root alone, so every platform gives the same bits.
    #[must_use]
    pub fn cos(self) -> f64 {
        1.0 / (1.0 + self.0 * self.0).sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-12, "{found} is not {expected}");
    }

    #[test]
    fn five_in_twelve() {
        let slope = Slope::in_twelve(5.0);
        check(slope.sin(), 5.0 / 13.0);
        check(slope.cos(), 12.0 / 13.0);
        check(slope.to_percent(), 100.0 * 5.0 / 12.0);
        assert_eq!(Slope::from_rise_run(Length::inches(5.0), Length::feet(1.0)), Some(slope));
    }

    #[test]
    fn degrees_and_back() {
        check(Slope::degrees(45.0).tan(), 1.0);
        check(Slope::degrees(14.0).to_degrees(), 14.0);
        check(Slope::percent(100.0).to_in_twelve(), 12.0);
        assert_eq!(Slope::try_degrees(90.0), None);
        assert_eq!(Slope::try_degrees(f64::NAN), None);
        assert_eq!(Slope::from_rise_run(Length::inches(1.0), Length::ZERO), None);
    }
}
