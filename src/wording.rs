//! Quantities in the user's units, for the sentences the library says.
use crate::units::{Fineness, Length, MetricStep, UnitSystem, Weight, feet_inches, inches_only, millimetres};

/// A length to the nearest sixteenth, or millimetre.
#[must_use]
pub fn length(value: Length, units: UnitSystem) -> String {
    match units {
        UnitSystem::Imperial => feet_inches(value, Fineness::Sixteenth).to_string(),
        UnitSystem::Metric => millimetres(value, MetricStep::Whole).to_string(),
    }
}

/// A weight to the nearest pound, or kilogram.
#[must_use]
pub fn weight(value: Weight, units: UnitSystem) -> String {
    match units {
        UnitSystem::Imperial => format!("{:.0} lb", value.to_pounds()),
        UnitSystem::Metric => format!("{:.0} kg", value.to_kilograms()),
    }
}

/// A length as it is read off a tape: inches without feet, or millimetres to the half.
#[must_use]
pub fn tape(value: Length, units: UnitSystem, fineness: Fineness) -> String {
    match units {
        UnitSystem::Imperial => inches_only(value, fineness).to_string(),
        UnitSystem::Metric => millimetres(value, MetricStep::Half).to_string(),
    }
}
