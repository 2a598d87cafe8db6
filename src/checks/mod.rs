//! Does it carry? Every check of the frame: what is asked, what is there, under which combination, with its working.
//!
//! A design that fails is a [`Check`] with a ratio above one, not an error. A check that cannot be made says what is
//! missing and does not pass.
mod base;
mod beam;
mod beam_pull;
mod bored;
mod brace;
mod brace_pegs;
mod check;
mod feet;
mod fixing;
mod governing;
mod head_pegs;
mod known;
mod ledger;
mod ledger_along;
mod ledger_fixings;
mod ledger_patches;
mod ledger_places;
mod ledger_sag;
mod missing;
mod part;
mod post;
mod post_head;
mod purlin;
mod purlin_sag;
mod purlin_screws;
mod rafter;
mod scarf;
mod sheet;
mod strength;
mod ties;
mod uplift;
mod wood;

pub use crate::unmade::Input;
pub use base::check_bases;
pub use beam::{BeamChecks, check_beam};
pub use brace::check_braces;
pub use brace_pegs::check_brace_pegs;
pub use check::{Check, EXISTING_WALL, NotJudged, Outcome, Under, Way};
pub use feet::post_demands;
pub use ledger::check_ledger;
pub use missing::{Waiting, waiting};
pub use part::Part;
pub use post::check_posts;
pub use post_head::check_post_heads;
pub use purlin::check_purlins;
pub use purlin_screws::check_purlin_screws;
pub use rafter::{RafterWork, check_rafters, rafter_work};
pub use scarf::check_scarfs;
pub use sheet::check_sheet_screws;
pub use strength::{Strength, strength};
pub use ties::check_rafter_ties;
pub use uplift::{FrameChecks, LoadPath, PathLink, WEAKEST_LINK, gravity_paths, uplift_paths};
pub use wood::{Woods, load_duration};
