//! A weight as a scale shows it, held in pounds.

use super::Force;
use super::quantity::{quantity, unit};

/// Kilograms in one pound, exact: international yard and pound agreement (1959).
pub const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;

quantity! {
    /// A weight as a scale shows it (a mass), held in pounds.
    Weight
}
unit!(Weight, "pounds", pounds, try_pounds, to_pounds, (*1.0), (/ 1.0));
unit!(Weight, "kilograms", kilograms, try_kilograms, to_kilograms, (/ KILOGRAMS_PER_POUND), (*KILOGRAMS_PER_POUND));

impl Weight {
    /// The force it presses down with under standard gravity: one pound of force a pound.
    #[must_use]
    pub const fn force(self) -> Force {
        Force::held(self.bare())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units() {
        assert_eq!(Weight::kilograms(0.453_592_37), Weight::pounds(1.0));
        assert!((Weight::pounds(100.0).to_kilograms() - 45.359_237).abs() < 1e-12);
        assert_eq!(Weight::pounds(421.0).force(), Force::pounds(421.0));
    }
}
