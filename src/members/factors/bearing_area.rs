//! `C_b`: a short bearing is helped by the wood beside it.
use crate::units::Length;
use crate::working::Citation;

use super::super::Refused;
use super::super::figures::{inches, number};
use super::Factor;

/// `C_b = (l_b + 0.375)/l_b` (NDS 3.10.4, from memory): `l_b` the bearing length along the grain, below 6 in and
/// 3 in or more clear of the end of the stick; 1.0 otherwise.
///
/// # Errors
/// When the bearing has no length.
pub fn bearing_area(length: Length, from_end: Length) -> Result<Factor, Refused> {
    if length <= Length::ZERO {
        return Err(Refused::because("A bearing needs a length along the grain."));
    }
    let citation = Citation::from_memory("NDS 2018", "3.10.4");
    if length >= Length::inches(6.0) {
        return Ok(Factor::new("C_b", 1.0, "bearing 6 in or longer", citation));
    }
    if from_end < Length::inches(3.0) {
        return Ok(Factor::new("C_b", 1.0, "bearing less than 3 in from the end", citation));
    }
    let value = (length.to_inches() + 0.375) / length.to_inches();
    let reason = format!("({l} + 0.375)/{l} = {}, 3 in or more from the end", number(value), l = inches(length));
    Ok(Factor::new("C_b", value, reason, citation))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    /// The printed row of NDS 3.10.4, from memory.
    #[test]
    fn printed_row() {
        for (length, printed) in
            [(0.5, 1.75), (1.0, 1.38), (1.5, 1.25), (2.0, 1.19), (3.0, 1.13), (4.0, 1.10), (6.0, 1.0)]
        {
            let found = bearing_area(Length::inches(length), Length::inches(3.0)).unwrap().value;
            assert!((found - printed).abs() < 0.006_3, "{length}: {found}");
        }
        assert_eq!(bearing_area(Length::inches(2.0), Length::inches(2.9)).unwrap().value, 1.0);
        assert!(bearing_area(Length::ZERO, Length::inches(3.0)).is_err());
    }
}
