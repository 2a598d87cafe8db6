//! What the user decides about the roof.
use crate::app::components::{Choice, FieldRow, FieldTable, Fold, LengthField, Of, Steps};
use crate::app::use_store;
use crate::project::{Metal, SheetLayout};
use crate::wording::length;
use crate::{at, lens, one_of};
use leptos::prelude::*;

/// Purlins.
#[component]
pub fn PurlinFields() -> impl IntoView {
    let store = use_store();
    let summary = Signal::derive(move || {
        let project = store.project();
        format!("at most {} apart", length(project.roofing.purlin_spacing, project.units))
    });
    view! {
        <Fold title="How the purlins lie" summary>
            <LengthField
                field=lens!(roofing.purlin_spacing) label="Widest purlin spacing"
                hint="row to row; the rows are spread evenly and no wider. What the metal’s maker allows" steps=Steps::of(1.0, 20.0)
            />
            <LengthField
                field=lens!(roofing.first_purlin) label="First row" hint="tail end to its lower edge, along the top edge"
                steps=Steps::of(0.5, 10.0)
            />
            <LengthField
                field=lens!(roofing.last_purlin) label="Last row" hint="rafter head to its upper edge, along the top edge"
                steps=Steps::of(0.5, 10.0)
            />
            <LengthField
                field=lens!(roofing.rake) label="Rake" hint="purlins past the outer faces of the outer rafters" steps=Steps::of(0.5, 10.0)
            />
        </Fold>
    }
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
#[component]
pub fn SheetFields() -> impl IntoView {
    let store = use_store();
    let layouts = vec![
        (SheetLayout::EqualRips, "both ends alike".to_owned()),
        (SheetLayout::FromLeft, "whole from the left".to_owned()),
        (SheetLayout::FromRight, "whole from the right".to_owned()),
    ];
    let summary = Signal::derive(move || {
        let project = store.project();
        format!("cover {}", length(project.roofing.cover, project.units))
    });
    view! {
        <Fold title="How the sheets lie" summary>
            <Choice
                field=lens!(roofing.layout) label="Sheets share out the width"
                hint="a last strip under 6 in (150 mm) is evened out with the first sheet" options=layouts
            />
            <LengthField
                field=lens!(roofing.cover) label="Cover width" hint="what one sheet covers beside its lap" steps=Steps::of(1.0, 10.0)
            />
            <LengthField field=lens!(roofing.rib) label="Height of the ribs" steps=Steps::of(0.125, 1.0)/>
            <LengthField
                field=lens!(roofing.longest_sheet) label="Longest sheet that can be brought" hint="the maker’s, or your trailer’s"
                steps=Steps::of(12.0, 250.0)
            />
            <LengthField
                field=lens!(roofing.eave_overhang) label="Past the rafter tails" hint="along the slope, into the gutter or clear of the tails"
                steps=Steps::of(0.25, 5.0)
            />
            <LengthField
                field=lens!(roofing.top_gap) label="Gap at the top" hint="rafter heads to the top of the sheets, under the flashing"
                steps=Steps::of(0.25, 5.0)
            />
            <FieldTable of=METAL/>
        </Fold>
    }
}
