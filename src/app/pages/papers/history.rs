//! The way back.
use crate::app::cached::text_of;
use crate::app::components::{fold, word};
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::use_store;

/// Undo and redo.
pub fn history() -> Tag {
    let store = use_store();
    let summary = text_of(move || {
        if store.can_undo() { "there are steps to go back".to_owned() } else { "nothing changed yet".to_owned() }
    });
    fold("Steps back", summary, false, || {
        parts()
            .child(word(
                "Every change since the project was opened can be taken back, ticks included, one step at a time.",
            ))
            .child(
                tag("div")
                    .class("actions")
                    .child(
                        button("button", move |_| store.undo())
                            .live_attr("disabled", move || !store.can_undo())
                            .child("One step back"),
                    )
                    .child(
                        button("button", move |_| store.redo())
                            .live_attr("disabled", move || !store.can_redo())
                            .child("One step forth"),
                    ),
            )
    })
}
