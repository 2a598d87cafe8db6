//! Joints as shapes.
mod conflicts;
mod scarf;

pub use conflicts::{frame_conflicts, rule_conflicts};
pub use scarf::ScarfShape;
