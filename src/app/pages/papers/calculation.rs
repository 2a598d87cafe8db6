//! The whole calculation of the strength, printed by itself for an engineer.
use crate::app::cached::Cached;
use crate::app::components::{fold, word};
use crate::app::dom::{Tag, beside_app, button, parts, tag};
use crate::app::files::{download, file_name};
use crate::app::{Strong, use_store};
use crate::report;
use leptos::prelude::*;

/// Set on the page's body while the calculation alone is printed; the style sheet looks at it.
const PRINTS: &str = "data-prints";

fn whole(strong: &Strong) -> String {
    report::calculation(&strong.good.project, &strong.good.built, &strong.strength)
}

/// The calculation: to print, and as a page of its own.
pub fn calculation() -> Tag {
    let store = use_store();
    let wanted = RwSignal::new(false);
    let html = Cached::new(move || {
        if !wanted.get() {
            return String::new();
        }
        store.strong().map_or_else(String::new, |strong| whole(&strong))
    });
    let handle = window_event_listener_untyped("afterprint", move |_| {
        let _ = document().body().map(|body| body.remove_attribute(PRINTS));
        wanted.set(false);
    });
    on_cleanup(move || handle.remove());
    let print = move |_| {
        wanted.set(true);
        let _ = document().body().map(|body| body.set_attribute(PRINTS, "calculation"));
        // The sheet must stand in the page before the browser looks at it.
        request_animation_frame(|| {
            let _ = window().print();
        });
    };
    let keep = move |_| {
        if let Some(strong) = untrack(move || store.strong()) {
            let page = report::page(&strong.good.project.name, &whole(&strong));
            download(&file_name(&strong.good.project.name, "strength.html"), &page, "text/html");
        }
    };
    beside_app(tag("div").class("pack pack--calculation").attr("aria-hidden", "true").live_html(move || html.get()));
    fold(
        "The calculation of the strength",
        "inputs, loads, every check with its working",
        false,
        parts()
            .child(word(
                "For an engineer or the building authority: what it is worked from, every \
                 load and every check, the governing ones step by step with document and \
                 clause.",
            ))
            .child(button("button button--main", print).child("Print the calculation"))
            .child(button("button", keep).child("Keep it as a page")),
    )
}
