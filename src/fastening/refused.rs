//! Why a formula was not used: a sentence the user can act on.
use std::fmt;

/// A formula outside its limits, or a value that is missing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused(String);

impl Refused {
    pub(super) fn because(sentence: impl Into<String>) -> Self {
        Self(sentence.into())
    }

    /// The sentence.
    #[must_use]
    pub fn sentence(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Refused {}

/// Refuses what is not above zero.
pub(super) fn above_zero(what: &str, value: f64) -> Result<(), Refused> {
    if value > 0.0 { Ok(()) } else { Err(Refused::because(format!("Give {what}: it must be more than zero."))) }
}

impl From<Refused> for crate::unmade::Unmade {
    fn from(refused: Refused) -> Self {
        refused.0.into()
    }
}
