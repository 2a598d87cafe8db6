//! The one typed field: text as it is typed, its reading beside it, its problems under it.
use super::entry::Entry;
use super::problem::ProblemNote;
use super::reading::fractions;
use super::stepper::{StepButton, Steps, stepper_actions};
use crate::app::{Store, use_store};
use crate::project::{Problem, Project};
use leptos::ev;
use leptos::prelude::*;
use std::sync::Arc;

/// What is being typed; nothing while the field shows its value.
#[derive(Clone, Copy)]
struct Typing {
    text: RwSignal<Option<String>>,
    refused: RwSignal<Option<String>>,
    /// The project when the field was entered, for Escape.
    entered: StoredValue<Option<Arc<Project>>>,
}

impl Typing {
    fn new() -> Self {
        Self { text: RwSignal::new(None), refused: RwSignal::new(None), entered: StoredValue::new(None) }
    }

    /// Takes a text in: a good one changes the project at once, another is kept with the reason.
    fn take(self, store: Store, entry: &Entry, text: String) {
        match (entry.parse)(&text, store.project_untracked().units) {
            Ok(change) => {
                self.refused.set(None);
                store.edit_field(&entry.path, change);
            }
            Err(why) => self.refused.set(Some(why)),
        }
        self.text.set(Some(text));
    }

    /// Leaving: a good text gives way to the value as it is printed, a refused one stays to be mended.
    fn leave(self) {
        // The browser reports a blur as well when the page around the field is gone.
        if self.refused.try_with_untracked(Option::is_none) == Some(true) {
            let _ = self.text.try_set(None);
        }
    }

    /// The value from before is put back.
    fn restore(self, store: Store, entry: &Entry) {
        if let Some(before) = self.entered.get_value()
            && self.text.with_untracked(Option::is_some)
        {
            store.edit_field(&entry.path, move |project| *project = Project::clone(&before));
        }
        self.refused.set(None);
        self.text.set(None);
    }
}

/// A labelled text field over an [`Entry`]; the other fields are made of it.
#[component]
pub fn EntryField(
    /// What it holds.
    entry: Entry,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label: what it is measured from, what follows from it.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Steps of the − and + buttons; none leaves them out.
    #[prop(optional)]
    steps: Option<Steps>,
    /// The steps are lengths.
    #[prop(optional)]
    is_length: bool,
    /// Decimal keys on a phone, for fields that need no prime, dash or letter.
    #[prop(optional)]
    decimal_keys: bool,
) -> impl IntoView {
    let store = use_store();
    let path = entry.path.to_string();
    let problems = {
        let path = path.clone();
        Memo::new(move |_| store.design().problems_of(&path).cloned().collect::<Vec<Problem>>())
    };
    let typing = Typing::new();
    let buttons = steps.map(|steps| buttons(&entry, steps, label, is_length, typing));
    let (minus, plus) = buttons.unzip();
    let label_for = path.clone();
    view! {
        <div class="field" class:field--stepped=steps.is_some() class:field--wrong=move || is_wrong(typing, problems)>
            <label class="field__label" for=label_for>
                <span class="field__name">{label}</span>
                <span class="field__hint">{move || fractions(&hint.get())}</span>
            </label>
            <div class="field__box">
                {minus}
                <Input entry=entry.clone() typing decimal_keys problems/>
                {plus}
            </div>
            <Below entry typing problems/>
        </div>
    }
}

fn is_wrong(typing: Typing, problems: Memo<Vec<Problem>>) -> bool {
    typing.refused.with(Option::is_some) || problems.with(|problems| !problems.is_empty())
}

/// The two step buttons; a step ends the typing.
fn buttons(
    entry: &Entry,
    steps: Steps,
    label: Signal<String>,
    is_length: bool,
    typing: Typing,
) -> (impl IntoView + use<>, impl IntoView + use<>) {
    let store = use_store();
    let (down, up) = stepper_actions(entry.clone(), steps);
    let name = move |word: &'static str| {
        Signal::derive(move || format!("{}, {word} {}", label.get(), steps.name(store.units(), is_length)))
    };
    let after = move |step: Callback<()>| {
        Callback::new(move |()| {
            typing.refused.set(None);
            typing.text.set(None);
            step.run(());
        })
    };
    (
        view! { <StepButton sign="−" label=name("less") step=after(down)/> },
        view! { <StepButton sign="+" label=name("more") step=after(up)/> },
    )
}

#[component]
fn Input(entry: Entry, typing: Typing, decimal_keys: bool, problems: Memo<Vec<Problem>>) -> impl IntoView {
    let store = use_store();
    let path = entry.path.to_string();
    let shown = {
        let print = entry.print.clone();
        Memo::new(move |_| print(&store.project()).unwrap_or_default())
    };
    let value = move || typing.text.get().unwrap_or_else(|| shown.get());
    let empty = entry.empty;
    let (typed, escaped) = (entry.clone(), entry);
    let keys = move |event: ev::KeyboardEvent| {
        if event.key() == "Escape" {
            typing.restore(store, &escaped);
        }
    };
    let below = format!("{path}-below");
    view! {
        <input
            class="field__input"
            id=path
            type="text"
            inputmode=if decimal_keys { "decimal" } else { "text" }
            autocomplete="off"
            autocapitalize="off"
            spellcheck="false"
            enterkeyhint="done"
            placeholder=(!empty.is_empty()).then_some(empty)
            aria-describedby=below
            aria-invalid=move || is_wrong(typing, problems).then_some("true")
            prop:value=value
            on:focus=move |event| {
                typing.entered.set_value(Some(store.project_untracked()));
                event_target::<web_sys::HtmlInputElement>(&event).select();
            }
            on:input=move |event| typing.take(store, &typed, event_target_value(&event))
            on:keydown=keys
            on:change=move |_| typing.leave()
            on:blur=move |_| typing.leave()
        />
    }
}

#[component]
fn Below(entry: Entry, typing: Typing, problems: Memo<Vec<Problem>>) -> impl IntoView {
    let store = use_store();
    let id = format!("{}-below", entry.path);
    let reading = {
        let reading = entry.reading.clone();
        Memo::new(move |_| reading(&store.project()).unwrap_or_default())
    };
    let take = entry.take;
    let notes = move || {
        let take = take.clone();
        problems.get().into_iter().map(move |problem| view! { <ProblemNote problem take=take.clone()/> }).collect_view()
    };
    view! {
        <div class="field__below" id=id>
            <output class="field__reading">
                {move || {
                    let text = reading.get();
                    (!text.is_empty()).then(|| view! { "= " {fractions(&text)} })
                }}
            </output>
            <p class="field__refused" role="status">
                {move || {
                    typing.refused.get().map(|why| view! { <strong>"Not taken: "</strong> {why} " The old value keeps working." })
                }}
            </p>
            {notes}
        </div>
    }
}
