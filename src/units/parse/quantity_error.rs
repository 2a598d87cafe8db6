//! Why a typed quantity other than a length is refused.

use super::mixed::MixedFault;
use super::text::TextFault;
use super::typed::typed;
use std::fmt;

/// What is wrong with a typed quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum QuantityFault {
    /// Nothing was typed.
    Empty,
    /// It has no form that is known.
    Unreadable,
    /// A number has two or more commas or points.
    Grouped,
    /// A part where only whole numbers make sense.
    NotWhole,
    /// More than two decimals of money.
    TooFine,
    /// Below zero where that means nothing.
    Negative,
    /// More than is taken.
    TooLarge,
    /// A slope of upright or more.
    TooSteep,
    /// A bare fraction as a slope: rise in twelve, or rise over run.
    UnclearFraction,
    /// A fraction, or a run, of zero below.
    ZeroDenominator,
    /// A fraction of one or more behind a whole number.
    FractionPastOne,
}

/// A refused quantity: what was typed, what is wrong and a form that works. Its text is a sentence.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct QuantityError {
    fault: QuantityFault,
    noun: &'static str,
    typed: String,
    form: String,
}

impl QuantityError {
    /// The noun comes with its article: `a weight`.
    pub(super) fn new(fault: QuantityFault, noun: &'static str, text: &str, form: impl Into<String>) -> Self {
        Self { fault, noun, typed: typed(text), form: form.into() }
    }

    /// What is wrong.
    #[must_use]
    pub const fn fault(&self) -> QuantityFault {
        self.fault
    }
}

impl From<TextFault> for QuantityFault {
    fn from(fault: TextFault) -> Self {
        match fault {
            TextFault::Unreadable => Self::Unreadable,
            TextFault::Grouped => Self::Grouped,
        }
    }
}

impl From<MixedFault> for QuantityFault {
    fn from(fault: MixedFault) -> Self {
        match fault {
            MixedFault::Unreadable => Self::Unreadable,
            MixedFault::ZeroDenominator => Self::ZeroDenominator,
            MixedFault::PastOne => Self::FractionPastOne,
        }
    }
}

impl fmt::Display for QuantityError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { fault, noun, typed, form } = self;
        let trouble = match fault {
            QuantityFault::Empty => return write!(f, "Type {noun}, like {form}."),
            QuantityFault::Unreadable => return write!(f, "“{typed}” cannot be read as {noun}: write it like {form}."),
            QuantityFault::Grouped => "has more than one comma or point: use one, for the decimals,",
            QuantityFault::NotWhole => "is not a whole number: write it",
            QuantityFault::TooFine => "has more than two decimals: write it",
            QuantityFault::Negative => "is below zero: write it",
            QuantityFault::TooLarge => "is more than is taken here: write it",
            QuantityFault::TooSteep => "is upright or more: write it",
            QuantityFault::UnclearFraction => "could be a rise in 12 or a rise over its run: write it",
            QuantityFault::ZeroDenominator => "has zero below the line: write it",
            QuantityFault::FractionPastOne => "has a fraction of one or more after a whole number: write it",
        };
        write!(f, "“{typed}” {trouble} like {form}.")
    }
}

impl std::error::Error for QuantityError {}
