//! Prints a slope: rise in twelve, degrees or percent.

use super::feet_inches::reduced;
use super::{Figure, Slope, UnitSystem};
use std::fmt;

/// How near a rise must be to a sixteenth to be shown as a fraction: nearer than any framing square can be set.
const FRACTION_REACH: f64 = 0.0005;

/// The rise in twelve of run, as it is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum InTwelve {
    /// A whole rise and a reduced fraction.
    Fraction {
        /// Whether the slope falls.
        negative: bool,
        /// Whole inches of rise.
        whole: u64,
        /// Upper part of the fraction; 0 when there is none.
        numerator: u32,
        /// Lower part of the fraction; 1 when there is none.
        denominator: u32,
    },
    /// A rise that is no sixteenth, with two decimals.
    Decimal(Figure),
}

/// `3 in 12`, `3 1⁄4 in 12`, or `2.99 in 12` where the rise is no sixteenth.
#[must_use]
pub fn in_twelve(slope: Slope) -> InTwelve {
    let rise = slope.to_in_twelve();
    let sixteenths = (rise.abs() * 16.0).round();
    if (rise.abs() - sixteenths / 16.0).abs() > FRACTION_REACH {
        return InTwelve::Decimal(Figure::of(rise, 2, " in 12"));
    }
    let sixteenths = sixteenths as u64;
    let (numerator, denominator) = reduced((sixteenths % 16) as u32, 16);
    InTwelve::Fraction { negative: rise < 0.0 && sixteenths > 0, whole: sixteenths / 16, numerator, denominator }
}

impl fmt::Display for InTwelve {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (negative, whole, numerator, denominator) = match *self {
            Self::Decimal(figure) => return figure.fmt(f),
            Self::Fraction { negative, whole, numerator, denominator } => (negative, whole, numerator, denominator),
        };
        let sign = if negative { "−" } else { "" };
        match (whole, numerator) {
            (_, 0) => write!(f, "{sign}{whole} in 12"),
            (0, _) => write!(f, "{sign}{numerator}⁄{denominator} in 12"),
            _ => write!(f, "{sign}{whole} {numerator}⁄{denominator} in 12"),
        }
    }
}

/// `14.0°`.
#[must_use]
pub fn slope_degrees(slope: Slope) -> Figure {
    Figure::of(slope.to_degrees(), 1, "°")
}

/// `25.0 %`.
#[must_use]
pub fn slope_percent(slope: Slope) -> Figure {
    Figure::of(slope.to_percent(), 1, " %")
}

/// The slope as the chosen system prints it: rise in twelve, or degrees.
#[must_use]
pub fn show_slope(slope: Slope, system: UnitSystem) -> String {
    match system {
        UnitSystem::Imperial => in_twelve(slope).to_string(),
        UnitSystem::Metric => slope_degrees(slope).to_string(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(slope: Slope, imperial: &str, metric: &str, percent: &str) {
        assert_eq!(show_slope(slope, UnitSystem::Imperial), imperial);
        assert_eq!(show_slope(slope, UnitSystem::Metric), metric);
        assert_eq!(slope_percent(slope).to_string(), percent);
    }

    #[test]
    fn three_forms() {
        check(Slope::in_twelve(3.0), "3 in 12", "14.0°", "25.0 %");
        check(Slope::in_twelve(3.25), "3 1⁄4 in 12", "15.2°", "27.1 %");
        check(Slope::in_twelve(0.25), "1⁄4 in 12", "1.2°", "2.1 %");
        check(Slope::degrees(14.0), "2.99 in 12", "14.0°", "24.9 %");
        check(Slope::LEVEL, "0 in 12", "0.0°", "0.0 %");
    }
}
