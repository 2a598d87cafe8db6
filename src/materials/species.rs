//! Species the tool knows, each with the source of its values.
//!
//! The rows stand in `tables/species.csv`; a comma never stands inside a value there.
use std::sync::OnceLock;

use crate::units::{Density, Length};

/// How far a value can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Confidence {
    /// Compared with a printed source.
    High,
    /// Recalled from a printed source, not compared.
    Medium,
    /// A placeholder: ask locally before leaning on it.
    Low,
}

/// One kind of wood.
#[derive(Clone, Debug, PartialEq)]
pub struct Species {
    /// Name in project files.
    pub key: String,
    /// Name on screen and paper.
    pub name: String,
    /// The group its design values are listed under.
    pub design_class: String,
    /// Specific gravity for fastener design, oven-dry weight and volume.
    pub specific_gravity: f64,
    /// Weight as it comes green from the mill.
    pub green_density: Density,
    /// Radial shrinkage, green to oven-dry, percent.
    pub radial_percent: f64,
    /// Tangential shrinkage, green to oven-dry, percent.
    pub tangential_percent: f64,
    /// A hardwood.
    pub is_hardwood: bool,
    /// Where the values come from.
    pub source: String,
    /// How far they can be trusted.
    pub confidence: Confidence,
}

/// Fibre saturation point, percent moisture: above it wood does not shrink
/// (about 30 %, Wood Handbook FPL-GTR-190, Table 4-1 notes).
const FIBRE_SATURATION_PERCENT: f64 = 30.0;

impl Species {
    /// Shrinkage of a boxed-heart face from green to a moisture content.
    ///
    /// S = D · S₀ · (30 − M)/30 with S₀ the mean of radial and tangential shrinkage
    /// (Wood Handbook ch. 4, formula from memory). Zero at or above fibre saturation.
    #[must_use]
    pub fn shrinkage(&self, face: Length, moisture_percent: f64) -> Length {
        let share = (FIBRE_SATURATION_PERCENT - moisture_percent).clamp(0.0, FIBRE_SATURATION_PERCENT)
            / FIBRE_SATURATION_PERCENT;
        let mean = (self.radial_percent + self.tangential_percent) / 200.0;
        face * (mean * share)
    }

    /// A row of the table, or nothing when it is not one.
    fn from_row(row: &str) -> Option<Self> {
        let cells: Vec<&str> = row.split(',').collect();
        let [key, name, class, gravity, green, radial, tangential, wood, source, confidence] = cells[..] else {
            return None;
        };
        Some(Self {
            key: key.to_owned(),
            name: name.to_owned(),
            design_class: class.to_owned(),
            specific_gravity: gravity.parse().ok()?,
            green_density: Density::pounds_per_cubic_foot(green.parse().ok()?),
            radial_percent: radial.parse().ok()?,
            tangential_percent: tangential.parse().ok()?,
            is_hardwood: wood == "hard",
            source: source.to_owned(),
            confidence: match confidence {
                "high" => Confidence::High,
                "medium" => Confidence::Medium,
                _ => Confidence::Low,
            },
        })
    }
}

/// Every species the tool knows.
#[must_use]
pub fn species_table() -> &'static [Species] {
    static TABLE: OnceLock<Vec<Species>> = OnceLock::new();
    TABLE.get_or_init(|| include_str!("tables/species.csv").lines().skip(1).filter_map(Species::from_row).collect())
}

/// The species of that key.
#[must_use]
pub fn species(key: &str) -> Option<&'static Species> {
    species_table().iter().find(|species| species.key == key)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    #[test]
    fn every_row_of_the_table_is_read() {
        let rows = include_str!("tables/species.csv").lines().count() - 1;
        assert_eq!(species_table().len(), rows);
        assert!(species_table().iter().all(|species| !species.source.is_empty()));
    }

    /// Shrinkage of an 8 in boxed-heart face, derived from Wood Handbook FPL-GTR-190 Table 4-3:
    /// eastern hemlock to 19 % .14, to 12 % .24; Douglas fir to 15 % .25; white oak to 12 % .39.
    #[test]
    fn an_eight_inch_face_shrinks_as_the_handbook_says() {
        for (key, moisture, inches) in [
            ("eastern_hemlock", 19.0, 0.14),
            ("eastern_hemlock", 12.0, 0.24),
            ("douglas_fir", 15.0, 0.25),
            ("white_oak", 12.0, 0.39),
            ("eastern_white_pine", 35.0, 0.0),
        ] {
            let found = species(key).unwrap().shrinkage(Length::inches(8.0), moisture);
            assert!((found.to_inches() - inches).abs() < 0.0051, "{key} at {moisture} %: {found:?}");
        }
    }
}
