//! The one typed field: text as it is typed, its reading beside it, its problems under it.
use super::entry::Entry;
use super::problem::problem_note;
use super::reading::{followed, fractions};
use super::stepper::{Steps, step_button, stepper_actions};
use crate::app::cached::{Cached, text_of};
use crate::app::dom::{Child, Tag, parts, tag};
use crate::app::{Store, use_store};
use crate::project::{Problem, Project};
use leptos::prelude::*;
use std::sync::Arc;
use wasm_bindgen::JsCast;

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
#[must_use = "a field shows only where it is put in"]
pub struct Field {
    entry: Entry,
    label: Signal<String>,
    hint: Signal<String>,
    steps: Option<Steps>,
    is_length: bool,
    decimal_keys: bool,
}

/// A field over an entry, with its label.
pub fn entry_field(entry: Entry, label: Signal<String>) -> Field {
    Field { entry, label, hint: Signal::default(), steps: None, is_length: false, decimal_keys: false }
}

impl Field {
    /// With a few words under the label: what it is measured from, what follows from it.
    pub fn hint(mut self, hint: impl Into<Signal<String>>) -> Self {
        self.hint = hint.into();
        self
    }

    /// With − and + buttons of these steps.
    pub fn steps(mut self, steps: Steps) -> Self {
        self.steps = Some(steps);
        self
    }

    /// The steps are lengths.
    pub fn is_length(mut self) -> Self {
        self.is_length = true;
        self
    }

    /// With decimal keys on a phone, for fields that need no prime, dash or letter.
    pub fn decimal_keys(mut self) -> Self {
        self.decimal_keys = true;
        self
    }
}

impl Child for Field {
    fn put(self, into: Tag) -> Tag {
        made(self).put(into)
    }
}

fn made(field: Field) -> Tag {
    let Field { entry, label, hint, steps, is_length, decimal_keys } = field;
    let store = use_store();
    let path = entry.path.to_string();
    let problems = {
        let path = path.clone();
        let shown = move || store.problems_of(&path).iter().map(|one| store.beside_the_solids(one)).collect();
        Cached::new(move || -> Vec<Problem> { shown() })
    };
    let shown = {
        let (print, reading) = (entry.print.clone(), entry.reading.clone());
        Cached::new(move || {
            let project = store.project();
            (print(&project).unwrap_or_default(), reading(&project).unwrap_or_default())
        })
    };
    let typing = Typing::new();
    let (minus, plus) = steps.map(|steps| buttons(&entry, steps, label, is_length, typing)).unzip();
    let label_for = path.clone();
    tag("div")
        .class("field")
        .class_if("field--stepped", steps.is_some())
        .live_class("field--wrong", move || is_wrong(typing, problems))
        .child(
            tag("label")
                .class("field__label")
                .attr("for", label_for)
                .child(tag("span").class("field__name").child(label))
                .child(tag("span").class("field__hint").child(followed(hint))),
        )
        .child(
            tag("div")
                .class("field__box")
                .child(minus)
                .child(input(entry.clone(), typing, decimal_keys, shown, problems))
                .child(plus),
        )
        .child(below(entry, typing, shown, problems))
}

/// The value as it is printed, and its reading.
type Shown = Cached<(String, String)>;

fn is_wrong(typing: Typing, problems: Cached<Vec<Problem>>) -> bool {
    typing.refused.with(Option::is_some) || problems.with(|problems| !problems.is_empty())
}

/// The two step buttons; a step ends the typing.
fn buttons(entry: &Entry, steps: Steps, label: Signal<String>, is_length: bool, typing: Typing) -> (Tag, Tag) {
    let store = use_store();
    let (down, up) = stepper_actions(entry.clone(), steps);
    let name = move |word: &'static str| {
        text_of(move || format!("{}, {word} {}", label.get(), steps.name(store.units(), is_length)))
    };
    let after = move |step: Callback<()>| {
        Callback::new(move |()| {
            typing.refused.set(None);
            typing.text.set(None);
            step.run(());
        })
    };
    (step_button("−", name("less"), after(down)), step_button("+", name("more"), after(up)))
}

fn input(entry: Entry, typing: Typing, decimal_keys: bool, shown: Shown, problems: Cached<Vec<Problem>>) -> Tag {
    let store = use_store();
    let path = entry.path.to_string();
    let empty = entry.empty;
    let value = move || typing.text.get().unwrap_or_else(|| shown.with(|shown| shown.0.clone()));
    let (typed, escaped) = (entry.clone(), entry);
    let keys = move |event: web_sys::Event| {
        if event.unchecked_ref::<web_sys::KeyboardEvent>().key() == "Escape" {
            typing.restore(store, &escaped);
        }
    };
    let below = below_id(&path);
    tag("input")
        .class("field__input")
        .attr("id", path)
        .attr("type", "text")
        .attr("inputmode", if decimal_keys { "decimal" } else { "text" })
        .attr("placeholder", (!empty.is_empty()).then_some(empty))
        .attr("autocomplete", "off")
        .attr("autocapitalize", "off")
        .attr("spellcheck", "false")
        .attr("enterkeyhint", "done")
        .attr("aria-describedby", below)
        .live_attr("aria-invalid", move || is_wrong(typing, problems).then_some("true"))
        .live_prop("value", value)
        .on("focus", move |event| {
            typing.entered.set_value(Some(store.project_untracked()));
            event_target::<web_sys::HtmlInputElement>(&event).select();
        })
        .on("input", move |event| typing.take(store, &typed, event_target_value(&event)))
        .on("keydown", keys)
        .on("change", move |_| typing.leave())
        .on("blur", move |_| typing.leave())
}

/// A list of ids is parted by spaces: none may be in one.
fn below_id(path: &str) -> String {
    format!("{}-below", path.replace(' ', "-"))
}

fn below(entry: Entry, typing: Typing, shown: Shown, problems: Cached<Vec<Problem>>) -> Tag {
    let id = below_id(&entry.path);
    let take = entry.take;
    let notes = move || {
        let take = take.clone();
        problems.get().into_iter().map(move |problem| problem_note(problem, Some(take.clone()))).collect::<Vec<_>>()
    };
    tag("div")
        .class("field__below")
        .attr("id", id)
        .child(tag("output").class("field__reading").live(move || {
            shown.with(|(_, text)| (!text.is_empty()).then(|| parts().child("= ").child(fractions(text))))
        }))
        .child(tag("p").class("field__refused").attr("role", "status").live(move || {
            typing.refused.get().map(|why| {
                parts().child(tag("strong").child("Not taken: ")).child(why).child(" The old value keeps working.")
            })
        }))
        .live(notes)
}
