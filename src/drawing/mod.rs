//! Drawings to scale: a [`Scene`] in inches, printed as SVG for the screen, for paper and for files.
mod elevation;
mod hatch;
mod plan;
mod scene;
mod section;
mod stick;
pub mod svg;

pub use elevation::elevation;
pub use plan::plan;
pub use scene::{Anchor, Dimension, Drawn, Layer, Part, Scene, Side, Text};
pub use section::section;
pub use stick::stick_sheet;
