//! What another rafter spacing would do; reckoned only while its fold is open.
use super::spacing_held::spacing_held;
use crate::app::cached::Cached;
use crate::app::charts::spacing_charts;
use crate::app::components::word;
use crate::app::dom::{Tag, tag};
use crate::app::use_store;
use crate::project::{Progress, Project};
use crate::study::{SpacingPoint, spacing_study};
use leptos::prelude::*;

/// The study.
pub fn spacing_fold() -> Tag {
    let store = use_store();
    let open = RwSignal::new(false);
    // A tick, a name or a remark is no reason to reckon fourteen frames again.
    let studied = Cached::new(move || store.good().map(|good| bare(&good.project)));
    let points = Cached::new(move || -> Vec<SpacingPoint> {
        if !open.get() {
            return Vec::new();
        }
        studied.with(|project| project.as_ref().map(spacing_study).unwrap_or_default())
    });
    let charts = move || {
        let points = points.get();
        (points.len() > 1).then(|| {
            let currency = store.slice(|project| project.currency.clone()).get();
            spacing_charts(points, store.units(), currency)
        })
    };
    let turned = move |event: leptos::ev::Event| {
        open.set(event_target::<web_sys::Element>(&event).has_attribute("open"));
    };
    tag("details")
        .class("fold")
        .on("toggle", turned)
        .child(
            tag("summary")
                .class("fold__head")
                .child(tag("h2").class("fold__title").child("What the spacing costs"))
                .child(tag("span").class("fold__summary").child("rafters, weight, price")),
        )
        .child(
            tag("div")
                .class("fold__body")
                .child(word(
                    "The whole frame, worked out again at each spacing. Wider is lighter and \
                     cheaper, and asks more of every rafter: see Strength. Spacings the frame \
                     cannot be built at are left out.",
                ))
                .live(charts)
                .shown(move || open.get(), spacing_held),
        )
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
