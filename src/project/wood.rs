//! What is taken of the wood's strength: grades, moisture in use, values of the user's own.
use crate::members::{Grade, Property};
use crate::units::Stress;

/// Which sticks a value of the user's own is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Used {
    /// Posts.
    Post,
    /// Beam pieces.
    Beam,
    /// Knee braces.
    Brace,
    /// Rafters.
    Rafter,
    /// Ledger pieces.
    Ledger,
    /// Purlins.
    Purlin,
}

/// A design value the user brings, in place of the table's.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnValue {
    /// Of which sticks.
    pub used: Used,
    /// Which value.
    pub property: Property,
    /// The value.
    pub value: Stress,
    /// Where it comes from, in the user's words.
    pub source: String,
}

/// The wood.
#[derive(Clone, Debug, PartialEq)]
pub struct Wood {
    /// Grade of sticks 5 in and thicker: stamped by a grader, or assumed.
    pub timber_grade: Grade,
    /// Grade of sticks under 5 in.
    pub lumber_grade: Grade,
    /// The user declares that the timbers are dry when loaded and stay so.
    pub is_dry: bool,
    /// Values of the user's own.
    pub own: Vec<OwnValue>,
}
