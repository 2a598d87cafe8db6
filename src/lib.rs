//! Outshot: the calculation library of a timber-framed lean-to.
//!
//! Pure: no input or output, no clock, no browser. [`evaluate`] takes a [`project::Project`], what the
//! user decided, and gives a [`Design`]: where every stick is, its sheet of marks, the order, the roof,
//! and what stands in the way.
pub mod analysis;
#[cfg(feature = "web")]
pub mod app;
pub mod checks;
pub mod design;
pub mod drawing;
mod evaluate;
pub mod fastening;
pub mod frame;
pub mod geometry;
pub mod joinery;
pub mod loads;
pub mod materials;
pub mod members;
pub mod ordering;
pub mod project;
pub mod report;
pub mod solid;
pub mod study;
pub mod tickets;
pub mod units;
pub mod unmade;
pub mod wording;
pub mod working;

pub use design::{Built, Design, Shape};
pub use evaluate::{evaluate, lay_out};
