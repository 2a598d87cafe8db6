//! What pages share: the drawings of the frame and its computed lengths, always of the last good frame.
use crate::app::cached::text_of;
use crate::app::components::{PartOfPage, Wood, drawing_view, round_view, show_length_fine};
use crate::app::dom::{Tag, follow};
use crate::app::part::part;
use crate::app::route::{Route, use_router};
use crate::app::use_store;
use crate::design::Built;
use crate::drawing::{self, Shown};
use crate::joinery::{StickBody, bodies};
use crate::project::Project;
use crate::units::Length;
use crate::wording;
use leptos::prelude::*;
use std::sync::Arc;

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

/// Every stick of the drawn frame as wood, where it stands (tracked).
pub fn wood() -> Option<Vec<StickBody>> {
    let store = use_store();
    let good = store.drawn()?;
    // Where it was asked whether the frame fits, the sticks are there already.
    let known = untrack(|| store.fitted()).filter(|fitted| fitted.good == good);
    Some(known.map_or_else(|| bodies(&good.project, &good.built.shape), |fitted| fitted.fit.bodies.clone()))
}

/// What is shown of the wood, made anew with every frame.
pub fn shown(pick: impl Fn(&[StickBody]) -> Vec<Shown> + 'static) -> Wood {
    shown_of(Box::new(pick))
}

type Pick = Box<dyn Fn(&[StickBody]) -> Vec<Shown>>;

fn shown_of(pick: Pick) -> Wood {
    let shown = RwSignal::new(None);
    follow(Box::new(move || shown.set(wood().map(|wood| Arc::new(pick(&wood))))));
    shown
}

part!(
    /// The frame in the round.
    pub static ROUND: PartOfPage = solids.round_part(in_the_round)
);

/// The frame in the round. A tapped stick is taken to the bench.
fn in_the_round() -> Tag {
    let router = use_router();
    let go = Callback::new(move |mark: String| router.go(&Route::bench(&mark)));
    let standing = shown(|wood| wood.iter().map(Shown::standing).collect());
    round_view(standing, "The frame in the round".to_owned(), Some(go))
}

/// A length of the project in words, after a few words.
pub fn long(part: fn(&Project) -> Length, before: &'static str) -> Signal<String> {
    let store = use_store();
    text_of(move || {
        let project = store.project();
        format!("{before}{}", show_length_fine(part(&project), project.units))
    })
}

/// A computed length in words, as finely as the drawings say it; a dash where there is none.
pub fn room(part: fn(&Built) -> Option<Length>) -> Signal<String> {
    fact(move |built, project| part(built).map(|length| wording::length(length, project.units)))
}

/// Something computed in words, of the frame that is drawn; a dash where there is none.
pub fn fact(part: impl Fn(&Built, &Project) -> Option<String> + Send + Sync + 'static) -> Signal<String> {
    computed(Box::new(part))
}

type Part = Box<dyn Fn(&Built, &Project) -> Option<String> + Send + Sync>;

fn computed(part: Part) -> Signal<String> {
    let store = use_store();
    text_of(move || {
        let text = store.drawn().and_then(|good| part(&good.built, &good.project));
        text.unwrap_or_else(|| "–".to_owned())
    })
}
