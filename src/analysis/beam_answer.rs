//! What the frame of the beam line answers under one case with one model of its braces.
use super::beam_cases::BeamCase;
use super::beam_model::BraceModel;
use crate::frame::Extremes;
use crate::units::{Force, Length, Moment};

/// One stretch of the beam under one case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BeamPart {
    /// Bending, plus where the underside is stretched; places from the stretch's left end.
    pub moment: Extremes<Moment>,
    /// Shear.
    pub shear: Extremes<Force>,
    /// Moment at its left and right end.
    pub end_moments: (Moment, Moment),
    /// Shear at its left and right end.
    pub end_shears: (Force, Force),
    /// Pull along it, minus a push.
    pub axial: Force,
    /// Movement, plus up; only where the case is for it.
    pub movement: Option<Extremes<Length>>,
}

/// One post under one case.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PostPart {
    /// What the beam puts on its shoulder, plus down.
    pub top: Force,
    /// Push in its lowest part, plus down.
    pub foot: Force,
    /// Level force of its foot on the pier.
    pub level: Force,
    /// The largest bending in its length, without sign.
    pub moment: Moment,
}

/// What the upper half of a scarf brings to the lower one, plus down: it presses the lap shut.
#[derive(Clone, Debug, PartialEq)]
pub struct Passed {
    /// From the beam beyond the lap: the shear where the upper half leaves its piece.
    pub beyond: Force,
    /// What stands on the lap, with its places along the beam.
    pub on_lap: Vec<(Length, Force)>,
}

impl Passed {
    /// In all.
    #[must_use]
    pub fn force(&self) -> Force {
        self.beyond + self.on_lap.iter().map(|(_, force)| *force).sum()
    }
}

/// One case with one model.
#[derive(Clone, Debug, PartialEq)]
pub struct Solved {
    /// Its place in [`BeamLine::cases`].
    pub case: usize,
    /// How the braces were taken.
    pub model: BraceModel,
    /// Stretches, left to right.
    pub beam: Vec<BeamPart>,
    /// Posts, left to right.
    pub posts: Vec<PostPart>,
    /// Moment and shear at each brace's pocket in the beam, each at the worse of its two edges.
    pub pockets: Vec<(Moment, Force)>,
    /// What the upper half of each scarf brings to the lower one.
    pub laps: Vec<Passed>,
    /// Force along each brace, plus a pull.
    pub braces: Vec<Force>,
    /// How far the beam moves along itself.
    pub sway: Length,
    /// Sum of what the piers hold up.
    pub weight: Force,
}

impl Solved {
    /// Least and largest pull along a stretch, minus a push. The frame has a push along the wall come in at the beam's left end;
    /// in truth it comes in all along it: come in at the right end, all of it passes through every stretch besides.
    #[must_use]
    pub fn along(&self, stretch: usize, case: &BeamCase) -> [Force; 2] {
        let axial = self.beam.get(stretch).map_or(Force::ZERO, |part| part.axial);
        let other = axial + case.push;
        [axial.min(other), axial.max(other)]
    }
}

/// What the beam would bend were it one stick, under one case with one model: what it wants to carry where it is cut.
#[derive(Clone, Debug, PartialEq)]
pub struct Uncut {
    /// Its place in [`BeamLine::cases`].
    pub case: usize,
    /// How the braces were taken.
    pub model: BraceModel,
    /// Bending at the right end of each stretch.
    pub moments: Vec<Moment>,
}
