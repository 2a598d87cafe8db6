//! How a stick is used: what the adjustment factors ask.
use crate::units::Length;

use super::Refused;

/// How long the shortest load of a combination lasts: it sets the load-duration factor.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum LoadDuration {
    /// Dead load alone.
    Permanent,
    /// Ten years: use of floors.
    #[default]
    TenYears,
    /// Two months: snow.
    TwoMonths,
    /// Seven days: roof live load, building.
    SevenDays,
    /// Ten minutes: wind, earthquake.
    TenMinutes,
    /// A blow.
    Impact,
}

/// How warm the wood gets for long.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Temperature {
    /// At most 100 °F.
    #[default]
    Normal,
    /// Over 100 to 125 °F.
    Warm,
    /// Over 125 to 150 °F.
    Hot,
}

impl Temperature {
    /// The band of a temperature in degrees Fahrenheit.
    ///
    /// # Errors
    /// Over 150 °F, where no factor is given.
    pub fn from_fahrenheit(degrees: f64) -> Result<Self, Refused> {
        match degrees {
            d if d <= 100.0 => Ok(Self::Normal),
            d if d <= 125.0 => Ok(Self::Warm),
            d if d <= 150.0 => Ok(Self::Hot),
            _ => Err(Refused::because("Wood kept over 150 °F has no listed temperature factor.")),
        }
    }
}

/// Sticks side by side that share a load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Repetitive {
    /// How many stand in the row.
    pub count: usize,
    /// Middle to middle.
    pub spacing: Length,
    /// Sheathing or something alike spreads the load among them. Metal sheets alone are doubtful.
    pub shares_load: bool,
}

/// Conditions of use. The default: dry, at most 100 °F, ten years, nothing shared.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Conditions {
    /// The shortest load of the combination.
    pub duration: LoadDuration,
    /// Over 19 % moisture for long: green timber until it is declared dry.
    pub wet_service: bool,
    /// How warm.
    pub temperature: Temperature,
    /// Incised for treatment.
    pub incised: bool,
    /// Treated with waterborne preservative or fire retardant: no load-duration factor over 1.6.
    pub treated: bool,
    /// A row of like sticks, where it counts.
    pub repetitive: Option<Repetitive>,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn bands_of_temperature() {
        for (degrees, band) in [
            (100.0, Ok(Temperature::Normal)),
            (100.1, Ok(Temperature::Warm)),
            (125.0, Ok(Temperature::Warm)),
            (126.0, Ok(Temperature::Hot)),
            (150.0, Ok(Temperature::Hot)),
        ] {
            assert_eq!(Temperature::from_fahrenheit(degrees), band);
        }
        assert!(Temperature::from_fahrenheit(151.0).is_err());
        assert!(Temperature::from_fahrenheit(f64::NAN).is_err());
    }
}
