//! The project's name, the way back, and whether the work is safe.
use super::projects::ProjectList;
use crate::app::saving::{SaveState, use_saving};
use crate::app::theme::ThemeChoice;
use crate::app::use_store;
use crate::units::UnitSystem;
use leptos::ev;
use leptos::prelude::*;

/// The bar on top.
#[component]
pub fn Header() -> impl IntoView {
    let store = use_store();
    let open = RwSignal::new(false);
    let name = store.slice(|project| project.name.clone());
    let note = store.slice(|project| project.note.clone());
    view! {
        <header class="head">
            <button
                type="button"
                class="head__name"
                aria-expanded=move || open.get().to_string()
                aria-controls="projects"
                on:click=move |_| open.update(|open| *open = !*open)
            >
                <span class="head__project">{name}</span>
                <span class="head__fold" aria-hidden="true">{move || if open.get() { "▴" } else { "▾" }}</span>
                <span class="quiet">", projects and settings"</span>
            </button>
            <SaveMark/>
            <button type="button" class="head__step" disabled=move || !store.can_undo() on:click=move |_| store.undo()>
                <Turn/>
                <span class="head__word">"Undo"</span>
            </button>
            <button type="button" class="head__step" disabled=move || !store.can_redo() on:click=move |_| store.redo()>
                <Turn forth=true/>
                <span class="head__word">"Redo"</span>
            </button>
            {move || {
                let note = note.get();
                (!note.is_empty()).then(|| view! { <p class="head__note">{note}</p> })
            }}
        </header>
        {move || open.get().then(|| view! { <Drawer open/> })}
        <UndoKeys/>
    }
}

/// An arrow that turns back, or forth.
#[component]
fn Turn(#[prop(optional)] forth: bool) -> impl IntoView {
    let turned = forth.then_some("translate(24 0) scale(-1 1)");
    view! {
        <svg class="head__turn" viewBox="0 0 24 20" aria-hidden="true" focusable="false">
            <path transform=turned d="M9 2 L3 8 L9 14 M3 8 H15 A5.5 5.5 0 0 1 15 18 H11"/>
        </svg>
    }
}

/// Projects and settings, under the header.
#[component]
fn Drawer(open: RwSignal<bool>) -> impl IntoView {
    let store = use_store();
    Effect::watch(move || store.id(), move |_, _, _| open.set(false), false);
    view! {
        <section class="drawer" id="projects" aria-label="Projects and settings">
            <div class="drawer__settings">
                <UnitsChoice/>
                <ThemeChoice/>
            </div>
            <ProjectList/>
            <button type="button" class="button" on:click=move |_| open.set(false)>"Back to the frame"</button>
        </section>
    }
}

/// Feet and inches, or millimetres: shows every length the other way, and changes none.
#[component]
pub fn UnitsChoice() -> impl IntoView {
    let store = use_store();
    let segment = move |system: UnitSystem, word: &'static str| {
        view! {
            <label class="segment">
                <input
                    class="segment__input"
                    type="radio"
                    name="units"
                    prop:checked=move || store.units() == system
                    on:change=move |_| store.set_units(system)
                />
                <span class="segment__word">{word}</span>
            </label>
        }
    };
    view! {
        <fieldset class="choice" id="units">
            <legend class="choice__label">"Lengths in"</legend>
            <div class="choice__segments">
                {segment(UnitSystem::Imperial, "feet, inches")} {segment(UnitSystem::Metric, "millimetres")}
            </div>
        </fieldset>
    }
}

/// One word about the last save.
#[component]
fn SaveMark() -> impl IntoView {
    let saving = use_saving();
    let word = move || match saving.state.get() {
        SaveState::Saved => "saved",
        SaveState::Waiting => "saving",
        SaveState::NotSaved(_) | SaveState::Conflict => "not saved",
    };
    let wrong = move || matches!(saving.state.get(), SaveState::NotSaved(_) | SaveState::Conflict);
    view! { <span class="head__saved" class:head__saved--wrong=wrong>{word}</span> }
}

/// The usual keys; inside a text field they belong to the text.
#[component]
fn UndoKeys() -> impl IntoView {
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
