//! The roof: purlin rows to mark, sheets to order and to lay.
mod fields;
mod rows;
mod sheets;

use super::drawn::fact;
use crate::app::components::{caution, drawing_view, page};
use crate::app::dom::{Tag, parts};
use crate::app::route::Place;
use crate::app::use_store;
use crate::drawing;
use crate::wording::length;
use fields::{purlin_fields, sheet_fields};
use rows::rows;
use sheets::sheets;

/// Roof.
pub fn roof_page() -> Tag {
    let about = fact(|built, project| {
        let (n_rows, n_sheets) = (built.shape.purlins.len(), built.sheets.sheets.len());
        let long = length(built.sheets.length.length(), project.units);
        Some(format!("{n_rows} rows of purlins, {n_sheets} sheets of {long}"))
    });
    page(
        Place::Roof,
        "Roof",
        about,
        plan(),
        parts()
            .child(caution("Wet or frosted metal is like ice: stay off it, and tie on before you leave the ladder."))
            .child(caution(
                "A sheet in the wind throws a person: no sheets up on a windy day, and two people to a sheet.",
            ))
            .child(rows())
            .child(sheets())
            .child(purlin_fields())
            .child(sheet_fields()),
    )
}

/// The roof from above.
fn plan() -> Tag {
    let store = use_store();
    let title = "Roof plan: rafters, purlins and sheets, the wall at the top";
    let draw = move |width: f64| {
        store.drawn().map_or_else(String::new, |good| {
            drawing::svg::print(&drawing::plan(&good.project, &good.built), width, title)
        })
    };
    drawing_view(draw, title, None)
}
