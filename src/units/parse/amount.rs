//! Reads a number with at most one unit behind it: weights, loads over an area, counts and plain numbers.

use super::quantity_error::{QuantityError, QuantityFault};
use super::text::{Decimal, is_dash, is_space, number};
use crate::units::{AreaLoad, UnitSystem, Weight};

/// More pounds than any lean-to, or any ground under it, weighs.
const HEAVIEST: Weight = Weight::pounds(1e9);

/// More than any roof carries.
const HIGHEST_LOAD: AreaLoad = AreaLoad::psf(1e6);

/// Up to here every whole number is exact.
const LARGEST_NUMBER: f64 = 1e15;

/// Reads a weight: `421 lb`, `191 kg`; a bare number is in the pounds or kilograms of the system.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead; a weight below zero is one.
pub fn parse_weight(text: &str, system: UnitSystem) -> Result<Weight, QuantityError> {
    let form = match system {
        UnitSystem::Imperial => "421 lb",
        UnitSystem::Metric => "191 kg",
    };
    let read = || {
        let amount = Amount::read(text)?.not_negative()?;
        let weight = match (amount.unit.as_str(), system) {
            ("lb" | "lb." | "lbs" | "lbs." | "pound" | "pounds", _) | ("", UnitSystem::Imperial) => {
                Weight::try_pounds(amount.value)
            }
            ("kg" | "kilogram" | "kilograms", _) | ("", UnitSystem::Metric) => Weight::try_kilograms(amount.value),
            _ => return Err(QuantityFault::Unreadable),
        };
        weight.filter(|weight| *weight <= HEAVIEST).ok_or(QuantityFault::TooLarge)
    };
    read().map_err(|fault| QuantityError::new(fault, "a weight", text, form))
}

/// Reads a load over an area: `40 psf`, `1.92 kPa`; a bare number is in the psf or kPa of the system.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead; a load below zero is one.
pub fn parse_area_load(text: &str, system: UnitSystem) -> Result<AreaLoad, QuantityError> {
    let form = match system {
        UnitSystem::Imperial => "40 psf",
        UnitSystem::Metric => "1.92 kPa",
    };
    let read = || {
        let amount = Amount::read(text)?.not_negative()?;
        let load = match (amount.unit.as_str(), system) {
            ("psf" | "lb/ft²" | "lb/ft2" | "lbs/ft²" | "lbs/ft2", _) | ("", UnitSystem::Imperial) => {
                AreaLoad::try_psf(amount.value)
            }
            ("kpa" | "kn/m²" | "kn/m2", _) | ("", UnitSystem::Metric) => AreaLoad::try_kilopascals(amount.value),
            _ => return Err(QuantityFault::Unreadable),
        };
        load.filter(|load| *load <= HIGHEST_LOAD).ok_or(QuantityFault::TooLarge)
    };
    read().map_err(|fault| QuantityError::new(fault, "a load", text, form))
}

/// Reads a whole number from 0 up to a most.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead.
pub fn parse_count(text: &str, most: u32) -> Result<u32, QuantityError> {
    let read = || {
        let amount = Amount::read(text)?.bare()?.not_negative()?;
        if !amount.is_whole {
            return Err(QuantityFault::NotWhole);
        }
        if amount.value > f64::from(most) { Err(QuantityFault::TooLarge) } else { Ok(amount.value as u32) }
    };
    read()
        .map_err(|fault| QuantityError::new(fault, "a whole number", text, format!("{}, at most {most}", most.min(4))))
}

/// Reads a plain number with decimals; it may be below zero.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead.
pub fn parse_number(text: &str) -> Result<f64, QuantityError> {
    let read = || {
        let amount = Amount::read(text)?.bare()?;
        if amount.value.abs() > LARGEST_NUMBER { Err(QuantityFault::TooLarge) } else { Ok(amount.value) }
    };
    read().map_err(|fault| QuantityError::new(fault, "a number", text, "12.5"))
}

/// A number and what stands behind it.
pub(super) struct Amount {
    pub(super) value: f64,
    is_whole: bool,
    /// In small letters, without spaces.
    pub(super) unit: String,
}

impl Amount {
    pub(super) fn read(text: &str) -> Result<Self, QuantityFault> {
        let chars: Vec<char> = text.chars().skip_while(|&c| is_space(c)).collect();
        let negative = match chars.first() {
            None => return Err(QuantityFault::Empty),
            Some(&first) => is_dash(first),
        };
        let start = usize::from(negative);
        let gap = chars[start..].iter().take_while(|&&c| is_space(c)).count();
        let Some((Decimal { value, is_whole }, end)) = number(&chars, start + gap)? else {
            return Err(QuantityFault::Unreadable);
        };
        let unit = chars[end..].iter().filter(|&&c| !is_space(c)).flat_map(|c| c.to_lowercase()).collect();
        Ok(Self { value: if negative { -value } else { value }, is_whole, unit })
    }

    fn bare(self) -> Result<Self, QuantityFault> {
        if self.unit.is_empty() { Ok(self) } else { Err(QuantityFault::Unreadable) }
    }

    pub(super) fn not_negative(self) -> Result<Self, QuantityFault> {
        if self.value < 0.0 { Err(QuantityFault::Negative) } else { Ok(self) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check<T: PartialEq + std::fmt::Debug>(found: Result<T, QuantityError>, expected: Result<T, QuantityFault>) {
        assert_eq!(found.map_err(|error| error.fault()), expected);
    }

    #[test]
    fn weights_and_loads() {
        check(parse_weight("421 lb", UnitSystem::Metric), Ok(Weight::pounds(421.0)));
        check(parse_weight(" 191\u{a0}KG ", UnitSystem::Imperial), Ok(Weight::kilograms(191.0)));
        check(parse_weight("12,5", UnitSystem::Metric), Ok(Weight::kilograms(12.5)));
        check(parse_weight("-1 lb", UnitSystem::Imperial), Err(QuantityFault::Negative));
        check(parse_weight("5 stone", UnitSystem::Imperial), Err(QuantityFault::Unreadable));
        check(parse_weight("9e99", UnitSystem::Imperial), Err(QuantityFault::Unreadable));
        check(parse_area_load("40 psf", UnitSystem::Metric), Ok(AreaLoad::psf(40.0)));
        check(parse_area_load("1.92", UnitSystem::Metric), Ok(AreaLoad::kilopascals(1.92)));
        check(parse_area_load("2 kN/m²", UnitSystem::Imperial), Ok(AreaLoad::kilopascals(2.0)));
        check(parse_area_load("9999999", UnitSystem::Imperial), Err(QuantityFault::TooLarge));
    }

    #[test]
    fn counts_and_numbers() {
        check(parse_count("18", 40), Ok(18));
        check(parse_count("41", 40), Err(QuantityFault::TooLarge));
        check(parse_count("1,5", 40), Err(QuantityFault::NotWhole));
        check(parse_count("", 40), Err(QuantityFault::Empty));
        check(parse_number("−2,5"), Ok(-2.5));
        check(parse_number("1.2.3"), Err(QuantityFault::Grouped));
        check(parse_number("NaN"), Err(QuantityFault::Unreadable));
        check(parse_number(&"9".repeat(400)), Err(QuantityFault::TooLarge));
    }
}
