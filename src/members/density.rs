//! Specific gravity of the groups of species, and weight at a moisture content.
use std::sync::OnceLock;

use crate::units::Density;
use crate::working::{Citation, Step, Worked};

use super::Refused;
use super::design_values::confidence_of;
use super::figures::number;

/// Fibre saturation, percent moisture: above it the volume no longer changes.
const FIBRE_SATURATION: f64 = 30.0;

struct Row {
    design_class: &'static str,
    gravity: f64,
    citation: Citation,
}

fn rows() -> &'static [Row] {
    static ROWS: OnceLock<Vec<Row>> = OnceLock::new();
    ROWS.get_or_init(|| include_str!("tables/specific_gravity.csv").lines().skip(1).filter_map(read).collect())
}

fn read(line: &'static str) -> Option<Row> {
    let cells: Vec<&'static str> = line.split(',').collect();
    let [design_class, gravity, document, clause, confidence] = cells[..] else { return None };
    let citation = Citation { document, clause, confidence: confidence_of(confidence) };
    Some(Row { design_class, gravity: gravity.parse().ok()?, citation })
}

/// Specific gravity `G` of a group of species, oven-dry weight and volume.
///
/// # Errors
/// When the group has no row.
pub fn specific_gravity(design_class: &str) -> Result<Worked<f64>, Refused> {
    let row = rows().iter().find(|row| row.design_class == design_class);
    let row = row.ok_or_else(|| Refused::because(format!("No specific gravity is listed for “{design_class}”.")))?;
    let says = format!("G = {}: {}", number(row.gravity), row.design_class);
    Ok(Worked::new(row.gravity, vec![Step::new("Specific gravity G", says, row.citation)]))
}

/// Weight of wood of specific gravity `G` at `m` percent moisture, pounds a cubic foot:
/// `62.4·G/(1 + 0.009·G·min(m, 30))·(1 + m/100)` (NDS Supplement 3.1.3, from memory).
///
/// # Errors
/// Outside `G` 0.2 to 1.2 or `m` 0 to 200 %.
pub fn density(gravity: f64, moisture_percent: f64) -> Result<Worked<Density>, Refused> {
    if !(0.2..=1.2).contains(&gravity) || !(0.0..=200.0).contains(&moisture_percent) {
        return Err(Refused::because("Weight needs a specific gravity of 0.2 to 1.2 and moisture of 0 to 200 %."));
    }
    let swollen = moisture_percent.min(FIBRE_SATURATION);
    let pounds = 62.4 * gravity / (1.0 + 0.009 * gravity * swollen) * (1.0 + moisture_percent / 100.0);
    let says = format!(
        "62.4·G/(1 + 0.009·G·{})·(1 + {}/100) with G = {} = {pounds:.1} lb/ft³",
        number(swollen),
        number(moisture_percent),
        number(gravity)
    );
    let step = Step::new("Weight", says, Citation::from_memory("NDS Supplement 2018", "3.1.3"));
    Ok(Worked::new(Density::pounds_per_cubic_foot(pounds), vec![step]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    #[test]
    fn rows_are_read_and_a_missing_one_is_named() {
        assert_eq!(rows().len(), include_str!("tables/specific_gravity.csv").lines().count() - 1);
        assert!(specific_gravity("Balsa").unwrap_err().0.contains("Balsa"));
    }

    /// Weights at 15 % printed in AWC, Wood Structural Design Data (1992 rev.).
    #[test]
    fn weights_at_fifteen_percent() {
        for (class, printed) in [
            ("Douglas Fir-Larch", 33.6),
            ("Eastern Spruce", 27.9),
            ("Eastern White Pine", 24.6),
            ("Hem-Fir", 29.2),
            ("Southern Pine", 36.7),
            ("Spruce-Pine-Fir", 28.5),
            ("Spruce-Pine-Fir (South)", 24.6),
            ("Red Oak", 44.1),
            ("Northern Pine", 28.5),
        ] {
            let gravity = specific_gravity(class).unwrap().value;
            let found = density(gravity, 15.0).unwrap().value.to_pounds_per_cubic_foot();
            assert!((found - printed).abs() < 0.05, "{class}: {found} is not {printed}");
        }
    }

    /// Computed from the same formula: Douglas fir at 30 % 35.7, eastern white pine at 100 % 40.9 lb/ft³.
    #[test]
    fn green_wood_no_longer_swells() {
        let at = |gravity, moisture| density(gravity, moisture).unwrap().value.to_pounds_per_cubic_foot();
        assert!((at(0.5, 30.0) - 35.7).abs() < 0.05);
        assert!((at(0.36, 100.0) - 40.9).abs() < 0.05);
        assert!(density(0.1, 15.0).is_err() && density(0.5, 250.0).is_err());
    }
}
