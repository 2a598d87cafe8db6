//! Reads a slope: rise in run, degrees or percent.

use super::mixed::take_mixed;
use super::quantity_error::{QuantityError, QuantityFault};
use super::text::{Decimal, Token, tokens};
use crate::units::{Slope, UnitSystem};

/// A rise of more than this times the run is upright for any roof; text that says so is a slip.
const STEEPEST: f64 = 1e6;

/// Reads a slope: `3:12`, `3/12`, `3 1/2 in 12`, `1 in 4`, `14°`, `14 deg`, `25%`. A bare number is the rise in twelve in
/// Imperial and degrees in Metric. A bare fraction (`1/4`) is refused, for it has two readings; over 12 it has one.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead; a slope below zero or upright is one.
pub fn parse_slope(text: &str, system: UnitSystem) -> Result<Slope, QuantityError> {
    let form = match system {
        UnitSystem::Imperial => "3 in 12",
        UnitSystem::Metric => "14°",
    };
    read(text, system).map_err(|fault| QuantityError::new(fault, "a slope", text, form))
}

fn read(text: &str, system: UnitSystem) -> Result<Slope, QuantityFault> {
    let tokens = tokens(text)?;
    let mut rest = match tokens.as_slice() {
        [] => return Err(QuantityFault::Empty),
        [Token::Dash, ..] => return Err(QuantityFault::Negative),
        [Token::Number(rise), Token::Slash, Token::Number(run)] if run.value == 12.0 => {
            return ratio(rise.value, *run);
        }
        all => all,
    };
    let has_whole = !matches!(rest, [Token::Vulgar(..), ..] | [_, Token::Slash, ..]);
    let first = take_mixed(&mut rest)?;
    match (rest, system) {
        ([Token::Colon | Token::Slash | Token::Inch, Token::Number(run)], _) => ratio(first.value, *run),
        ([Token::Degree], _) => degrees(first.value),
        ([Token::Percent], _) => steepness(first.value / 100.0),
        ([], _) if first.has_fraction && !has_whole => Err(QuantityFault::UnclearFraction),
        ([], UnitSystem::Imperial) => steepness(first.value / 12.0),
        ([], UnitSystem::Metric) => degrees(first.value),
        _ => Err(QuantityFault::Unreadable),
    }
}

fn ratio(rise: f64, run: Decimal) -> Result<Slope, QuantityFault> {
    if run.value == 0.0 {
        return Err(QuantityFault::ZeroDenominator);
    }
    steepness(rise / run.value)
}

fn degrees(degrees: f64) -> Result<Slope, QuantityFault> {
    Slope::try_degrees(degrees).ok_or(QuantityFault::TooSteep).and_then(|slope| steepness(slope.tan()))
}

fn steepness(rise_over_run: f64) -> Result<Slope, QuantityFault> {
    if rise_over_run > STEEPEST {
        return Err(QuantityFault::TooSteep);
    }
    Slope::try_ratio(rise_over_run).ok_or(QuantityFault::TooSteep)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(text: &str, system: UnitSystem, expected: Result<Slope, QuantityFault>) {
        assert_eq!(parse_slope(text, system).map_err(|error| error.fault()), expected, "{text}");
    }

    #[test]
    fn forms() {
        for system in [UnitSystem::Imperial, UnitSystem::Metric] {
            for text in ["3:12", "3/12", "3 in 12", "3IN12", "1 in 4", "1:4", "25%", "25 %", "3,0 in 12"] {
                check(text, system, Ok(Slope::in_twelve(3.0)));
            }
            check("3 1/2 in 12", system, Ok(Slope::in_twelve(3.5)));
            check("3½:12", system, Ok(Slope::in_twelve(3.5)));
            check("1/4 in 12", system, Ok(Slope::in_twelve(0.25)));
            check("14°", system, Ok(Slope::degrees(14.0)));
            check("14,5 deg", system, Ok(Slope::degrees(14.5)));
        }
        check("3 1/2", UnitSystem::Imperial, Ok(Slope::in_twelve(3.5)));
        check("3", UnitSystem::Imperial, Ok(Slope::in_twelve(3.0)));
        check("14", UnitSystem::Metric, Ok(Slope::degrees(14.0)));
        check("0", UnitSystem::Metric, Ok(Slope::LEVEL));
    }

    #[test]
    fn refused() {
        let system = UnitSystem::Imperial;
        check(" ", system, Err(QuantityFault::Empty));
        check("-3", system, Err(QuantityFault::Negative));
        check("1/4", system, Err(QuantityFault::UnclearFraction));
        check("13/10", system, Err(QuantityFault::UnclearFraction));
        check("½", system, Err(QuantityFault::UnclearFraction));
        check("3/0", system, Err(QuantityFault::ZeroDenominator));
        check("3:0", system, Err(QuantityFault::ZeroDenominator));
        check("90°", system, Err(QuantityFault::TooSteep));
        check("89.999999999999999999°", system, Err(QuantityFault::TooSteep));
        check("1.234,5%", system, Err(QuantityFault::Grouped));
        check("3 in", system, Err(QuantityFault::Unreadable));
        check("steep", system, Err(QuantityFault::Unreadable));
        check("3:12:1", system, Err(QuantityFault::Unreadable));
        check("3 12/12 in 12", system, Err(QuantityFault::FractionPastOne));
    }
}
