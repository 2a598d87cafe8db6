//! Reads an amount of money, exact to the cent.

use super::quantity_error::{QuantityError, QuantityFault};
use super::text::{is_dash, is_space};
use crate::units::Money;

/// More digits than any timber costs, and few enough to count in cents.
const MOST_DIGITS: usize = 12;

/// Reads an amount: `12.5`, `$1,234.50`, `1.234,50 €`, `1 234`. A mark with one or two digits after it parts the cents;
/// one with three parts the thousands, for money has no third decimal. A minus sign may stand in front.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead.
pub fn parse_money(text: &str) -> Result<Money, QuantityError> {
    read(text).map_err(|fault| QuantityError::new(fault, "an amount of money", text, "1234.50"))
}

fn read(text: &str) -> Result<Money, QuantityFault> {
    let is_symbol = |c: char| matches!(c, '$' | '€' | '£' | '¥');
    let text = text.trim_matches(is_space);
    if text.is_empty() {
        return Err(QuantityFault::Empty);
    }
    let unsigned = text.strip_prefix(is_dash).unwrap_or(text).trim_start_matches(is_space);
    let bare = match unsigned.strip_prefix(is_symbol) {
        Some(rest) => rest,
        None => unsigned.strip_suffix(is_symbol).unwrap_or(unsigned),
    };
    let amount = cents(bare.trim_matches(is_space))?;
    Ok(Money::cents(if unsigned.len() < text.len() { -amount } else { amount }))
}

fn cents(text: &str) -> Result<i64, QuantityFault> {
    let (whole, decimals) = parted(text)?;
    let digits = ungrouped(whole)?;
    if digits.is_empty() && decimals.is_empty() {
        return Err(QuantityFault::Unreadable);
    }
    if digits.len() > MOST_DIGITS {
        return Err(QuantityFault::TooLarge);
    }
    format!("{digits}{decimals:0<2}").parse().map_err(|_| QuantityFault::Unreadable)
}

/// The part before the cents, and the digits of the cents.
fn parted(text: &str) -> Result<(&str, &str), QuantityFault> {
    let Some((whole, decimals)) = text.rsplit_once(['.', ',']) else {
        return Ok((text, ""));
    };
    if decimals.is_empty() || !decimals.chars().all(|c| c.is_ascii_digit()) {
        return Ok((text, ""));
    }
    match decimals.len() {
        1 | 2 => {
            let point = &text[whole.len()..=whole.len()];
            if whole.contains(point) { Err(QuantityFault::Grouped) } else { Ok((whole, decimals)) }
        }
        3 if whole != "0" && !whole.is_empty() => Ok((text, "")),
        _ => Err(QuantityFault::TooFine),
    }
}

/// The digits without the marks between thousands: one kind of mark, and three digits behind each.
fn ungrouped(whole: &str) -> Result<String, QuantityFault> {
    let is_mark = |c: char| matches!(c, '.' | ',' | '\'' | '’') || is_space(c);
    let groups: Vec<&str> = whole.split(is_mark).collect();
    let mut marks = whole.chars().filter(|&c| is_mark(c));
    let first_mark = marks.next();
    let is_even = marks.all(|mark| Some(mark) == first_mark)
        && groups.iter().all(|group| group.chars().all(|c| c.is_ascii_digit()))
        && groups.iter().skip(1).all(|group| group.len() == 3)
        && (groups.len() == 1 || (1..=3).contains(&groups[0].len()));
    if is_even { Ok(groups.concat()) } else { Err(QuantityFault::Unreadable) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: Result<i64, QuantityFault>) {
        assert_eq!(parse_money(text).map(Money::to_cents).map_err(|error| error.fault()), expected, "{text}");
    }

    #[test]
    fn amounts() {
        check("12.5", Ok(1_250));
        check("$1,234", Ok(123_400));
        check("$1,234.50", Ok(123_450));
        check("1.234,50 €", Ok(123_450));
        check("1\u{202f}234", Ok(123_400));
        check("1,234,567", Ok(123_456_700));
        check("−$12.05", Ok(-1_205));
        check("0.07", Ok(7));
        check(".5", Ok(50));
    }

    #[test]
    fn refused() {
        check("", Err(QuantityFault::Empty));
        check("$", Err(QuantityFault::Unreadable));
        check("12 50", Err(QuantityFault::Unreadable));
        check("0.125", Err(QuantityFault::TooFine));
        check("1.2345", Err(QuantityFault::TooFine));
        check("1.2.3", Err(QuantityFault::Grouped));
        check("1,23,456", Err(QuantityFault::Unreadable));
        check("9999999999999", Err(QuantityFault::TooLarge));
        check("five", Err(QuantityFault::Unreadable));
    }
}
