//! The way back.
use crate::app::components::Fold;
use crate::app::use_store;
use leptos::prelude::*;

/// Undo and redo.
#[component]
pub fn History() -> impl IntoView {
    let store = use_store();
    let summary = Signal::derive(move || {
        if store.can_undo() { "there are steps to go back".to_owned() } else { "nothing changed yet".to_owned() }
    });
    view! {
        <Fold title="Steps back" summary>
            <p class="page__word">"Every change since the project was opened can be taken back, ticks included, one step at a time."</p>
            <div class="actions">
                <button type="button" class="button" disabled=move || !store.can_undo() on:click=move |_| store.undo()>"One step back"</button>
                <button type="button" class="button" disabled=move || !store.can_redo() on:click=move |_| store.redo()>"One step forth"</button>
            </div>
        </Fold>
    }
}
