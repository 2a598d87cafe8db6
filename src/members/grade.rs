//! Visual grades.

/// A grade given by eye, best first. Local law may limit what an ungraded stick may count as.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grade {
    /// Select Structural.
    SelectStructural,
    /// No.1.
    No1,
    /// No.2: what is assumed of mill timber until someone grades it.
    No2,
}

impl Grade {
    /// All, best first.
    pub const ALL: [Self; 3] = [Self::SelectStructural, Self::No1, Self::No2];

    /// The key in tables and project files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::SelectStructural => "SS",
            Self::No1 => "No.1",
            Self::No2 => "No.2",
        }
    }

    /// In words.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::SelectStructural => "Select Structural",
            Self::No1 => "No.1",
            Self::No2 => "No.2",
        }
    }

    /// The grade of that key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|grade| grade.key() == key)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_go_both_ways() {
        for grade in Grade::ALL {
            assert_eq!(Grade::from_key(grade.key()), Some(grade));
            assert!(!grade.name().is_empty());
        }
        assert_eq!(Grade::from_key("No.3"), None);
    }
}
