//! What holds sticks together and to the ground: bolts, screws, nails, pegs, the roots of a scarf, the ledger on the
//! wall, footings, and the path of an uplift through all of them.
//!
//! Allowable stress design. Fasteners follow the yield model of the NDS (2015 and 2018 numbering), pegs a recollection
//! of TFEC 1. Every answer carries its steps; a formula outside its limits is refused with a sentence.

mod adjusted;
mod bagged_concrete;
mod bearing;
mod combined;
mod dowel;
mod factors;
mod fastener;
mod footing;
mod gap;
mod group;
mod lag;
mod lateral;
mod ledger;
mod maker_screw;
mod peg;
mod peg_places;
mod penetration;
mod pier;
mod placing;
mod pole;
mod post_base;
mod refused;
mod scarf_root;
mod screw_places;
mod soil;
mod steel;
mod table;
mod tear_out;
mod withdrawal;
mod written;

pub use adjusted::{Factors, adjusted_lateral, adjusted_withdrawal};
pub use bagged_concrete::{Bag, BagCount, bag_counts, bags};
pub use bearing::{Material, dowel_bearing, hankinson};
pub use combined::{LoadOnOne, Pull, combined, combined_check, combined_share};
pub use dowel::{Dowel, Mode, YieldLoad};
pub use factors::{
    Heat, Moisture, RowLayout, Wetness, end_grain_lateral, end_grain_withdrawal, load_duration, temperature,
    toe_driven_lateral, toe_driven_withdrawal, wet_lateral, wet_withdrawal,
};
pub use fastener::{Fastener, FastenerKind, fastener, fastener_table};
pub use footing::{
    Footing, FootingShape, Frost, UpliftWeight, bearing_pressure, frost, projection, required_area, uplift_weight,
};
pub use gap::{single_shear_over_gap, yield_load_over_gap};
pub use group::{GroupMember, GroupRow, group_factor};
pub use lag::{LeadHole, lag_lead_hole, lag_steel_tension, lag_thread, lag_thread_in_main};
pub use lateral::{LateralValue, Member, double_shear, single_shear};
pub use ledger::{
    FixingRow, LedgerFixing, LedgerLoad, deck_table_sentence, fixing_load, ledger_fixing, load_a_fastener,
};
pub use maker_screw::{MakerScrew, MakerValues};
pub use peg::{GREEN_PEGS_MISSING, PegJoint, SPLITTING_NOT_COVERED, peg_group, peg_value};
pub use peg_places::{PegPlaces, PegRoom, peg_needs, peg_places, peg_places_table, peg_room};
pub use penetration::{Penetration, penetration};
pub use pier::{AroundAnchor, anchor_breakout, bars_pulled, pier_bending, pier_modulus, pier_moment, plain_tension};
pub use placing::{
    Direction, Distance, Edge, EndLoad, Placing, RowSpacing, across_edges, distances, geometry_factor, hangs_low,
    is_slender, lag_withdrawal_place, outer_rows,
};
pub use pole::pole_depth;
pub use post_base::{concrete_bearing_service, concrete_bearing_strength};
pub use refused::Refused;
pub use scarf_root::{
    LapAction, RootCheck, ScarfRoot, Sharing, fasteners_needed, lap_action, root_force, root_shear, scarf_root,
};
pub use screw_places::{ScrewRoom, screw_room};
pub use soil::{NO_PRESUMPTIVE_VALUE, Soil, soil, soil_table, unknown_soil};
pub use steel::{steel_tension, washer_area};
pub use tear_out::{AlikeRows, GroupTear, PegRow, TornOut, group_tear_out, net_tension, row_tear_out, torn_out};
pub use withdrawal::{deformed_nail_withdrawal, head_pull_through, withdrawal};
