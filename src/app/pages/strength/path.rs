//! The way of the load down to the ground, and of the lift up from it, link by link.
use crate::app::cached::Cached;
use crate::app::components::fold;
use crate::app::dom::{Tag, tag};
use crate::app::use_store;
use crate::report;

/// Both ways.
pub fn paths() -> Tag {
    let store = use_store();
    let html = Cached::new(move || store.strong().map_or_else(String::new, |strong| report::paths(&strong.strength)));
    fold(
        "The way down, and what holds it when the wind lifts",
        "link by link",
        false,
        tag("div").live_html(move || html.get()),
    )
}
