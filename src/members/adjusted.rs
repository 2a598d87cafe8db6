//! Adjusted design values: the reference value times its factors (NDS Table 4.3.1, from memory).
use crate::units::Stress;
use crate::working::{Citation, Step, Worked};

use super::factors::{
    Factor, flat_use, incising, load_duration, repetitive, size, steps, stiffened_chord, temperature, wet_service,
};
use super::figures::{psi, push_number};
use super::{Member, Property};

/// Every factor of one value but the stability factors and the bearing area factor.
fn factors(member: &Member, property: Property) -> Vec<Factor> {
    let conditions = &member.conditions;
    let wet = wet_service(member, property);
    let warm = temperature(conditions, property);
    let incised = incising(conditions, property);
    match property {
        Property::Bending => vec![
            load_duration(conditions),
            wet,
            warm,
            size(member, property),
            flat_use(member, property),
            incised,
            repetitive(member),
        ],
        Property::Tension | Property::Compression => {
            vec![load_duration(conditions), wet, warm, size(member, property), incised]
        }
        Property::Shear => vec![load_duration(conditions), wet, warm, incised],
        Property::BearingAcross => vec![wet, warm, incised],
        Property::Stiffness => vec![wet, warm, flat_use(member, property), incised],
        Property::LeastStiffness => vec![wet, warm, flat_use(member, property), incised, stiffened_chord()],
    }
}

/// `F' = F·C…` with the given factors, as steps: the value, its factors, the product.
pub(super) fn product(member: &Member, property: Property, symbol: &str, factors: &[Factor]) -> Worked<Stress> {
    let base = member.values.get(property);
    let value = factors.iter().fold(base, |value, factor| value * factor.value);
    let base_psi = psi(base.to_psi());
    let mut all = Vec::with_capacity(factors.len() + 2);
    all.push(Step::new(
        ["Design value for ", property.name()].concat(),
        [property.symbol(), " = ", &base_psi, " psi: ", member.values.row_of(property)].concat(),
        member.values.citation_of(property),
    ));
    steps(factors, &mut all);
    let mut says = String::with_capacity(120);
    says.extend([symbol, " = ", property.symbol()]);
    for factor in factors {
        says.extend(["·", factor.symbol]);
    }
    says.extend([" = ", &base_psi]);
    for factor in factors {
        says.push('·');
        push_number(&mut says, factor.value);
    }
    says.extend([" = ", &psi(value.to_psi()), " psi"]);
    all.push(Step::new(
        [symbol, ", adjusted for ", property.name()].concat(),
        says,
        Citation::from_memory("NDS 2018", "Table 4.3.1"),
    ));
    Worked::new(value, all)
}

/// The adjusted value without `C_L`, `C_P` and `C_b`: `F_t'`, `F_v'`, `E'`, `E_min'` whole, `F_c⊥'` before `C_b`,
/// `F_c*`, and `F_b'` of a stick that cannot roll over.
#[must_use]
pub fn adjusted(member: &Member, property: Property) -> Worked<Stress> {
    let symbol = match property {
        Property::Compression => "F_c*".to_owned(),
        _ => format!("{}'", property.symbol()),
    };
    product(member, property, &symbol, &factors(member, property))
}

/// `F_b*`: all factors but `C_fu` and `C_L`.
pub(super) fn bending_before_stability(member: &Member) -> Stress {
    bending_factors(member)
        .iter()
        .filter(|factor| factor.symbol != "C_fu")
        .fold(member.values.get(Property::Bending), |value, factor| value * factor.value)
}

/// The factors on `F_b` but `C_L`.
pub(super) fn bending_factors(member: &Member) -> Vec<Factor> {
    factors(member, Property::Bending)
}

/// The factors on `F_c` but `C_P`.
pub(super) fn compression_factors(member: &Member) -> Vec<Factor> {
    factors(member, Property::Compression)
}

/// The factors on `F_c⊥` but `C_b`.
pub(super) fn bearing_factors(member: &Member) -> Vec<Factor> {
    factors(member, Property::BearingAcross)
}

/// `F_c*`: what the end of a stick bears along its grain.
#[must_use]
pub fn end_grain_strength(member: &Member) -> Worked<Stress> {
    adjusted(member, Property::Compression)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::LoadDuration;
    use crate::members::test_members::{dry, inches, wet};

    #[test]
    fn a_step_reads_like_an_engineers_line() {
        let beam = wet("Hem-Fir", inches(8.0, 10.0)).during(LoadDuration::TwoMonths);
        let worked = adjusted(&beam, Property::Bending);
        assert!((worked.value.to_psi() - 575.0 * 1.15).abs() < 1e-9);
        let last = worked.steps.last().unwrap();
        assert_eq!(last.says, "F_b' = F_b·C_D·C_M·C_t·C_F·C_fu·C_i·C_r = 575·1.15·1.0·1.0·1.0·1.0·1.0·1.0 = 661 psi");
    }

    #[test]
    fn load_duration_is_never_on_bearing_or_stiffness() {
        let beam = dry("Hem-Fir", inches(8.0, 10.0));
        let short = beam.during(LoadDuration::TenMinutes);
        for (property, ratio) in Property::ALL.into_iter().zip([1.6, 1.6, 1.6, 1.0, 1.6, 1.0, 1.0]) {
            let found = adjusted(&short, property).value / adjusted(&beam, property).value;
            assert!((found - ratio).abs() < 1e-12, "{property:?}");
        }
    }

    #[test]
    fn flat_use_stays_out_of_the_value_before_stability() {
        let plank = dry("Hem-Fir", inches(8.0, 2.0));
        let whole = adjusted(&plank, Property::Bending).value;
        assert!((whole / bending_before_stability(&plank) - 1.15).abs() < 1e-12);
        assert_eq!(
            end_grain_strength(&plank).steps.last().unwrap().gives,
            "F_c*, adjusted for compression along the grain"
        );
    }
}
