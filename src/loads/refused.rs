//! What cannot be worked out, in words.
use crate::unmade::{Input, Unmade};
use std::fmt;

/// Why a load is not worked out: a sentence that names what is missing, or which limit of a formula is passed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused(Unmade);

impl Refused {
    /// From the sentence; it reads on after `not judged: `.
    pub(super) fn because(reason: impl AsRef<str>) -> Self {
        Self(format!("not judged: {}", reason.as_ref()).into())
    }

    /// For want of that datum.
    pub(super) fn missing(input: Input, reason: impl AsRef<str>) -> Self {
        Self(Unmade { missing: Some(input), ..Self::because(reason).0 })
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.says)
    }
}

impl std::error::Error for Refused {}

impl From<Refused> for Unmade {
    fn from(refused: Refused) -> Self {
        refused.0
    }
}
