//! A bending or turning moment, held in pound-inches.

use super::force::NEWTONS_PER_POUND;
use super::length::MILLIMETRES_PER_INCH;
use super::quantity::{product, quantity, quotient, unit};
use super::{Force, Length};

/// Kilonewton-metres in one pound-inch.
const KILONEWTON_METRES: f64 = NEWTONS_PER_POUND * MILLIMETRES_PER_INCH / 1e6;

quantity! {
    /// A moment, held in pound-inches. Whoever holds it says what its sign means.
    Moment
}
unit!(Moment, "pound-inches", pound_inches, try_pound_inches, to_pound_inches, (*1.0), (/ 1.0));
unit!(Moment, "pound-feet", pound_feet, try_pound_feet, to_pound_feet, (*12.0), (/ 12.0));
unit!(
    Moment,
    "kilonewton-metres",
    kilonewton_metres,
    try_kilonewton_metres,
    to_kilonewton_metres,
    (/ KILONEWTON_METRES),
    (*KILONEWTON_METRES)
);
product!(Force * Length = Moment, 1.0);
quotient!(Moment / Force = Length, 1.0);
quotient!(Moment / Length = Force, 1.0);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units() {
        // 4.4482216152605 N × 0.3048 m = 1.3558179483314 N·m.
        assert!((Moment::pound_feet(1000.0).to_kilonewton_metres() - 1.355_817_948_331_4).abs() < 1e-12);
        assert_eq!(Force::pounds(10.0) * Length::feet(2.0), Moment::pound_feet(20.0));
        assert_eq!(Moment::pound_feet(20.0) / Length::feet(2.0), Force::pounds(10.0));
    }
}
