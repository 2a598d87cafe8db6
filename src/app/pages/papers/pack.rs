//! The sheets on paper. They stand beside the app in the page, seen only by the printer.
use super::choose::{Kind, Wanted};
use super::order_sheet::OrderSheet;
use super::roof_sheet::RoofSheet;
use super::rules::rules;
use super::stick_sheet::StickSheet;
use super::thumbs::scene;
use crate::app::clock;
use crate::app::components::fractions;
use crate::app::{Good, use_store};
use crate::drawing::{fitting_scale, svg};
use crate::units::UnitSystem;
use leptos::portal::Portal;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Room for a drawing on a sheet, px at 96 to the inch: 180 mm wide, and as high as Letter leaves it under
/// the header and over the foot.
const ROOM: (f64, f64) = (680.0, 640.0);

/// The line that every sheet carries.
const CAUTION: &str = "Lengths, marks and order. Have your local code and a licensed engineer say yes to the strength before you buy, cut \
                       or lift.";

/// Everything that is to be printed.
#[component]
pub fn Pack(wanted: RwSignal<Wanted>) -> impl IntoView {
    let store = use_store();
    let handle = window_event_listener_untyped("beforeprint", |_| stamp());
    on_cleanup(move || handle.remove());
    let sheets = move || {
        let good = store.good()?;
        let wanted = wanted.get();
        let n_sheets = wanted.n_sheets(&good.built);
        let kinds: Vec<Kind> = Kind::ALL.into_iter().filter(|kind| wanted.has(*kind)).collect();
        let n_kinds = kinds.len();
        let papers = kinds.into_iter().enumerate().map(|(index, kind)| {
            let good = good.clone();
            view! { <Paper good=good.clone() title=kind.title().to_owned() number=(index + 1, n_sheets)>{of_kind(kind, &good)}</Paper> }
        });
        let sticks = wanted.marks(&good.built).into_iter().enumerate().map(|(index, mark)| {
            let good = good.clone();
            view! {
                <Paper good=good.clone() title=format!("Stick {mark}") number=(n_kinds + index + 1, n_sheets)>
                    <StickSheet good mark/>
                </Paper>
            }
        });
        Some(view! { {papers.collect_view()} {sticks.collect_view()} })
    };
    view! {
        <Portal>
            <div class="pack" aria-hidden="true">{sheets}</div>
        </Portal>
    }
}

/// Writes the time onto every sheet, at the moment it is printed.
fn stamp() {
    let pack = document().query_selector(".pack").ok().flatten();
    if let Some(Ok(pack)) = pack.map(JsCast::dyn_into::<web_sys::HtmlElement>) {
        let now = clock::show(clock::now()).replace(['"', '\\', '\n'], " ");
        let _ = pack.style().set_property("--printed", &format!("\"printed {now}\""));
    }
}

fn of_kind(kind: Kind, good: &Good) -> AnyView {
    let good = good.clone();
    match kind {
        Kind::Order => view! { <OrderSheet good/> }.into_any(),
        Kind::Roof => view! { <RoofSheet good/> }.into_any(),
        Kind::Section | Kind::Elevation | Kind::Plan => view! { <Drawn kind good/> }.into_any(),
    }
}

/// A drawing at the largest scale that fits, with the bar under it.
#[component]
fn Drawn(kind: Kind, good: Good) -> impl IntoView {
    let scene = scene(kind, &good);
    let scale = fitting_scale(&scene, good.project.units, ROOM);
    let html = svg::print_to_scale(&scene, scale.ratio, kind.title());
    view! {
        <figure class="paper__figure">
            <figcaption class="paper__scale">"Scale " {fractions(scale.words)}</figcaption>
            <div class="paper__drawing" inner_html=html></div>
        </figure>
    }
}

/// One sheet: its header, what it holds, the rules of the joints, and the caution.
#[component]
fn Paper(good: Good, title: String, number: (usize, usize), children: Children) -> impl IntoView {
    let project = good.project;
    let units = match project.units {
        UnitSystem::Imperial => "feet and inches",
        UnitSystem::Metric => "millimetres",
    };
    let note = (!project.note.is_empty()).then(|| view! { <p class="paper__note">{project.note.clone()}</p> });
    let words: Vec<String> = rules(&project).into_iter().map(|(name, value)| format!("{name} {value}")).collect();
    view! {
        <article class="paper">
            <header class="paper__head">
                <p class="paper__name">{project.name.clone()}</p>
                <h2 class="paper__title">{title}</h2>
                <p class="paper__facts">
                    {format!("sheet {} of {} · lengths in {units} · ", number.0, number.1)} <span class="paper__when"></span>
                </p>
                {note}
            </header>
            {children()}
            <footer class="paper__foot">
                <p class="paper__rules"><strong>"Rules of every joint: "</strong> {fractions(&words.join("; "))} "."</p>
                <p class="paper__caution"><strong>"Caution: "</strong> {CAUTION}</p>
            </footer>
        </article>
    }
}
