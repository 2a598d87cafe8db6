//! What if: the whole answer worked out again with one value varied.
mod beam_pieces;
mod came;
mod carries;
mod changes;
mod fixing_changes;
mod judged;
mod mill_lengths;
mod moved;
mod peg_changes;
mod remedies;
mod scarf_changes;
mod seasoning;
mod spacing;
mod spacing_held;
mod way_in;

pub use came::{Given, Left, LookedAt, Receiving, Shared, Verdict, give};
pub use carries::Carries;
mod stepper;
mod yard_change;
mod yard_changes;

pub use beam_pieces::{BeamPieces, PiecesAnswer};
pub use judged::{Judged, Refusal};
pub use mill_lengths::{LengthAnswer, LengthThen, MillLengths};
pub use moved::{JointMove, JointState, Moves, moves, percent};
pub use remedies::{Helps, Remedy, can_be_helped, price, remedies};
pub use seasoning::{
    Drying, JointKind, Movement, Seasoning, Way, YEARS, Yearly, seasoning, seasoning_text, small_length,
};
pub use spacing::{SpacingPoint, spacing_study};
pub use spacing_held::{HeldPoint, HeldSpacings};
pub use stepper::{Progress, Stepper};
pub use way_in::no_way_in;
pub use yard_changes::{YardChange, YardChanges};
