//! A length, held in inches so that every n/64 in is exact.

use super::Area;
use super::quantity::{quantity, unit};

/// Millimetres in one inch, exact: international yard and pound agreement (1959).
pub const MILLIMETRES_PER_INCH: f64 = 25.4;

/// A ratio this little above a whole number counts as that number when rounding up: it is noise of the arithmetic.
const ROUND_UP_NOISE: f64 = 1e-9;

quantity! {
    /// A length or a position, held in inches.
    Length
}
unit!(Length, "inches", inches, try_inches, to_inches, (*1.0), (/ 1.0));
unit!(Length, "feet", feet, try_feet, to_feet, (*12.0), (/ 12.0));
// 25.4 = 127 / 5: whole numbers keep tenths of a millimetre from picking up noise (304.8 mm is 12 in to the bit).
unit!(Length, "millimetres", millimetres, try_millimetres, to_millimetres, (*5.0 / 127.0), (*127.0 / 5.0));
unit!(Length, "metres", metres, try_metres, to_metres, (*5000.0 / 127.0), (*127.0 / 5000.0));

impl Length {
    /// The long side over two sides at a right angle. From a square root alone, so every platform gives the same bits.
    #[must_use]
    pub fn hypot(self, other: Self) -> Self {
        let (a, b) = (self.bare(), other.bare());
        Self::held((a * a + b * b).sqrt())
    }

    /// The nearest multiple of the step, half away from zero. A step that is not above zero leaves the length as it is.
    #[must_use]
    pub fn round_to(self, step: Self) -> Self {
        if step <= Self::ZERO {
            return self;
        }
        Self::held((self / step).round() * step.bare())
    }

    /// The next multiple of the step that is not shorter. A step that is not above zero leaves the length as it is.
    #[must_use]
    pub fn round_up_to(self, step: Self) -> Self {
        if step <= Self::ZERO {
            return self;
        }
        Self::held((self / step - ROUND_UP_NOISE).ceil() * step.bare())
    }
}

impl std::ops::Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area::held(self.bare() * other.bare())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(found: Length, expected_inches: f64) {
        assert_eq!(found.to_inches().to_bits(), expected_inches.to_bits(), "{found:?} is not {expected_inches} in");
    }

    #[test]
    fn units_turn_into_inches() {
        check(Length::feet(7.5), 90.0);
        check(Length::millimetres(25.4), 1.0);
        check(Length::millimetres(304.8), 12.0);
        assert!((Length::metres(2.54).to_inches() - 100.0).abs() < 1e-12);
        assert!((Length::inches(1.0).to_metres() - 0.0254).abs() < 1e-17);
    }

    #[test]
    fn rounding_takes_the_step() {
        let sixteenth = Length::inches(1.0 / 16.0);
        check(Length::inches(4.3).round_to(sixteenth), 4.3125);
        check(Length::inches(-0.03125).round_to(sixteenth), -0.0625);
        check(Length::inches(144.000_000_000_1).round_up_to(Length::feet(1.0)), 144.0);
        check(Length::inches(144.01).round_up_to(Length::feet(1.0)), 156.0);
        check(Length::inches(4.3).round_up_to(Length::ZERO), 4.3);
    }

    #[test]
    fn three_four_five() {
        check(Length::inches(3.0).hypot(Length::inches(4.0)), 5.0);
        assert_eq!((Length::inches(8.0) * Length::inches(8.0)).to_square_inches(), 64.0);
        check([Length::inches(1.0), Length::feet(1.0)].iter().sum(), 13.0);
    }

    #[test]
    fn nothing_endless_gets_in() {
        assert_eq!(Length::try_inches(f64::NAN), None);
        assert_eq!(Length::try_feet(f64::MAX), None);
        assert!(std::panic::catch_unwind(|| Length::inches(f64::INFINITY)).is_err());
    }
}
