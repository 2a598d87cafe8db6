//! Species the tool knows, each with the source of its values.
//!
//! The rows stand in `tables/species.csv`; a comma never stands inside a value there.
use std::sync::OnceLock;

use super::moisture::Water;
use crate::units::Density;

/// How far a value can be trusted, from the surest to the least sure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Confidence {
    /// Compared with a printed source.
    High,
    /// Stated by the user, with the source they give.
    Given,
    /// Recalled from a printed source, not compared.
    Medium,
    /// A placeholder: ask locally before leaning on it.
    Low,
}

impl Confidence {
    /// As a table writes it.
    pub(super) fn from_cell(cell: &str) -> Self {
        match cell {
            "high" => Self::High,
            "medium" => Self::Medium,
            _ => Self::Low,
        }
    }
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
    /// What is known of the water in it.
    pub water: Water,
}

impl Species {
    /// A row of the table, or nothing when it is not one.
    fn from_row(row: &str) -> Option<Self> {
        let cells: Vec<&str> = row.split(',').collect();
        let [key, name, class, gravity, green, radial, tangential, wood, source, confidence, ref water @ ..] =
            cells[..]
        else {
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
            confidence: Confidence::from_cell(confidence),
            water: Water::from_cells(water)?,
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
}
