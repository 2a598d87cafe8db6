//! Compression along the grain (NDS 3.6, 3.7).
use crate::units::{Force, Stress};
use crate::working::{Citation, Worked};

use super::adjusted::{compression_factors, product};
use super::factors::Factor;
use super::tension::axial_stress;
use super::{ColumnLengths, Member, Property, Refused, Verdict, column_stability};

/// `F_c'`, `C_P` included.
///
/// # Errors
/// Where the post is too slender.
pub fn compression_strength(member: &Member, lengths: &ColumnLengths) -> Result<Worked<Stress>, Refused> {
    let stability = column_stability(member, lengths)?;
    let mut factors = compression_factors(member);
    let reason = if stability.value.factor < 1.0 { "it may buckle" } else { "held all along" };
    factors.push(Factor::new("C_P", stability.value.factor, reason, Citation::from_memory("NDS 2018", "3.7.1")));
    let mut worked = product(member, Property::Compression, "F_c'", &factors);
    let mut steps = stability.steps;
    steps.append(&mut worked.steps);
    Ok(Worked::new(worked.value, steps))
}

/// A push along the stick, on its whole area, buckling either way. Where joints weaken it check the end grain left
/// against `F_c*` as well.
///
/// # Errors
/// Where the post is too slender.
pub fn check_compression(member: &Member, push: Force, lengths: &ColumnLengths) -> Result<Worked<Verdict>, Refused> {
    let mut strength = compression_strength(member, lengths)?;
    let (found, step) = axial_stress("f_c", "Compression", push, member.section().area(), "3.6.3")?;
    strength.steps.push(step);
    Ok(Worked::new(Verdict::stress(found, strength.value), strength.steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::LoadDuration;
    use crate::members::test_members::{dry, inches};
    use crate::units::Length;

    #[test]
    fn longer_posts_carry_less() {
        let post = dry("Hem-Fir", inches(8.0, 8.0)).during(LoadDuration::TwoMonths);
        let strength =
            |feet: f64| compression_strength(&post, &ColumnLengths::pinned(Length::feet(feet))).unwrap().value;
        assert!((strength(0.0).to_psi() - 575.0 * 1.15).abs() < 1e-9);
        assert!(strength(8.0) > strength(12.0));
        let checked =
            check_compression(&post, Force::pounds(6400.0), &ColumnLengths::pinned(Length::feet(8.0))).unwrap();
        assert!((checked.value.ratio - 100.0 / strength(8.0).to_psi()).abs() < 1e-9);
        assert!(checked.steps.iter().any(|step| step.says.starts_with("F_c' = F_c·C_D·C_M·C_t·C_F·C_i·C_P")));
    }
}
