//! Reads a length: feet, inches and fractions, or metric.

use super::length_error::{LengthError, LengthFault};
use super::mixed::{Mixed, take_mixed};
use super::text::{Decimal, Token, tokens};
use crate::units::{Length, UnitSystem};

/// The longest length that is read, either way from zero.
pub const LONGEST_LENGTH: Length = Length::feet(10_000.0);

/// Reads a length as a builder types it.
///
/// - Feet and inches: `7' 4 5/16"`, `7ft 4in`, `7'-6 1/2`, `7.5'`; the last inch mark may be left out.
/// - Inches: `88 5/16"`, `88-5/16"`, `3½"`; feet-inches-sixteenths: `7-4-5`. Metric: `2243mm`, `224.3 cm`, `2,243 m`.
/// - A bare number is inches in Imperial and millimetres in Metric; a bare fraction is read in Imperial alone.
/// - A comma is a decimal comma: `1,234` is 1.234. A minus sign may stand in front.
/// - Twelve inches or more after feet are refused: no tape says it, so one of the two numbers is a slip.
///
/// # Errors
/// A [`LengthError`] whose text says what to write instead.
pub fn parse_length(text: &str, system: UnitSystem) -> Result<Length, LengthError> {
    read(text, system).map_err(|fault| LengthError::new(fault, text, system))
}

/// Reads a length that cannot be below zero.
///
/// # Errors
/// As [`parse_length`], and for a length below zero.
pub fn parse_length_not_negative(text: &str, system: UnitSystem) -> Result<Length, LengthError> {
    let length = parse_length(text, system)?;
    if length.is_negative() { Err(LengthError::new(LengthFault::Negative, text, system)) } else { Ok(length) }
}

fn read(text: &str, system: UnitSystem) -> Result<Length, LengthFault> {
    let tokens = tokens(text)?;
    let (negative, size) = match tokens.as_slice() {
        [] => return Err(LengthFault::Empty),
        [Token::Dash, rest @ ..] => (true, rest),
        all => (false, all),
    };
    let inches = match *size {
        [Token::Number(feet), Token::Dash, Token::Number(inches), Token::Dash, Token::Number(sixteenths)] => {
            feet_inches_sixteenths(feet, inches, sixteenths)?
        }
        _ => marked(size, system)?,
    };
    match Length::try_inches(if negative { -inches } else { inches }) {
        Some(length) if length.abs() <= LONGEST_LENGTH => Ok(length),
        _ => Err(LengthFault::TooLong),
    }
}

fn feet_inches_sixteenths(feet: Decimal, inches: Decimal, sixteenths: Decimal) -> Result<f64, LengthFault> {
    if !(feet.is_whole && inches.is_whole && sixteenths.is_whole) {
        return Err(LengthFault::Unreadable);
    }
    if inches.value >= 12.0 {
        return Err(LengthFault::InchesPastFoot);
    }
    if sixteenths.value >= 16.0 {
        return Err(LengthFault::SixteenthsPastInch);
    }
    Ok(feet.value * 12.0 + inches.value + sixteenths.value / 16.0)
}

/// A length whose first number is followed by a mark, a unit or nothing; in inches.
fn marked(mut tokens: &[Token], system: UnitSystem) -> Result<f64, LengthFault> {
    let first = take_mixed(&mut tokens)?;
    match (tokens, system) {
        ([], UnitSystem::Imperial) | ([Token::Inch], _) => Ok(first.value),
        ([], UnitSystem::Metric) if first.has_fraction => Err(LengthFault::FractionWithoutMark),
        ([], UnitSystem::Metric) => metric(first, Length::try_millimetres),
        ([Token::Foot, rest @ ..], _) => after_feet(first, rest),
        ([Token::Millimetre], _) => metric(first, Length::try_millimetres),
        ([Token::Centimetre], _) => metric(first, |centimetres| Length::try_millimetres(centimetres * 10.0)),
        ([Token::Metre], _) => metric(first, Length::try_metres),
        ([Token::Dash, ..], _) => Err(LengthFault::DashedPair),
        _ => Err(LengthFault::Unreadable),
    }
}

/// Metric lengths are written with decimals, never with fractions.
fn metric(number: Mixed, length: impl Fn(f64) -> Option<Length>) -> Result<f64, LengthFault> {
    if number.has_fraction {
        return Err(LengthFault::Unreadable);
    }
    length(number.value).map(Length::to_inches).ok_or(LengthFault::TooLong)
}

fn after_feet(feet: Mixed, rest: &[Token]) -> Result<f64, LengthFault> {
    let mut rest = match rest {
        [] => return Ok(feet.value * 12.0),
        [Token::Dash, rest @ ..] => rest,
        rest => rest,
    };
    let inches = take_mixed(&mut rest)?;
    if !matches!(rest, [] | [Token::Inch]) {
        return Err(LengthFault::Unreadable);
    }
    if !feet.is_whole {
        return Err(LengthFault::FeetNotWhole);
    }
    if inches.value >= 12.0 {
        return Err(LengthFault::InchesPastFoot);
    }
    Ok(feet.value * 12.0 + inches.value)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, expected: Result<f64, LengthFault>) {
        let found = parse_length(text, UnitSystem::Imperial).map(Length::to_inches).map_err(|error| error.fault());
        assert_eq!(found, expected, "{text}");
    }

    #[test]
    fn readings() {
        check("7' 4 5/16", Ok(88.3125));
        check("7-4-5", Ok(88.3125));
        check("−7′ 4″", Ok(-88.0));
        check("7' 14", Err(LengthFault::InchesPastFoot));
        check("7-4", Err(LengthFault::DashedPair));
    }

    #[test]
    fn below_zero_only_where_allowed() {
        assert!(parse_length_not_negative("0", UnitSystem::Metric).is_ok());
        let refused = parse_length_not_negative("-3 mm", UnitSystem::Metric);
        assert_eq!(
            refused.map_err(|error| error.to_string()),
            Err("“-3 mm” is below zero: write it like 2243 mm.".into())
        );
    }
}
