//! Numbers as the steps of a calculation show them.
use crate::units::{Force, Length, Moment, Stress, fixed, push_fixed};

/// Takes the last two digits off where they are zeros: `1.15`, `1.0`.
fn trim(text: &mut String) {
    let dropped = text.bytes().rev().take(2).take_while(|digit| *digit == b'0').count();
    text.truncate(text.len() - dropped);
}

/// A number without a unit: three decimals at most, one at least.
pub(super) fn number(value: f64) -> String {
    if !value.is_finite() {
        return "no limit".to_owned();
    }
    let mut text = fixed(value, 3);
    trim(&mut text);
    text
}

/// The same at the end of a text.
pub(super) fn push_number(text: &mut String, value: f64) {
    // Most factors change nothing.
    if value == 1.0 {
        text.push_str("1.0");
    } else if value.is_finite() {
        push_fixed(text, value, 3);
        trim(text);
    } else {
        text.push_str("no limit");
    }
}

/// A whole number with its thousands set off: `1,300,000`.
pub(super) fn thousands(value: f64) -> String {
    let mut text = fixed(value.abs(), 0);
    let is_negative = value < 0.0 && text != "0";
    let mut place = text.len();
    while place > 3 {
        place -= 3;
        text.insert(place, ',');
    }
    if is_negative {
        text.insert(0, '−');
    }
    text
}

/// The bare number of a stress: whole from 100 psi on, one decimal below.
pub(super) fn psi(value: f64) -> String {
    if !value.is_finite() {
        "no limit".to_owned()
    } else if value.abs() < 100.0 {
        fixed(value, 1)
    } else {
        thousands(value)
    }
}

/// A stress with its unit.
pub(super) fn stress(value: Stress) -> String {
    psi(value.to_psi()) + " psi"
}

/// A force with its unit.
pub(crate) fn force(value: Force) -> String {
    thousands(value.to_pounds()) + " lb"
}

/// A moment with its unit.
pub(crate) fn moment(value: Moment) -> String {
    thousands(value.to_pound_inches()) + " lb-in"
}

/// The bare number of a length in inches.
pub(super) fn inches(value: Length) -> String {
    number(value.to_inches())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_keep_what_matters() {
        assert_eq!(number(1.0), "1.0");
        assert_eq!(number(1.15), "1.15");
        assert_eq!(number(0.98661), "0.987");
        assert_eq!(number(f64::INFINITY), "no limit");
        assert_eq!(thousands(1_300_000.0), "1,300,000");
        assert_eq!(thousands(999.6), "1,000");
        assert_eq!(thousands(-1234.0), "−1,234");
        assert_eq!(thousands(-0.2), "0");
        assert_eq!(psi(59.11), "59.1");
        assert_eq!(psi(100.4), "100");
        assert_eq!(psi(f64::INFINITY), "no limit");
        assert_eq!(inches(Length::inches(7.25)), "7.25");
    }
}
