//! The project's name, the way back, and whether the work is safe.
use super::projects::project_list;
use crate::app::components::{Segment, segments};
use crate::app::dom::{Tag, button, drawing_tag, parts, tag};
use crate::app::saving::{SaveState, use_saving};
use crate::app::theme::theme_choice;
use crate::app::use_store;
use crate::units::UnitSystem;
use leptos::ev;
use leptos::prelude::*;

/// The bar on top.
pub fn header() -> Tag {
    let store = use_store();
    let open = RwSignal::new(false);
    let name = store.slice(|project| project.name.clone());
    let note = store.slice(|project| project.note.clone());
    undo_keys();
    parts()
        .child(
            tag("header")
                .class("head")
                .child(
                    button("head__name", move |_| open.update(|open| *open = !*open))
                        .live_attr("aria-expanded", move || open.get().to_string())
                        .attr("aria-controls", "projects")
                        .child(tag("span").class("head__project").live_text(move || name.get()))
                        .child(
                            tag("span")
                                .class("head__fold")
                                .attr("aria-hidden", "true")
                                .live(move || if open.get() { "▴" } else { "▾" }),
                        )
                        .child(tag("span").class("quiet").child(", projects and settings")),
                )
                .child(save_mark())
                .child(
                    button("head__step", move |_| store.undo())
                        .live_attr("disabled", move || !store.can_undo())
                        .child(turn(false))
                        .child(tag("span").class("head__word").child("Undo")),
                )
                .child(
                    button("head__step", move |_| store.redo())
                        .live_attr("disabled", move || !store.can_redo())
                        .child(turn(true))
                        .child(tag("span").class("head__word").child("Redo")),
                )
                .live(move || {
                    let note = note.get();
                    (!note.is_empty()).then(|| tag("p").class("head__note").child(note))
                }),
        )
        .live(move || open.get().then(|| drawer(open)))
}

/// An arrow that turns back, or forth.
fn turn(forth: bool) -> Tag {
    let turned = forth.then_some("translate(24 0) scale(-1 1)");
    drawing_tag("svg")
        .class("head__turn")
        .attr("viewBox", "0 0 24 20")
        .attr("aria-hidden", "true")
        .attr("focusable", "false")
        .child(
            drawing_tag("path")
                .attr("transform", turned)
                .attr("d", "M9 2 L3 8 L9 14 M3 8 H15 A5.5 5.5 0 0 1 15 18 H11"),
        )
}

/// Projects and settings, under the header.
fn drawer(open: RwSignal<bool>) -> Tag {
    let store = use_store();
    Effect::watch(move || store.id(), move |_, _, _| open.set(false), false);
    tag("section")
        .class("drawer")
        .attr("id", "projects")
        .attr("aria-label", "Projects and settings")
        .child(tag("div").class("drawer__settings").child(units_choice()).child(theme_choice()))
        .child(project_list())
        .child(button("button", move |_| open.set(false)).child("Back to the frame"))
}

/// Feet and inches, or millimetres: shows every length the other way, and changes none.
pub fn units_choice() -> Tag {
    let store = use_store();
    let segment = move |system: UnitSystem, word: &str| {
        Segment::new(word, move || store.units() == system, move || store.set_units(system))
    };
    let all = vec![segment(UnitSystem::Imperial, "feet, inches"), segment(UnitSystem::Metric, "millimetres")];
    segments("units", "Lengths in", (), all).attr("id", "units")
}
/// One word about the last save.
fn save_mark() -> Tag {
    let saving = use_saving();
    let word = move || match saving.state.get() {
        SaveState::Saved => "saved",
        SaveState::Waiting => "saving",
        SaveState::NotSaved(_) | SaveState::Conflict => "not saved",
    };
    let wrong = move || matches!(saving.state.get(), SaveState::NotSaved(_) | SaveState::Conflict);
    tag("span").class("head__saved").live_class("head__saved--wrong", wrong).live(word)
}

/// The usual keys; inside a text field they belong to the text.
fn undo_keys() {
    let store = use_store();
    let handle = window_event_listener(ev::keydown, move |event| {
        let in_text =
            document().active_element().is_some_and(|element| element.matches("input.field__input").unwrap_or(false));
        if in_text || !(event.ctrl_key() || event.meta_key()) || event.alt_key() {
            return;
        }
        match (event.key().as_str(), event.shift_key()) {
            ("z", false) => store.undo(),
            ("y", false) | ("z" | "Z", true) => store.redo(),
            _ => return,
        }
        event.prevent_default();
    });
    on_cleanup(move || handle.remove());
}
