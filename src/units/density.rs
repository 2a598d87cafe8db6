//! How heavy a material is, held in pounds a cubic foot.

use super::quantity::{product, quantity, quotient, unit};
use super::{Area, AreaLoad, Length, LineLoad, Volume, Weight};

/// Cubic feet in one cubic inch.
const CUBIC_FEET: f64 = 1.0 / 1728.0;

/// Kilograms a cubic metre in one pound a cubic foot: 0.45359237 kg ÷ (0.3048 m)³, both exact (1959 agreement).
const KILOGRAMS_PER_CUBIC_METRE: f64 = 0.453_592_37 / 0.028_316_846_592;

quantity! {
    /// Weight by volume, held in pounds a cubic foot.
    Density
}
unit!(
    Density,
    "pounds a cubic foot",
    pounds_per_cubic_foot,
    try_pounds_per_cubic_foot,
    to_pounds_per_cubic_foot,
    (*1.0),
    (/ 1.0)
);
unit!(
    Density,
    "kilograms a cubic metre",
    kilograms_per_cubic_metre,
    try_kilograms_per_cubic_metre,
    to_kilograms_per_cubic_metre,
    (/ KILOGRAMS_PER_CUBIC_METRE),
    (*KILOGRAMS_PER_CUBIC_METRE)
);
product!(Density * Volume = Weight, CUBIC_FEET);
quotient!(Weight / Volume = Density, CUBIC_FEET);
quotient!(Weight / Density = Volume, CUBIC_FEET);

impl Density {
    /// The weight a foot of a stick of this section, as a load under standard gravity.
    #[must_use]
    pub fn line_load(self, section: Area) -> LineLoad {
        LineLoad::plf(self.bare() * section.to_square_feet())
    }

    /// The weight a square foot of a layer this thick, as a load under standard gravity.
    #[must_use]
    pub fn area_load(self, thickness: Length) -> AreaLoad {
        AreaLoad::psf(self.bare() * thickness.to_feet())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-10, "{found} is not {expected}");
    }

    #[test]
    fn a_foot_cube_of_water_weighs_as_the_tables_say() {
        // 1000 kg/m³ = 62.427960576 lb/ft³: 1000 × 0.028316846592 ÷ 0.45359237, by hand.
        check(Density::kilograms_per_cubic_metre(1000.0).to_pounds_per_cubic_foot(), 62.427_960_576_145);
        check((Density::pounds_per_cubic_foot(36.0) * Volume::cubic_feet(2.0)).to_pounds(), 72.0);
        check((Weight::pounds(72.0) / Volume::cubic_feet(2.0)).to_pounds_per_cubic_foot(), 36.0);
        check((Weight::pounds(72.0) / Density::pounds_per_cubic_foot(36.0)).to_cubic_feet(), 2.0);
    }

    #[test]
    fn a_stick_and_a_layer() {
        // 8 x 8 in is 4/9 ft²: 36 lb/ft³ makes 16 lb a foot; 2 in of it makes 6 lb a square foot.
        let wood = Density::pounds_per_cubic_foot(36.0);
        check(wood.line_load(Area::square_inches(64.0)).to_plf(), 16.0);
        check(wood.area_load(Length::inches(2.0)).to_psf(), 6.0);
    }
}
