//! Brings the user to a field.
use super::route::{Place, Route, Router};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement};

/// Focuses the field of that path, or the nearest one above it, opening what it is folded into.
pub fn focus_field(path: &str) {
    let mut path = path;
    loop {
        if let Some(element) = document().get_element_by_id(path) {
            unfold(&element);
            let inner = element.query_selector("input:checked").ok().flatten();
            focus(inner.unwrap_or(element));
            return;
        }
        match path.rfind('.') {
            Some(dot) => path = &path[..dot],
            None => return,
        }
    }
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

fn unfold(element: &Element) {
    let mut within = element.closest("details").ok().flatten();
    while let Some(fold) = within {
        let _ = fold.set_attribute("open", "");
        within = fold.parent_element().and_then(|parent| parent.closest("details").ok().flatten());
    }
}

fn focus(element: Element) {
    if let Ok(element) = element.dyn_into::<HtmlElement>() {
        let _ = element.focus();
        element.scroll_into_view_with_bool(false);
    }
}
