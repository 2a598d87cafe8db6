//! An area, held in square inches.

use super::quantity::{quantity, quotient, unit};
use super::{Length, length::MILLIMETRES_PER_INCH};

/// Square metres in one square inch, exact from the inch of 25.4 mm.
const SQUARE_METRES: f64 = MILLIMETRES_PER_INCH * MILLIMETRES_PER_INCH / 1e6;

quantity! {
    /// An area, held in square inches.
    Area
}
unit!(Area, "square inches", square_inches, try_square_inches, to_square_inches, (*1.0), (/ 1.0));
unit!(Area, "square feet", square_feet, try_square_feet, to_square_feet, (*144.0), (/ 144.0));
unit!(Area, "square metres", square_metres, try_square_metres, to_square_metres, (/ SQUARE_METRES), (*SQUARE_METRES));
quotient!(Area / Length = Length, 1.0);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units() {
        assert_eq!(Area::square_feet(2.0).to_square_inches(), 288.0);
        // 0.3048 m squared.
        assert!((Area::square_feet(1.0).to_square_metres() - 0.092_903_04).abs() < 1e-15);
        assert_eq!(Area::square_inches(96.0) / Length::inches(12.0), Length::inches(8.0));
    }
}
