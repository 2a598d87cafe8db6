//! Joints as shapes.
mod conflicts;
mod scarf;

pub use conflicts::conflicts;
pub use scarf::ScarfShape;
