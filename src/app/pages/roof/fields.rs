//! What the user decides about the roof.
use crate::app::cached::text_of;
use crate::app::components::{FieldRow, Of, Steps, choice, field_table, fold, length_field};
use crate::app::dom::{Tag, parts};
use crate::app::use_store;
use crate::project::{Metal, SheetLayout};
use crate::wording::length;
use crate::{at, lens, one_of};

/// Purlins.
pub fn purlin_fields() -> Tag {
    let store = use_store();
    let summary = text_of(move || {
        let project = store.project();
        format!("at most {} apart", length(project.roofing.purlin_spacing, project.units))
    });
    fold("How the purlins lie", summary, false, || {
        parts()
            .child(
                length_field(lens!(roofing.purlin_spacing), "Widest purlin spacing")
                    .hint(
                        "row to row; the rows are spread evenly and no wider. What the metal’s \
                         maker allows",
                    )
                    .steps(Steps::of(1.0, 20.0)),
            )
            .child(
                length_field(lens!(roofing.first_purlin), "First row")
                    .hint("tail end to its lower edge, along the top edge")
                    .steps(Steps::of(0.5, 10.0)),
            )
            .child(
                length_field(lens!(roofing.last_purlin), "Last row")
                    .hint("rafter head to its upper edge, along the top edge")
                    .steps(Steps::of(0.5, 10.0)),
            )
            .child(
                length_field(lens!(roofing.rake), "Rake")
                    .hint("purlins past the outer faces of the outer rafters")
                    .steps(Steps::of(0.5, 10.0)),
            )
    })
}

const METALS: &[(Metal, &str)] = &[
    (Metal::Ribbed29, "29 gauge, ribbed"),
    (Metal::Ribbed26, "26 gauge, ribbed"),
    (Metal::StandingSeam24, "24 gauge, standing seam"),
];

const METAL: &[FieldRow] = &[
    FieldRow::new("Metal", "steel; the lower the gauge, the thicker and heavier", one_of!(roofing.metal, METALS)),
    FieldRow::new(
        "Nothing holds the snow at the eave",
        "no gutter lip, no guard, and room below for it to fall",
        Of::Toggle(at!(roofing.eave_clear)),
    ),
];

/// Sheets.
pub fn sheet_fields() -> Tag {
    let store = use_store();
    let layouts = vec![
        (SheetLayout::EqualRips, "both ends alike".to_owned()),
        (SheetLayout::FromLeft, "whole from the left".to_owned()),
        (SheetLayout::FromRight, "whole from the right".to_owned()),
    ];
    let summary = text_of(move || {
        let project = store.project();
        format!("cover {}", length(project.roofing.cover, project.units))
    });
    fold("How the sheets lie", summary, false, || {
        parts()
            .child(choice(
                lens!(roofing.layout),
                "Sheets share out the width",
                "a last strip under 6 in (150 mm) is evened out with the first sheet",
                layouts,
                None,
            ))
            .child(
                length_field(lens!(roofing.cover), "Cover width")
                    .hint("what one sheet covers beside its lap")
                    .steps(Steps::of(1.0, 10.0)),
            )
            .child(length_field(lens!(roofing.rib), "Height of the ribs").steps(Steps::of(0.125, 1.0)))
            .child(
                length_field(lens!(roofing.longest_sheet), "Longest sheet that can be brought")
                    .hint("the maker’s, or your trailer’s")
                    .steps(Steps::of(12.0, 250.0)),
            )
            .child(
                length_field(lens!(roofing.eave_overhang), "Past the rafter tails")
                    .hint("along the slope, into the gutter or clear of the tails")
                    .steps(Steps::of(0.25, 5.0)),
            )
            .child(
                length_field(lens!(roofing.top_gap), "Gap at the top")
                    .hint("rafter heads to the top of the sheets, under the flashing")
                    .steps(Steps::of(0.25, 5.0)),
            )
            .child(field_table(METAL))
    })
}
