//! What if: the whole answer worked out again with one value varied.
mod beam_pieces;
mod judged;
mod mill_lengths;
mod moved;
mod remedies;
mod spacing;
mod stepper;
mod yard_change;
mod yard_changes;

pub use beam_pieces::{BeamPieces, PiecesAnswer};
pub use judged::{Judged, Refusal};
pub use mill_lengths::{LengthAnswer, LengthThen, MillLengths};
pub use moved::{JointMove, JointState, Moves, moves, percent};
pub use remedies::{Remedy, remedies};
pub use spacing::{SpacingPoint, spacing_study};
pub use stepper::{Progress, Stepper};
pub use yard_changes::{YardChange, YardChanges};
