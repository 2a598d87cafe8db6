//! What fixes it: ledger, rafters, purlins, sheets, scarfs, posts, piers.
use super::ties::{POST_BASE, RAFTER_HEAD, RAFTER_SEAT, SCARF};
use crate::app::cached::text_of;
use crate::app::components::{FieldRow, NOT_KNOWN, Of, caution, field_table, fold, group, word};
use crate::app::dom::{Tag, parts};
use crate::app::use_store;
use crate::at;
use crate::fastening::{FastenerKind, fastener_table};
use crate::materials::species_table;
use crate::project::{Fixings, MAKERS_OWN, Project};

/// What fixes what, with the fields of each.
const JOINTS: &[(&str, &[FieldRow])] = &[
    ("Ledger to wall", LEDGER),
    ("Rafter to ledger", RAFTER_HEAD),
    ("Rafter to beam", RAFTER_SEAT),
    ("Purlin to rafter", PURLIN),
    ("Sheet to purlin", SHEET),
    ("Scarfs", SCARF),
    ("Post to pier", POST_BASE),
    ("Pier and footing", PIER),
    ("How far a brace’s joint gives", BRACE_JOINT),
];

/// What fixes it.
pub fn what_fixes_it() -> Tag {
    let store = use_store();
    let summary = text_of(move || match n_open(&store.project().fixings) {
        0 => "all chosen".to_owned(),
        n => format!("{n} of 7 {NOT_KNOWN}"),
    });
    let joints = JOINTS.iter().map(|(title, fields)| group(title, field_table(fields)));
    fold("What fixes it", summary, false, || {
        parts()
            .child(word("No fastener is assumed. Give the maker’s allowable loads of one, at a load duration of 1.0."))
            .child(caution(
                "A ledger that lets go takes the roof with it: never on nails alone, \
                 never into siding or sheathing alone.",
            ))
            .child(joints.collect::<Vec<_>>())
    })
}

/// How many of the joints have nothing chosen.
fn n_open(fixings: &Fixings) -> usize {
    let keys = [&fixings.ledger.fastener, &fixings.purlin.fastener, &fixings.sheet.screw.fastener];
    let ties = [&fixings.rafter_head, &fixings.rafter_seat, &fixings.scarf, &fixings.post_base];
    keys.iter().filter(|key| key.is_empty()).count() + ties.iter().filter(|tie| tie.count == 0).count()
}

const fn ledger_is_chosen(project: &Project) -> bool {
    !project.fixings.ledger.fastener.is_empty()
}

fn ledger_is_makers(project: &Project) -> bool {
    project.fixings.ledger.fastener == MAKERS_OWN
}

fn ledger_has_washers(project: &Project) -> bool {
    ledger_is_chosen(project) && !ledger_is_makers(project)
}

const LEDGER: &[FieldRow] = &[
    FieldRow::new(
        "Ledger fixing",
        "through the ledger into each post or stud of the wall",
        Of::Key(at!(fixings.ledger.fastener), || {
            let mut all = fasteners(&[FastenerKind::Bolt, FastenerKind::LagScrew]);
            all.push((MAKERS_OWN.to_owned(), "a maker’s own screw".to_owned()));
            all
        }),
    ),
    FieldRow::when("Across its thread", "", Of::Size(at!(fixings.ledger.makers.diameter)), ledger_is_makers),
    FieldRow::when(
        "One holds, pushed sideways",
        "through this ledger into this wall’s wood, at a load duration of 1.0",
        Of::Force(at!(fixings.ledger.makers.sideways)),
        ledger_is_makers,
    ),
    FieldRow::when(
        "One holds, pulled",
        "thread, head or steel, whichever is least",
        Of::Force(at!(fixings.ledger.makers.pull)),
        ledger_is_makers,
    ),
    FieldRow::when(
        "Source of these values",
        "the maker’s sheet or report",
        Of::Words(at!(fixings.ledger.makers.source)),
        ledger_is_makers,
    ),
    FieldRow::when("Its length", "under the head", Of::Size(at!(fixings.ledger.length)), ledger_is_chosen),
    FieldRow::when(
        "Across its washers",
        "the smaller way; 0 where it is not known",
        Of::Size(at!(fixings.ledger.washer)),
        ledger_has_washers,
    ),
    FieldRow::when(
        "Side by side at each wall post",
        "fixings in one row",
        Of::Count(at!(fixings.ledger.columns)),
        ledger_is_chosen,
    ),
    FieldRow::when("Side to side", "", Of::Size(at!(fixings.ledger.column_gap)), |project| {
        ledger_is_chosen(project) && project.fixings.ledger.columns > 1
    }),
    FieldRow::when(
        "Rows at each wall post",
        "one above the other",
        Of::Count(at!(fixings.ledger.rows)),
        ledger_is_chosen,
    ),
    FieldRow::when("Lowest row", "above the ledger’s bottom", Of::Size(at!(fixings.ledger.lowest)), ledger_is_chosen),
    FieldRow::when("Row to row", "", Of::Size(at!(fixings.ledger.row_gap)), ledger_is_chosen),
    FieldRow::when(
        "Wood of the wall’s posts",
        "look behind the siding",
        Of::Key(at!(fixings.ledger.wall_species), woods),
        ledger_is_chosen,
    ),
    FieldRow::when(
        "Depth of the wall’s post",
        "behind its outer face",
        Of::Size(at!(fixings.ledger.wall_depth)),
        ledger_is_chosen,
    ),
];

