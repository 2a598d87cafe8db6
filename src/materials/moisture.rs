//! Water in wood: what it weighs, how far it shrinks, how long it takes to dry.
//!
//! Moisture is the water's weight in percent of the dry wood's. Above fibre saturation the walls of the cells are full and
//! wood keeps its size; below it every percent lost takes an equal part of the whole shrinkage.
use super::species::{Confidence, Species};
use crate::units::{Density, Length};

/// Fibre saturation point, percent moisture: above it wood does not shrink
/// (about 30 %, Wood Handbook FPL-GTR-190, Table 4-1 notes).
pub const FIBRE_SATURATION_PERCENT: f64 = 30.0;

/// Weight of water, lb/ft³ (Wood Handbook ch. 4).
const WATER_PCF: f64 = 62.4;

/// Years for an inch of a stick's lesser size to dry (common practice: one in softwood, two in hardwood).
const YEARS_AN_INCH: (f64, f64) = (1.0, 2.0);

/// How the rings lie in the direction that shrinks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grain {
    /// From the heart outward: least.
    Radial,
    /// Round the heart: most.
    Tangential,
    /// The mean of both, as a face of a stick with its heart boxed.
    Boxed,
}

/// What is known of the water in one kind of wood; nothing where no value is known here.
#[derive(Clone, Debug, PartialEq)]
pub struct Water {
    /// Dry weight by green volume, against water.
    pub basic_gravity: Option<f64>,
    /// Shrinkage of the volume, green to oven-dry, percent.
    pub volumetric_percent: Option<f64>,
    /// Moisture of green heartwood.
    pub green_heart_percent: Option<f64>,
    /// Moisture of green sapwood.
    pub green_sap_percent: Option<f64>,
    /// Where these values come from.
    pub source: String,
    /// How far they can be trusted.
    pub confidence: Confidence,
}

impl Water {
    /// Its cells of a row of the table, or nothing when they are none.
    pub(super) fn from_cells(cells: &[&str]) -> Option<Self> {
        let [basic, volumetric, heart, sap, source, confidence] = *cells else { return None };
        Some(Self {
            basic_gravity: basic.parse().ok(),
            volumetric_percent: volumetric.parse().ok(),
            green_heart_percent: heart.parse().ok(),
            green_sap_percent: sap.parse().ok(),
            source: source.to_owned(),
            confidence: Confidence::from_cell(confidence),
        })
    }
}

/// The share of its whole shrinkage that wood has shrunk by at a moisture content: (30 − M)/30, nothing from 30 % up.
#[must_use]
pub fn dried_share(moisture_percent: f64) -> f64 {
    (FIBRE_SATURATION_PERCENT - moisture_percent).clamp(0.0, FIBRE_SATURATION_PERCENT) / FIBRE_SATURATION_PERCENT
}

/// Years until a stick of that lesser size is nine tenths of the way to the moisture of its place.
///
/// Common practice says that green wood air-dries an inch of thickness in a year, hardwood in two. "Dry" is taken as nine tenths
/// of the way. A guide, no promise: sun, wind, sealed ends and a roof change it by half and more.
#[must_use]
pub fn years_to_dry(least_side: Length, is_hardwood: bool) -> f64 {
    least_side.to_inches().max(0.0) * if is_hardwood { YEARS_AN_INCH.1 } else { YEARS_AN_INCH.0 }
}

impl Species {
    /// Shrinkage of a length across the grain, from green to a moisture content.
    ///
    /// S = D · S₀ · (30 − M)/30 with S₀ the shrinkage from green to oven-dry (Wood Handbook ch. 4, formula from memory). Along
    /// the grain wood keeps its length (0.1–0.2 % in all, FPL report 1424).
    #[must_use]
    pub fn shrinkage_of(&self, across: Length, grain: Grain, moisture_percent: f64) -> Length {
        let percent = match grain {
            Grain::Radial => self.radial_percent,
            Grain::Tangential => self.tangential_percent,
            Grain::Boxed => (self.radial_percent + self.tangential_percent) / 2.0,
        };
        across * (percent / 100.0 * dried_share(moisture_percent))
    }

    /// The same of a face with the heart boxed behind it.
    #[must_use]
    pub fn shrinkage(&self, face: Length, moisture_percent: f64) -> Length {
        self.shrinkage_of(face, Grain::Boxed, moisture_percent)
    }

