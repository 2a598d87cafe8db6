//! The one mark that is walked to: its number, the tape around it, the wood that goes.
use super::words;
use crate::app::components::fractions;
use crate::app::use_store;
use crate::drawing::Tape;
use crate::tickets::{Mark, Stick};
use crate::units::UnitSystem;
use leptos::prelude::*;
use std::sync::Arc;

/// One mark, large.
#[component]
pub fn WalkMark(
    /// The stick.
    stick: Arc<Stick>,
    /// Which of its marks.
    index: usize,
) -> impl IntoView {
    let store = use_store();
    move || {
        let units = store.units();
        stick.marks.get(index).map(|mark| shown(&stick, mark, units))
    }
}

fn shown(stick: &Stick, mark: &Mark, units: UnitSystem) -> impl IntoView + use<> {
    let what = format!("{}, {}", mark.what, mark.face.name());
    let (first, second) = words::figures(mark, units);
    let side = words::side_of_zero(mark);
    let from = format!("from {}", stick.zero);
    let details = [words::across(mark, units), words::depth(mark, units)];
    let details = details.into_iter().flatten().collect::<Vec<_>>().join(" · ");
    let other = words::from_other_end(stick, mark, units);
    let note = mark.note.clone();
    view! {
        <h2 class="walk__what">{fractions(&what)}</h2>
        <p class="walk__figures">
            {large(&first)}
            {second.map(|second| view! { <span class="walk__to">"to"</span> {large(&second)} })}
        </p>
        {side.map(|side| view! { <p class="walk__side">{side}</p> })}
        <p class="walk__from">{from}</p>
        {picture(stick, mark, units)}
        {waste(mark)}
        {(!details.is_empty()).then(|| view! { <p class="walk__detail">{fractions(&details)}</p> })}
        {(!note.is_empty()).then(|| view! { <p class="walk__note">{fractions(&note)}</p> })}
        <p class="walk__other">{fractions(&other)}</p>
    }
}

/// A number as large as it goes, its unit smaller behind it.
fn large(figure: &str) -> impl IntoView + use<> {
    let number = figure.strip_suffix(" mm");
    let unit = number.map(|_| view! { <span class="walk__unit">" mm"</span> });
    view! { <span class="walk__figure">{fractions(number.unwrap_or(figure))} {unit}</span> }
}

fn picture(stick: &Stick, mark: &Mark, units: UnitSystem) -> impl IntoView + use<> {
    let title = format!("The tape at {}", words::edges(mark, units));
    let html = Tape::of(stick, mark, units).print(&title);
    view! {
        <div class="walk__tape" inner_html=html></div>
        <p class="walk__ends" aria-hidden="true"><span>"◀ left end"</span> <span>"right end ▶"</span></p>
    }
}

fn waste(mark: &Mark) -> impl IntoView + use<> {
    words::waste(mark).map(|(before, which, after)| {
        view! { <p class="walk__waste">{before} <strong>{which}</strong> {after} ": X there before you look away."</p> }
    })
}
