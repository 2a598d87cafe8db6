//! Joints held by screws, straps or an anchor, by their maker's allowable loads: how many, what one of them carries, and
//! who says so.
use crate::app::components::{Choices, FieldRow, Of, Part};
use crate::at;
use crate::project::{BoreWay, Bores};
use crate::units::Length;

/// A length of the holes bored for a tie, there while they are bored.
macro_rules! of_bores {
    ($tie:ident, $part:ident) => {
        Of::Part(Part {
            path: concat!("fixings.", stringify!($tie), ".bores.", stringify!($part)),
            see: |project| project.fixings.$tie.bores.map(|bores| bores.$part),
            put: |project, value| {
                if let Some(bores) = &mut project.fixings.$tie.bores {
                    bores.$part = value;
                }
            },
        })
    };
}

/// The fields of one tie of the fixings. `$first`: where its first hole is; `$is_in_seat`: in a rafter's seat, where there is
/// little room; whatever else it has stands at the end.
macro_rules! tie {
    ($tie:ident, $how_many:literal, $one:literal, $pull:literal, $sideways:literal, $first:literal, $is_in_seat:literal
        $(, $more:expr)*) => {
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
            FieldRow::when(
                "Across its bored hole",
                "leave empty where nothing is bored",
                Of::Whole(
                    Part {
                        path: concat!("fixings.", stringify!($tie), ".bores.diameter"),
                        see: |project| Some(project.fixings.$tie.bores.map(|bores| bores.diameter)),
                        put: |project, value| {
                            let units = project.units;
                            let bores = &mut project.fixings.$tie.bores;
                            *bores = value.map(|diameter| match *bores {
                                Some(bores) => Bores { diameter, ..bores },
                                None => Bores::usual(diameter, $is_in_seat, units),
                            });
                        },
                    },
                    "none bored",
                ),
                |project| project.fixings.$tie.count > 0,
            ),
            FieldRow::when("First hole", $first, of_bores!($tie, first), |project| {
                project.fixings.$tie.bored() > Length::ZERO
            }),
            FieldRow::when("One hole to the next", "from centre to centre", of_bores!($tie, apart), |project| {
                project.fixings.$tie.count > 1 && project.fixings.$tie.bores.is_some()
            }),
            $($more,)*
        ]
    };
}

/// Each rafter to the ledger.
pub const RAFTER_HEAD: &[FieldRow] = tie!(
    rafter_head,
    "Ties at a rafter’s head",
    "screws or straps, each rafter to the ledger",
    "up, off the ledger",
    "along the wall and out from it",
    "from the middle of the seat up the slope, through the rafter only",
    true
);

/// Each rafter to the beam.
pub const RAFTER_SEAT: &[FieldRow] = tie!(
    rafter_seat,
    "Ties at a rafter’s seat",
    "screws or straps, each rafter to the beam",
    "up, off the beam",
    "along the beam and out from it",
    "from the middle of the seat up the slope, through the rafter only",
    true
);

/// Across each root of each scarf.
pub const SCARF: &[FieldRow] = tie!(
    scarf,
    "Screws at a scarf’s root",
    "or bolts, across each root from lap to lap",
    "lap off lap",
    "lap along lap",
    "from each tip into the lap, through both halves",
    false
);

/// Each post's foot to its pier.
pub const POST_BASE: &[FieldRow] = tie!(
    post_base,
    "Anchors at a post’s foot",
    "each post to its pier",
    "up, off the pier",
    "level, any way",
    "from the foot up, through the post",
    false,
    FieldRow::when(
        "Its holes run",
        "on the middle of the post",
        Of::Choice(Choices {
            path: "fixings.post_base.bores.way",
            words: || WAYS.iter().map(|(_, word)| *word).collect(),
            see: |project| {
                let bores = project.fixings.post_base.bores?;
                WAYS.iter().position(|(way, _)| *way == bores.way)
            },
            put: |project, place| {
                if let Some((bores, (way, _))) = project.fixings.post_base.bores.as_mut().zip(WAYS.get(place)) {
                    bores.way = *way;
                }
            },
        }),
        |project| project.fixings.post_base.bored() > Length::ZERO
    )
);

/// Which way a post's holes run.
const WAYS: [(BoreWay, &str); 2] = [(BoreWay::AlongBeam, "along the beam"), (BoreWay::Outward, "out from the wall")];
