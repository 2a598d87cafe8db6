//! The app in the browser: pages → components → store → library.
mod after;
mod cached;
pub mod charts;
pub mod clock;
pub mod components;
pub mod device;
pub mod dom;
pub mod figures;
pub mod files;
pub mod focus;
mod history;
mod lens;
pub mod pages;
mod part;
pub mod route;
pub mod saving;
pub mod shell;
pub mod storage;
mod store;
pub mod theme;

pub use lens::Lens;
pub use store::{CHECKS, Fitted, Good, LAYOUT, SOLIDS, Store, Strong, use_store};

use crate::app::dom::Tag;
use leptos::prelude::*;
use part::{Fetched, fetch_in_turn};
use std::time::Duration;
use wasm_bindgen::JsCast;

/// Starts the app in the page.
pub fn mount() {
    device::report_panics();
    let Some(root) = document().get_element_by_id("app") else { return };
    // The sentence that stood there while the program loaded.
    root.set_text_content(None);
    if let Ok(root) = root.dyn_into::<web_sys::HtmlElement>() {
        // Leptos gives the owner and the executor its signals run under; the elements are our own.
        let page = root.clone();
        let put = move || {
            let _ = page.append_child(app().node());
        };
        mount_to(root, put).forget();
    }
}

/// Nothing is fetched for later before the first screen has stood so long.
const FIRST_SCREEN: Duration = Duration::from_secs(2);

/// Fetches the rest of the program once the first screen stands, for the time without a signal.
fn fetch_the_rest() {
    let owner = Owner::current().unwrap_or_default();
    let engines: [&dyn Fetched; 3] = [&LAYOUT, &CHECKS, &SOLIDS];
    let fetch = move || owner.with(|| fetch_in_turn(engines.into_iter().chain(pages::PARTS).collect()));
    set_timeout(fetch, FIRST_SCREEN);
}

/// Everything that lives as long as the page.
fn app() -> Tag {
    let store = Store::new();
    provide_context(store);
    provide_context(route::Router::start());
    provide_context(theme::Theming::start());
    let saving = saving::Saving::start(store);
    provide_context(saving);
    saving.open_last();
    fetch_the_rest();
    shell::shell()
}
