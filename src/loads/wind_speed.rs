//! Wind speed as the maps give it.

/// The basic wind speed, held in miles an hour: a three-second gust at 33 ft.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct WindSpeed(f64);

impl WindSpeed {
    /// Made from miles an hour: `None` unless it is a finite number above zero.
    #[must_use]
    pub fn try_mph(value: f64) -> Option<Self> {
        (value.is_finite() && value > 0.0).then_some(Self(value))
    }

    /// In miles an hour.
    #[must_use]
    pub const fn to_mph(self) -> f64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_wind() {
        assert_eq!(WindSpeed::try_mph(120.0).map(WindSpeed::to_mph), Some(120.0));
        assert_eq!(WindSpeed::try_mph(0.0), None);
        assert_eq!(WindSpeed::try_mph(f64::NAN), None);
    }
}
