//! A formula that may not be used here.
use std::fmt;

/// Why nothing was computed: a sentence that says what is outside its limits and what to change.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused(pub String);

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Refused {}

impl Refused {
    /// A refusal in a sentence.
    pub(super) fn because(sentence: impl Into<String>) -> Self {
        Self(sentence.into())
    }
}

impl From<Refused> for crate::unmade::Unmade {
    fn from(refused: Refused) -> Self {
        refused.0.into()
    }
}
