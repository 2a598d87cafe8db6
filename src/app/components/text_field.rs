//! A plain text.
use super::entry::Entry;
use super::field::{Field, entry_field};
use crate::app::Lens;
use leptos::prelude::*;

/// A text of the project: a name, a remark, the sign of the currency.
pub fn text_field(field: Lens<String>, label: impl Into<Signal<String>>, most: usize) -> Field {
    let parse = move |text: &str, _| {
        let text = text.trim();
        match text.chars().count() {
            0 => Err("Type something here.".to_owned()),
            n if n > most => Err(format!("At most {most} characters; this has {n}.")),
            _ => Ok(text.to_owned()),
        }
    };
    let entry = Entry::new(&field, |text: String, _| text, parse);
    entry_field(entry, label.into())
}
