//! Yes or no.
use super::reading::fractions;
use crate::app::{Lens, use_store};
use leptos::prelude::*;

/// A switch.
#[component]
pub fn Toggle(
    /// The field of the project.
    field: Lens<bool>,
    /// The label: what is so when it is on.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
) -> impl IntoView {
    let store = use_store();
    let path = field.path().to_string();
    let shown = field.clone();
    let on = Memo::new(move |_| shown.get(&store.project()).unwrap_or(false));
    let turn = move |_| {
        let next = !on.get_untracked();
        store.edit(|project| field.set(project, next));
    };
    view! {
        <label class="toggle">
            <input class="toggle__input" type="checkbox" role="switch" id=path prop:checked=on on:change=turn/>
            <span class="toggle__knob" aria-hidden="true"></span>
            <span class="toggle__words">
                <span class="toggle__name">{label}</span>
                <span class="field__hint">{move || fractions(&hint.get())}</span>
            </span>
        </label>
    }
}
