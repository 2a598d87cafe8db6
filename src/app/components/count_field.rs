//! Whole numbers and plain ones.
use super::entry::Entry;
use super::field::EntryField;
use super::stepper::{Steps, next_multiple};
use crate::app::Lens;
use crate::project::Nearest;
use crate::units::{parse_count, parse_number};
use leptos::prelude::*;

/// How many of something, with steps of one.
#[component]
pub fn CountField(
    /// The field of the project.
    field: Lens<usize>,
    /// The label.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// The fewest.
    #[prop(default = 0)]
    least: usize,
    /// The most.
    #[prop(default = 99)]
    most: usize,
) -> impl IntoView {
    let cap = u32::try_from(most).unwrap_or(u32::MAX);
    let parse = move |text: &str, _| {
        let count = parse_count(text, cap).map_err(|why| why.to_string())? as usize;
        if count < least { Err(format!("At least {least} here.")) } else { Ok(count) }
    };
    let entry = Entry::new(&field, |count, _| count.to_string(), parse)
        .take(&field, |nearest| match nearest {
            Nearest::Count(count) => Some(count),
            _ => None,
        })
        .step(&field, move |count: usize, step, _| {
            let next = if step > 0.0 { count.saturating_add(1) } else { count.saturating_sub(1) };
            next.clamp(least, most)
        });
    view! { <EntryField entry label hint steps=Steps::both(1.0) decimal_keys=true/> }
}

/// A plain number, like a share or a percentage.
#[component]
pub fn NumberField(
    /// The field of the project.
    field: Lens<f64>,
    /// The label; the unit belongs in it.
    #[prop(into)]
    label: Signal<String>,
    /// A few words under the label.
    #[prop(optional, into)]
    hint: Signal<String>,
    /// The least that is taken.
    #[prop(default = 0.0)]
    least: f64,
    /// The most that is taken.
    #[prop(default = 1e6)]
    most: f64,
    /// One step.
    #[prop(default = 1.0)]
    step: f64,
) -> impl IntoView {
    let parse = move |text: &str, _| {
        let number = parse_number(text).map_err(|why| why.to_string())?;
        if (least..=most).contains(&number) { Ok(number) } else { Err(format!("Between {least} and {most} here.")) }
    };
    let entry = Entry::new(&field, |number: f64, _| number.to_string(), parse)
        .step(&field, move |number, step, _| next_multiple(number, step).clamp(least, most));
    view! { <EntryField entry label hint steps=Steps::both(step) decimal_keys=true/> }
}
