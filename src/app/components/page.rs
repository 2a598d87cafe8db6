//! A page: its heading, the drawing that leads it, and its fields.
use crate::app::route::Place;
use crate::app::use_store;
use leptos::prelude::*;

/// A page. On a phone the drawing stands over the fields, on a desk left of them.
#[component]
pub fn Page(
    /// Where it is.
    place: Place,
    /// Its heading.
    #[prop(into)]
    title: Signal<String>,
    /// A few words under the heading.
    #[prop(optional, into)]
    about: Signal<String>,
    /// What leads it.
    #[prop(into)]
    lead: ViewFn,
    /// Its fields.
    children: Children,
) -> impl IntoView {
    let store = use_store();
    let stale = move || {
        store.is_stale().then(|| {
            let text = if store.good().is_some() {
                "Drawn as it last could be built: a problem stops the frame as it is now."
            } else {
                "Nothing to draw yet: a problem stops the frame."
            };
            view! { <p class="page__stale">{text}</p> }
        })
    };
    view! {
        <article class="page" data-place=place.key()>
            <header class="page__head">
                <h1 class="page__title" tabindex="-1">{title}</h1>
                <p class="page__about">{about}</p>
            </header>
            <div class="page__lead">{stale} {lead.run()}</div>
            <div class="page__fields">{children()}</div>
        </article>
    }
}
