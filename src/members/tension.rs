//! Tension along the grain (NDS 3.8).
use crate::units::{Area, Fixed, Force};
use crate::working::{Citation, Step, Worked};

use super::adjusted::adjusted;
use super::figures::{force, stress};
use super::{Member, Property, Refused, Verdict};

/// `f_t = T/A` and the step that says so.
pub(super) fn axial_stress(
    symbol: &str,
    name: &'static str,
    load: Force,
    area: Area,
    clause: &'static str,
) -> Result<(crate::units::Stress, Step), Refused> {
    if area <= Area::ZERO {
        return Err(Refused::because("No area is left to carry the force."));
    }
    let found = load.abs() / area;
    let says =
        format!("{symbol} = {}/{} in² = {}", force(load.abs()), Fixed(area.to_square_inches(), 2), stress(found));
    Ok((found, Step::new(name, says, Citation::from_memory("NDS 2018", clause))))
}

/// A pull along the stick, on the area that is left.
///
/// # Errors
/// When no area is left.
pub fn check_tension(member: &Member, pull: Force, net: Area) -> Result<Worked<Verdict>, Refused> {
    let mut strength = adjusted(member, Property::Tension);
    let (found, step) = axial_stress("f_t", "Tension", pull, net, "3.8.1")?;
    strength.steps.push(step);
    Ok(Worked::new(Verdict::stress(found, strength.value), strength.steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::test_members::{dry, inches};

    #[test]
    fn force_by_area() {
        // Hem-Fir No.2 Posts and Timbers: F_t 375 psi.
        let post = dry("Hem-Fir", inches(8.0, 8.0));
        let verdict = check_tension(&post, Force::pounds(12_000.0), Area::square_inches(40.0)).unwrap().value;
        assert!((verdict.ratio - 0.8).abs() < 1e-12);
        assert!(check_tension(&post, Force::pounds(1.0), Area::ZERO).is_err());
    }
}
