//! Joints as shapes: their outlines, the sticks as wood with every joint cut, and what is in the way of what.
mod beam_piece;
mod bodies;
mod body;
mod chamfer;
mod conflicts;
mod fit;
mod joints;
mod own_rules;
mod pegs;
mod scarf;

pub use beam_piece::{beam_outline, braces_of, in_scarf, posts_of, scarf_end};
pub use bodies::{beam_joints, bodies, post_joints};
pub use body::{Cut, CutKind, StickBody};
pub use chamfer::{chamfer_bulk, chamfer_runs};
pub use conflicts::{frame_conflicts, rule_conflicts};
pub use fit::{Clash, Entry, Fit, Leg, NearWood, Stopped, clashes, entries, fit, goes_in, near_wood};
pub use joints::{Joint, JointKind, clipped, joint_called, joint_names, joints};
pub use own_rules::{all_own, departures, exception_says, joint_between, joint_named, own_joints_of};
pub use pegs::{brace_peg, brace_tenon_thickness, head_peg_height, head_peg_places};
pub use scarf::ScarfShape;
