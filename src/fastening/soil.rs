//! What soils carry where nobody has tested them (IBC 2012 Table 1806.2), in `tables/soils.csv`.
use std::sync::OnceLock;

use super::Refused;
use super::table::{confidence, rows, unknown};
use crate::materials::Confidence;
use crate::units::{AreaLoad, Stress};

/// For ground without a value.
pub const NO_PRESUMPTIVE_VALUE: &str = "Mud, organic soil and unprepared fill have no presumptive value, and where less \
    than 1,500 psf is likely a soils investigation is needed (IBC 1804.2, IRC R401.4.1).";

/// One kind of ground.
#[derive(Clone, Debug, PartialEq)]
pub struct Soil {
    /// Name in project files.
    pub key: String,
    /// Name on screen and paper.
    pub name: String,
    /// Vertical bearing.
    pub vertical: AreaLoad,
    /// Lateral bearing at one foot of depth; it grows by as much every foot.
    pub lateral_a_foot: AreaLoad,
    /// Sliding friction, on the dead load.
    pub friction: Option<f64>,
    /// Cohesion on the contact area, for clays.
    pub cohesion: Option<Stress>,
    /// Where the values come from.
    pub source: String,
    /// How far they can be trusted.
    pub confidence: Confidence,
}

/// Square inches in a square foot.
const SQUARE_FOOT: f64 = 144.0;

impl Soil {
    fn from_row(cells: &[&str]) -> Option<Self> {
        let &[key, name, vertical, lateral, friction, cohesion, source, trust] = cells else { return None };
        let psf = |cell: &str| cell.parse().ok().and_then(AreaLoad::try_psf);
        Some(Self {
            key: key.to_owned(),
            name: name.to_owned(),
            vertical: psf(vertical)?,
            lateral_a_foot: psf(lateral)?,
            friction: friction.parse().ok(),
            cohesion: cohesion.parse().ok().and_then(|psf: f64| Stress::try_psi(psf / SQUARE_FOOT)),
            source: source.to_owned(),
            confidence: confidence(trust),
        })
    }
}

/// Every soil of the table.
#[must_use]
pub fn soil_table() -> &'static [Soil] {
    static TABLE: OnceLock<Vec<Soil>> = OnceLock::new();
    TABLE.get_or_init(|| rows(include_str!("tables/soils.csv")).filter_map(|cells| Soil::from_row(&cells)).collect())
}

/// The soil of that key.
///
/// # Errors
/// For ground that is not in the table.
pub fn soil(key: &str) -> Result<&'static Soil, Refused> {
    soil_table().iter().find(|soil| soil.key == key).ok_or_else(|| unknown("soil", key))
}

/// What is taken for a soil nobody has named: 1,500 psf.
#[must_use]
pub const fn unknown_soil() -> AreaLoad {
    AreaLoad::psf(1500.0)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    /// IBC 2012 Table 1806.2, every row.
    #[test]
    fn the_table_as_printed() {
        assert_eq!(soil_table().len(), include_str!("tables/soils.csv").lines().count() - 1);
        for (key, vertical, lateral, friction, cohesion) in [
            ("crystalline_bedrock", 12_000.0, 1200.0, Some(0.70), None),
            ("layered_rock", 4000.0, 400.0, Some(0.35), None),
            ("gravel", 3000.0, 200.0, Some(0.35), None),
            ("sand", 2000.0, 150.0, Some(0.25), None),
            ("clay", 1500.0, 100.0, None, Some(Stress::psi(130.0 / 144.0))),
        ] {
            let found = soil(key).unwrap();
            assert_eq!((found.vertical.to_psf(), found.lateral_a_foot.to_psf().round()), (vertical, lateral), "{key}");
            assert_eq!((found.friction, found.cohesion), (friction, cohesion), "{key}");
        }
        assert!(soil("peat").is_err());
        assert_eq!(unknown_soil(), soil("clay").unwrap().vertical);
    }
}
