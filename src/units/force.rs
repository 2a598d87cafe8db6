//! A force, held in pounds.

use super::quantity::{quantity, unit};
use super::weight::KILOGRAMS_PER_POUND;

/// Standard gravity in m/s², exact: 3rd General Conference on Weights and Measures (1901), ISO 80000-3.
pub const STANDARD_GRAVITY: f64 = 9.806_65;

/// Newtons in one pound of force: 0.45359237 kg × 9.80665 m/s².
pub const NEWTONS_PER_POUND: f64 = KILOGRAMS_PER_POUND * STANDARD_GRAVITY;

quantity! {
    /// A force, held in pounds. Whoever holds it says what its sign means.
    Force
}
unit!(Force, "pounds", pounds, try_pounds, to_pounds, (*1.0), (/ 1.0));
unit!(Force, "newtons", newtons, try_newtons, to_newtons, (/ NEWTONS_PER_POUND), (*NEWTONS_PER_POUND));
unit!(
    Force,
    "kilonewtons",
    kilonewtons,
    try_kilonewtons,
    to_kilonewtons,
    (*1000.0 / NEWTONS_PER_POUND),
    (*NEWTONS_PER_POUND / 1000.0)
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units() {
        // 0.45359237 × 9.80665 = 4.4482216152605, multiplied out by hand.
        assert!((Force::pounds(1.0).to_newtons() - 4.448_221_615_260_5).abs() < 1e-14);
        assert!((Force::kilonewtons(1.0).to_pounds() - 224.808_943_099_71).abs() < 1e-9);
    }
}
