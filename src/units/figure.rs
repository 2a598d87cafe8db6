//! A number rounded to some decimals with its unit: what is shown of any quantity but feet, inches and money.

use super::{Area, AreaLoad, Density, Force, Length, Speed, Stiffness, Stress, UnitSystem, Volume, Weight};
use std::fmt;

/// A rounded number and its unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Figure {
    /// Whether the shown number is below zero; one that rounds to zero is not.
    pub negative: bool,
    /// The digits before the point.
    pub whole: u64,
    /// The digits after the point, as a whole number of the last decimal.
    pub fraction: u64,
    /// How many digits stand after the point.
    pub decimals: u8,
    /// What follows the number, with its space.
    pub unit: &'static str,
}

impl Figure {
    /// The number to the nearest last decimal, half away from zero.
    pub(super) fn of(value: f64, decimals: u8, unit: &'static str) -> Self {
        let parts = 10_u64.pow(u32::from(decimals));
        let count = (value.abs() * parts as f64).round() as u64;
        Self { negative: value < 0.0 && count > 0, whole: count / parts, fraction: count % parts, decimals, unit }
    }

    /// Without the decimals when they are all zero.
    #[must_use]
    pub const fn without_zeros(self) -> Self {
        if self.fraction == 0 { Self { decimals: 0, ..self } } else { self }
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.negative { "−" } else { "" };
        write!(f, "{sign}{}", self.whole)?;
        if self.decimals > 0 {
            write!(f, ".{:0width$}", self.fraction, width = usize::from(self.decimals))?;
        }
        f.write_str(self.unit)
    }
}

/// `421 lb` or `191 kg`.
#[must_use]
pub fn show_weight(weight: Weight, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(weight.to_pounds(), 0, " lb"),
        UnitSystem::Metric => Figure::of(weight.to_kilograms(), 0, " kg"),
    }
}

/// `180.0 ft²` or `16.72 m²`.
#[must_use]
pub fn show_area(area: Area, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(area.to_square_feet(), 1, " ft²"),
        UnitSystem::Metric => Figure::of(area.to_square_metres(), 2, " m²"),
    }
}

/// A volume of wood: `37 bf` (board feet) or `0.087 m³`.
#[must_use]
pub fn show_wood_volume(volume: Volume, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(volume.to_board_feet(), 0, " bf"),
        UnitSystem::Metric => Figure::of(volume.to_cubic_metres(), 3, " m³"),
    }
}

/// A volume of concrete or earth: `3.1 ft³` or `0.088 m³`.
#[must_use]
pub fn show_volume(volume: Volume, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(volume.to_cubic_feet(), 1, " ft³"),
        UnitSystem::Metric => Figure::of(volume.to_cubic_metres(), 3, " m³"),
    }
}

/// `36 lb/ft³` or `577 kg/m³`.
#[must_use]
pub fn show_density(density: Density, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(density.to_pounds_per_cubic_foot(), 0, " lb/ft³"),
        UnitSystem::Metric => Figure::of(density.to_kilograms_per_cubic_metre(), 0, " kg/m³"),
    }
}

/// `40.0 psf` or `1.92 kPa`.
#[must_use]
pub fn show_area_load(load: AreaLoad, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(load.to_psf(), 1, " psf"),
        UnitSystem::Metric => Figure::of(load.to_kilopascals(), 2, " kPa"),
    }
}

/// `110 mph` or `49.2 m/s`.
#[must_use]
pub fn show_speed(speed: Speed, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(speed.to_mph(), 1, " mph").without_zeros(),
        UnitSystem::Metric => Figure::of(speed.to_metres_per_second(), 1, " m/s").without_zeros(),
    }
}

/// `350 lb` or `1.56 kN`.
#[must_use]
pub fn show_force(force: Force, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(force.to_pounds(), 0, " lb"),
        UnitSystem::Metric => Figure::of(force.to_kilonewtons(), 2, " kN"),
    }
}

