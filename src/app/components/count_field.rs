//! Whole numbers and plain ones.
use super::entry::Entry;
use super::field::{Field, entry_field};
use super::stepper::{Steps, next_multiple};
use crate::app::Lens;
use crate::project::Nearest;
use crate::units::{parse_count, parse_number};
use leptos::prelude::*;

/// How many of something, with steps of one.
pub fn count_field(field: Lens<usize>, label: impl Into<Signal<String>>, least: usize, most: usize) -> Field {
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
    entry_field(entry, label.into()).steps(Steps::both(1.0)).decimal_keys()
}

/// A plain number, like a share or a percentage.
pub fn number_field(field: Lens<f64>, label: impl Into<Signal<String>>, least: f64, most: f64, step: f64) -> Field {
    let parse = move |text: &str, _| {
        let number = parse_number(text).map_err(|why| why.to_string())?;
        if (least..=most).contains(&number) { Ok(number) } else { Err(format!("Between {least} and {most} here.")) }
    };
    let entry = Entry::new(&field, |number: f64, _| number.to_string(), parse)
        .step(&field, move |number, step, _| next_multiple(number, step).clamp(least, most));
    entry_field(entry, label.into()).steps(Steps::both(step)).decimal_keys()
}
