//! Joints as shapes: their outlines, the sticks as wood with every joint cut, and what is in the way of what.
mod alike;
mod beam_piece;
mod bodies;
mod body;
mod butt_screws;
mod chamfer;
mod conflicts;
mod fit;
mod joints;
mod ledger_holes;
mod own_rules;
mod pegs;
mod scarf;
mod tie_holes;

pub use alike::{Alike, different_joints};
pub use beam_piece::{beam_outline, braces_of, housing_over, in_scarf, posts_of, scarf_end};
pub use bodies::{beam_joints, bodies, measured_bodies, post_joints};
pub use body::{Cut, CutKind, StickBody};
pub use butt_screws::{ButtScrews, butt_screws};
pub use chamfer::{chamfer_bulk, chamfer_runs};
pub use conflicts::{frame_conflicts, rule_conflicts};
pub use fit::{Clash, Entry, Fit, Leg, NearWood, Stopped, clashes, entries, fit, goes_in, near_wood, raising_order};
pub use joints::{Joint, JointKind, clipped, joint_called, joint_names, joints};
pub use ledger_holes::{LedgerHole, ledger_boxes, ledger_drill, ledger_holes};
pub use own_rules::{all_own, departures, exception_says, joint_between, joint_named, own_joints_of};
pub use pegs::{
    brace_peg, brace_peg_holds, brace_peg_room, brace_tenon_thickness, head_peg_height, head_peg_holds,
    head_peg_places, head_peg_room,
};
pub use scarf::ScarfShape;
pub use tie_holes::{TieHole, TieJoint, post_holes, rafter_holes, rafter_shaping, scarf_holes, taken_from};
