//! Reads what the strength of a frame hangs on: wind speeds, forces, stresses, stiffnesses, heights above the sea.

use super::amount::Amount;
use super::quantity_error::{QuantityError, QuantityFault};
use crate::units::{Force, Length, Speed, Stiffness, Stress, UnitSystem};

/// One unit: the words it is written with and what makes the quantity of a number in it.
type Unit<T> = (&'static [&'static str], fn(f64) -> Option<T>);

/// How one kind of quantity is written.
struct Kind<T: 'static> {
    /// With its article.
    noun: &'static str,
    /// A right form in pounds and inches, and in metres.
    forms: [&'static str; 2],
    /// Its units: a bare number is in the first in pounds and inches, in the second in metres.
    units: &'static [Unit<T>],
    /// The least and the most that is taken, both as large.
    most: T,
    /// It may be below zero.
    signed: bool,
}

const SPEED: Kind<Speed> = Kind {
    noun: "a wind speed",
    forms: ["110 mph", "49 m/s"],
    units: &[
        (&["mph", "mi/h", "miles/h"], Speed::try_mph),
        (&["m/s", "mps"], Speed::try_metres_per_second),
        (&["km/h", "kmh", "kph"], Speed::try_kilometres_per_hour),
    ],
    most: Speed::mph(1e6),
    signed: false,
};

const FORCE: Kind<Force> = Kind {
    noun: "a force",
    forms: ["350 lb", "1.5 kN"],
    units: &[
        (&["lb", "lb.", "lbs", "lbs.", "lbf", "pound", "pounds"], Force::try_pounds),
        (&["kn", "kilonewton", "kilonewtons"], Force::try_kilonewtons),
        (&["n", "newton", "newtons"], Force::try_newtons),
    ],
    most: Force::pounds(1e9),
    signed: false,
};

const STRESS: Kind<Stress> = Kind {
    noun: "a design value",
    forms: ["875 psi", "6 MPa"],
    units: &[
        (&["psi", "lb/in²", "lb/in2", "lbs/in²", "lbs/in2"], Stress::try_psi),
        (&["mpa", "n/mm²", "n/mm2"], Stress::try_megapascals),
    ],
    most: Stress::psi(1e9),
    signed: false,
};

const STIFFNESS: Kind<Stiffness> = Kind {
    noun: "a stiffness",
    forms: ["50000 lb/in", "9 kN/mm"],
    units: &[
        (&["lb/in", "lbs/in", "lb/in.", "lbs/in."], Stiffness::try_pounds_per_inch),
        (&["kn/mm"], Stiffness::try_kilonewtons_per_millimetre),
    ],
    most: Stiffness::pounds_per_inch(1e12),
    signed: false,
};

const ELEVATION: Kind<Length> = Kind {
    noun: "a height above the sea",
    forms: ["600 ft", "180 m"],
    units: &[
        (&["ft", "ft.", "feet", "foot", "'", "′", "’"], Length::try_feet),
        (&["m", "metre", "metres", "meter", "meters"], Length::try_metres),
    ],
    most: Length::feet(100_000.0),
    signed: true,
};

/// Reads a wind speed: `110 mph`, `49 m/s`, `177 km/h`; a bare number is in the mph or m/s of the system.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead; a speed below zero is one.
pub fn parse_speed(text: &str, system: UnitSystem) -> Result<Speed, QuantityError> {
    read(text, system, &SPEED)
}

/// Reads a force: `350 lb`, `1.5 kN`, `1500 N`; a bare number is in the pounds or kilonewtons of the system.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead; a force below zero is one.
pub fn parse_force(text: &str, system: UnitSystem) -> Result<Force, QuantityError> {
    read(text, system, &FORCE)
}

/// Reads a design value of wood: `875 psi`, `6 MPa`; a bare number is in the psi or MPa of the system.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead; a value below zero is one.
pub fn parse_stress(text: &str, system: UnitSystem) -> Result<Stress, QuantityError> {
    read(text, system, &STRESS)
}

/// Reads a stiffness of a joint: `50000 lb/in`, `9 kN/mm`; a bare number is in the lb/in or kN/mm of the system.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead; a stiffness below zero is one.
pub fn parse_stiffness(text: &str, system: UnitSystem) -> Result<Stiffness, QuantityError> {
    read(text, system, &STIFFNESS)
}

