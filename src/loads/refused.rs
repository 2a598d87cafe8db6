//! What cannot be worked out, in words.
use std::fmt;

/// Why a load is not worked out: a sentence that names what is missing, or which limit of a formula is passed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused(String);

impl Refused {
    /// From the sentence; it reads on after `not judged: `.
    pub(super) fn because(reason: impl AsRef<str>) -> Self {
        Self(format!("not judged: {}", reason.as_ref()))
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Refused {}
