//! The sticks laid out like the one in hand: cut that many like this.
use super::in_hand::note_cut;
use crate::app::cached::Cached;
use crate::app::dom::{Tag, live, parts, tag};
use crate::app::route::Route;
use crate::app::use_store;
use crate::design::Built;
use crate::tickets::Stick;
use leptos::prelude::*;
use std::sync::Arc;

/// All sticks laid out like that one, itself included, in the order of the frame.
pub fn alike(built: &Built, stick: &Stick) -> Vec<Stick> {
    let first = stick.same_as.as_ref().unwrap_or(&stick.mark);
    let is_alike = |other: &&Stick| other.mark == *first || other.same_as.as_ref() == Some(first);
    built.sticks.iter().filter(is_alike).cloned().collect()
}

/// The other sticks of the same layout, each with its own tick.
pub fn twins(stick: Arc<Stick>) -> Tag {
    let store = use_store();
    let own = stick.mark.clone();
    let all = Cached::new(move || store.built().map(|built| alike(&built, &stick)).unwrap_or_default());
    live(move || {
        let all = all.get();
        if all.len() < 2 {
            return None;
        }
        let title = format!("Cut {} like this", all.len());
        let rows = all.into_iter().filter(|twin| twin.mark != own).map(one).collect::<Vec<_>>();
        let words = "Mark each one by itself: no stick is as straight as the one before.";
        Some(
            parts()
                .child(tag("h3").class("twins__title").child(title))
                .child(tag("p").class("cut__word").child(words))
                .child(tag("ul").class("twins").child(rows)),
        )
    })
}

fn one(twin: Stick) -> Tag {
    let store = use_store();
    let mark = twin.mark.clone();
    let is_cut = store.slice(move |project| project.progress.cut.contains_key(&mark));
    let (name, href) = (twin.mark.clone(), Route::bench(&twin.mark).hash());
    let label = format!("{} is cut", twin.mark);
    let tick = move |event: leptos::ev::Event| note_cut(store, &twin, event_target_checked(&event));
    tag("li")
        .class("twins__row")
        .child(
            tag("label").class("twins__tick").child(
                tag("input")
                    .class("mark__box")
                    .attr("type", "checkbox")
                    .attr("aria-label", label)
                    .live_prop("checked", move || is_cut.get())
                    .on("change", tick),
            ),
        )
        .child(tag("a").class("twins__link").attr("href", href).child(name))
}
