//! The factors of the flat-roof snow load.
use super::super::say::num;
use super::super::{Edition, Refused, RiskCategory, SnowExposure, Terrain, Thermal};
use crate::working::{Step, Worked};

/// C_e, ASCE 7 Table 7.3-1; two of its values were compared with published examples.
///
/// # Errors
/// Above the tree line and in treeless Alaska nothing is sheltered.
pub fn exposure_factor(edition: Edition, terrain: Terrain, exposure: SnowExposure) -> Result<Worked<f64>, Refused> {
    use SnowExposure::{Full, Partial, Sheltered};
    use Terrain::{AboveTreeLine, AlaskaTreeless, B, C, D};
    let value = match (terrain, exposure) {
        (B | C, Full) | (D, Partial) => 0.9,
        (B | C, Partial) | (D, Sheltered) => 1.0,
        (B, Sheltered) => 1.2,
        (C, Sheltered) => 1.1,
        (D, Full) | (AboveTreeLine | AlaskaTreeless, Partial) => 0.8,
        (AboveTreeLine | AlaskaTreeless, Full) => 0.7,
        (AboveTreeLine | AlaskaTreeless, Sheltered) => {
            return Err(Refused::because("the exposure table has no sheltered roof on ground without trees"));
        }
    };
    let citation = match (terrain, exposure) {
        (B, Full | Partial) => edition.seen("Table 7.3-1, in published examples"),
        _ => edition.recalled("Table 7.3-1"),
    };
    let says = format!("C_e = {} ({}, {})", num(value, 1), terrain_words(terrain), exposure_words(exposure));
    Ok(Worked::new(value, vec![Step::new("C_e, exposure", says, citation)]))
}

const fn terrain_words(terrain: Terrain) -> &'static str {
    match terrain {
        Terrain::B => "terrain B",
        Terrain::C => "terrain C",
        Terrain::D => "terrain D",
        Terrain::AboveTreeLine => "above the tree line",
        Terrain::AlaskaTreeless => "treeless Alaska",
    }
}

const fn exposure_words(exposure: SnowExposure) -> &'static str {
    match exposure {
        SnowExposure::Full => "fully exposed",
        SnowExposure::Partial => "partially exposed",
        SnowExposure::Sheltered => "sheltered",
    }
}

/// C_t, ASCE 7-16 Table 7.3-2. By 7-22 a heated roof's factor depends on its insulation and is asked for.
///
/// # Errors
/// For a heated roof by 7-22, and for a stated factor that is no such factor.
pub fn thermal_factor(edition: Edition, thermal: Thermal) -> Result<Worked<f64>, Refused> {
    let table = edition.recalled("Table 7.3-2");
    let printed = edition.seen("Table 7.3-2, in published examples");
    let (value, words, citation) = match (thermal, edition) {
        (Thermal::Heated, Edition::Asce7_22) => {
            return Err(Refused::because(
                "ASCE 7-22 takes C_t of a heated roof from its insulation and the ground snow, a table that is missing \
                 here; state C_t (1.2, that of an unheated building, is the careful choice)",
            ));
        }
        (Thermal::Heated, Edition::Asce7_16) => (1.0, "heated", printed),
        (Thermal::JustAboveFreezing, _) => (1.1, "kept just above freezing", table),
        (Thermal::OpenAir, Edition::Asce7_16) => (1.2, "unheated or open to the air", printed),
        (Thermal::OpenAir, Edition::Asce7_22) => (1.2, "unheated or open to the air", table),
        (Thermal::BelowFreezing, _) => (1.3, "kept below freezing", table),
        (Thermal::HeatedGreenhouse, _) => (0.85, "heated greenhouse", table),
        (Thermal::Stated(value), _) if (0.8..=1.5).contains(&value) => (value, "stated by the user", table),
        (Thermal::Stated(_), _) => {
            return Err(Refused::because("the stated thermal factor C_t must lie from 0.8 to 1.5"));
        }
    };
    let says = format!("C_t = {} ({words})", num(value, 2));
    Ok(Worked::new(value, vec![Step::new("C_t, warmth below", says, citation)]))
}

