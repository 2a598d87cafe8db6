//! Whether it fits: joints that meet in the same wood, the thinnest wood at every joint, and whether every stick can get in.
mod alike;
mod clash;
mod entry;
mod fixings;
mod near;
mod screws;
mod ties;

pub use clash::{Clash, clashes};
pub use entry::{Entry, Leg, Stopped, entries, goes_in, raising_order};
pub use near::{NearWood, near_wood};

use self::clash::{OWN, WALL, WEB};
use super::bodies::bodies;
use super::body::StickBody;
use crate::design::Shape;
use crate::project::{Problem, Project};

/// Less wood than this shared by two bodies is a touch, in cubic inches.
const TOUCH: f64 = 1e-4;

/// What the solids show.
#[derive(Clone, Debug, PartialEq)]
pub struct Fit {
    /// Every stick as wood in its place.
    pub bodies: Vec<StickBody>,
    /// Wood that is claimed twice, or too thin.
    pub clashes: Vec<Clash>,
    /// The thinnest wood at every joint.
    pub near: Vec<NearWood>,
    /// How every stick gets in, in the order they go up.
    pub entries: Vec<Entry>,
}

impl Fit {
    /// The stick of that mark.
    #[must_use]
    pub fn body(&self, mark: &str) -> Option<&StickBody> {
        self.bodies.iter().find(|body| body.mark == mark)
    }

    /// That caution is of a rule that the solids judge as well.
    #[must_use]
    pub fn may_tell(problem: &Problem) -> bool {
        let field = problem.field.as_str();
        !problem.stops() && ([WEB, WALL].contains(&field) || field.starts_with(OWN))
    }

    /// The solids say what that caution says, and where: it need not be said beside them.
    #[must_use]
    pub fn tells(&self, problem: &Problem) -> bool {
        !problem.stops() && self.clashes.iter().any(|clash| clash.field.as_ref() == Some(&problem.field))
    }
}

/// Works out whether a frame fits. The solids are made when somebody looks: they cost more than all else of a layout.
#[must_use]
pub fn fit(project: &Project, shape: &Shape) -> Fit {
    let bodies = bodies(project, shape);
    let near = near_wood(project, &bodies);
    let clashes = clashes(project, shape, &bodies, &near);
    let entries = entries(project, shape, &bodies);
    Fit { bodies, clashes, near, entries }
}
