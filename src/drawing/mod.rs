//! Drawings to scale: a [`Scene`] in inches, printed as SVG for the screen, for paper and for files.
mod apart;
mod effort;
mod elevation;
mod hatch;
mod load;
mod paper;
mod plan;
mod scene;
mod section;
mod stick;
mod stock;
pub mod svg;
mod tape;
mod tape_svg;
mod trouble;

pub use apart::{post_apart, scarf_apart};
pub use effort::{effort_elevation, effort_section};
pub use elevation::elevation;
pub use load::load_section;
pub use paper::{PaperScale, fitting_scale};
pub use plan::plan;
pub use scene::{Anchor, Dimension, Drawn, Effort, Layer, Margins, Part, Scene, Side, Text};
pub use section::section;
pub use stick::stick_sheet;
pub use stock::stock;
pub use tape::{Graduation, Rank, Tape, TapePiece};
pub use trouble::trouble_elevation;
