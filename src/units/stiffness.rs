//! How much force a joint takes to give by so much, held in pounds an inch.

use super::force::NEWTONS_PER_POUND;
use super::length::MILLIMETRES_PER_INCH;
use super::quantity::{quantity, unit};

/// Kilonewtons a millimetre in one pound an inch.
const KILONEWTONS_PER_MILLIMETRE: f64 = NEWTONS_PER_POUND / (1000.0 * MILLIMETRES_PER_INCH);

quantity! {
    /// Force by movement, held in pounds an inch.
    Stiffness
}
unit!(Stiffness, "pounds an inch", pounds_per_inch, try_pounds_per_inch, to_pounds_per_inch, (*1.0), (/ 1.0));
unit!(
    Stiffness,
    "kilonewtons a millimetre",
    kilonewtons_per_millimetre,
    try_kilonewtons_per_millimetre,
    to_kilonewtons_per_millimetre,
    (/ KILONEWTONS_PER_MILLIMETRE),
    (*KILONEWTONS_PER_MILLIMETRE)
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units() {
        // 1 kN/mm = 25.4 kN/in = 25400 N ÷ 4.4482216152605 = 5710.147 lb/in.
        assert!((Stiffness::kilonewtons_per_millimetre(1.0).to_pounds_per_inch() - 5_710.147_154_7).abs() < 1e-6);
        assert!((Stiffness::pounds_per_inch(5_710.147_154_7).to_kilonewtons_per_millimetre() - 1.0).abs() < 1e-9);
    }
}
