//! What if: the whole answer worked out again with one value varied.
mod spacing;

pub use spacing::{SpacingPoint, spacing_study};
