//! What pages share: the drawings of the frame and its computed lengths, always of the last good frame.
use crate::app::components::{DrawingView, show_length_fine};
use crate::app::use_store;
use crate::design::Built;
use crate::drawing;
use crate::project::Project;
use crate::units::Length;
use crate::wording;
use leptos::prelude::*;

/// The section through wall, roof and post.
#[component]
pub fn Section() -> impl IntoView {
    let store = use_store();
    let title = "Section through wall, roof and post";
    let draw = move |width: f64| {
        store.drawn().map_or_else(String::new, |good| {
            drawing::svg::print(&drawing::section(&good.project, &good.built), width, title)
        })
    };
    view! { <DrawingView draw label=title/> }
}

/// The beam line from outside, facing the wall.
#[component]
pub fn Elevation() -> impl IntoView {
    let store = use_store();
    let title = "Beam line from outside, facing the wall";
    let draw = move |width: f64| {
        store.drawn().map_or_else(String::new, |good| {
            drawing::svg::print(&drawing::elevation(&good.project, &good.built), width, title)
        })
    };
    view! { <DrawingView draw label=title/> }
}

/// A length of the project in words, after a few words.
pub fn long(part: impl Fn(&Project) -> Length + Send + Sync + 'static, before: &'static str) -> Signal<String> {
    let store = use_store();
    Signal::derive(move || {
        let project = store.project();
        format!("{before}{}", show_length_fine(part(&project), project.units))
    })
}

/// A computed length in words, as finely as the drawings say it; a dash where there is none.
pub fn room(part: impl Fn(&Built) -> Option<Length> + Send + Sync + 'static) -> Signal<String> {
    fact(move |built, project| part(built).map(|length| wording::length(length, project.units)))
}

/// Something computed in words, of the last good frame, in the units shown now; a dash where there is none.
pub fn fact(part: impl Fn(&Built, &Project) -> Option<String> + Send + Sync + 'static) -> Signal<String> {
    let store = use_store();
    Signal::derive(move || {
        let text = store.built().and_then(|built| part(&built, &store.project()));
        text.unwrap_or_else(|| "–".to_owned())
    })
}
