//! What the user has said: the project, its examples, its file, and what is wrong with it.
mod above;
mod buying;
mod buying_demo;
pub mod demo;
pub mod examples;
mod exceptions;
pub mod file;
mod fixings;
mod frame;
mod ground;
mod hauling;
mod joinery_rules;
mod migrate;
mod mill;
mod move_room;
mod problem;
mod progress;
mod role;
mod roofing;
mod site;
mod stored;
mod strength_demo;
mod validate;
mod validate_buying;
mod validate_exceptions;
mod validate_strength;
mod validate_ties;
mod wood;
mod yard;

pub use above::Above;
pub use buying::{Buying, Finish, Heart, HeartWish, LongPrice, OrderAim, Prices, RoleWords, Spares};
pub use exceptions::{JointException, JointName, OwnRule};
pub use fixings::{
    BoreWay, Bores, BraceJoint, Fixings, LedgerFixings, MAKERS_OWN, MakersScrew, Pier, Screws, SheetScrews, Tie,
};
pub use frame::{
    Blocks, FixedHeights, Frame, Heights, Post, RafterRow, RafterRule, ScarfKind, ScarfPlace, Scarfs, Side, TailCut,
    Timbers,
};
pub use ground::Ground;
pub use hauling::{Crew, Truck};
pub use joinery_rules::{JoineryRules, StockRule};
pub use mill::{HAIR, LengthLimit, Mill, SAME_LENGTH, SectionPrice, shortest_holding, usual_lengths};
pub use move_room::{post_room, scarf_room};
pub use problem::{Nearest, Problem, Problems, Severity};
pub use progress::{Knot, MOST_DRY_FIT, MeasuredSize, Progress};
pub use role::Role;
pub use roofing::{Metal, Roofing, SheetLayout};
pub use site::{Site, Soffit};
pub use validate::validate;
pub use wood::{OwnValue, Used, Wood};
pub use yard::{Defect, Lot, Piece, PieceState};

use std::collections::BTreeMap;

use crate::loads::Place;
use crate::units::UnitSystem;

/// One lean-to: everything the user decides, and nothing that can be computed.
#[derive(Clone, Debug, PartialEq)]
pub struct Project {
    /// What the user calls it.
    pub name: String,
    /// A remark shown with the name; the examples say here that they are invented.
    pub note: String,
    /// How lengths are shown; nothing is stored in these units.
    pub units: UnitSystem,
    /// Sign of the currency prices are in.
    pub currency: String,
    /// What stands already.
    pub site: Site,
    /// The frame to be built.
    pub frame: Frame,
    /// The rules every joint follows.
    pub joinery: JoineryRules,
    /// What the sawmill has and asks.
    pub mill: Mill,
    /// The metal roof.
    pub roofing: Roofing,
    /// Snow, wind and earthquake of the place.
    pub place: Place,
    /// The roof above.
    pub above: Above,
    /// Soil and frost.
    pub ground: Ground,
    /// How strong the wood is taken to be.
    pub wood: Wood,
    /// What fixes the parts to each other and to the ground.
    pub fixings: Fixings,
    /// Joints that depart from the rules, by their name: `P2` a post's head, `K1R foot` and `K1R head` a brace's ends, `S1` a scarf.
    pub exceptions: BTreeMap<String, JointException>,
    /// How the timber is bought, and what the rest costs.
    pub buying: Buying,
    /// What lies in the sawyer's yard.
    pub yard: Vec<Lot>,
    /// What brings the timber.
    pub truck: Truck,
    /// Who carries.
    pub crew: Crew,
    /// What is already cut.
    pub progress: Progress,
}
