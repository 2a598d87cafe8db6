//! Brings the user to a field.
use super::route::{Place, Route, Router};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, HtmlElement};

/// Focuses the field of that path, or the nearest one above it, opening what it is folded into.
pub fn focus_field(path: &str) {
    let Some(element) = nearest(path) else { return };
    if unfold(&element) {
        // What was folded away may not hold yet what it holds now.
        let path = path.to_owned();
        set_timeout(move || nearest(&path).into_iter().for_each(focus_in), std::time::Duration::ZERO);
    } else {
        focus_in(element);
    }
}

/// The element of that path, or of the nearest one above it.
fn nearest(mut path: &str) -> Option<Element> {
    loop {
        match document().get_element_by_id(path) {
            Some(element) => return Some(element),
            None => path = &path[..path.rfind('.')?],
        }
    }
}

/// Focuses what is chosen of several, or the element itself.
fn focus_in(element: Element) {
    let inner = element.query_selector("input:checked").ok().flatten();
    focus(inner.unwrap_or(element));
}

/// Opens the page of a field and brings the user to it.
pub fn go_to_field(router: Router, path: &str) {
    router.go(&Route { place: place_of(path), stick: None });
    let path = path.to_owned();
    // The page of the field must be there before the field can be focused.
    set_timeout(move || focus_field(&path), std::time::Duration::from_millis(80));
}

/// The place that holds a field.
fn place_of(path: &str) -> Place {
    match path.split('.').next().unwrap_or_default() {
        "site" | "place" | "above" | "ground" => Place::Site,
        "mill" => Place::Mill,
        "roofing" => Place::Roof,
        "progress" => Place::Bench,
        _ => Place::Frame,
    }
}

/// Focuses the page's heading, so that a screen reader begins there.
pub fn focus_heading() {
    if let Ok(Some(heading)) = document().query_selector("main h1") {
        focus(heading);
    }
}

/// Opens what an element is folded into; whether any of it was folded away.
fn unfold(element: &Element) -> bool {
    let mut was_folded = false;
    let mut within = element.closest("details").ok().flatten();
    while let Some(fold) = within {
        if !fold.has_attribute("open") {
            let _ = fold.set_attribute("open", "");
            // The browser tells it later.
            let _ = Event::new("toggle").and_then(|event| fold.dispatch_event(&event));
            was_folded = true;
        }
        within = fold.parent_element().and_then(|parent| parent.closest("details").ok().flatten());
    }
    was_folded
}

fn focus(element: Element) {
    if let Ok(element) = element.dyn_into::<HtmlElement>() {
        let _ = element.focus();
        element.scroll_into_view_with_bool(false);
    }
}
