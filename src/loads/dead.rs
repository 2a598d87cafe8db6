//! Dead load: what roof layers weigh, and a weight along the slope turned to plan.
use super::say::num;
use crate::units::{AreaLoad, Length, Slope};
use crate::working::{Citation, Step, Worked};

/// Pounds a square foot of plywood an inch thick.
const PLYWOOD_PER_INCH: f64 = 3.0;

/// A layer of the roof. Timber weighs by its own size and density.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RoofLayer {
    /// Ribbed steel sheet, 29 gauge.
    RibbedSteel29,
    /// Ribbed steel sheet, 26 gauge.
    RibbedSteel26,
    /// Standing-seam steel, 24 gauge.
    StandingSeam24,
    /// Plywood of this thickness.
    Plywood(Length),
}

impl RoofLayer {
    /// Weight a square foot of slope, heaviest of its kind: for gravity.
    #[must_use]
    pub fn heaviest(self) -> Worked<AreaLoad> {
        self.weight(true)
    }

    /// Weight a square foot of slope, lightest of its kind: against uplift.
    #[must_use]
    pub fn lightest(self) -> Worked<AreaLoad> {
        self.weight(false)
    }

    fn weight(self, heaviest: bool) -> Worked<AreaLoad> {
        let recalled = Citation::from_memory("manufacturers' weights", "sheet roofing");
        let (name, low, high, citation) = match self {
            Self::RibbedSteel29 => ("29 gauge ribbed steel", 0.6, 0.7, recalled),
            Self::RibbedSteel26 => ("26 gauge ribbed steel", 0.9, 1.0, recalled),
            Self::StandingSeam24 => ("24 gauge standing seam", 1.2, 1.4, recalled),
            Self::Plywood(thickness) => {
                let weight = PLYWOOD_PER_INCH * thickness.to_inches();
                let printed = Citation::seen("Breyer et al., Design of Wood Structures, 6th ed.", "ch. 2 problems");
                ("plywood at 3.0 psf an inch", weight, weight, printed)
            }
        };
        let load = AreaLoad::psf(if heaviest { high } else { low });
        let says = format!("{name}: {} psf of slope", num(load.to_psf(), 2));
        Worked::new(load, vec![Step::new("weight of a roof layer", says, citation)])
    }
}

/// A weight a square foot of slope as a load on plan: D·√(12² + F²)/12, F the rise in 12.
///
/// Breyer et al., Design of Wood Structures, 6th ed., ch. 2.
#[must_use]
pub fn slope_to_plan(on_slope: AreaLoad, slope: Slope) -> Worked<AreaLoad> {
    let rise = slope.to_in_twelve();
    let on_plan = on_slope / slope.cos();
    let says = format!(
        "D_plan = D·√(12² + F²)/12 = {}·√(12² + {}²)/12 = {} psf",
        num(on_slope.to_psf(), 2),
        num(rise, 2),
        num(on_plan.to_psf(), 2)
    );
    let citation = Citation::seen("Breyer et al., Design of Wood Structures, 6th ed.", "ch. 2 problems");
    Worked::new(on_plan, vec![Step::new("D on plan", says, citation)])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::working::Confidence;

    #[test]
    fn layers() {
        assert_eq!(RoofLayer::RibbedSteel29.heaviest().value, AreaLoad::psf(0.7));
        assert_eq!(RoofLayer::RibbedSteel29.lightest().value, AreaLoad::psf(0.6));
        assert_eq!(RoofLayer::RibbedSteel26.heaviest().value, AreaLoad::psf(1.0));
        assert_eq!(RoofLayer::StandingSeam24.lightest().value, AreaLoad::psf(1.2));
        assert_eq!(RoofLayer::StandingSeam24.lightest().confidence(), Confidence::Medium);
        // 15/32 in: 1.4 psf in the table of weights, 3.0 psf an inch by Breyer.
        let plywood = RoofLayer::Plywood(Length::inches(15.0 / 32.0)).heaviest();
        assert!((plywood.value.to_psf() - 1.406_25).abs() < 1e-12);
        assert_eq!(plywood.confidence(), Confidence::High);
    }

    #[test]
    fn level_stays() {
        assert_eq!(slope_to_plan(AreaLoad::psf(5.0), Slope::LEVEL).value, AreaLoad::psf(5.0));
    }
}
