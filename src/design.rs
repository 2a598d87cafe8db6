//! The whole answer to one project.
use std::sync::Arc;

use crate::checks::Strength;
use crate::geometry::{
    BeamLine, Brace, BraceShape, Clearances, LedgerPiece, PostShape, PurlinRow, RafterShape, RoofLine,
};
use crate::ordering::{Order, SheetPlan};
use crate::project::Problem;
use crate::tickets::Stick;
use crate::units::Length;

/// Where everything is: the geometry of the frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Shape {
    /// Pitch, seats, run.
    pub line: RoofLine,
    /// The outline every rafter shares.
    pub rafter: RafterShape,
    /// Centres of the rafters along the beam.
    pub rafters: Vec<Length>,
    /// Posts, left to right.
    pub posts: Vec<PostShape>,
    /// The shape of every brace that follows the rules.
    pub brace: BraceShape,
    /// Braces, left to right.
    pub braces: Vec<Brace>,
    /// Beam pieces and scarfs.
    pub beam: BeamLine,
    /// Ledger pieces.
    pub ledger: Vec<LedgerPiece>,
    /// Purlin rows, from the eave up.
    pub purlins: Vec<PurlinRow>,
    /// Room left.
    pub clearances: Clearances,
}

/// A frame that can be built.
#[derive(Clone, Debug, PartialEq)]
pub struct Built {
    /// Where everything is.
    pub shape: Shape,
    /// Every stick with its sheet.
    pub sticks: Vec<Stick>,
    /// What to buy at the mill.
    pub order: Order,
    /// The metal sheets.
    pub sheets: SheetPlan,
}

impl Built {
    /// The stick of that mark.
    #[must_use]
    pub fn stick(&self, mark: &str) -> Option<&Stick> {
        self.sticks.iter().find(|stick| stick.mark == mark)
    }

    /// The heaviest stick as cut.
    #[must_use]
    pub fn heaviest(&self) -> Option<&Stick> {
        self.sticks.iter().max_by(|a, b| a.green_weight.to_pounds().total_cmp(&b.green_weight.to_pounds()))
    }
}

/// Everything the program can say about one project.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Design {
    /// What stands in the way and what to look at, each tied to its field.
    pub problems: Vec<Problem>,
    /// The frame, shared by all who show it; nothing where a problem stops it.
    pub built: Option<Arc<Built>>,
    /// Whether it carries; nothing where there is no frame, or where it was only laid out.
    pub strength: Option<Arc<Strength>>,
}

impl Design {
    /// The problems of one field, and of the fields under it.
    pub fn problems_of<'a>(&'a self, field: &'a str) -> impl Iterator<Item = &'a Problem> {
        self.problems.iter().filter(move |problem| problem.is_of(field))
    }

    /// At least one problem stops the frame.
    #[must_use]
    pub fn is_stopped(&self) -> bool {
        self.problems.iter().any(Problem::stops)
    }
}
