//! The sheets on paper. They stand beside the app in the page, seen only by the printer.
use super::choose::{Kind, Wanted};
use super::index_sheet::index_sheet;
use super::joints_sheet::joints_sheet;
use super::loads_sheet::loads_sheet;
use super::order_sheet::order_sheet;
use super::pile_sheet::pile_sheet;
use super::receiving_sheet::receiving_sheet;
use super::roof_sheet::roof_sheet;
use super::rules::rules;
use super::stick_sheet::stick_sheet;
use super::thumbs::scene;
use crate::app::clock;
use crate::app::components::fractions;
use crate::app::dom::{Child, Tag, beside_app, parts, tag};
use crate::app::{Good, use_store};
use crate::drawing::{fitting_scale, svg};
use crate::joinery::all_own;
use crate::project::JointName;
use crate::units::UnitSystem;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Room for a drawing on a sheet, px at 96 to the inch: 180 mm wide, and as high as Letter leaves it under
/// the header and over the foot.
pub(super) const ROOM: (f64, f64) = (680.0, 640.0);

/// The line that every sheet carries.
const CAUTION: &str = "Lengths, marks and order. Have your local code and a licensed engineer say yes to the strength before you buy, cut \
                       or lift.";

/// Everything that is to be printed.
pub fn pack(wanted: RwSignal<Wanted>) {
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
            paper(good.clone(), kind.title().to_owned(), (index + 1, n_sheets), of_kind(kind, &good))
        });
        let marks = wanted.marks(&good.built);
        // The shop book: its index, then a sheet a stick.
        let book = (!marks.is_empty()).then(|| {
            let index = index_sheet(&good, (&marks, n_kinds + 2), wanted.joints_sheet());
            paper(good.clone(), "Shop book: order of work".to_owned(), (n_kinds + 1, n_sheets), index)
        });
        let sticks = marks.into_iter().enumerate().map(|(index, mark)| {
            let good = good.clone();
            paper(good.clone(), format!("Stick {mark}"), (n_kinds + index + 2, n_sheets), stick_sheet(good, mark))
        });
        Some(parts().child(papers.collect::<Vec<_>>()).child(book).child(sticks.collect::<Vec<_>>()))
    };
    let pack = tag("div").class("pack").attr("aria-hidden", "true").live(sheets);
    beside_app(pack);
}

/// Writes the time onto every sheet, at the moment it is printed.
fn stamp() {
    let pack = document().query_selector(".pack").ok().flatten();
    if let Some(Ok(pack)) = pack.map(JsCast::dyn_into::<web_sys::HtmlElement>) {
        let now = clock::show(clock::now()).replace(['"', '\\', '\n'], " ");
        let _ = pack.style().set_property("--printed", &format!("\"printed {now}\""));
    }
}

fn of_kind(kind: Kind, good: &Good) -> Tag {
    let good = good.clone();
    match kind {
        Kind::Order => order_sheet(good),
        Kind::Roof => roof_sheet(good),
        Kind::Joints => joints_sheet(good),
        Kind::Pile => pile_sheet(good),
        Kind::Loads => loads_sheet(good),
        Kind::Receiving => receiving_sheet(good),
        Kind::Section | Kind::Elevation | Kind::Plan => drawn(kind, good),
    }
}

/// A drawing at the largest scale that fits, with the bar under it.
fn drawn(kind: Kind, good: Good) -> Tag {
    let scene = scene(kind, &good);
    let scale = fitting_scale(&scene, good.project.units, ROOM);
    let html = svg::print_to_scale(&scene, scale.ratio, kind.title());
    tag("figure")
        .class("paper__figure")
        .child(tag("figcaption").class("paper__scale").child("Scale ").child(fractions(scale.words)))
        .child(tag("div").class("paper__drawing").html(&html))
}

/// One sheet: its header, what it holds, the rules of the joints, and the caution.
fn paper(good: Good, title: String, number: (usize, usize), holds: impl Child) -> Tag {
    let project = good.project;
    let units = match project.units {
        UnitSystem::Imperial => "feet and inches",
        UnitSystem::Metric => "millimetres",
    };
    let note = (!project.note.is_empty()).then(|| tag("p").class("paper__note").child(project.note.clone()));
    let words: Vec<String> = rules(&project).into_iter().map(|(name, value)| format!("{name} {value}")).collect();
    let own = all_own(&project, &good.built.shape);
    let own: Vec<String> = own.into_iter().map(JointName::words).collect();
    let but = (!own.is_empty()).then(|| format!(". Not by them: {}", own.join(", ")));
    tag("article")
        .class("paper")
        .child(
            tag("header")
                .class("paper__head")
                .child(tag("p").class("paper__name").child(project.name.clone()))
                .child(tag("h2").class("paper__title").child(title))
                .child(
                    tag("p")
                        .class("paper__facts")
                        .child(format!("sheet {} of {} · lengths in {units} · ", number.0, number.1))
                        .child(tag("span").class("paper__when")),
                )
                .child(note),
        )
        .child(holds)
        .child(
            tag("footer")
                .class("paper__foot")
                .child(
                    tag("p")
                        .class("paper__rules")
                        .child(tag("strong").child("Rules of every joint: "))
                        .child(fractions(&words.join("; ")))
                        .child(but)
                        .child("."),
                )
                .child(tag("p").class("paper__caution").child(tag("strong").child("Caution: ")).child(CAUTION)),
        )
}
