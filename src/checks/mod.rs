//! Does it carry? Every check of the frame: what is asked, what is there, under which combination, with its working.
//!
//! A design that fails is a [`Check`] with a ratio above one, not an error. A check that cannot be made says what is
//! missing and does not pass.
mod base;
mod check;
mod known;
mod ledger;
mod ledger_fixings;
mod ledger_sag;
mod purlin;
mod purlin_sag;
mod purlin_screws;
mod sheet;
mod ties;
mod uplift;
mod wood;

pub use base::check_bases;
pub use check::{Check, Outcome};
pub use ledger::check_ledger;
pub use purlin::check_purlins;
pub use purlin_screws::check_purlin_screws;
pub use sheet::check_sheet_screws;
pub use ties::check_rafter_ties;
pub use uplift::{FrameChecks, LiftedFrame, LoadPath, PathLink, gravity_paths, uplift_paths};
pub use wood::{Woods, load_duration};
