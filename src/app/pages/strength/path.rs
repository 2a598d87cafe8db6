//! The way of the load down to the ground, and of the lift up from it: drawn as chains, and link by link.
use super::along::drawn_width;
use crate::app::cached::Cached;
use crate::app::components::{late_fold, word};
use crate::app::dom::{Tag, parts, tag};
use crate::app::{Strong, use_store};
use crate::report;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Both ways. A tap on a number opens its link.
pub fn paths() -> Tag {
    late_fold("The way down, and what holds it when the wind lifts", "link by link", || {
        let store = use_store();
        let html = Cached::new(move || {
            store.strong().map_or_else(String::new, |strong| {
                let good = &strong.good;
                report::paths(&good.project, &good.built, &strong.strength, drawn_width(), true)
            })
        });
        let tap = move |event: web_sys::Event| {
            if let Some(strong) = untrack(move || store.strong()) {
                tapped(&event, &strong);
            }
        };
        parts()
            .child(word(report::WAYS))
            .child(tag("div").class("paths").live_html(move || html.get()).on("click", tap))
    })
}

/// A number was tapped: its row opens and comes into sight. A row was tapped: its body is filled.
fn tapped(event: &web_sys::Event, strong: &Strong) -> Option<()> {
    let element = event.target()?.dyn_into::<web_sys::Element>().ok()?;
    let row = match element.closest("[data-link]").ok()? {
        Some(number) => {
            let key = number.get_attribute("data-link")?;
            element.closest(".path").ok()??.query_selector(&format!("[data-row=\"{key}\"]")).ok()??
        }
        None => element.closest(".link__head").ok()??.closest("[data-row]").ok()??,
    };
    let key = row.get_attribute("data-row")?;
    let (path, link) = key.split_once('.')?;
    let link = strong.strength.paths.get(path.parse::<usize>().ok()?)?.links.get(link.parse::<usize>().ok()?)?;
    if let (Some(check), Some(body)) = (&link.check, row.query_selector(".check__body").ok()?)
        && body.child_element_count() == 0
    {
        body.set_inner_html(&report::working(check, strong.good.project.units));
    }
    if !row.contains(Some(&element)) {
        if let Some(opens) = row.query_selector("details").ok()? {
            opens.set_attribute("open", "").ok()?;
        }
        row.scroll_into_view();
    }
    Some(())
}