    /// The moisture at which it weighs what it weighs green: M = 100·(ρ/(62.4·Gb) − 1).
    #[must_use]
    pub fn green_percent(&self) -> Option<f64> {
        let dry = WATER_PCF * self.water.basic_gravity?;
        Some((self.green_density.to_pounds_per_cubic_foot() / dry - 1.0).max(0.0) * 100.0)
    }

    /// Weight by volume at a moisture content, by the volume it has then.
    ///
    /// ρ = 62.4·Gb·(1 + M/100)/(1 − V), with Gb the basic gravity and V = V₀·(30 − M)/30 the shrinkage of the volume: nothing
    /// from 30 % up (Wood Handbook ch. 4). Nothing where the basic gravity or the shrinkage is not known here.
    #[must_use]
    pub fn density_at(&self, moisture_percent: f64) -> Option<Density> {
        let volume = self.volume_share(moisture_percent)?;
        Density::try_pounds_per_cubic_foot(self.per_green_volume(moisture_percent)?.to_pounds_per_cubic_foot() / volume)
    }

    /// Weight at a moisture content by the volume it had green: what a stick that was measured green weighs now.
    #[must_use]
    pub fn per_green_volume(&self, moisture_percent: f64) -> Option<Density> {
        let wet = 1.0 + moisture_percent.max(0.0) / 100.0;
        Density::try_pounds_per_cubic_foot(WATER_PCF * self.water.basic_gravity? * wet)
    }

    /// What is left of the green volume.
    fn volume_share(&self, moisture_percent: f64) -> Option<f64> {
        Some(1.0 - self.water.volumetric_percent? / 100.0 * dried_share(moisture_percent))
    }

