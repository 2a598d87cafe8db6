//! The lengths the mill has: the usual ones to tap on and off, and any other to type.
use crate::app::components::{PathProblems, fractions, show_length_fine};
use crate::app::use_store;
use crate::ordering::asked_length;
use crate::units::{Length, UnitSystem, parse_length_not_negative, sort_by_number};
use leptos::ev;
use leptos::prelude::*;

/// Lengths closer than this are the same.
const SAME: Length = Length::inches(0.05);

/// Lengths mills commonly saw to (common practice).
fn usual(units: UnitSystem) -> Vec<Length> {
    match units {
        UnitSystem::Imperial => (3..=12).map(|pair| Length::feet(2.0 * f64::from(pair))).collect(),
        UnitSystem::Metric => (4..=12).map(|half| Length::millimetres(600.0 * f64::from(half))).collect(),
    }
}

/// The usual lengths and the project's own, shortest first.
fn offered(own: &[Length], units: UnitSystem) -> Vec<Length> {
    let mut all = own.to_vec();
    for length in usual(units) {
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
#[component]
pub fn Lengths() -> impl IntoView {
    let store = use_store();
    let own = store.slice(|project| project.mill.lengths.clone());
    let chips = move || {
        let units = store.units();
        offered(&own.get(), units).into_iter().map(|length| view! { <Chip length own/> }).collect_view()
    };
    let paths = move || {
        (0..own.get().len()).map(|index| view! { <PathProblems path=format!("mill.lengths.{index}")/> }).collect_view()
    };
    view! {
        <fieldset class="chips" id="mill.lengths" tabindex="-1">
            <legend class="choice__label">"Lengths the mill has"</legend>
            <p class="field__hint">"tap one off when the sawyer has none left: the order answers at once"</p>
            <div class="chips__row">{chips}</div>
            <PathProblems path="mill.lengths"/>
            {paths}
            <Another/>
        </fieldset>
    }
}

#[component]
fn Chip(length: Length, own: Memo<Vec<Length>>) -> impl IntoView {
    let store = use_store();
    let on = Memo::new(move |_| own.with(|own| has(own, length)));
    view! {
        <button
            type="button"
            class="chip"
            class:chip--on=on
            aria-pressed=move || on.get().to_string()
            on:click=move |_| store.edit(|project| turn(&mut project.mill.lengths, length))
        >
            <span class="chip__mark" aria-hidden="true">{move || if on.get() { "✓" } else { "" }}</span>
            {move || fractions(&asked_length(length, store.units()))}
        </button>
    }
}

/// A length that is none of the usual ones.
#[component]
fn Another() -> impl IntoView {
    let store = use_store();
    let text = RwSignal::new(String::new());
    let refused = RwSignal::new(None::<String>);
    let add = move |event: ev::SubmitEvent| {
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
    view! {
        <form class="another" on:submit=add>
            <label class="field__label" for="another-length">
                <span class="field__name">"Another length"</span>
            </label>
            <div class="another__row">
                <input
                    class="field__input"
                    id="another-length"
                    type="text"
                    autocomplete="off"
                    enterkeyhint="done"
                    aria-describedby="another-refused"
                    prop:value=text
                    on:input=move |event| text.set(event_target_value(&event))
                />
                <button type="submit" class="button">"Add"</button>
            </div>
            <p class="field__refused" id="another-refused" role="status">{refused}</p>
        </form>
    }
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
