//! What if: the whole answer worked out again with one value varied.
mod came;
mod carries;
mod remedies;
mod spacing;

pub use came::{Given, Judged, Left, Receiving, Shared, Verdict, give};
pub use carries::Carries;
pub use remedies::{Remedy, remedies};
pub use spacing::{SpacingPoint, spacing_study};
