//! How hard a dowel may press on what surrounds it (NDS 2015 12.3.3 and Table 12.3.3).
use super::Refused;
use super::refused::above_zero;
use super::written::{inches, number, psi};
use crate::units::{Angle, Length, Stress};
use crate::working::{Citation, Step, Worked};

/// What a member of a joint is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Material {
    /// Wood of a specific gravity (oven-dry weight and volume).
    Wood {
        /// G of the fastener tables.
        gravity: f64,
    },
    /// ASTM A653 grade 33 sheet steel.
    SheetSteel,
    /// ASTM A36 steel plate.
    SteelPlate,
    /// Concrete or grouted masonry.
    Concrete,
}

impl Material {
    /// Wood of a specific gravity.
    #[must_use]
    pub const fn wood(gravity: f64) -> Self {
        Self::Wood { gravity }
    }
}

/// The table prints to the nearest 50 psi, and the printed lateral values only come out with it.
const TABLE_STEP_PSI: f64 = 50.0;

const CITED: Citation = Citation::seen("NDS 2015", "Table 12.3.3, confirmed by the entries of Table 12K");

/// Hankinson's formula, NDS 12.3.4: strength at an angle θ to the grain from those along and across it.
///
/// F_θ = F_∥·F_⊥/(F_∥·sin²θ + F_⊥·cos²θ).
#[must_use]
pub fn hankinson(along: Stress, across: Stress, angle: Angle) -> Stress {
    let (sine, cosine) = (angle.sin(), angle.cos());
    along * (across / (along * (sine * sine) + across * (cosine * cosine)))
}

/// Dowel bearing strength F_e under a fastener of diameter D (as sold, inches) with the load at θ to the grain:
/// D ≥ ¼ in: F_e∥ = 11,200·G, F_e⊥ = 6,100·G^1.45/√D; thinner: 16,600·G^1.84 in every direction.
///
/// # Errors
/// For a diameter not above zero or over 1 in, a specific gravity no building wood has, an angle outside 0–90°.
pub fn dowel_bearing(material: Material, diameter: Length, angle: Angle) -> Result<Worked<Stress>, Refused> {
    above_zero("the diameter of the fastener", diameter.to_inches())?;
    let Material::Wood { gravity } = material else { return Ok(other_material(material)) };
    if !(0.25..=0.90).contains(&gravity) {
        return Err(Refused::because(format!(
            "A specific gravity of {gravity:.2} belongs to no building wood (0.25–0.90)."
        )));
    }
    if !(0.0..=90.000_001).contains(&angle.to_degrees()) {
        return Err(Refused::because(
            "The load stands at 0° (along the grain) to 90° (across it): give such an angle.",
        ));
    }
    if diameter > Length::inches(1.0) {
        return Err(Refused::because(
            "Dowel bearing strengths are given for fasteners up to 1 in: use thinner ones, and more.",
        ));
    }
    let table = |value: f64| Stress::psi((value / TABLE_STEP_PSI).round() * TABLE_STEP_PSI);
    let size = diameter.to_inches();
    if size < 0.25 {
        let strength = table(16_600.0 * gravity.powf(1.84));
        let says = format!("F_e = 16,600·G^1.84 = 16,600·{gravity:.2}^1.84 = {} psi", psi(strength));
        return Ok(Worked::new(strength, vec![Step::new("F_e, dowel bearing strength", says, CITED)]));
    }
    let along = table(11_200.0 * gravity);
    let across = table(6_100.0 * gravity.powf(1.45) / size.sqrt());
    let mut steps = vec![
        Step::new(
            "F_e∥, along the grain",
            format!("F_e∥ = 11,200·G = 11,200·{gravity:.2} = {} psi", psi(along)),
            CITED,
        ),
        Step::new(
            "F_e⊥, across the grain",
            format!("F_e⊥ = 6,100·G^1.45/√D = 6,100·{gravity:.2}^1.45/√{} = {} psi", inches(diameter), psi(across)),
            CITED,
        ),
    ];
    let strength = hankinson(along, across, angle);
    let degrees = angle.to_degrees();
    if degrees > 0.0 && degrees < 90.0 {
        let says =
            format!("F_eθ = F_e∥·F_e⊥/(F_e∥·sin²θ + F_e⊥·cos²θ) at {}° = {} psi", number(degrees), psi(strength));
        steps.push(Step::new("F_eθ, at the load's angle", says, Citation::from_memory("NDS 2015", "12.3.4")));
    }
    Ok(Worked::new(strength, steps))
}

fn other_material(material: Material) -> Worked<Stress> {
    let (strength, name, citation) = match material {
        Material::SheetSteel => (61_850.0, "ASTM A653 grade 33 sheet", CITED),
        Material::SteelPlate => (87_000.0, "ASTM A36 steel", Citation::from_memory("NDS 2015", "Table 12.3.3")),
        Material::Wood { .. } | Material::Concrete => {
            (7_500.0, "concrete or masonry", Citation::from_memory("NDS 2015", "12.3.3"))
        }
    };
    let says = format!("F_e of {name} = {strength:.0} psi");
    Worked::new(Stress::psi(strength), vec![Step::new("F_e, dowel bearing strength", says, citation)])
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn strength(material: Material, inches: f64, degrees: f64) -> f64 {
        dowel_bearing(material, Length::inches(inches), Angle::degrees(degrees)).unwrap().value.to_psi()
    }

    /// The endpoints of Hankinson's formula are its two strengths; at 45° their harmonic mean.
    #[test]
    fn an_angle_lies_between() {
        let fir = Material::wood(0.50);
        assert!((strength(fir, 0.5, 0.0) - 5600.0).abs() < 1e-6);
        assert!((strength(fir, 0.5, 90.0) - 3150.0).abs() < 1e-6);
        assert!((strength(fir, 0.5, 45.0) - 2.0 * 5600.0 * 3150.0 / 8750.0).abs() < 1e-6);
    }

    #[test]
    fn metals_and_concrete_have_no_grain() {
        assert_eq!(strength(Material::SheetSteel, 0.5, 0.0), 61_850.0);
        assert_eq!(strength(Material::SteelPlate, 0.5, 90.0), 87_000.0);
        assert_eq!(strength(Material::Concrete, 0.5, 90.0), 7_500.0);
    }

    #[test]
    fn limits_are_refused() {
        let refuse = |gravity: f64, inches: f64, degrees: f64| {
            dowel_bearing(Material::wood(gravity), Length::inches(inches), Angle::degrees(degrees)).is_err()
        };
        assert!(refuse(0.0, 0.5, 0.0));
        assert!(refuse(0.95, 0.5, 0.0));
        assert!(refuse(0.5, 1.01, 0.0));
        assert!(refuse(0.5, 0.0, 0.0));
        assert!(refuse(0.5, 0.5, 91.0));
        assert!(refuse(0.5, 0.5, -1.0));
        assert!(!refuse(0.5, 1.0, 90.0));
    }
}
