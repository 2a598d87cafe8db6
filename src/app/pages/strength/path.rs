//! The way of the load down to the ground, and of the lift up from it, link by link.
use crate::app::components::Fold;
use crate::app::use_store;
use crate::report;
use leptos::prelude::*;

/// Both ways.
#[component]
pub fn Paths() -> impl IntoView {
    let store = use_store();
    let html = Memo::new(move |_| store.strong().map_or_else(String::new, |strong| report::paths(&strong.strength)));
    view! {
        <Fold title="The way down, and what holds it when the wind lifts" summary="link by link">
            <div inner_html=html></div>
        </Fold>
    }
}