const fn purlin_is_chosen(project: &Project) -> bool {
    !project.fixings.purlin.fastener.is_empty()
}

const PURLIN: &[FieldRow] = &[
    FieldRow::new(
        "Purlin screw",
        "down through the purlin",
        Of::Key(at!(fixings.purlin.fastener), || {
            fasteners(&[FastenerKind::WoodScrew, FastenerKind::LagScrew, FastenerKind::Nail])
        }),
    ),
    FieldRow::when(
        "Length of the purlin screw",
        "under the head",
        Of::Size(at!(fixings.purlin.length)),
        purlin_is_chosen,
    ),
    FieldRow::when("Purlin screws at a crossing", "", Of::Count(at!(fixings.purlin.count)), purlin_is_chosen),
];

const fn sheet_is_chosen(project: &Project) -> bool {
    !project.fixings.sheet.screw.fastener.is_empty()
}

const SHEET: &[FieldRow] = &[
    FieldRow::new(
        "Sheet screw",
        "with its washer",
        Of::Key(at!(fixings.sheet.screw.fastener), || fasteners(&[FastenerKind::WoodScrew])),
    ),
    FieldRow::when(
        "Length of the sheet screw",
        "under the head",
        Of::Size(at!(fixings.sheet.screw.length)),
        sheet_is_chosen,
    ),
    FieldRow::when(
        "Sheet screws in one place",
        "beside the same rib",
        Of::Count(at!(fixings.sheet.screw.count)),
        sheet_is_chosen,
    ),
    FieldRow::when(
        "One place from the next",
        "along the purlin",
        Of::Size(at!(fixings.sheet.spacing)),
        sheet_is_chosen,
    ),
    FieldRow::when(
        "Sheet holds at one washer",
        "allowable pull before it tears over the washer: the sheet’s maker says",
        Of::Force(at!(fixings.sheet.pull_over)),
        sheet_is_chosen,
    ),
];

const PIER: &[FieldRow] = &[
    FieldRow::new("Round, not square", "", Of::Toggle(at!(fixings.pier.is_round))),
    FieldRow::new("Across the footing", "", Of::Size(at!(fixings.pier.footing_width))),
    FieldRow::new("Thickness of the footing", "", Of::Size(at!(fixings.pier.footing_thickness))),
    FieldRow::new("Across the pier", "", Of::Size(at!(fixings.pier.pier_width))),
    FieldRow::new(
        "Depth of the footing",
        "its underside below the ground; under the frost",
        Of::Size(at!(fixings.pier.depth)),
    ),
    FieldRow::new(
        "Anchor in the concrete",
        "how deep each post’s anchor is cast in, to its hook or head; 0 where it is not known",
        Of::Size(at!(fixings.pier.anchor_depth)),
    ),
    FieldRow::new(
        "Bars from footing to pier",
        "upright steel through the joint of the two; 0 where there are none",
        Of::Count(at!(fixings.pier.bars)),
    ),
    FieldRow::when("Across one bar", "", Of::Size(at!(fixings.pier.bar)), |project| project.fixings.pier.bars > 0),
];

const BRACE_JOINT: &[FieldRow] = &[
    FieldRow::new(
        "Stiffness, pushed",
        "a guess after few tests of pegged braces: leave it unless you know better",
        Of::Spring(at!(fixings.brace_joint.pushed)),
    ),
    FieldRow::new("Stiffness, pulled", "on the pegs alone; a guess too", Of::Spring(at!(fixings.brace_joint.pulled))),
];

/// Fasteners of those kinds, and none.
fn fasteners(kinds: &[FastenerKind]) -> Vec<(String, String)> {
    let of_kind = fastener_table().iter().filter(|fastener| kinds.contains(&fastener.kind));
    let all = of_kind.map(|fastener| (fastener.key.clone(), fastener.name.clone()));
    [(String::new(), "none chosen yet".to_owned())].into_iter().chain(all).collect()
}

fn woods() -> Vec<(String, String)> {
    let all = species_table().iter().map(|wood| (wood.key.clone(), wood.name.clone()));
    [(String::new(), NOT_KNOWN.to_owned())].into_iter().chain(all).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;
    use crate::units::UnitSystem;

    #[test]
    fn a_new_job_has_chosen_nothing() {
        assert_eq!(n_open(&demo::empty(UnitSystem::Metric).fixings), 7);
        assert_eq!(n_open(&demo::wool_barn().fixings), 0);
    }
}
