//! What another rafter spacing would do; reckoned only while its fold is open.
use crate::app::charts::SpacingCharts;
use crate::app::use_store;
use crate::project::{Progress, Project};
use crate::study::{SpacingPoint, spacing_study};
use leptos::prelude::*;

/// The study.
#[component]
pub fn SpacingFold() -> impl IntoView {
    let store = use_store();
    let open = RwSignal::new(false);
    // A tick, a name or a remark is no reason to reckon fourteen frames again.
    let studied = Memo::new(move |_| store.good().map(|good| bare(&good.project)));
    let points = Memo::new(move |_| -> Vec<SpacingPoint> {
        if !open.get() {
            return Vec::new();
        }
        studied.with(|project| project.as_ref().map(spacing_study).unwrap_or_default())
    });
    let charts = move || {
        let points = points.get();
        (points.len() > 1).then(|| {
            let currency = store.slice(|project| project.currency.clone()).get();
            view! { <SpacingCharts points units=store.units() currency/> }
        })
    };
    let turned = move |event: leptos::ev::Event| {
        open.set(event_target::<web_sys::Element>(&event).has_attribute("open"));
    };
    view! {
        <details class="fold" on:toggle=turned>
            <summary class="fold__head">
                <h2 class="fold__title">"What the spacing costs"</h2>
                <span class="fold__summary">"rafters, weight, price"</span>
            </summary>
            <div class="fold__body">
                <p class="page__word">
                    "The whole frame, worked out again at each spacing. Wider is lighter and cheaper, and asks more of every rafter:
                    see Strength. Spacings the frame cannot be built at are left out."
                </p>
                {charts}
            </div>
        </details>
    }
}

/// The project without what the study does not depend on.
fn bare(project: &Project) -> Project {
    Project {
        name: String::new(),
        note: String::new(),
        currency: String::new(),
        progress: Progress::default(),
        ..project.clone()
    }
}
