//! What if: the whole answer worked out again with one value varied.
mod remedies;
mod spacing;

pub use remedies::{Remedy, remedies};
pub use spacing::{SpacingPoint, spacing_study};
