//! `C_i`: cuts that let preservative in.
use crate::working::Citation;

use super::super::{Conditions, Property};
use super::Factor;

/// `C_i` (NDS Table 4.3.8, from memory): incisions along the grain, at most 0.4 in deep, 3/8 in long, 1,100 a square foot.
#[must_use]
pub fn incising(conditions: &Conditions, property: Property) -> Factor {
    let (value, reason) = match property {
        _ if !conditions.incised => (1.0, "not incised"),
        Property::BearingAcross => (1.0, "incised, which leaves this value"),
        Property::Stiffness | Property::LeastStiffness => (0.95, "incised"),
        _ => (0.8, "incised"),
    };
    Factor::new("C_i", value, reason, Citation::from_memory("NDS 2018", "Table 4.3.8"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn incised_or_not() {
        let incised = Conditions { incised: true, ..Conditions::default() };
        for (property, expected) in Property::ALL.into_iter().zip([0.8, 0.8, 0.8, 1.0, 0.8, 0.95, 0.95]) {
            assert_eq!(incising(&incised, property).value, expected);
            assert_eq!(incising(&Conditions::default(), property).value, 1.0);
        }
    }
}
