//! A sheet that is printed by itself, from wherever it is asked for.
use crate::app::dom::{beside_app, tag};
use leptos::prelude::*;

/// Set on the page's body while a sheet alone is printed; the style sheet looks at it.
const PRINTS: &str = "data-prints";
/// What is printed then: the sheet's class.
const SHEET: &str = "single-sheet";

/// Makes room beside the app for one sheet, and gives what prints it: the sheet as HTML, shown on paper only.
pub fn print_alone() -> impl Fn(String) + Copy + 'static {
    let sheet = RwSignal::new(String::new());
    let handle = window_event_listener_untyped("afterprint", move |_| {
        let _ = document().body().map(|body| body.remove_attribute(PRINTS));
        sheet.set(String::new());
    });
    on_cleanup(move || handle.remove());
    beside_app(tag("div").class(SHEET).attr("aria-hidden", "true").live_html(move || sheet.get()));
    move |html| {
        sheet.set(html);
        let _ = document().body().map(|body| body.set_attribute(PRINTS, SHEET));
        // The sheet must stand in the page before the browser looks at it.
        request_animation_frame(|| {
            let _ = window().print();
        });
    }
}
