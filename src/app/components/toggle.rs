//! Yes or no.
use super::reading::followed;
use crate::app::dom::{Tag, tag};
use crate::app::{Lens, use_store};
use leptos::prelude::*;

/// A switch.
pub fn toggle(field: Lens<bool>, label: impl Into<Signal<String>>, hint: impl Into<Signal<String>>) -> Tag {
    switch(&field, label.into(), hint.into())
}

fn switch(field: &Lens<bool>, label: Signal<String>, hint: Signal<String>) -> Tag {
    let field = field.clone();
    let store = use_store();
    let path = field.path().to_string();
    let shown = field.clone();
    let on = Memo::new(move |_| shown.get(&store.project()).unwrap_or(false));
    let turn = move |_| {
        let next = !on.get_untracked();
        store.edit(|project| field.set(project, next));
    };
    tag("label")
        .class("toggle")
        .child(
            tag("input")
                .class("toggle__input")
                .attr("type", "checkbox")
                .attr("role", "switch")
                .attr("id", path)
                .live_prop("checked", move || on.get())
                .on("change", turn),
        )
        .child(tag("span").class("toggle__knob").attr("aria-hidden", "true"))
        .child(
            tag("span")
                .class("toggle__words")
                .child(tag("span").class("toggle__name").child(label))
                .child(tag("span").class("field__hint").child(followed(hint))),
        )
}
