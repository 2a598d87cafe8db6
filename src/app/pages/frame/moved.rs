//! The beam line with grips on what can be moved along it.
use super::grip::grips;
use super::held::Held;
use crate::app::cached::{Cached, text_of};
use crate::app::components::drawing_view_under;
use crate::app::dom::{Tag, live};
use crate::app::part::part;
use crate::app::use_store;
use crate::drawing;
use leptos::prelude::*;

const TITLE: &str = "Beam line from outside, facing the wall";

type Grips = fn(RwSignal<usize>, Cached<f64>) -> Tag;

part!(pub static GRIPS: Grips = frame.grips_part(grips));

/// The beam line from outside, facing the wall; posts and scarfs can be moved on it.
pub fn elevation() -> Tag {
    let store = use_store();
    // The number of what is held, from 1; zero where nothing is.
    let number = RwSignal::new(0_usize);
    let draw = move |width: f64| {
        let Some(good) = store.drawn() else { return String::new() };
        let mut scene = drawing::elevation(&good.project, &good.built);
        if let Some(held) = Held::of(&good.built, number.get()) {
            // Where no frame comes of it, the hand is still told where it is.
            let project = if store.is_stale() { store.project() } else { good.project };
            held.draw_apart(&mut scene, &project, &good.built);
        }
        drawing::svg::print(&scene, width, TITLE)
    };
    let caption = text_of(move || {
        let held = store.built().and_then(|built| Some((Held::of(&built, number.get())?, built)));
        let says = held.map(|(held, built)| format!("{}: {}", held.mark(), held.says(&store.project(), &built)));
        says.unwrap_or_else(|| TITLE.to_owned())
    });
    drawing_view_under(draw, TITLE, caption, move |width| live(move || GRIPS.get().map(|grips| grips(number, width))))
}
