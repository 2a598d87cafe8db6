//! Where a demand comes from, so that whoever reads a check finds it again, and how sure that is.
use super::beam_answer::{Solved, Uncut};
use super::beam_cases::BeamCase;
use super::beam_line::BeamLine;
use super::beam_model::BraceModel;
use super::loading::Loading;
use crate::loads::Duration;
use crate::units::{Force, Length};
use crate::working::Confidence;

/// By what statics a demand was found, with the parts it is of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Found {
    /// The beam line as a plane frame, by the stiffness method.
    BeamLine {
        /// Its row in the list of all cases, from 1; nothing where it is of none of them.
        row: Option<usize>,
        /// The roof's dead load on the line, with its factor.
        dead: Force,
        /// What else the roof puts on it, plus down.
        roof: Force,
        /// Push along the beam.
        push: Force,
        /// What the piers hold up, with the weight of beam and posts.
        piers: Option<Force>,
    },
    /// One rafter over both seats and its tail, by the stiffness method.
    Rafter {
        /// Width of roof that it carries.
        width: Length,
        /// Factor of the dead load.
        dead: f64,
        /// Upright reaction of the ledger.
        ledger: Force,
        /// Upright reaction of the beam.
        beam: Force,
    },
    /// By formulas of statics, which these words name.
    Formula(&'static str),
}

/// Where a demand comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Origin {
    /// By what statics.
    pub found: Found,
    /// Of its combination: sets C_D.
    pub duration: Duration,
    /// Of the weakest of its loads and of its combination.
    pub loads: Confidence,
    /// It hangs on the stiffness of the braces' joints, which is little known.
    pub is_sprung: bool,
}

impl Origin {
    /// Of a combination on one stick.
    #[must_use]
    pub const fn of(loading: &Loading, found: Found) -> Self {
        Self { found, duration: loading.duration, loads: loading.confidence, is_sprung: false }
    }

    /// Of one load by itself.
    #[must_use]
    pub const fn alone(loads: Confidence, duration: Duration, found: Found) -> Self {
        Self { found, duration, loads, is_sprung: false }
    }

    /// As sure as the weakest it rests on; statics itself is from memory.
    #[must_use]
    pub fn confidence(&self) -> Confidence {
        if self.is_sprung { Confidence::Low } else { self.loads.max(Confidence::Medium) }
    }
}

impl BeamLine {
    /// Where an answer of the line comes from.
    #[must_use]
    pub fn origin(&self, solved: &Solved, case: &BeamCase) -> Origin {
        let row = self.solved.iter().position(|known| std::ptr::eq(known, solved)).map(|place| place + 1);
        self.origin_of(case, solved.model, row, Some(solved.weight))
    }

    /// Where a moment of the beam in one stick comes from.
    #[must_use]
    pub fn origin_uncut(&self, uncut: &Uncut, case: &BeamCase) -> Origin {
        self.origin_of(case, uncut.model, None, None)
    }

    fn origin_of(&self, case: &BeamCase, model: BraceModel, row: Option<usize>, piers: Option<Force>) -> Origin {
        let dead = self.roof_dead.of(case.is_uplift) * case.dead;
        let found = Found::BeamLine { row, dead, roof: case.rafters.iter().sum(), push: case.push, piers };
        let is_sprung = matches!(model, BraceModel::Sprung(_) | BraceModel::PushOnly);
        Origin { found, duration: case.duration, loads: case.confidence, is_sprung }
    }
}
