//! The loads, each drawn on the section it acts on, with its working.
use crate::analysis::section_loads;
use crate::app::cached::Cached;
use crate::app::components::{drawing_view, late_fold};
use crate::app::dom::{Tag, parts, tag};
use crate::app::use_store;
use crate::drawing::{load_section, svg};
use crate::report;
use leptos::prelude::*;

/// The loads of the roof.
pub fn loads() -> Tag {
    late_fold("Loads on the section", "each by itself, with its working", body)
}

fn body() -> Tag {
    let store = use_store();
    let chosen = RwSignal::new(0_usize);
    let cases = Cached::new(move || {
        let strong = store.strong();
        strong.map(|strong| section_loads(&strong.good.project, &strong.strength.loads)).unwrap_or_default()
    });
    let options = move || {
        let mut all = Vec::new();
        for (index, case) in cases.get().into_iter().enumerate() {
            let is_chosen = index == chosen.get_untracked();
            let says = format!("{}: {}", case.action.symbol(), case.name);
            all.push(tag("option").attr("value", index.to_string()).attr("selected", is_chosen).child(says));
        }
        all
    };
    let pick = move |event: leptos::ev::Event| chosen.set(event_target_value(&event).parse().unwrap_or(0));
    let draw = move |width: f64| {
        store.strong().map_or_else(String::new, |strong| {
            cases.with(|cases| {
                cases.get(chosen.get()).map_or_else(String::new, |case| {
                    svg::print(&load_section(&strong.good.project, &strong.good.built, case), width, &case.name)
                })
            })
        })
    };
    let steps = Cached::new(move || {
        cases.with(|cases| cases.get(chosen.get()).map(|case| report::load_working(&case.steps))).unwrap_or_default()
    });
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
        .child(tag("div").live_html(move || steps.get()))
}
