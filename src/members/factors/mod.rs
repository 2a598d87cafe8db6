//! Adjustment factors of sawn wood (NDS chapters 2 to 4), each with its reason.
use std::borrow::Cow;

use crate::working::{Citation, Step};

use super::figures::number;

mod bearing_area;
mod flat_use;
mod incising;
mod load_duration;
mod repetitive;
mod size;
mod stiffened_chord;
mod temperature;
mod wet_service;

pub use bearing_area::bearing_area;
pub use flat_use::flat_use;
pub use incising::incising;
pub use load_duration::load_duration;
pub use repetitive::repetitive;
pub use size::size;
pub use stiffened_chord::stiffened_chord;
pub use temperature::temperature;
pub use wet_service::wet_service;

/// One factor.
#[derive(Clone, Debug, PartialEq)]
pub struct Factor {
    /// `C_D`.
    pub symbol: &'static str,
    /// Its value.
    pub value: f64,
    /// Why it has that value.
    pub reason: Cow<'static, str>,
    /// Where it is printed.
    pub citation: Citation,
}

impl Factor {
    /// A factor with its reason.
    pub(super) fn new(
        symbol: &'static str,
        value: f64,
        reason: impl Into<Cow<'static, str>>,
        citation: Citation,
    ) -> Self {
        Self { symbol, value, reason: reason.into(), citation }
    }

    /// As one step of a calculation.
    #[must_use]
    pub fn step(&self) -> Step {
        let says = [self.symbol, " = ", &number(self.value), ": ", &self.reason].concat();
        Step::new(self.symbol, says, self.citation)
    }

    /// Whether it changes nothing.
    pub(super) fn is_one(&self) -> bool {
        (self.value - 1.0).abs() < 1e-12
    }
}

/// Adds the steps of some factors: one each, those that change nothing in one line.
pub(super) fn steps(factors: &[Factor], steps: &mut Vec<Step>) {
    steps.extend(factors.iter().filter(|factor| !factor.is_one()).map(Factor::step));
    let mut says = String::with_capacity(400);
    for factor in factors.iter().filter(|factor| factor.is_one()) {
        let before = if says.is_empty() { "1.0 each: " } else { ", " };
        says.extend([before, factor.symbol, " (", &factor.reason, ")"]);
    }
    if !says.is_empty() {
        steps.push(Step::new("Factors that change nothing", says, Citation::from_memory("NDS 2018", "Table 4.3.1")));
    }
}
