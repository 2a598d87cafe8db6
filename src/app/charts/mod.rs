//! Charts: curves drawn by plotters, everything in words around them in HTML.
mod curve;
mod spacing;

pub use spacing::spacing_charts;
