//! A result that shows how it came about: each step with its numbers in it, and where it is printed.
use std::borrow::Cow;

pub use crate::materials::Confidence;

/// Where a formula or a value is printed, and how far our reading of it can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Citation {
    /// Document and edition: `NDS 2018`.
    pub document: &'static str,
    /// Clause, table or equation: `3.7.1`, `Table 4D`.
    pub clause: &'static str,
    /// High: compared with the printed source. Given: the user's word. Medium: from memory. Low: a placeholder.
    pub confidence: Confidence,
}

impl Citation {
    /// Something compared with its printed source.
    #[must_use]
    pub const fn seen(document: &'static str, clause: &'static str) -> Self {
        Self { document, clause, confidence: Confidence::High }
    }

    /// Something the user states, whose source stands in the step.
    #[must_use]
    pub const fn given(document: &'static str, clause: &'static str) -> Self {
        Self { document, clause, confidence: Confidence::Given }
    }

    /// Something recalled from its source, not compared.
    #[must_use]
    pub const fn from_memory(document: &'static str, clause: &'static str) -> Self {
        Self { document, clause, confidence: Confidence::Medium }
    }

    /// A placeholder: ask before leaning on it.
    #[must_use]
    pub const fn placeholder(document: &'static str, clause: &'static str) -> Self {
        Self { document, clause, confidence: Confidence::Low }
    }

    /// `NDS 2018, 3.7.1`.
    #[must_use]
    pub fn place(&self) -> String {
        format!("{}, {}", self.document, self.clause)
    }

    /// A shop rule with no published source.
    #[must_use]
    pub const fn common_practice(about: &'static str) -> Self {
        Self { document: "common practice", clause: about, confidence: Confidence::Medium }
    }
}

/// One step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Step {
    /// What it gives: a symbol and its name.
    pub gives: Cow<'static, str>,
    /// Formula, numbers in it, result and unit in one line.
    pub says: String,
    /// Where it is printed.
    pub citation: Citation,
}

impl Step {
    /// One step.
    #[must_use]
    pub fn new(gives: impl Into<Cow<'static, str>>, says: impl Into<String>, citation: Citation) -> Self {
        Self { gives: gives.into(), says: says.into(), citation }
    }
}

/// A value with the steps that led to it.
#[derive(Clone, Debug, PartialEq)]
pub struct Worked<T> {
    /// The value.
    pub value: T,
    /// How it came about, first step first.
    pub steps: Vec<Step>,
}

impl<T> Worked<T> {
    /// A value with its steps.
    #[must_use]
    pub const fn new(value: T, steps: Vec<Step>) -> Self {
        Self { value, steps }
    }

    /// The confidence of the weakest step; high where there is none.
    #[must_use]
    pub fn confidence(&self) -> Confidence {
        weakest(&self.steps)
    }
}

/// The confidence of the weakest of some steps; high where there is none.
#[must_use]
pub fn weakest(steps: &[Step]) -> Confidence {
    steps.iter().map(|step| step.citation.confidence).max().unwrap_or(Confidence::High)
}
