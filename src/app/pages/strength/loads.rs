//! The loads, each drawn on the section it acts on, with its working.
use crate::app::cached::Cached;
use crate::app::components::{drawing_view, fold};
use crate::app::dom::{Tag, parts, tag};
use crate::app::use_store;
use crate::drawing::{load_section, svg};
use crate::report;
use leptos::prelude::*;

/// The loads of the roof.
pub fn loads() -> Tag {
    let store = use_store();
    let chosen = RwSignal::new(0_usize);
    let names = Cached::new(move || {
        let strong = store.strong();
        let cases =
            strong.map(|strong| strong.strength.loads.cases.iter().map(|case| case.name.clone()).collect::<Vec<_>>());
        cases.unwrap_or_default()
    });
    let options = move || {
        names
            .get()
            .into_iter()
            .enumerate()
            .map(|(index, name)| {
                let is_chosen = index == chosen.get_untracked();
                tag("option").attr("value", index.to_string()).attr("selected", is_chosen).child(name)
            })
            .collect::<Vec<_>>()
    };
    let pick = move |event: leptos::ev::Event| chosen.set(event_target_value(&event).parse().unwrap_or(0));
    let draw = move |width: f64| {
        store.strong().map_or_else(String::new, |strong| {
            let case = strong.strength.loads.cases.get(chosen.get());
            case.map_or_else(String::new, |case| {
                svg::print(&load_section(&strong.good.project, &strong.good.built, case), width, &case.name)
            })
        })
    };
    let steps = Cached::new(move || {
        store.strong().map_or_else(String::new, |strong| report::load_working(&strong.strength, chosen.get()))
    });
    fold(
        "Loads on the roof",
        "each with its working",
        false,
        parts()
            .child(tag("label").class("field__label").attr("for", "load-case").child("Load"))
            .child(
                tag("select")
                    .attr("id", "load-case")
                    .class("field__input field__pick case-pick")
                    .on("change", pick)
                    .live(options),
            )
            .child(drawing_view(draw, "The load on the section", None))
            .child(tag("div").live_html(move || steps.get())),
    )
}
