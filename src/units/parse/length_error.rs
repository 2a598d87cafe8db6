//! Why a typed length is refused.

use super::mixed::MixedFault;
use super::text::TextFault;
use super::typed::typed;
use crate::units::UnitSystem;
use std::fmt;

/// What is wrong with a typed length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum LengthFault {
    /// Nothing was typed.
    Empty,
    /// It has no form that is known.
    Unreadable,
    /// A number has two or more commas or points.
    Grouped,
    /// Twelve inches or more behind feet: no tape says it, so one of the two is a slip.
    InchesPastFoot,
    /// Sixteen or more in the third part of feet-inches-sixteenths.
    SixteenthsPastInch,
    /// Feet with a fraction or decimals, and inches behind them.
    FeetNotWhole,
    /// Two numbers with a dash and no mark: feet and inches, or something else.
    DashedPair,
    /// A fraction without a mark, where a bare number means millimetres.
    FractionWithoutMark,
    /// A fraction with zero below.
    ZeroDenominator,
    /// A fraction of one or more behind a whole number.
    FractionPastOne,
    /// Longer than anything that is built.
    TooLong,
    /// Below zero where that means nothing.
    Negative,
}

/// A refused length: what was typed, what is wrong, and for whom the right form is shown. Its text is a sentence.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct LengthError {
    fault: LengthFault,
    typed: String,
    system: UnitSystem,
}

impl LengthError {
    pub(super) fn new(fault: LengthFault, text: &str, system: UnitSystem) -> Self {
        Self { fault, typed: typed(text), system }
    }

    /// What is wrong.
    #[must_use]
    pub const fn fault(&self) -> LengthFault {
        self.fault
    }
}

impl From<TextFault> for LengthFault {
    fn from(fault: TextFault) -> Self {
        match fault {
            TextFault::Unreadable => Self::Unreadable,
            TextFault::Grouped => Self::Grouped,
        }
    }
}

impl From<MixedFault> for LengthFault {
    fn from(fault: MixedFault) -> Self {
        match fault {
            MixedFault::Unreadable => Self::Unreadable,
            MixedFault::ZeroDenominator => Self::ZeroDenominator,
            MixedFault::PastOne => Self::FractionPastOne,
        }
    }
}

impl fmt::Display for LengthError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (form, decimal) = match self.system {
            UnitSystem::Imperial => ("7' 4 5/16\"", "1234.5\""),
            UnitSystem::Metric => ("2243 mm", "1234.5 mm"),
        };
        let trouble = match self.fault {
            LengthFault::Empty => return write!(f, "Type a length, like {form}."),
            LengthFault::Grouped => {
                let (point, typed) = ("has more than one comma or point in a number", &self.typed);
                return write!(f, "“{typed}” {point}: use one, for the decimals, like {decimal}.");
            }
            LengthFault::Unreadable => "cannot be read as a length",
            LengthFault::InchesPastFoot => "has 12 inches or more after the feet",
            LengthFault::SixteenthsPastInch => "has 16 sixteenths or more in its third part",
            LengthFault::FeetNotWhole => "has a part of a foot and inches as well",
            LengthFault::DashedPair => "could mean feet and inches or something else: put the marks in",
            LengthFault::FractionWithoutMark => "is a fraction without a mark: write 5/16\" for inches, or millimetres",
            LengthFault::ZeroDenominator => "has a fraction with zero below the line",
            LengthFault::FractionPastOne => "has a fraction of one or more after a whole number",
            LengthFault::TooLong => "is longer than 10,000 feet (3048 m)",
            LengthFault::Negative => "is below zero",
        };
        let link = if trouble.contains(':') { "," } else { ": write it" };
        write!(f, "“{}” {trouble}{link} like {form}.", self.typed)
    }
}

impl std::error::Error for LengthError {}
