//! A plain text.
use super::entry::Entry;
use super::field::EntryField;
use crate::app::Lens;
use leptos::prelude::*;

/// A text of the project: a name, a remark, the sign of the currency.
#[component]
pub fn TextField(
    /// The field of the project.
    field: Lens<String>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// Longest text that is taken, in characters.
    #[prop(default = 80)]
    most: usize,
) -> impl IntoView {
    let parse = move |text: &str, _| {
        let text = text.trim();
        match text.chars().count() {
            0 => Err("Type something here.".to_owned()),
            n if n > most => Err(format!("At most {most} characters; this has {n}.")),
            _ => Ok(text.to_owned()),
        }
    };
    let entry = Entry::new(&field, |text: String, _| text, parse);
    view! { <EntryField entry label hint/> }
}
