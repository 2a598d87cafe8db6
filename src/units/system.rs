//! The two systems of units a person may read and type in.

/// Which units are shown, and what a number without a unit means.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum UnitSystem {
    /// Feet, inches and fractions; pounds.
    #[default]
    Imperial,
    /// Millimetres and metres; kilograms.
    Metric,
}
