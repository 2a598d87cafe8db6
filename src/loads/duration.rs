//! Load duration: wood carries more for a short time.
use crate::working::Citation;

/// How long, added up, the shortest load of a combination acts; it sets C_D.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Duration {
    /// Dead load alone.
    Permanent,
    /// Use of a floor.
    TenYears,
    /// Snow.
    TwoMonths,
    /// Building and upkeep: roof live load, a person.
    SevenDays,
    /// Wind and earthquake.
    TenMinutes,
}

impl Duration {
    /// C_D, for every value but F_c⊥ and E.
    #[must_use]
    pub const fn factor(self) -> f64 {
        match self {
            Self::Permanent => 0.9,
            Self::TenYears => 1.0,
            Self::TwoMonths => 1.15,
            Self::SevenDays => 1.25,
            Self::TenMinutes => 1.6,
        }
    }

    /// Where the factor is printed. Snow and roof live were compared with published examples.
    #[must_use]
    pub const fn citation(self) -> Citation {
        match self {
            Self::TwoMonths | Self::SevenDays => Citation::seen("NDS", "Table 2.3.2"),
            Self::Permanent | Self::TenYears | Self::TenMinutes => Citation::from_memory("NDS", "Table 2.3.2"),
        }
    }

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Permanent => "permanent",
            Self::TenYears => "ten years",
            Self::TwoMonths => "two months",
            Self::SevenDays => "seven days",
            Self::TenMinutes => "ten minutes",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shorter_is_stronger() {
        let all =
            [Duration::Permanent, Duration::TenYears, Duration::TwoMonths, Duration::SevenDays, Duration::TenMinutes];
        for pair in all.windows(2) {
            assert!(pair[0] < pair[1] && pair[0].factor() < pair[1].factor());
        }
    }
}
