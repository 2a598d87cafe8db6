//! Concrete under a post base. The wood's own end bearing is a check of the member.
use super::Refused;
use super::refused::above_zero;
use super::written::{number, pounds, psi, square_inches};
use crate::units::{Area, Force, Stress};
use crate::working::{Citation, Step, Worked};

fn sizes(base: Area, concrete: Stress) -> Result<(), Refused> {
    above_zero("the area of the base plate", base.to_square_inches())?;
    if concrete < Stress::psi(2500.0) {
        return Err(Refused::because(format!(
            "Concrete of {} psi is below the least of 2,500 psi (3,000 psi where it freezes wet).",
            psi(concrete)
        )));
    }
    Ok(())
}

/// What concrete carries under a base plate for service loads: 0.3·f′c·A₁, customary.
///
/// # Errors
/// For concrete under 2,500 psi or a plate of no size.
pub fn concrete_bearing_service(base: Area, concrete: Stress) -> Result<Worked<Force>, Refused> {
    sizes(base, concrete)?;
    let force = concrete * base * 0.3;
    let says = format!("0.3·f′c·A₁ = 0.3·{}·{} = {} lb", psi(concrete), square_inches(base), pounds(force));
    let citation = Citation::common_practice("0.3·f′c at service load");
    Ok(Worked::new(force, vec![Step::new("bearing on concrete, service load", says, citation)]))
}

/// The same for factored loads: φ·0.85·f′c·A₁·√(A₂/A₁), φ = 0.65, the root at most 2 (ACI 318 22.8).
///
/// # Errors
/// As [`concrete_bearing_service`], and where the concrete is smaller than the plate.
pub fn concrete_bearing_strength(base: Area, around: Area, concrete: Stress) -> Result<Worked<Force>, Refused> {
    sizes(base, concrete)?;
    if around < base {
        return Err(Refused::because("The plate reaches past the concrete: make the pier wider or the plate smaller."));
    }
    let spread = (around / base).sqrt().min(2.0);
    let force = concrete * base * (0.65 * 0.85 * spread);
    let says = format!(
        "φ·0.85·f′c·A₁·√(A₂/A₁) = 0.65·0.85·{}·{}·{} = {} lb",
        psi(concrete),
        square_inches(base),
        number(spread),
        pounds(force)
    );
    Ok(Worked::new(
        force,
        vec![Step::new("bearing on concrete, factored load", says, Citation::from_memory("ACI 318", "22.8"))],
    ))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    const PLATE: Area = Area::square_inches(36.0);
    const CONCRETE: Stress = Stress::psi(2500.0);

    /// By hand: 0.3·2500·36 = 27,000 lb; 0.65·0.85·2500·36·1.5 = 74,587.5 lb with A₂ = 81 in²; the root stops at 2.
    #[test]
    fn by_hand() {
        assert!((concrete_bearing_service(PLATE, CONCRETE).unwrap().value.to_pounds() - 27_000.0).abs() < 1e-6);
        let strength = |around: f64| concrete_bearing_strength(PLATE, Area::square_inches(around), CONCRETE);
        assert!((strength(81.0).unwrap().value.to_pounds() - 74_587.5).abs() < 1e-6);
        assert!((strength(400.0).unwrap().value.to_pounds() - 99_450.0).abs() < 1e-6);
        assert!(strength(35.0).is_err());
        assert!(concrete_bearing_service(PLATE, Stress::psi(2400.0)).is_err());
        assert!(concrete_bearing_service(Area::ZERO, CONCRETE).is_err());
    }
}
