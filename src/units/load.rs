//! Loads spread along a line and over an area.

use super::force::NEWTONS_PER_POUND;
use super::length::MILLIMETRES_PER_INCH;
use super::quantity::{product, quantity, quotient, unit};
use super::{Area, Force, Length};

/// Kilonewtons a metre (N/mm) in one pound an inch.
const KILONEWTONS_PER_METRE: f64 = NEWTONS_PER_POUND / MILLIMETRES_PER_INCH;

/// Kilopascals in one pound a square foot.
const KILOPASCALS: f64 = 1000.0 * NEWTONS_PER_POUND / (144.0 * MILLIMETRES_PER_INCH * MILLIMETRES_PER_INCH);

/// Square feet in one square inch.
const SQUARE_FEET: f64 = 1.0 / 144.0;

quantity! {
    /// A load along a line, held in pounds an inch.
    LineLoad
}
unit!(LineLoad, "pounds an inch", pounds_per_inch, try_pounds_per_inch, to_pounds_per_inch, (*1.0), (/ 1.0));
unit!(LineLoad, "pounds a foot", plf, try_plf, to_plf, (/ 12.0), (*12.0));
unit!(
    LineLoad,
    "kilonewtons a metre",
    kilonewtons_per_metre,
    try_kilonewtons_per_metre,
    to_kilonewtons_per_metre,
    (/ KILONEWTONS_PER_METRE),
    (*KILONEWTONS_PER_METRE)
);
product!(LineLoad * Length = Force, 1.0);
quotient!(Force / Length = LineLoad, 1.0);
quotient!(Force / LineLoad = Length, 1.0);

quantity! {
    /// A load over an area, held in pounds a square foot.
    AreaLoad
}
unit!(AreaLoad, "pounds a square foot", psf, try_psf, to_psf, (*1.0), (/ 1.0));
unit!(AreaLoad, "kilopascals", kilopascals, try_kilopascals, to_kilopascals, (/ KILOPASCALS), (*KILOPASCALS));
// The quotient of a force by an area is a stress; a load over an area is only ever multiplied out.
product!(AreaLoad * Area = Force, SQUARE_FEET);
product!(AreaLoad * Length = LineLoad, SQUARE_FEET);
quotient!(LineLoad / Length = AreaLoad, SQUARE_FEET);
quotient!(LineLoad / AreaLoad = Length, SQUARE_FEET);

#[cfg(test)]
mod tests {
    use super::*;

    fn check(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
    }

    #[test]
    fn units() {
        // 4.4482216152605 N ÷ 0.09290304 m² = 47.88025898 Pa; ÷ 0.3048 m = 14.593902937 N/m.
        check(AreaLoad::psf(100.0).to_kilopascals(), 4.788_025_898_034);
        check(LineLoad::plf(1000.0).to_kilonewtons_per_metre(), 14.593_902_937_206);
    }

    #[test]
    fn spread_and_gathered() {
        check((AreaLoad::psf(40.0) * Area::square_feet(3.0)).to_pounds(), 120.0);
        check((AreaLoad::psf(40.0) * Length::feet(2.0)).to_plf(), 80.0);
        check((LineLoad::plf(80.0) * Length::feet(10.0)).to_pounds(), 800.0);
        check((LineLoad::plf(80.0) / Length::feet(2.0)).to_psf(), 40.0);
        check((Force::pounds(800.0) / Length::feet(10.0)).to_plf(), 80.0);
    }
}
