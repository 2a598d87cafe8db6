//! Where every stick is and how long it is.
//!
//! Axes: seen from outside facing the wall, x runs along the wall from the beam's left end, y out from
//! the wall face, z up from the datum. Each stick also has its own axis from its own zero.
mod beam_divisions;
mod beam_line;
mod brace;
mod brace_line;
mod clearance;
mod cuts;
mod hinges;
mod ledger_fixings;
mod ledger_line;
mod ledger_splice;
mod no_division;
pub mod plane;
mod post;
mod purlin;
mod rafter;
mod rafter_row;
mod roof_line;
mod scarf_place;
mod spans;
mod uncut_beam;

pub use beam_divisions::{Division, divisions, stock_in_order};
pub use beam_line::{BeamLine, BeamPiece, ScarfReport, beam_line, proposal_problems};
pub use brace::{Brace, BraceShape, Pocket, braces, tenon_for_web, web_between};
pub use brace_line::BraceLine;
pub use clearance::{Clearances, clearances, room_problems, seat_drops};
pub use ledger_fixings::{
    Bore, FixingPlace, bores, fixes_both_halves, fixing_places, heights_within, lead_hole, ledger_hole,
    placing_in_ledger,
};
pub use ledger_line::{LedgerPiece, ledger_line, wall_posts};
pub use ledger_splice::{SpliceReport, ledger_splices};
pub use plane::{Bulk, Point, Polygon};
pub use post::{
    PostShape, bay_of, beam_housing, check_posts_stand, housing_in, laid_out, post_housing, posts, reduced_beam_depth,
};
pub use purlin::{Butt, PurlinPiece, PurlinRow, purlin_rows, rakes};
pub use rafter::{BirdsMouth, RafterShape, fitted_rafter};
pub use rafter_row::{fitted_rafter_row, rafter_centres};
pub use roof_line::RoofLine;
pub use scarf_place::{Place, Surroundings, abutment, lap_height, scarf_problems, wood_over};
pub use spans::Spans;
pub use uncut_beam::{Bending, UncutBeam};
