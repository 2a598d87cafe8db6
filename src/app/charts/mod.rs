//! Charts: curves drawn by plotters, everything in words around them in HTML.
mod along;
mod curve;
mod parts;
mod spacing;

pub use along::{AlongCurve, Mark, draw_along};
pub use parts::draw_parts;
pub use spacing::{held_chart, spacing_charts, spacing_row};
