//! The lengths the mill has: the usual ones to tap on and off, and any other to type.
use crate::app::cached::Cached;
use crate::app::components::{fractions, path_problems, show_length_fine};
use crate::app::dom::{Item, Tag, button, tag};
use crate::app::use_store;
use crate::ordering::asked_length;
use crate::project::usual_lengths;
use crate::units::{Length, UnitSystem, parse_length_not_negative, sort_by_number};
use leptos::prelude::*;

/// Lengths closer than this are the same.
const SAME: Length = Length::inches(0.05);

/// The usual lengths and the project's own, shortest first.
fn offered(own: &[Length], units: UnitSystem) -> Vec<Length> {
    let mut all = own.to_vec();
    for length in usual_lengths(units) {
        if !has(&all, length) {
            all.push(length);
        }
    }
    sort_by_number(&mut all, |length| length.to_inches());
    all
}

fn has(lengths: &[Length], one: Length) -> bool {
    lengths.iter().any(|length| length.is_near(one, SAME))
}

/// Puts a length in its place, or takes it out.
fn turn(lengths: &mut Vec<Length>, one: Length) {
    if has(lengths, one) {
        lengths.retain(|length| !length.is_near(one, SAME));
    } else {
        lengths.push(one);
        sort_by_number(lengths, |length| length.to_inches());
    }
}

/// The list.
pub fn lengths() -> Tag {
    let store = use_store();
    let own = store.slice(|project| project.mill.lengths.clone());
    let chips = move || {
        let units = store.units();
        let item = |length: Length| Item::new(length.to_inches().to_string(), move || chip(length, own));
        offered(&own.get(), units).into_iter().map(item).collect()
    };
    let paths =
        move || (0..own.get().len()).map(|index| path_problems(format!("mill.lengths.{index}"))).collect::<Vec<_>>();
    tag("fieldset")
        .class("chips")
        .attr("id", "mill.lengths")
        .attr("tabindex", "-1")
        .child(tag("legend").class("choice__label").child("Lengths the mill has"))
        .child(
            tag("p").class("field__hint").child("tap one off when the sawyer has none left: the order answers at once"),
        )
        .child(tag("div").class("chips__row").each(chips))
        .child(path_problems("mill.lengths"))
        .live(paths)
        .child(another())
}

fn chip(length: Length, own: Cached<Vec<Length>>) -> Tag {
    let store = use_store();
    let on = Cached::new(move || own.with(|own| has(own, length)));
    button("chip", move |_| store.edit(|project| turn(&mut project.mill.lengths, length)))
        .live_class("chip--on", move || on.get())
        .live_attr("aria-pressed", move || on.get().to_string())
        .child(
            tag("span").class("chip__mark").attr("aria-hidden", "true").live(move || if on.get() { "✓" } else { "" }),
        )
        .live(move || fractions(&asked_length(length, store.units())))
}

/// A length that is none of the usual ones.
fn another() -> Tag {
    let store = use_store();
    let text = RwSignal::new(String::new());
    let refused = RwSignal::new(None::<String>);
    let add = move |event: web_sys::Event| {
        event.prevent_default();
        match parse_length_not_negative(&text.get_untracked(), store.project_untracked().units) {
            Ok(length) if has(&store.project_untracked().mill.lengths, length) => {
                refused.set(Some(format!(
                    "{} is on the list.",
                    show_length_fine(length, store.project_untracked().units)
                )));
            }
            Ok(length) => {
                refused.set(None);
                text.set(String::new());
                store.edit(|project| turn(&mut project.mill.lengths, length));
            }
            Err(why) => refused.set(Some(why.to_string())),
        }
    };
    tag("form")
        .class("another")
        .on("submit", add)
        .child(
            tag("label")
                .class("field__label")
                .attr("for", "another-length")
                .child(tag("span").class("field__name").child("Another length")),
        )
        .child(
            tag("div")
                .class("another__row")
                .child(
                    tag("input")
                        .class("field__input")
                        .attr("id", "another-length")
                        .attr("type", "text")
                        .attr("autocomplete", "off")
                        .attr("enterkeyhint", "done")
                        .attr("aria-describedby", "another-refused")
                        .live_prop("value", move || text.get())
                        .on("input", move |event| text.set(event_target_value(&event))),
                )
                .child(tag("button").attr("type", "submit").class("button").child("Add")),
        )
        .child(
            tag("p")
                .class("field__refused")
                .attr("id", "another-refused")
                .attr("role", "status")
                .live(move || refused.get()),
        )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_length_goes_in_once_and_out_again() {
        let mut lengths = vec![Length::feet(8.0), Length::feet(12.0)];
        turn(&mut lengths, Length::feet(10.0));
        assert_eq!(lengths, [8.0, 10.0, 12.0].map(Length::feet));
        turn(&mut lengths, Length::millimetres(3048.0));
        assert_eq!(lengths, [8.0, 12.0].map(Length::feet));
        let shown = offered(&lengths, UnitSystem::Imperial);
        assert_eq!(shown.len(), 10);
        assert!(has(&shown, Length::feet(24.0)));
    }
}
