//! A page: its heading, the drawing that leads it, and its fields.
use crate::app::dom::{Child, Tag, parts, tag};
use crate::app::route::Place;
use crate::app::use_store;
use leptos::prelude::*;

/// A page. On a phone the drawing stands over the fields, on a desk left of them.
pub fn page(
    place: Place,
    title: impl Into<Signal<String>>,
    about: impl Into<Signal<String>>,
    lead: impl Child,
    fields: impl Child,
) -> Tag {
    head(place, title.into(), about.into(), parts().child(lead)).child(tag("div").class("page__fields").child(fields))
}

fn head(place: Place, title: Signal<String>, about: Signal<String>, lead: Tag) -> Tag {
    let store = use_store();
    let stale = move || {
        store.is_stale().then(|| {
            let text = if store.good().is_some() {
                "Drawn as it last could be built: a problem stops the frame as it is now."
            } else {
                "Nothing to draw yet: a problem stops the frame."
            };
            tag("p").class("page__stale").child(text)
        })
    };
    tag("article")
        .class("page")
        .attr("data-place", place.key())
        .child(
            tag("header")
                .class("page__head")
                .child(tag("h1").class("page__title").attr("tabindex", "-1").child(title))
                .child(tag("p").class("page__about").child(about)),
        )
        .child(tag("div").class("page__lead").live(stale).child(lead))
}

/// A paragraph between the fields.
pub fn word(text: impl Child) -> Tag {
    tag("p").class("page__word").child(text)
}