    /// Moisture of a stick after so many years, as far as shrinking goes, on its way to the moisture of its place.
    ///
    /// M = Ms + (30 − Ms)·10^(−t/T), T by [`years_to_dry`]. The outside of a stick shrinks while its heart is still wet; so the
    /// way is counted from fibre saturation, at once. Wood whose place is wetter than 30 % stays as it is.
    #[must_use]
    pub fn percent_after(&self, years: f64, least_side: Length, service_percent: f64) -> f64 {
        if service_percent >= FIBRE_SATURATION_PERCENT {
            return service_percent;
        }
        let slow = years_to_dry(least_side, self.is_hardwood).max(1e-3);
        service_percent + (FIBRE_SATURATION_PERCENT - service_percent) * 10_f64.powf(-years.max(0.0) / slow)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::materials::{species, species_table};

    /// Shrinkage of an 8 in boxed-heart face, derived from Wood Handbook FPL-GTR-190 Table 4-3 (some of it from memory), the
    /// mean of radial and tangential: to 19, 15 and 12 %.
    #[test]
    fn an_eight_inch_face_shrinks_as_the_handbook_says() {
        for (key, expected) in [
            ("eastern_white_pine", [0.12, 0.16, 0.20]),
            ("eastern_hemlock", [0.14, 0.20, 0.24]),
            ("douglas_fir", [0.18, 0.25, 0.30]),
            ("red_oak", [0.19, 0.25, 0.30]),
            ("white_oak", [0.24, 0.32, 0.39]),
        ] {
            for (moisture, inches) in [19.0, 15.0, 12.0].into_iter().zip(expected) {
                let found = species(key).unwrap().shrinkage(Length::inches(8.0), moisture).to_inches();
                assert!((found - inches).abs() < 0.0061, "{key} at {moisture} %: {found}");
            }
        }
    }

    /// Wood Handbook FPL-GTR-190 Table 4-3, read: Douglas fir 4.8 and 7.6, white oak 5.6 and 10.5, redcedar 2.4 and 5.0: a
    /// foot across, to oven-dry; half of it at 15 %; none at and above 30 %.
    #[test]
    fn rings_flat_and_upright_shrink_apart() {
        for (key, radial, tangential) in
            [("douglas_fir", 4.8, 7.6), ("white_oak", 5.6, 10.5), ("western_redcedar", 2.4, 5.0)]
        {
            let wood = species(key).unwrap();
            for (grain, percent) in [(Grain::Radial, radial), (Grain::Tangential, tangential)] {
                let found = |moisture| wood.shrinkage_of(Length::feet(1.0), grain, moisture).to_inches();
                assert!((found(0.0) - 12.0 * percent / 100.0).abs() < 1e-12);
                assert!((found(15.0) - 6.0 * percent / 100.0).abs() < 1e-12);
                assert_eq!([found(30.0), found(45.0)], [0.0, 0.0]);
            }
        }
    }

    /// By hand, 62.4·Gb·(1 + M): pine at 70 % 36.1, hemlock at 100 % 47.4, red oak at 75 % 61.2. Hemlock at 12 %: its volume
    /// shrank by 9.7·0.6 = 5.82 %, so 62.4·0.38·1.12/0.9418 = 28.2, and 62.4·0.40·1.12 = 28.0 by its gravity at 12 %.
    #[test]
    fn wood_weighs_as_the_handbook_says() {
        for (key, moisture, pcf) in [
            ("eastern_white_pine", 70.0, 36.1),
            ("eastern_hemlock", 100.0, 47.4),
            ("red_oak", 75.0, 61.2),
            ("eastern_hemlock", 12.0, 28.2),
        ] {
            let found = species(key).unwrap().density_at(moisture).unwrap().to_pounds_per_cubic_foot();
            assert!((found - pcf).abs() < 0.06, "{key} at {moisture} %: {found}");
        }
    }

    /// The gravity at 12 % that the same book lists apart (from memory) is what basic gravity and shrinkage make of it, to the
    /// rounding of both.
    #[test]
    fn basic_gravity_and_shrinkage_make_the_gravity_at_twelve_percent() {
        for (key, listed) in [
            ("eastern_white_pine", 0.35),
            ("white_spruce", 0.36),
            ("douglas_fir", 0.48),
            ("eastern_hemlock", 0.40),
            ("western_hemlock", 0.45),
            ("red_oak", 0.63),
            ("white_oak", 0.68),
            ("southern_pine", 0.51),
            ("western_redcedar", 0.32),
            ("tamarack", 0.53),
        ] {
            let at_twelve = species(key).unwrap().density_at(12.0).unwrap().to_pounds_per_cubic_foot();
            let found = at_twelve / (62.4 * 1.12);
            assert!((found - listed).abs() < 0.025, "{key}: {found}");
        }
    }

    /// Green weight and basic gravity come from different tables; the moisture between them is one that green wood has.
    #[test]
    fn green_weights_and_green_moisture_agree() {
        for wood in species_table() {
            let found = wood.green_percent().unwrap();
            let water = &wood.water;
            let low = water.green_heart_percent.into_iter().chain(water.green_sap_percent).fold(50.0, f64::min);
            let high = water.green_heart_percent.into_iter().chain(water.green_sap_percent).fold(90.0, f64::max);
            assert!((low..=high).contains(&found), "{}: {found} is not within {low} to {high}", wood.key);
            let back = wood.density_at(found).unwrap();
            assert!((back - wood.green_density).abs().to_pounds_per_cubic_foot() < 1e-9);
        }
    }

    /// Weight never falls as wood gets wetter, and a stick measured green never weighs more dry.
    #[test]
    fn wetter_is_heavier_and_drier_is_smaller() {
        for wood in species_table() {
            let mut last = (0.0, Length::inches(1.0));
            for percent in 0..=200 {
                let moisture = f64::from(percent);
                let stick = wood.per_green_volume(moisture).unwrap().to_pounds_per_cubic_foot();
                let shrunk = wood.shrinkage(Length::inches(10.0), moisture);
                assert!(stick > last.0 && shrunk <= last.1, "{} at {percent} %", wood.key);
                last = (stick, shrunk);
            }
        }
    }

    /// By hand: 8 in of softwood is nine tenths of the way after eight years: 15 + 15·0.1 = 16.5 %; 4 in of hardwood the same; at
    /// the start 30 %, and a wet place leaves it as it is.
    #[test]
    fn nine_tenths_of_the_way_after_a_year_an_inch() {
        let (hemlock, oak) = (species("eastern_hemlock").unwrap(), species("red_oak").unwrap());
        let check = |found: f64, expected: f64| assert!((found - expected).abs() < 1e-12, "{found}");
        check(hemlock.percent_after(8.0, Length::inches(8.0), 15.0), 16.5);
        check(oak.percent_after(8.0, Length::inches(4.0), 15.0), 16.5);
        check(hemlock.percent_after(0.0, Length::inches(8.0), 15.0), 30.0);
        check(hemlock.percent_after(5.0, Length::inches(8.0), 35.0), 35.0);
    }
}
