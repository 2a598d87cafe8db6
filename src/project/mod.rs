//! What the user has said: the project, its examples, its file, and what is wrong with it.
mod above;
pub mod demo;
pub mod file;
mod fixings;
mod frame;
mod ground;
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
mod validate_strength;
mod wood;

pub use above::Above;
pub use fixings::{BraceJoint, Fixings, LedgerFixings, MAKERS_OWN, MakersScrew, Pier, Screws, SheetScrews, Tie};
pub use frame::{
    Blocks, FixedHeights, Frame, Heights, Post, RafterRow, RafterRule, ScarfKind, ScarfPlace, Scarfs, Side, TailCut,
    Timbers,
};
pub use ground::Ground;
pub use joinery_rules::{JoineryRules, StockRule};
pub use mill::{HAIR, Mill, SectionPrice, shortest_holding};
pub use move_room::{post_room, scarf_room};
pub use problem::{Nearest, Problem, Problems, Severity};
pub use progress::{Knot, MOST_DRY_FIT, MeasuredSize, Progress};
pub use role::Role;
pub use roofing::{Metal, Roofing, SheetLayout};
pub use site::{Site, Soffit};
pub use validate::validate;
pub use wood::{OwnValue, Used, Wood};

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
    /// What is already cut.
    pub progress: Progress,
}