/// `875 psi` or `6.03 MPa`.
#[must_use]
pub fn show_stress(stress: Stress, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(stress.to_psi(), 0, " psi"),
        UnitSystem::Metric => Figure::of(stress.to_megapascals(), 2, " MPa").without_zeros(),
    }
}

/// `50000 lb/in` or `8.76 kN/mm`.
#[must_use]
pub fn show_stiffness(stiffness: Stiffness, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(stiffness.to_pounds_per_inch(), 0, " lb/in"),
        UnitSystem::Metric => Figure::of(stiffness.to_kilonewtons_per_millimetre(), 2, " kN/mm"),
    }
}

/// A height above the sea: `600 ft` or `183 m`.
#[must_use]
pub fn show_elevation(height: Length, system: UnitSystem) -> Figure {
    match system {
        UnitSystem::Imperial => Figure::of(height.to_feet(), 0, " ft"),
        UnitSystem::Metric => Figure::of(height.to_metres(), 0, " m"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(found: Figure, expected: &str) {
        assert_eq!(found.to_string(), expected);
    }

    #[test]
    fn both_systems() {
        let weight = Weight::pounds(421.0);
        check(show_weight(weight, UnitSystem::Imperial), "421 lb");
        check(show_weight(weight, UnitSystem::Metric), "191 kg");
        check(show_wood_volume(Volume::board_feet(37.0), UnitSystem::Imperial), "37 bf");
        check(show_wood_volume(Volume::board_feet(37.0), UnitSystem::Metric), "0.087 m³");
        check(show_volume(Volume::cubic_feet(3.12), UnitSystem::Imperial), "3.1 ft³");
        check(show_area(Area::square_feet(180.0), UnitSystem::Imperial), "180.0 ft²");
        check(show_area(Area::square_feet(180.0), UnitSystem::Metric), "16.72 m²");
        check(show_density(Density::pounds_per_cubic_foot(36.0), UnitSystem::Metric), "577 kg/m³");
        check(show_area_load(AreaLoad::psf(40.0), UnitSystem::Imperial), "40.0 psf");
        check(show_area_load(AreaLoad::psf(40.0), UnitSystem::Metric), "1.92 kPa");
    }

    #[test]
    fn strength_in_both_systems() {
        // 350 lb × 4.4482216 = 1556.9 N; 875 psi × 0.00689476 = 6.0329 MPa; 50,000 ÷ 5710.147 = 8.756 kN/mm.
        check(show_speed(Speed::mph(110.0), UnitSystem::Imperial), "110 mph");
        check(show_speed(Speed::mph(110.5), UnitSystem::Imperial), "110.5 mph");
        check(show_speed(Speed::mph(110.0), UnitSystem::Metric), "49.2 m/s");
        check(show_force(Force::pounds(350.0), UnitSystem::Imperial), "350 lb");
        check(show_force(Force::pounds(350.0), UnitSystem::Metric), "1.56 kN");
        check(show_stress(Stress::psi(875.0), UnitSystem::Imperial), "875 psi");
        check(show_stress(Stress::psi(875.0), UnitSystem::Metric), "6.03 MPa");
        check(show_stiffness(Stiffness::pounds_per_inch(50_000.0), UnitSystem::Imperial), "50000 lb/in");
        check(show_stiffness(Stiffness::pounds_per_inch(50_000.0), UnitSystem::Metric), "8.76 kN/mm");
        check(show_elevation(Length::feet(600.0), UnitSystem::Imperial), "600 ft");
        check(show_elevation(Length::feet(600.0), UnitSystem::Metric), "183 m");
        check(show_elevation(Length::metres(-3.0), UnitSystem::Metric), "−3 m");
    }

    #[test]
    fn signs_and_carries() {
        check(Figure::of(-0.04, 1, ""), "0.0");
        check(Figure::of(-0.06, 1, ""), "−0.1");
        check(Figure::of(0.999, 2, " m"), "1.00 m");
        check(Figure::of(2.5, 2, " m").without_zeros(), "2.50 m");
        check(Figure::of(2.0, 2, " m").without_zeros(), "2 m");
    }
}
