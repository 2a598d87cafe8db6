//! Yes or no.
use super::reading::followed;
use crate::app::cached::Cached;
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
    let on = Cached::new(move || shown.get(&store.project()).unwrap_or(false));
    let turn = move |_| {
        let next = !on.get_untracked();
        store.edit(|project| field.set(project, next));
    };
    let input = move |input: Tag| input.attr("id", path).live_prop("checked", move || on.get()).on("change", turn);
    let hint = tag("span").class("field__hint").child(followed(hint));
    knob(input, tag("span").class("toggle__words").child(tag("span").class("toggle__name").child(label)).child(hint))
}

/// The switch as it is seen, beside its words; `input` binds what it stands for.
pub fn knob(input: impl FnOnce(Tag) -> Tag, words: Tag) -> Tag {
    let plain = tag("input").class("toggle__input").attr("type", "checkbox").attr("role", "switch");
    tag("label")
        .class("toggle")
        .child(input(plain))
        .child(tag("span").class("toggle__knob").attr("aria-hidden", "true"))
        .child(words)
}
