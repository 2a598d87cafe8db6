//! One sheet for each stick: its faces, its marks from one zero, its weight and balance.
mod beam;
mod block;
mod brace;
mod dry_fit;
mod knots;
mod ledger;
mod mark;
mod order;
mod post;
mod purlin;
mod rafter;
mod rescue;
mod salvage;
mod stick;

pub use crate::materials::Face;
pub use dry_fit::{dry_fit_problems, dry_fit_shift};
pub use knots::{KnotAnswer, Lay, Struck, Zone, clear_zones, knot_answer};
pub use mark::{Mark, MarkKind, Waste};
pub use order::{Turn, WorkOrder, mirror_of, mirror_words, work_order};
pub use rescue::{Answer, BadCut, Slip, Way, rescue};
pub use salvage::clear_lengths;
pub use stick::{Role, Stick, cut_problems, sticks};
