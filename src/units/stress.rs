//! A stress or a stiffness of material, held in pounds a square inch.

use super::force::NEWTONS_PER_POUND;
use super::length::MILLIMETRES_PER_INCH;
use super::quantity::{product, quantity, quotient, unit};
use super::{Area, Force, Moment, Volume};

/// Megapascals (N/mm²) in one pound a square inch.
const MEGAPASCALS: f64 = NEWTONS_PER_POUND / (MILLIMETRES_PER_INCH * MILLIMETRES_PER_INCH);

quantity! {
    /// Force by area inside a material, held in pounds a square inch.
    Stress
}
unit!(Stress, "pounds a square inch", psi, try_psi, to_psi, (*1.0), (/ 1.0));
unit!(Stress, "megapascals", megapascals, try_megapascals, to_megapascals, (/ MEGAPASCALS), (*MEGAPASCALS));
product!(Stress * Area = Force, 1.0);
quotient!(Force / Area = Stress, 1.0);
quotient!(Force / Stress = Area, 1.0);
// A section modulus is a volume: bending stress = moment ÷ section modulus.
product!(Stress * Volume = Moment, 1.0);
quotient!(Moment / Volume = Stress, 1.0);
quotient!(Moment / Stress = Volume, 1.0);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units() {
        // 4.4482216152605 N ÷ 645.16 mm² = 0.00689475729 MPa.
        assert!((Stress::psi(1000.0).to_megapascals() - 6.894_757_293).abs() < 1e-9);
        assert_eq!(Force::pounds(640.0) / Area::square_inches(64.0), Stress::psi(10.0));
        assert_eq!(Stress::psi(10.0) * Area::square_inches(64.0), Force::pounds(640.0));
        assert_eq!(Moment::pound_inches(900.0) / Volume::cubic_inches(9.0), Stress::psi(100.0));
    }
}
