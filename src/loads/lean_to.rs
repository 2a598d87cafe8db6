//! The size of the lean-to's roof, and the roof that stands above it.
use super::{Refused, SnowExposure, Thermal};
use crate::units::{Length, Run, Slope};

/// The house roof above the lean-to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UpperRoof {
    /// W: level distance from the eave above the lean-to to the ridge; nothing where it is not known.
    pub eave_to_ridge: Option<Run>,
    /// l_u: level length of the whole upper roof square to the wall, from which snow blows onto the lean-to; nothing
    /// where it is not known.
    pub upwind_length: Option<Run>,
    /// Its slope.
    pub slope: Slope,
    /// Metal, slate, glass or smooth membrane.
    pub slippery: bool,
    /// Snow guards that hold the snow on it.
    pub snow_guards: bool,
    /// Its eave runs along this wall, so that its snow comes down here; a gable wall is the other case.
    pub sheds_here: bool,
    /// How far its eave hangs out over the lean-to, level.
    pub overhang: Run,
    /// How the wind reaches it.
    pub exposure: SnowExposure,
    /// What is warm under it.
    pub thermal: Thermal,
}

/// The lean-to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeanTo {
    /// Level, from the roof's edge at the wall to the outer face of the beam.
    pub reach: Run,
    /// Level, from there to the eave.
    pub eave_overhang: Run,
    /// Its slope.
    pub slope: Slope,
    /// Along the wall, over the whole roof.
    pub width: Length,
    /// Eave above ground.
    pub eave_height: Length,
    /// Upright, from the lean-to's roof at the wall to the upper eave.
    pub step: Length,
    /// Metal, slate, glass or smooth membrane.
    pub slippery: bool,
    /// Nothing at the eave holds the snow: no gutter lip or guard, and room below for it to fall.
    pub eave_clear: bool,
    /// Level gap to the house where the roof does not meet the wall.
    pub gap: Option<Run>,
    /// What is warm under it; an open lean-to is [`Thermal::OpenAir`].
    pub thermal: Thermal,
    /// The roof above.
    pub upper: UpperRoof,
}

impl LeanTo {
    /// Level length of the roof from the wall to its own eave.
    #[must_use]
    pub fn roof_length(&self) -> Run {
        self.reach + self.eave_overhang
    }

    /// h: halfway between the eave and the roof's edge at the wall, above ground.
    #[must_use]
    pub fn mean_roof_height(&self) -> Length {
        self.eave_height + self.roof_length().rise(self.slope) / 2.0
    }

    /// Whether its snow slides off: a slippery surface with nothing in its way.
    #[must_use]
    pub const fn is_slippery(&self) -> bool {
        self.slippery && self.eave_clear
    }

    /// The sizes every load needs.
    pub(super) fn check_sizes(&self) -> Result<(), Refused> {
        let wrong = |what: &str| Err(Refused::because(what));
        if self.reach <= Run::ZERO {
            return wrong("the roof's reach out from the wall is not above zero");
        }
        if self.eave_overhang < Run::ZERO {
            return wrong("the eave overhang is below zero");
        }
        if self.width <= Length::ZERO {
            return wrong("the roof's width along the wall is not above zero");
        }
        if self.slope < Slope::LEVEL {
            return wrong("the roof falls towards the wall; only a roof that falls away from it is worked out");
        }
        if self.step.is_negative() {
            return wrong("the upper eave lies below the lean-to's roof at the wall");
        }
        if self.gap.is_some_and(|gap| gap < Run::ZERO) {
            return wrong("the gap to the house is below zero; leave it out where the roof meets the wall");
        }
        let upper = &self.upper;
        let lengths = [upper.eave_to_ridge, upper.upwind_length, Some(upper.overhang)];
        if lengths.into_iter().flatten().any(|length| length < Run::ZERO) {
            return wrong("a length of the upper roof is below zero");
        }
        Ok(())
    }
}
