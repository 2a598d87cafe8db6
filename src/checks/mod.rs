//! Does it carry? Every check of the frame: what is asked, what is there, under which combination, with its working.
//!
//! A design that fails is a [`Check`] with a ratio above one, not an error. A check that cannot be made says what is
//! missing and does not pass.
mod beam;
mod brace;
mod check;
mod post;
mod rafter;
mod scarf;
mod strength;
mod wood;

pub use beam::{BeamChecks, check_beam, post_loads};
pub use brace::check_braces;
pub use check::{Check, Outcome};
pub use post::check_posts;
pub use rafter::{RafterWork, check_rafters, rafter_work};
pub use scarf::check_scarfs;
pub use strength::{Strength, strength};
pub use wood::{Woods, load_duration};
