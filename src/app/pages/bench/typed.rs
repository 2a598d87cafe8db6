//! Fields of a form that are no field of the project.
use crate::app::dom::{Tag, tag};
use crate::units::{Length, UnitSystem, parse_length};
use leptos::prelude::*;

/// A text field; `id` is its own on the page.
pub fn typed(id: &'static str, label: &'static str, hint: &'static str, text: RwSignal<String>) -> Tag {
    let input = tag("input")
        .class("field__input")
        .attr("id", id)
        .attr("type", "text")
        .attr("autocomplete", "off")
        .live_prop("value", move || text.get())
        .on("input", move |event| text.set(event_target_value(&event)));
    labelled(id, label, hint, input)
}

/// One of many, by its place.
pub fn picked(id: &'static str, label: &'static str, words: Vec<String>, place: RwSignal<usize>) -> Tag {
    let one = |(at, word): (usize, String)| tag("option").attr("value", at.to_string()).child(word);
    let select = tag("select")
        .class("field__input field__pick")
        .attr("id", id)
        .child(words.into_iter().enumerate().map(one).collect::<Vec<_>>())
        .live_prop("value", move || place.get().to_string())
        .on("change", move |event| place.set(event_target_value(&event).parse().unwrap_or_default()));
    labelled(id, label, "", select)
}

fn labelled(id: &'static str, label: &'static str, hint: &'static str, input: Tag) -> Tag {
    tag("div")
        .class("field")
        .child(
            tag("label")
                .class("field__label")
                .attr("for", id)
                .child(tag("span").class("field__name").child(label))
                .child(tag("span").class("field__hint").child(hint)),
        )
        .child(tag("div").class("field__box").child(input))
}

/// A typed length, or the sentence that says why not.
pub fn read(text: RwSignal<String>, units: UnitSystem) -> Result<Length, String> {
    text.with(|text| parse_length(text, units)).map_err(|why| why.to_string())
}
