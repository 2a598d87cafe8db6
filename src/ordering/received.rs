//! The pieces that came, told by what they were ordered as.
use super::order::OrderLine;
use crate::project::Piece;
use crate::units::UnitSystem;

/// Under which name the piece of that number of a line is kept: the same whatever units are shown. Pieces of one section and
/// length are numbered through, for two lines of them may differ in their heart or delivery.
#[must_use]
pub fn piece_name(line: &OrderLine, number: usize) -> String {
    let long = format!("{:.3}", line.length.to_inches());
    let long = long.trim_end_matches('0').trim_end_matches('.');
    format!("{}/{long}/{}", line.section.label(UnitSystem::Imperial), line.before + number)
}

/// A piece of that line, just as it was ordered.
#[must_use]
pub const fn as_ordered(line: &OrderLine) -> Piece {
    Piece::as_ordered(line.section, line.length)
}
