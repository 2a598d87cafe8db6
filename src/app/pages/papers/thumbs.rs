//! The drawings of the pack, small; a tap puts one in or leaves it out.
use super::choose::{Kind, Wanted};
use crate::app::{Good, use_store};
use crate::drawing::{Scene, elevation, plan, section, stock, svg};
use leptos::prelude::*;

/// Width the small drawings are made for, px: they are shown smaller, without words.
const WIDTH: f64 = 640.0;

/// The scene of a sheet; the order is shown as its stock, the roof as its plan.
pub fn scene(kind: Kind, good: &Good) -> Scene {
    let (project, built) = (&*good.project, &*good.built);
    match kind {
        Kind::Order => stock(project, built, WIDTH),
        Kind::Section => section(project, built),
        Kind::Elevation => elevation(project, built),
        Kind::Plan | Kind::Roof => plan(project, built),
    }
}

/// One small drawing a sheet.
#[component]
pub fn Thumbs(wanted: RwSignal<Wanted>) -> impl IntoView {
    let thumbs = [Kind::Order, Kind::Section, Kind::Elevation, Kind::Plan]
        .into_iter()
        .map(|kind| view! { <Thumb wanted kind/> })
        .collect_view();
    view! { <div class="thumbs">{thumbs}</div> }
}

#[component]
fn Thumb(wanted: RwSignal<Wanted>, kind: Kind) -> impl IntoView {
    let store = use_store();
    let html = Memo::new(move |_| {
        store.good().map_or_else(String::new, |good| svg::print(&scene(kind, &good), WIDTH, kind.title()))
    });
    let on = move || wanted.get().has(kind);
    view! {
        <button
            type="button"
            class="thumb"
            class:thumb--on=on
            aria-pressed=move || on().to_string()
            on:click=move |_| wanted.update(|wanted| wanted.turn(kind))
        >
            <span class="thumb__paper" inner_html=html></span>
            <span class="thumb__title">
                <span class="thumb__mark" aria-hidden="true">{move || if on() { "✓" } else { "" }}</span>
                {kind.title()}
            </span>
        </button>
    }
}
