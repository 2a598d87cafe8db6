//! Bending (NDS 3.3).
use crate::units::{Fixed, Moment, Stress};
use crate::working::{Citation, Step, Worked};

use super::adjusted::{bending_factors, product};
use super::factors::Factor;
use super::figures::{moment, stress};
use super::{Bracing, Member, NetSection, Property, Refused, Verdict, beam_stability};

/// `F_b'`, `C_L` included.
///
/// # Errors
/// Where the beam is too slender.
pub fn bending_strength(member: &Member, bracing: Bracing) -> Result<Worked<Stress>, Refused> {
    let stability = beam_stability(member, bracing)?;
    let mut factors = bending_factors(member);
    let reason =
        if stability.value.factor < 1.0 { "it may roll over sideways" } else { "it cannot roll over sideways" };
    factors.insert(3, Factor::new("C_L", stability.value.factor, reason, Citation::from_memory("NDS 2018", "3.3.3")));
    let mut worked = product(member, Property::Bending, "F_b'", &factors);
    let mut steps = stability.steps;
    steps.append(&mut worked.steps);
    Ok(Worked::new(worked.value, steps))
}

/// `f_b = M/S` and the step that says so.
pub(super) fn bending_stress(size: Moment, net: &NetSection) -> (Stress, Step) {
    let modulus = net.least_modulus();
    let found = size.abs() / modulus;
    let kind = if net.pockets().is_empty() { "S" } else { "S_net" };
    let says = format!(
        "f_b = M/{kind} = {}/{} in³ = {}",
        moment(size.abs()),
        Fixed(modulus.to_cubic_inches(), 2),
        stress(found)
    );
    (found, Step::new("Bending stress", says, Citation::from_memory("NDS 2018", "3.3.2")))
}

/// Bending of a section, whole or net, across its depth.
///
/// The net section is taken as it is: [`NetSection`] finds its shifted axis and the smaller of its two moduli.
///
/// # Errors
/// Where the beam is too slender, or the net section is another stick's.
pub fn check_bending(
    member: &Member,
    demand: Moment,
    net: &NetSection,
    bracing: Bracing,
) -> Result<Worked<Verdict>, Refused> {
    net.belongs_to(member.section())?;
    let mut strength = bending_strength(member, bracing)?;
    let (found, step) = bending_stress(demand, net);
    strength.steps.push(step);
    Ok(Worked::new(Verdict::stress(found, strength.value), strength.steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::test_members::{dry, inches};
    use crate::members::{LoadDuration, Pocket, UnbracedCase};
    use crate::units::Length;

    #[test]
    fn a_pocket_raises_the_stress() {
        let beam = dry("Hem-Fir", inches(8.0, 10.0)).during(LoadDuration::TwoMonths);
        let whole = NetSection::whole(beam.section()).unwrap();
        let pocket = Pocket {
            from_left: Length::inches(3.0),
            breadth: Length::inches(2.0),
            from_bottom: Length::ZERO,
            depth: Length::inches(4.0),
        };
        let net = whole.clone().without(pocket).unwrap();
        let demand = Moment::pound_inches(-66_125.0);
        let full = check_bending(&beam, demand, &whole, Bracing::Held).unwrap();
        let cut = check_bending(&beam, demand, &net, Bracing::Held).unwrap();
        // 66,125/133.33 = 495.9 psi against 661.25; 66,125/108 = 612.3.
        assert!((full.value.ratio - 0.75).abs() < 1e-9);
        assert!((cut.value.ratio - 66_125.0 / 108.0 / 661.25).abs() < 1e-9);
        assert!(full.value.passes() && full.steps.last().unwrap().says.starts_with("f_b = M/S = 66,125"));
        let other = NetSection::whole(inches(6.0, 10.0)).unwrap();
        assert!(check_bending(&beam, demand, &other, Bracing::Held).is_err());
        assert!(cut.steps.last().unwrap().says.contains("S_net"));
    }

    #[test]
    fn stability_shows_in_the_product() {
        let rafter = dry("Hem-Fir", inches(2.0, 10.0));
        let bracing = Bracing::Free { length: Length::feet(8.0), case: UnbracedCase::SpanUniform };
        let free = bending_strength(&rafter, bracing).unwrap();
        let held = bending_strength(&rafter, Bracing::Held).unwrap();
        assert!(free.value < held.value);
        assert!(free.steps.last().unwrap().says.starts_with("F_b' = F_b·C_D·C_M·C_t·C_L·C_F"));
    }
}
