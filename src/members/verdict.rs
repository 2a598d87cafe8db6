//! What a check found: how much is asked, how much is there.
use crate::units::{Force, Length, Moment, Stress, UnitSystem};

use super::figures::thousands;

/// A ratio this little above one is noise of the arithmetic.
const NOISE: f64 = 1e-9;

/// An amount with its unit, or a bare ratio.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Amount {
    /// Force by area.
    Stress(Stress),
    /// A force.
    Force(Force),
    /// A moment.
    Moment(Moment),
    /// A length: a deflection, or a depth.
    Length(Length),
    /// A share of one.
    Ratio(f64),
}

impl From<Force> for Amount {
    fn from(force: Force) -> Self {
        Self::Force(force)
    }
}

impl From<Moment> for Amount {
    fn from(moment: Moment) -> Self {
        Self::Moment(moment)
    }
}

impl From<Length> for Amount {
    fn from(length: Length) -> Self {
        Self::Length(length)
    }
}

impl Amount {
    /// With its unit, in the user's system.
    #[must_use]
    pub fn text(self, units: UnitSystem) -> String {
        let metric = units == UnitSystem::Metric;
        match self {
            Self::Stress(stress) if metric => format!("{:.2} MPa", stress.to_megapascals()),
            Self::Stress(stress) => super::figures::stress(stress),
            Self::Force(force) if metric => format!("{:.2} kN", force.to_kilonewtons()),
            Self::Force(force) => super::figures::force(force),
            Self::Moment(moment) if metric => format!("{:.2} kN·m", moment.to_kilonewton_metres()),
            Self::Moment(moment) => format!("{} lb-ft", thousands(moment.to_pound_feet())),
            Self::Length(length) if metric => format!("{:.1} mm", length.to_millimetres()),
            Self::Length(length) => format!("{:.3} in", length.to_inches()),
            Self::Ratio(ratio) => format!("{ratio:.2}"),
        }
    }
}

/// Demand against capacity. A design that fails is a ratio above one, not an error.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Verdict {
    /// What is asked of the wood.
    pub demand: Amount,
    /// What it may give.
    pub capacity: Amount,
    /// Demand by capacity; infinite when something is asked where nothing is allowed.
    pub ratio: f64,
}

impl Verdict {
    /// A stress against the stress allowed.
    #[must_use]
    pub fn stress(demand: Stress, capacity: Stress) -> Self {
        let ratio = share(demand.to_psi(), capacity.to_psi());
        Self { demand: Amount::Stress(demand), capacity: Amount::Stress(capacity), ratio }
    }

    /// A force against the force allowed.
    #[must_use]
    pub fn force(demand: Force, capacity: Force) -> Self {
        let ratio = share(demand.to_pounds(), capacity.to_pounds());
        Self { demand: Amount::Force(demand), capacity: Amount::Force(capacity), ratio }
    }

    /// A moment against the moment allowed.
    #[must_use]
    pub fn moment(demand: Moment, capacity: Moment) -> Self {
        let ratio = share(demand.to_pound_inches(), capacity.to_pound_inches());
        Self { demand: Amount::Moment(demand), capacity: Amount::Moment(capacity), ratio }
    }

    /// A length against the longest allowed.
    #[must_use]
    pub fn length(demand: Length, capacity: Length) -> Self {
        let ratio = share(demand.to_inches(), capacity.to_inches());
        Self { demand: Amount::Length(demand), capacity: Amount::Length(capacity), ratio }
    }

    /// A sum of shares against one.
    #[must_use]
    pub const fn sum_of_shares(ratio: f64) -> Self {
        Self { demand: Amount::Ratio(ratio), capacity: Amount::Ratio(1.0), ratio }
    }

    /// Whether it holds.
    #[must_use]
    pub fn passes(&self) -> bool {
        self.ratio <= 1.0 + NOISE
    }
}

/// Demand by capacity.
fn share(demand: f64, capacity: f64) -> f64 {
    if demand <= 0.0 {
        0.0
    } else if capacity <= 0.0 {
        f64::INFINITY
    } else {
        demand / capacity
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ratios_on_both_sides_of_one() {
        assert!(Verdict::stress(Stress::psi(661.0), Stress::psi(661.0)).passes());
        assert!(!Verdict::force(Force::pounds(101.0), Force::pounds(100.0)).passes());
        assert_eq!(Verdict::length(Length::inches(1.0), Length::ZERO).ratio, f64::INFINITY);
        assert_eq!(Verdict::length(Length::ZERO, Length::ZERO).ratio, 0.0);
        assert!(Verdict::moment(Moment::pound_feet(1.0), Moment::pound_feet(2.0)).passes());
        assert!(!Verdict::sum_of_shares(1.01).passes());
    }

    #[test]
    fn amounts_speak_both_systems() {
        let check = |amount: Amount, imperial: &str, metric: &str| {
            assert_eq!(amount.text(UnitSystem::Imperial), imperial);
            assert_eq!(amount.text(UnitSystem::Metric), metric);
        };
        check(Amount::Stress(Stress::psi(661.25)), "661 psi", "4.56 MPa");
        check(Amount::Force(Force::pounds(3951.0)), "3,951 lb", "17.57 kN");
        check(Amount::Moment(Moment::pound_feet(4000.0)), "4,000 lb-ft", "5.42 kN·m");
        check(Amount::Length(Length::inches(0.1561)), "0.156 in", "4.0 mm");
        check(Amount::Ratio(0.874), "0.87", "0.87");
    }
}
