//! A length, typed as a builder says it.
use super::entry::Entry;
use super::field::{Field, entry_field};
use super::reading::{long_length, show_length_fine};
use super::stepper::next_multiple;
use crate::app::Lens;
use crate::project::Nearest;
use crate::units::{Length, UnitSystem, parse_length, parse_length_not_negative};
use leptos::prelude::*;

/// What a length may be.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct LengthOptions {
    /// It may be below zero, like the ground under a datum.
    pub signed: bool,
}

/// The entry of a length: printed to the thirty-second or half millimetre, read in every form.
#[must_use]
pub fn length_entry(lens: &Lens<Length>, options: LengthOptions) -> Entry {
    let parse = move |text: &str, units| {
        let read = if options.signed { parse_length(text, units) } else { parse_length_not_negative(text, units) };
        read.map_err(|why| why.to_string())
    };
    let shown = lens.clone();
    Entry::new(lens, show_length_fine, parse)
        .reading(move |project| shown.get(project).map(|length| long_length(length, project.units)))
        .take(lens, |nearest| match nearest {
            Nearest::Length(length) => Some(length),
            _ => None,
        })
        .step(lens, move |length, step, units| {
            let next = stepped(length, step, units);
            if options.signed { next } else { next.max(Length::ZERO) }
        })
}

fn stepped(length: Length, step: f64, units: UnitSystem) -> Length {
    let next = match units {
        UnitSystem::Imperial => Length::try_inches(next_multiple(length.to_inches(), step)),
        UnitSystem::Metric => Length::try_millimetres(next_multiple(length.to_millimetres(), step)),
    };
    next.unwrap_or(length)
}

/// A length.
pub fn length_field(field: Lens<Length>, label: impl Into<Signal<String>>) -> Field {
    made(&field, label.into(), LengthOptions { signed: false })
}

/// A length that may be below zero.
pub fn signed_length_field(field: Lens<Length>, label: impl Into<Signal<String>>) -> Field {
    made(&field, label.into(), LengthOptions { signed: true })
}

fn made(field: &Lens<Length>, label: Signal<String>, options: LengthOptions) -> Field {
    entry_field(length_entry(field, options), label).is_length()
}
