//! `C_M`: wet wood is weaker.
use crate::working::Citation;

use super::super::{Member, Property};
use super::{Factor, size};

/// `F_b·C_F` and `F_c·C_F` up to which wet dimension lumber keeps its value, psi.
const LOW_BENDING: f64 = 1150.0;
const LOW_COMPRESSION: f64 = 750.0;

/// `C_M` (NDS Supplement, Tables 4A, 4B and 4D): on everything, when the wood stays over 19 % moisture.
#[must_use]
pub fn wet_service(member: &Member, property: Property) -> Factor {
    let recalled = |clause| Citation::from_memory("NDS Supplement 2018", clause);
    let is_timber = member.values.size_class.is_timber();
    if !member.conditions.wet_service {
        let reason = if is_timber { "dry in use" } else { "at most 19 % moisture in use" };
        return Factor::new("C_M", 1.0, reason, recalled(if is_timber { "Table 4D" } else { "Table 4A" }));
    }
    if is_timber && member.is_southern_pine() {
        return Factor::new("C_M", 1.0, "values of southern pine timbers are for wet use", recalled("Table 4D"));
    }
    if is_timber {
        let value = match property {
            Property::BearingAcross => 0.67,
            Property::Compression => 0.91,
            _ => 1.0,
        };
        let reason = if value < 1.0 { "wet timber" } else { "wet timber keeps this value" };
        return Factor::new("C_M", value, reason, recalled("Table 4D"));
    }
    wet_dimension(member, property)
}

fn wet_dimension(member: &Member, property: Property) -> Factor {
    let seen = Citation::seen("university course example, NDS 2001", "Table 4A");
    let recalled = Citation::from_memory("NDS Supplement 2018", "Table 4A");
    let is_low = |limit: f64| member.values.get(property).to_psi() * size(member, property).value <= limit;
    let (value, reason, citation) = match property {
        Property::Bending if is_low(LOW_BENDING) => (1.0, "wet, but F_b·C_F is at most 1,150 psi", recalled),
        Property::Bending => (0.85, "wet in use", seen),
        Property::Tension => (1.0, "wet wood keeps this value", seen),
        Property::Shear => (0.97, "wet in use", seen),
        Property::BearingAcross => (0.67, "wet in use", recalled),
        Property::Compression if is_low(LOW_COMPRESSION) => (1.0, "wet, but F_c·C_F is at most 750 psi", recalled),
        Property::Compression => (0.8, "wet in use", recalled),
        Property::Stiffness | Property::LeastStiffness => {
            (0.9, "wet in use", Citation::seen("Breyer et al., Design of Wood Structures, ch. 6 problems", "Table 4A"))
        }
    };
    // Southern pine follows Table 4A (Table 4B, from memory).
    let citation = if member.is_southern_pine() {
        Citation::from_memory("NDS Supplement 2018", "Table 4B, as Table 4A")
    } else {
        citation
    };
    Factor::new("C_M", value, reason, citation)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::members::test_members::{inches, wet};

    fn check(class: &str, section: (f64, f64), expected: [f64; 7]) {
        let member = wet(class, inches(section.0, section.1));
        for (property, expected) in Property::ALL.into_iter().zip(expected) {
            assert_eq!(wet_service(&member, property).value, expected, "{class} {property:?}");
        }
    }

    /// Rows of Tables 4A, 4B and 4D; 4A bending, tension, shear and stiffness as in the published problems.
    #[test]
    fn tables_of_wet_service() {
        check("Hem-Fir", (8.0, 8.0), [1.0, 1.0, 1.0, 0.67, 0.91, 1.0, 1.0]);
        check("Southern Pine", (8.0, 8.0), [1.0; 7]);
        check("Douglas Fir-Larch", (2.0, 4.0), [0.85, 1.0, 0.97, 0.67, 0.8, 0.9, 0.9]);
        check("Southern Pine", (2.0, 10.0), [1.0, 1.0, 0.97, 0.67, 0.8, 0.9, 0.9]);
        check("Southern Pine", (2.0, 4.0), [1.0, 1.0, 0.97, 0.67, 0.8, 0.9, 0.9]);
        // 900·1.2 = 1,080 psi is low; 900·1.3 = 1,170 is not. Red oak No.2: F_c·C_F = 625·1.05 is low.
        check("Douglas Fir-Larch", (2.0, 8.0), [1.0, 1.0, 0.97, 0.67, 0.8, 0.9, 0.9]);
        check("Douglas Fir-Larch", (4.0, 8.0), [0.85, 1.0, 0.97, 0.67, 0.8, 0.9, 0.9]);
        check("Red Oak", (2.0, 8.0), [1.0, 1.0, 0.97, 0.67, 1.0, 0.9, 0.9]);
    }

    #[test]
    fn dry_wood_keeps_its_values() {
        let mut member = wet("Hem-Fir", inches(2.0, 4.0));
        member.conditions.wet_service = false;
        assert!(Property::ALL.into_iter().all(|property| wet_service(&member, property).value == 1.0));
    }
}
