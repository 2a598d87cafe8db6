//! Prints a length as a tape in feet and inches shows it: whole parts and a reduced fraction.

use super::Length;
use std::fmt;

/// The smallest part of an inch that is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Fineness {
    /// 1/2 in.
    Half,
    /// 1/4 in.
    Quarter,
    /// 1/8 in.
    Eighth,
    /// 1/16 in: the marks of most tapes.
    Sixteenth,
    /// 1/32 in.
    ThirtySecond,
    /// 1/64 in.
    SixtyFourth,
}

impl Fineness {
    /// Every fineness, coarse to fine.
    pub const ALL: [Self; 6] =
        [Self::Half, Self::Quarter, Self::Eighth, Self::Sixteenth, Self::ThirtySecond, Self::SixtyFourth];

    /// Parts in one inch.
    #[must_use]
    pub const fn denominator(self) -> u32 {
        match self {
            Self::Half => 2,
            Self::Quarter => 4,
            Self::Eighth => 8,
            Self::Sixteenth => 16,
            Self::ThirtySecond => 32,
            Self::SixtyFourth => 64,
        }
    }

    /// The length of one part.
    #[must_use]
    pub const fn step(self) -> Length {
        Length::inches(1.0 / self.denominator() as f64)
    }
}

/// A length in whole feet, inches below twelve and a reduced fraction below one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct FeetInches {
    /// Whether the shown length is below zero; a length that rounds to zero is not.
    pub negative: bool,
    /// Whole feet.
    pub feet: u64,
    /// Whole inches, 0 to 11.
    pub inches: u64,
    /// Upper part of the fraction; 0 when there is none.
    pub numerator: u32,
    /// Lower part of the fraction; 1 when there is none.
    pub denominator: u32,
}

/// A length in whole inches and a reduced fraction: a mark read off a tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct WholeInches {
    /// Whether the shown length is below zero; a length that rounds to zero is not.
    pub negative: bool,
    /// Whole inches.
    pub inches: u64,
    /// Upper part of the fraction; 0 when there is none.
    pub numerator: u32,
    /// Lower part of the fraction; 1 when there is none.
    pub denominator: u32,
}

/// The length to the nearest part of an inch (half away from zero), in feet and inches.
#[must_use]
pub fn feet_inches(length: Length, fineness: Fineness) -> FeetInches {
    let WholeInches { negative, inches, numerator, denominator } = inches_only(length, fineness);
    FeetInches { negative, feet: inches / 12, inches: inches % 12, numerator, denominator }
}

/// The length to the nearest part of an inch (half away from zero), in inches alone.
#[must_use]
pub fn inches_only(length: Length, fineness: Fineness) -> WholeInches {
    let parts_in_inch = fineness.denominator();
    let parts = (length.to_inches().abs() * f64::from(parts_in_inch)).round() as u64;
    let (numerator, denominator) = reduced((parts % u64::from(parts_in_inch)) as u32, parts_in_inch);
    WholeInches {
        negative: length.is_negative() && parts > 0,
        inches: parts / u64::from(parts_in_inch),
        numerator,
        denominator,
    }
}

/// A fraction with a power of two below, in its smallest terms.
pub(super) const fn reduced(numerator: u32, denominator: u32) -> (u32, u32) {
    if numerator == 0 {
        return (0, 1);
    }
    let shift = numerator.trailing_zeros();
    let shift = if shift < denominator.trailing_zeros() { shift } else { denominator.trailing_zeros() };
    (numerator >> shift, denominator >> shift)
}

/// `4 5⁄16`, `5⁄16`, `4`; a zero in front of a fraction stays only where something stands before it.
fn mixed(f: &mut fmt::Formatter<'_>, whole: u64, (numerator, denominator): (u32, u32), keep_zero: bool) -> fmt::Result {
    match (whole, numerator) {
        (_, 0) => write!(f, "{whole}"),
        (0, _) if !keep_zero => write!(f, "{numerator}⁄{denominator}"),
        _ => write!(f, "{whole} {numerator}⁄{denominator}"),
    }
}

impl fmt::Display for FeetInches {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.negative {
            f.write_str("−")?;
        }
        if self.feet > 0 {
            write!(f, "{}′ ", self.feet)?;
        }
        mixed(f, self.inches, (self.numerator, self.denominator), self.feet > 0)?;
        f.write_str("″")
    }
}

impl fmt::Display for WholeInches {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.negative {
            f.write_str("−")?;
        }
        mixed(f, self.inches, (self.numerator, self.denominator), false)?;
        f.write_str("″")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(inches: f64, fineness: Fineness, feet_text: &str, inch_text: &str) {
        let length = Length::inches(inches);
        assert_eq!(feet_inches(length, fineness).to_string(), feet_text);
        assert_eq!(inches_only(length, fineness).to_string(), inch_text);
    }

    #[test]
    fn prints_as_on_the_tape() {
        let sixteenth = Fineness::Sixteenth;
        check(88.3125, sixteenth, "7′ 4 5⁄16″", "88 5⁄16″");
        check(84.0, sixteenth, "7′ 0″", "84″");
        check(84.3125, sixteenth, "7′ 0 5⁄16″", "84 5⁄16″");
        check(4.3125, sixteenth, "4 5⁄16″", "4 5⁄16″");
        check(0.3125, sixteenth, "5⁄16″", "5⁄16″");
        check(0.0, sixteenth, "0″", "0″");
        check(-88.0, sixteenth, "−7′ 4″", "−88″");
        check(4.5, Fineness::SixtyFourth, "4 1⁄2″", "4 1⁄2″");
    }

    #[test]
    fn carries_into_the_next_foot() {
        check(11.0 + 31.0 / 32.0, Fineness::Sixteenth, "1′ 0″", "12″");
        check(11.0 + 31.0 / 32.0, Fineness::ThirtySecond, "11 31⁄32″", "11 31⁄32″");
        check(-0.01, Fineness::Sixteenth, "0″", "0″");
        check(0.25, Fineness::Half, "1⁄2″", "1⁄2″");
    }
}