/// Reads a height above the sea: `600 ft`, `180 m`; a bare number is in the feet or metres of the system, for nobody
/// says it in inches. It may be below zero.
///
/// # Errors
/// A [`QuantityError`] whose text says what to write instead.
pub fn parse_elevation(text: &str, system: UnitSystem) -> Result<Length, QuantityError> {
    read(text, system, &ELEVATION)
}

fn read<T>(text: &str, system: UnitSystem, kind: &Kind<T>) -> Result<T, QuantityError>
where
    T: Copy + PartialOrd + std::ops::Neg<Output = T>,
{
    let own = usize::from(system == UnitSystem::Metric);
    let take = || {
        let amount = Amount::read(text)?;
        let amount = if kind.signed { amount } else { amount.not_negative()? };
        let named = || kind.units.iter().find(|(words, _)| words.contains(&amount.unit.as_str()));
        let unit = if amount.unit.is_empty() { kind.units.get(own) } else { named() };
        let (_, make) = unit.ok_or(QuantityFault::Unreadable)?;
        let within = |value: &T| *value <= kind.most && *value >= -kind.most;
        make(amount.value).filter(within).ok_or(QuantityFault::TooLarge)
    };
    take().map_err(|fault| QuantityError::new(fault, kind.noun, text, kind.forms[own]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use UnitSystem::{Imperial, Metric};

    fn check<T: PartialEq + std::fmt::Debug>(found: Result<T, QuantityError>, expected: Result<T, QuantityFault>) {
        assert_eq!(found.map_err(|error| error.fault()), expected);
    }

    #[test]
    fn speeds() {
        check(parse_speed("110", Imperial), Ok(Speed::mph(110.0)));
        check(parse_speed("49,2", Metric), Ok(Speed::metres_per_second(49.2)));
        check(parse_speed("110 MPH", Metric), Ok(Speed::mph(110.0)));
        check(parse_speed("50 m/s", Imperial), Ok(Speed::metres_per_second(50.0)));
        check(parse_speed("180km/h", Imperial), Ok(Speed::kilometres_per_hour(180.0)));
        check(parse_speed("-5", Imperial), Err(QuantityFault::Negative));
        check(parse_speed("", Metric), Err(QuantityFault::Empty));
        check(parse_speed("90 knots", Metric), Err(QuantityFault::Unreadable));
        check(parse_speed(&"9".repeat(400), Metric), Err(QuantityFault::TooLarge));
    }

    #[test]
    fn forces_and_stresses() {
        check(parse_force("350", Imperial), Ok(Force::pounds(350.0)));
        check(parse_force("1.5", Metric), Ok(Force::kilonewtons(1.5)));
        check(parse_force("350 lbf", Metric), Ok(Force::pounds(350.0)));
        check(parse_force("1500 N", Imperial), Ok(Force::newtons(1500.0)));
        check(parse_force("35 lb/in", Imperial), Err(QuantityFault::Unreadable));
        check(parse_stress("875", Imperial), Ok(Stress::psi(875.0)));
        check(parse_stress("6", Metric), Ok(Stress::megapascals(6.0)));
        check(parse_stress("11 N/mm²", Imperial), Ok(Stress::megapascals(11.0)));
        check(parse_stress("1,300,000", Imperial), Err(QuantityFault::Grouped));
    }

    #[test]
    fn stiffnesses_and_elevations() {
        check(parse_stiffness("50000", Imperial), Ok(Stiffness::pounds_per_inch(50_000.0)));
        check(parse_stiffness("8.8 kN/mm", Imperial), Ok(Stiffness::kilonewtons_per_millimetre(8.8)));
        check(parse_stiffness("8.8", Metric), Ok(Stiffness::kilonewtons_per_millimetre(8.8)));
        check(parse_stiffness("-1", Metric), Err(QuantityFault::Negative));
        check(parse_elevation("600", Imperial), Ok(Length::feet(600.0)));
        check(parse_elevation("600′", Metric), Ok(Length::feet(600.0)));
        check(parse_elevation("−12", Metric), Ok(Length::metres(-12.0)));
        check(parse_elevation("12000 ft", Imperial), Ok(Length::feet(12_000.0)));
        check(parse_elevation("60 in", Imperial), Err(QuantityFault::Unreadable));
    }

    #[test]
    fn refusals_are_sentences_in_the_shown_units() {
        let says = |system| parse_force("much", system).map_err(|error| error.to_string());
        assert_eq!(says(Imperial), Err("“much” cannot be read as a force: write it like 350 lb.".to_owned()));
        assert_eq!(says(Metric), Err("“much” cannot be read as a force: write it like 1.5 kN.".to_owned()));
    }
}
