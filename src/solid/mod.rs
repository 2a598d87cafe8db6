//! Wood as solids: convex bodies, what is left when others are cut away, what two share, and what one sweeps over.
//!
//! Coordinates are inches as bare numbers, as in the frame solver: x along the wall, y out from it, z up. A solid is a
//! set of convex bodies that share no wood. Nothing here knows a project.
mod convex;
mod distance;
mod pieces;
mod shape;
mod surface;
mod sweep;
mod vector;

pub use convex::{Convex, Facet, Plane, Skin};
pub use distance::between;
pub use pieces::convex_pieces;
pub use shape::{Axis, Solid, cuboid, cylinder, prism, tapered, wedge};
pub use surface::{Outline, Patch, Surface, halves};
pub use sweep::swept;
pub use vector::{Vector, Within};

/// Nearer than this two places are one, in inches: far below a saw's kerf, far above the noise of the arithmetic.
pub const NEAR: f64 = 1e-7;

/// Two planes are one where they differ by no more than this: a normal's parts, and an offset in inches.
const SAME_PLANE: f64 = 1e-5;
