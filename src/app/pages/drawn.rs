//! What pages share: the drawings of the frame and its computed lengths, always of the last good frame.
use crate::app::components::{drawing_view, show_length_fine};
use crate::app::dom::Tag;
use crate::app::use_store;
use crate::design::Built;
use crate::drawing;
use crate::project::Project;
use crate::units::Length;
use crate::wording;
use leptos::prelude::*;

/// The section through wall, roof and post.
pub fn section() -> Tag {
    let store = use_store();
    let title = "Section through wall, roof and post";
    let draw = move |width: f64| {
        store.drawn().map_or_else(String::new, |good| {
            drawing::svg::print(&drawing::section(&good.project, &good.built), width, title)
        })
    };
    drawing_view(draw, title, None)
}

/// The beam line from outside, facing the wall.
pub fn elevation() -> Tag {
    let store = use_store();
    let title = "Beam line from outside, facing the wall";
    let draw = move |width: f64| {
        store.drawn().map_or_else(String::new, |good| {
            drawing::svg::print(&drawing::elevation(&good.project, &good.built), width, title)
        })
    };
    drawing_view(draw, title, None)
}

/// A length of the project in words, after a few words.
pub fn long(part: fn(&Project) -> Length, before: &'static str) -> Signal<String> {
    let store = use_store();
    Signal::derive(move || {
        let project = store.project();
        format!("{before}{}", show_length_fine(part(&project), project.units))
    })
}

/// A computed length in words, as finely as the drawings say it; a dash where there is none.
pub fn room(part: fn(&Built) -> Option<Length>) -> Signal<String> {
    fact(move |built, project| part(built).map(|length| wording::length(length, project.units)))
}

/// Something computed in words, of the last good frame, in the units shown now; a dash where there is none.
pub fn fact(part: impl Fn(&Built, &Project) -> Option<String> + Send + Sync + 'static) -> Signal<String> {
    computed(Box::new(part))
}

type Part = Box<dyn Fn(&Built, &Project) -> Option<String> + Send + Sync>;

fn computed(part: Part) -> Signal<String> {
    let store = use_store();
    Signal::derive(move || {
        let text = store.built().and_then(|built| part(&built, &store.project()));
        text.unwrap_or_else(|| "–".to_owned())
    })
}
