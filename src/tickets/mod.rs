//! One sheet for each stick: its faces, its marks from one zero, its weight and balance.
mod beam;
mod block;
mod brace;
mod jig;
mod ledger;
mod mark;
mod post;
mod purlin;
mod rafter;
mod sizes;
mod stick;
mod template;

pub use crate::materials::Face;
pub use jig::{Board, Jig, jigs};
pub use mark::{Mark, MarkKind, Waste};
pub use sizes::size_problems;
pub use stick::{Role, Stick, cut_problems, sticks};
pub use template::{Bore, Stroke, Template, TemplateLine, templates};
