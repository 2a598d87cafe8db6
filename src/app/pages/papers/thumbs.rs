//! The drawings of the pack, small; a tap puts one in or leaves it out.
use super::choose::{Kind, Wanted};
use crate::app::cached::Cached;
use crate::app::dom::{Tag, button, tag};
use crate::app::{Good, use_store};
use crate::drawing::{Scene, elevation, plan, section, stock, svg};
use leptos::prelude::*;

/// Width the small drawings are made for, px: they are shown smaller, without words.
const WIDTH: f64 = 640.0;

/// The scene of a sheet; the order is shown as its stock, the roof as its plan. The joints have one each.
pub fn scene(kind: Kind, good: &Good) -> Scene {
    let (project, built) = (&*good.project, &*good.built);
    match kind {
        Kind::Order | Kind::Receiving => stock(project, built, WIDTH),
        Kind::Section => section(project, built),
        Kind::Elevation => elevation(project, built),
        Kind::Plan | Kind::Roof => plan(project, built),
        Kind::Joints => Scene::default(),
    }
}

/// One small drawing a sheet.
pub fn thumbs(wanted: RwSignal<Wanted>) -> Tag {
    let thumbs = [Kind::Order, Kind::Section, Kind::Elevation, Kind::Plan]
        .into_iter()
        .map(|kind| thumb(wanted, kind))
        .collect::<Vec<_>>();
    tag("div").class("thumbs").child(thumbs)
}

fn thumb(wanted: RwSignal<Wanted>, kind: Kind) -> Tag {
    let store = use_store();
    let html = Cached::new(move || {
        store.good().map_or_else(String::new, |good| svg::print(&scene(kind, &good), WIDTH, kind.title()))
    });
    let on = move || wanted.get().has(kind);
    button("thumb", move |_| wanted.update(|wanted| wanted.turn(kind)))
        .live_class("thumb--on", on)
        .live_attr("aria-pressed", move || on().to_string())
        .child(tag("span").class("thumb__paper").live_html(move || html.get()))
        .child(
            tag("span")
                .class("thumb__title")
                .child(
                    tag("span")
                        .class("thumb__mark")
                        .attr("aria-hidden", "true")
                        .live(move || if on() { "✓" } else { "" }),
                )
                .child(kind.title()),
        )
}
