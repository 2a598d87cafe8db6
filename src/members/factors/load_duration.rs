//! `C_D`: wood carries more for a short time.
use crate::working::Citation;

use super::super::{Conditions, LoadDuration};
use super::Factor;

/// `C_D` (NDS Table 2.3.2, from memory; 1.15 and 1.25 seen in published problems). Not on `F_c⊥`, `E`, `E_min`.
#[must_use]
pub fn load_duration(conditions: &Conditions) -> Factor {
    let table = Citation::from_memory("NDS 2018", "Table 2.3.2");
    let (value, reason, citation) = match conditions.duration {
        LoadDuration::Permanent => (0.9, "the load stays for good", table),
        LoadDuration::TenYears => (1.0, "ten years of load", table),
        LoadDuration::TwoMonths => {
            (1.15, "two months of snow", Citation::seen("university course example, NDS 2001", "Table 2.3.2"))
        }
        LoadDuration::SevenDays => (
            1.25,
            "seven days of load on a roof",
            Citation::seen("Breyer et al., Design of Wood Structures, ch. 6 problems", "Table 2.3.2"),
        ),
        LoadDuration::TenMinutes => (1.6, "ten minutes of wind or shaking", table),
        LoadDuration::Impact if conditions.treated => (
            1.6,
            "a blow, but on treated wood no more than 1.6",
            Citation::seen("structural handbook", "load duration"),
        ),
        LoadDuration::Impact => (2.0, "a blow", table),
    };
    Factor::new("C_D", value, reason, citation)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_duration() {
        for (duration, expected) in [
            (LoadDuration::Permanent, 0.9),
            (LoadDuration::TenYears, 1.0),
            (LoadDuration::TwoMonths, 1.15),
            (LoadDuration::SevenDays, 1.25),
            (LoadDuration::TenMinutes, 1.6),
            (LoadDuration::Impact, 2.0),
        ] {
            let conditions = Conditions { duration, ..Conditions::default() };
            assert_eq!(load_duration(&conditions).value, expected);
            let treated = Conditions { treated: true, ..conditions };
            assert_eq!(load_duration(&treated).value, expected.min(1.6));
        }
    }
}
