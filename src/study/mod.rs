//! What if: the whole answer worked out again with one value varied.
mod came;
mod carries;
mod remedies;
mod seasoning;
mod spacing;
mod spacing_held;

pub use came::{Given, Judged, Left, Receiving, Shared, Verdict, give};
pub use carries::Carries;
pub use remedies::{Remedy, remedies};
pub use seasoning::{Drying, Movement, Seasoning, Way, YEARS, Yearly, seasoning, seasoning_text, small_length};
pub use spacing::{SpacingPoint, spacing_study};
pub use spacing_held::{HeldPoint, HeldSpacings};
