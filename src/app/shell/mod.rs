//! What stands around the pages: header, strip, rule, and what must be said.
mod header;
mod notices;
mod projects;
mod start;

pub use header::units_choice;
pub use projects::project_list;

use super::components::{rule, strip};
use super::focus::focus_heading;
use super::pages::page_of;
use super::route::use_router;
use super::use_store;
use crate::app::cached::Cached;
use crate::app::dom::{Tag, parts, tag};
use header::header;
use leptos::prelude::*;
use notices::notices;
use start::start;

/// The whole app: the start page, or the open project.
pub fn shell() -> Tag {
    let store = use_store();
    let is_open = Cached::new(move || store.id().is_some());
    follow_title();
    parts()
        .child(
            tag("a")
                .class("skip")
                .attr("href", "#content")
                .on("click", move |event| {
                    event.prevent_default();
                    focus_heading();
                })
                .child("To the page"),
        )
        .live(move || if is_open.get() { open() } else { closed() })
}

fn closed() -> Tag {
    tag("div")
        .class("app app--closed")
        .child(notices())
        .child(tag("main").class("app__page").attr("id", "content").attr("tabindex", "-1").child(start()))
}

fn open() -> Tag {
    let router = use_router();
    let store = use_store();
    // Another project is another page: nothing half-typed may pass from one to the other.
    let which = Cached::new(move || (router.place(), store.id()));
    tag("div")
        .class("app")
        .child(header())
        .child(notices())
        .child(strip())
        .child(tag("main").class("app__page").attr("id", "content").attr("tabindex", "-1").live(move || {
            let (place, _) = which.get();
            page_of(place)
        }))
        .child(rule())
}

/// Title and focus follow the place, not the first one.
fn follow_title() {
    let router = use_router();
    let store = use_store();
    let name = store.slice(|project| project.name.clone());
    Effect::new(move |_| {
        let title = match store.id() {
            Some(_) => format!("{} · {} · Outshot", router.place().name(), name.get()),
            None => "Outshot".to_owned(),
        };
        document().set_title(&title);
    });
    let arrive = move |_: &_, before: Option<&_>, _| {
        if before.is_some() {
            request_animation_frame(|| {
                window().scroll_to_with_x_and_y(0.0, 0.0);
                focus_heading();
            });
        }
    };
    Effect::watch(move || (router.place(), store.id()), arrive, true);
}
