//! Does it carry: the frame by how hard each stick works, every check with its working, the curves along the beam.
mod along;
mod checks;
mod help;
mod loads;
mod path;

use crate::app::components::{caution, drawing_view, page};
use crate::app::dom::{Tag, parts, tag};
use crate::app::route::{Place, Route, use_router};
use crate::app::use_store;
use crate::checks::Strength;
use crate::design::Built;
use crate::drawing::{Scene, effort_elevation, effort_section, svg};
use crate::project::Project;
use crate::report;
use leptos::prelude::*;

/// Strength.
pub fn strength_page() -> Tag {
    let store = use_store();
    let lead = parts()
        .child(effort("How hard each stick of the beam line works", effort_elevation))
        .child(effort("How hard the sticks of the section work", effort_section))
        .child(
            tag("p")
                .class("effort-key")
                .attr("aria-hidden", "true")
                .child(tag("span").class("effort-key__one fill-light"))
                .child("to 50 %")
                .child(tag("span").class("effort-key__one fill-fair"))
                .child("to 80 %")
                .child(tag("span").class("effort-key__one fill-hard"))
                .child("to 100 %")
                .child(tag("span").class("effort-key__one fill-over"))
                .child("over")
                .child(tag("span").class("effort-key__one fill-unknown"))
                .child("? not judged"),
        );
    let whole = move || {
        let strong = store.strong()?;
        Some(report::summary(&strong.strength, strong.good.project.units))
    };
    page(
        Place::Strength,
        "Strength",
        "Does it carry, what governs, by how much",
        lead,
        parts()
            .child(tag("p").class("page__word strength-summary").live(whole))
            .child(caution(report::STRENGTH_CAUTION))
            .child(checks::checks())
            .child(path::paths())
            .child(along::along())
            .child(loads::loads()),
    )
}

type Draw = fn(&Project, &Built, &Strength) -> Scene;

/// The frame, shaded; a tap on a stick asks for its checks.
fn effort(title: &'static str, draw: Draw) -> Tag {
    let store = use_store();
    let router = use_router();
    let printed = move |width: f64| {
        store.strong().map_or_else(String::new, |strong| {
            let scene = draw(&strong.good.project, &strong.good.built, &strong.strength);
            svg::print(&scene, width, title)
        })
    };
    let on_stick = Callback::new(move |mark: String| router.go(&Route::strength(&mark)));
    drawing_view(printed, title, Some(on_stick))
}