/// I_s, ASCE 7-16 Table 1.5-2. By 7-22 the ground snow is mapped by risk category and the factor is gone: 1.
#[must_use]
pub fn importance_factor(edition: Edition, risk: RiskCategory) -> Worked<f64> {
    if edition == Edition::Asce7_22 {
        let says = "no importance factor: the ground snow is already that of the risk category";
        let citation = edition.seen("7.3, in a trade magazine on ground snow");
        return Worked::new(1.0, vec![Step::new("I_s", says, citation)]);
    }
    let (value, name) = match risk {
        RiskCategory::I => (0.8, "I"),
        RiskCategory::II => (1.0, "II"),
        RiskCategory::III => (1.1, "III"),
        RiskCategory::IV => (1.2, "IV"),
    };
    let says = format!("I_s = {} (risk category {name})", num(value, 2));
    let citation = edition.seen("Table 1.5-2, in a published load calculation");
    Worked::new(value, vec![Step::new("I_s, importance", says, citation)])
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use SnowExposure::{Full, Partial, Sheltered};

    fn check_row(terrain: Terrain, expected: [f64; 3]) {
        for (exposure, expected) in [Full, Partial, Sheltered].into_iter().zip(expected) {
            let found = exposure_factor(Edition::Asce7_16, terrain, exposure).unwrap().value;
            assert_eq!(found, expected, "{terrain:?} {exposure:?}");
        }
    }

    /// ASCE 7-16 Table 7.3-1, from memory but for terrain B fully and partially exposed.
    #[test]
    fn exposure() {
        check_row(Terrain::B, [0.9, 1.0, 1.2]);
        check_row(Terrain::C, [0.9, 1.0, 1.1]);
        check_row(Terrain::D, [0.8, 0.9, 1.0]);
        for terrain in [Terrain::AboveTreeLine, Terrain::AlaskaTreeless] {
            assert_eq!(exposure_factor(Edition::Asce7_22, terrain, Full).unwrap().value, 0.7);
            assert_eq!(exposure_factor(Edition::Asce7_22, terrain, Partial).unwrap().value, 0.8);
            assert!(exposure_factor(Edition::Asce7_22, terrain, Sheltered).is_err());
        }
    }

    #[test]
    fn warmth() {
        let factor = |thermal| thermal_factor(Edition::Asce7_16, thermal).unwrap().value;
        assert_eq!(factor(Thermal::Heated), 1.0);
        assert_eq!(factor(Thermal::JustAboveFreezing), 1.1);
        assert_eq!(factor(Thermal::OpenAir), 1.2);
        assert_eq!(factor(Thermal::BelowFreezing), 1.3);
        assert_eq!(factor(Thermal::HeatedGreenhouse), 0.85);
        assert_eq!(factor(Thermal::Stated(1.15)), 1.15);
        assert!(thermal_factor(Edition::Asce7_22, Thermal::Heated).is_err());
        assert_eq!(thermal_factor(Edition::Asce7_22, Thermal::OpenAir).unwrap().value, 1.2);
        assert!(thermal_factor(Edition::Asce7_16, Thermal::Stated(0.7)).is_err());
        assert!(thermal_factor(Edition::Asce7_16, Thermal::Stated(f64::NAN)).is_err());
    }

    #[test]
    fn importance() {
        let factor = |risk| importance_factor(Edition::Asce7_16, risk).value;
        assert_eq!(factor(RiskCategory::I), 0.8);
        assert_eq!(factor(RiskCategory::II), 1.0);
        assert_eq!(factor(RiskCategory::III), 1.1);
        assert_eq!(factor(RiskCategory::IV), 1.2);
        assert_eq!(importance_factor(Edition::Asce7_22, RiskCategory::IV).value, 1.0);
    }
}
