//! Joints held by screws, straps or an anchor, by their maker's allowable loads: how many, what one of them carries, and
//! who says so.
use crate::app::components::{FieldRow, Of};
use crate::at;

/// The fields of one tie of the fixings.
macro_rules! tie {
    ($tie:ident, $how_many:literal, $one:literal, $pull:literal, $sideways:literal) => {
        &[
            FieldRow::new($how_many, $one, Of::Count(at!(fixings.$tie.count))),
            FieldRow::when("One holds, pulled", $pull, Of::Force(at!(fixings.$tie.pull)), |project| {
                project.fixings.$tie.count > 0
            }),
            FieldRow::when("One holds, pushed sideways", $sideways, Of::Force(at!(fixings.$tie.sideways)), |project| {
                project.fixings.$tie.count > 0
            }),
            FieldRow::when(
                "Source of these values",
                "the maker’s sheet or report",
                Of::Words(at!(fixings.$tie.source)),
                |project| project.fixings.$tie.count > 0,
            ),
        ]
    };
}

/// Each rafter to the ledger.
pub const RAFTER_HEAD: &[FieldRow] = tie!(
    rafter_head,
    "Ties at a rafter’s head",
    "screws or straps, each rafter to the ledger",
    "up, off the ledger",
    "along the wall and out from it"
);

/// Each rafter to the beam.
pub const RAFTER_SEAT: &[FieldRow] = tie!(
    rafter_seat,
    "Ties at a rafter’s seat",
    "screws or straps, each rafter to the beam",
    "up, off the beam",
    "along the beam and out from it"
);

/// Across each root of each scarf.
pub const SCARF: &[FieldRow] = tie!(
    scarf,
    "Screws at a scarf’s root",
    "or bolts, across each root from lap to lap",
    "lap off lap",
    "lap along lap"
);

/// Each post's foot to its pier.
pub const POST_BASE: &[FieldRow] =
    tie!(post_base, "Anchors at a post’s foot", "each post to its pier", "up, off the pier", "level, any way");
