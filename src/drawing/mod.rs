//! Drawings to scale: a [`Scene`] in inches, printed as SVG for the screen, for paper and for files.
mod elevation;
mod hatch;
mod paper;
mod plan;
mod scene;
mod section;
mod stick;
mod stock;
pub mod svg;
mod tape;
mod tape_svg;

pub use elevation::elevation;
pub use paper::{PaperScale, fitting_scale};
pub use plan::plan;
pub use scene::{Anchor, Dimension, Drawn, Layer, Margins, Part, Scene, Side, Text};
pub use section::section;
pub use stick::stick_sheet;
pub use stock::stock;
pub use tape::{Graduation, Rank, Tape, TapePiece};
