//! A volume, held in cubic inches.

use super::quantity::{product, quantity, quotient, unit};
use super::{Area, Length, length::MILLIMETRES_PER_INCH};

/// Cubic metres in one cubic inch, exact from the inch of 25.4 mm.
const CUBIC_METRES: f64 = MILLIMETRES_PER_INCH * MILLIMETRES_PER_INCH * MILLIMETRES_PER_INCH / 1e9;

/// Cubic inches in a board foot: a foot square, an inch thick (common practice).
const BOARD_FOOT: f64 = 144.0;

quantity! {
    /// A volume, held in cubic inches. A section modulus is one too.
    Volume
}
unit!(Volume, "cubic inches", cubic_inches, try_cubic_inches, to_cubic_inches, (*1.0), (/ 1.0));
unit!(Volume, "cubic feet", cubic_feet, try_cubic_feet, to_cubic_feet, (*1728.0), (/ 1728.0));
unit!(Volume, "cubic metres", cubic_metres, try_cubic_metres, to_cubic_metres, (/ CUBIC_METRES), (*CUBIC_METRES));
unit!(Volume, "board feet", board_feet, try_board_feet, to_board_feet, (*BOARD_FOOT), (/ BOARD_FOOT));
product!(Area * Length = Volume, 1.0);
quotient!(Volume / Area = Length, 1.0);
quotient!(Volume / Length = Area, 1.0);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_eight_by_eight_of_twelve_feet_is_64_board_feet() {
        let stick = Length::inches(8.0) * Length::inches(8.0) * Length::feet(12.0);
        assert_eq!(stick.to_board_feet(), 64.0);
        assert_eq!(stick / Length::feet(12.0), Area::square_inches(64.0));
        // 0.3048 m cubed.
        assert!((Volume::cubic_feet(1.0).to_cubic_metres() - 0.028_316_846_592).abs() < 1e-15);
    }
}
