//! A text made here and handed on to somebody else.
use super::clipboard;
use crate::app::dom::{Tag, button, parts, tag};
use leptos::prelude::*;

/// A button that copies a text; where the clipboard refuses, the text is shown to be taken by hand.
pub fn message(word: &'static str, label: &'static str, text: impl Fn() -> Option<String> + 'static) -> Tag {
    made(word, label, Box::new(text))
}

#[inline(never)]
fn made(word: &'static str, label: &'static str, text: Box<dyn Fn() -> Option<String>>) -> Tag {
    let said = RwSignal::new("");
    let by_hand = RwSignal::new(None::<String>);
    let copy = move |_| {
        let Some(text) = text() else { return };
        let kept = text.clone();
        clipboard::copy(&text, move |went| {
            let _ =
                said.try_set(if went { "It is on the clipboard: paste it." } else { "Not copied: take it from here." });
            let _ = by_hand.try_set((!went).then_some(kept));
        });
    };
    parts()
        .child(tag("div").class("actions").child(button("button", copy).child(word)))
        .child(tag("p").class("hand-out__said").attr("role", "status").live(move || said.get()))
        .live(move || {
            by_hand.get().map(|text| {
                tag("textarea")
                    .class("hand-out__text")
                    .attr("readonly", true)
                    .attr("rows", "8")
                    .attr("aria-label", label)
                    .live_prop("value", move || text.clone())
            })
        })
}
