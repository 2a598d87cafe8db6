//! `C_t`: wood that stays warm is weaker.
use crate::working::Citation;

use super::super::{Conditions, Property, Temperature};
use super::Factor;

/// `C_t` (NDS Table 2.3.3, from memory).
#[must_use]
pub fn temperature(conditions: &Conditions, property: Property) -> Factor {
    let is_even = matches!(property, Property::Tension | Property::Stiffness | Property::LeastStiffness);
    let (value, reason) = match (conditions.temperature, conditions.wet_service) {
        (Temperature::Normal, _) => (1.0, "at most 100 °F"),
        (Temperature::Warm, _) if is_even => (0.9, "100 to 125 °F"),
        (Temperature::Hot, _) if is_even => (0.9, "125 to 150 °F"),
        (Temperature::Warm, false) => (0.8, "100 to 125 °F, dry"),
        (Temperature::Warm, true) => (0.7, "100 to 125 °F, wet"),
        (Temperature::Hot, false) => (0.7, "125 to 150 °F, dry"),
        (Temperature::Hot, true) => (0.5, "125 to 150 °F, wet"),
    };
    Factor::new("C_t", value, reason, Citation::from_memory("NDS 2018", "Table 2.3.3"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_cell_of_the_table() {
        for (band, wet, even, other) in [
            (Temperature::Normal, false, 1.0, 1.0),
            (Temperature::Normal, true, 1.0, 1.0),
            (Temperature::Warm, false, 0.9, 0.8),
            (Temperature::Warm, true, 0.9, 0.7),
            (Temperature::Hot, false, 0.9, 0.7),
            (Temperature::Hot, true, 0.9, 0.5),
        ] {
            let conditions = Conditions { temperature: band, wet_service: wet, ..Conditions::default() };
            for property in [Property::Tension, Property::Stiffness, Property::LeastStiffness] {
                assert_eq!(temperature(&conditions, property).value, even);
            }
            for property in [Property::Bending, Property::Shear, Property::BearingAcross, Property::Compression] {
                assert_eq!(temperature(&conditions, property).value, other);
            }
        }
    }
}
