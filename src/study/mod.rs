//! What if: the whole answer worked out again with one value varied.
mod remedies;
mod seasoning;
mod spacing;
mod spacing_held;

pub use remedies::{Remedy, remedies};
pub use seasoning::{Drying, Movement, Seasoning, Way, YEARS, Yearly, seasoning, seasoning_text, small_length};
pub use spacing::{SpacingPoint, spacing_study};
pub use spacing_held::{HeldPoint, HeldSpacings};
