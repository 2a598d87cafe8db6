//! What stands around the pages: header, strip, rule, and what must be said.
mod header;
mod notices;
mod projects;
mod start;

pub use header::UnitsChoice;
pub use projects::ProjectList;

use super::components::{Rule, Strip};
use super::focus::focus_heading;
use super::pages::PageOf;
use super::route::use_router;
use super::use_store;
use header::Header;
use leptos::prelude::*;
use notices::Notices;
use start::Start;

/// The whole app: the start page, or the open project.
#[component]
pub fn Shell() -> impl IntoView {
    let store = use_store();
    let is_open = Memo::new(move |_| store.id().is_some());
    follow_title();
    view! {
        <a class="skip" href="#content" on:click=move |event| {
            event.prevent_default();
            focus_heading();
        }>"To the page"</a>
        {move || if is_open.get() { view! { <Open/> }.into_any() } else { view! { <Closed/> }.into_any() }}
    }
}

#[component]
fn Closed() -> impl IntoView {
    view! {
        <div class="app app--closed">
            <Notices/>
            <main class="app__page" id="content" tabindex="-1"><Start/></main>
        </div>
    }
}

#[component]
fn Open() -> impl IntoView {
    let router = use_router();
    let store = use_store();
    // Another project is another page: nothing half-typed may pass from one to the other.
    let which = Memo::new(move |_| (router.place(), store.id()));
    view! {
        <div class="app">
            <Header/>
            <Notices/>
            <Strip/>
            <main class="app__page" id="content" tabindex="-1">
                {move || {
                    let (place, _) = which.get();
                    view! { <PageOf place/> }
                }}
            </main>
            <Rule/>
        </div>
    }
}

/// Title and focus follow the place, not the first one.
fn follow_title() {
    let router = use_router();
    let store = use_store();
    let name = store.slice(|project| project.name.clone());
    Effect::new(move |_| {
        let title = match store.id() {
            Some(_) => format!("{} · {} · Outshot", router.place().name(), name.get()),
            None => "Outshot".to_owned(),
        };
        document().set_title(&title);
    });
    let arrive = move |_: &_, before: Option<&_>, _| {
        if before.is_some() {
            request_animation_frame(|| {
                window().scroll_to_with_x_and_y(0.0, 0.0);
                focus_heading();
            });
        }
    };
    Effect::watch(move || (router.place(), store.id()), arrive, true);
}
