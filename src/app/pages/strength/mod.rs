//! Does it carry: the frame by how hard each stick works, every check with its working, the curves along the beam.
mod along;
mod checks;
mod loads;
mod path;

use crate::app::components::{Caution, DrawingView, Page};
use crate::app::route::{Place, Route, use_router};
use crate::app::use_store;
use crate::checks::Strength;
use crate::design::Built;
use crate::drawing::{Scene, effort_elevation, effort_section, svg};
use crate::project::Project;
use crate::report;
use leptos::prelude::*;

/// Strength.
#[component]
pub fn StrengthPage() -> impl IntoView {
    let store = use_store();
    let lead = || {
        view! {
            <Effort title="How hard each stick of the beam line works" draw=effort_elevation/>
            <Effort title="How hard the sticks of the section work" draw=effort_section/>
            <p class="effort-key" aria-hidden="true">
                <span class="effort-key__one fill-light"></span>"to 50 %"
                <span class="effort-key__one fill-fair"></span>"to 80 %"
                <span class="effort-key__one fill-hard"></span>"to 100 %"
                <span class="effort-key__one fill-over"></span>"over"
                <span class="effort-key__one fill-unknown"></span>"? not judged"
            </p>
        }
    };
    let whole = move || {
        let strong = store.strong()?;
        Some(report::summary(&strong.strength, strong.good.project.units))
    };
    view! {
        <Page place=Place::Strength title="Strength" about="Does it carry, what governs, by how much" lead>
            <p class="page__word strength-summary">{whole}</p>
            <Caution text=report::STRENGTH_CAUTION/>
            <checks::Checks/>
            <path::Paths/>
            <along::Along/>
            <loads::Loads/>
        </Page>
    }
}

type Draw = fn(&Project, &Built, &Strength) -> Scene;

/// The frame, shaded; a tap on a stick asks for its checks.
#[component]
fn Effort(title: &'static str, draw: Draw) -> impl IntoView {
    let store = use_store();
    let router = use_router();
    let printed = move |width: f64| {
        store.strong().map_or_else(String::new, |strong| {
            let scene = draw(&strong.good.project, &strong.good.built, &strong.strength);
            svg::print(&scene, width, title)
        })
    };
    let on_stick = Callback::new(move |mark: String| router.go(&Route::strength(&mark)));
    view! { <DrawingView draw=printed label=title on_stick/> }
}
