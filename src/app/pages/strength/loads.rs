//! The loads, each drawn on the section it acts on, with its working.
use crate::app::components::{DrawingView, Fold};
use crate::app::use_store;
use crate::drawing::{load_section, svg};
use crate::report;
use leptos::prelude::*;

/// The loads of the roof.
#[component]
pub fn Loads() -> impl IntoView {
    let store = use_store();
    let chosen = RwSignal::new(0_usize);
    let names = Memo::new(move |_| {
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
            .map(|(index, name)| view! { <option value=index.to_string()>{name}</option> })
            .collect_view()
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
    let steps = Memo::new(move |_| {
        store.strong().map_or_else(String::new, |strong| report::load_working(&strong.strength, chosen.get()))
    });
    view! {
        <Fold title="Loads on the roof" summary="each with its working">
            <label class="field__label" for="load-case">"Load"</label>
            <select id="load-case" class="field__input field__pick" on:change=pick>{options}</select>
            <DrawingView draw label="The load on the section"/>
            <div inner_html=steps></div>
        </Fold>
    }
}
