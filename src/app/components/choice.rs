//! One of a few, and one of many.
use super::problem::ProblemNote;
use super::reading::fractions;
use crate::app::{Lens, use_store};
use crate::project::Problem;
use leptos::prelude::*;

/// The problems of exactly that field.
fn problems_at(path: &str) -> Memo<Vec<Problem>> {
    let store = use_store();
    let path = path.to_owned();
    Memo::new(move |_| store.design().problems_of(&path).cloned().collect())
}

fn notes(problems: Memo<Vec<Problem>>) -> impl IntoView {
    move || problems.get().into_iter().map(|problem| view! { <ProblemNote problem/> }).collect_view()
}

/// One of a few, as large segments.
#[component]
pub fn Choice<T>(
    /// The field of the project.
    field: Lens<T>,
    /// The label of the group.
    #[prop(into)]
    label: String,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Values with their words, in order.
    options: Vec<(T, String)>,
    /// What a choice does instead of putting the value in.
    #[prop(optional)]
    choose: Option<Callback<T>>,
) -> impl IntoView
where
    T: Clone + PartialEq + Send + Sync + 'static,
{
    let store = use_store();
    let path = field.path().to_string();
    let problems = problems_at(&path);
    let segments = options
        .into_iter()
        .map(|(value, word)| {
            let (of_lens, of_value) = (field.clone(), value.clone());
            let chosen = Memo::new(move |_| of_lens.get(&store.project()).as_ref() == Some(&of_value));
            let set = field.clone();
            let pick = move |_| {
                let value = value.clone();
                match choose {
                    Some(choose) => choose.run(value),
                    None => store.edit(|project| set.set(project, value)),
                }
            };
            view! {
                <label class="segment">
                    <input class="segment__input" type="radio" name=path.clone() prop:checked=chosen on:change=pick/>
                    <span class="segment__word">{word}</span>
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="choice" id=path.clone() tabindex="-1">
            <legend class="choice__label">{label}</legend>
            <p class="field__hint">{move || fractions(&hint.get())}</p>
            <div class="choice__segments">{segments}</div>
            {notes(problems)}
        </fieldset>
    }
}

/// One of many, as a list that opens.
#[component]
pub fn Pick(
    /// The field of the project.
    field: Lens<String>,
    /// The label.
    #[prop(into)]
    label: String,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Values with their words, in order.
    options: Vec<(String, String)>,
) -> impl IntoView {
    let store = use_store();
    let path = field.path().to_string();
    let shown = field.clone();
    let problems = problems_at(&path);
    let value = Memo::new(move |_| shown.get(&store.project()).unwrap_or_default());
    let items = options
        .into_iter()
        .map(|(key, word)| {
            let of_key = key.clone();
            view! { <option value=key selected=move || value.with(|value| *value == of_key)>{word}</option> }
        })
        .collect_view();
    let pick = move |event| {
        let key = event_target_value(&event);
        store.edit(|project| field.set(project, key));
    };
    view! {
        <div class="field">
            <label class="field__label" for=path.clone()>
                <span class="field__name">{label}</span>
                <span class="field__hint">{move || fractions(&hint.get())}</span>
            </label>
            <div class="field__box">
                <select class="field__input field__pick" id=path.clone() prop:value=value on:change=pick>{items}</select>
            </div>
            {notes(problems)}
        </div>
    }
}
