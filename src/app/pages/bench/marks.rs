//! All marks of a stick in the order they are made, face after face.
use super::in_hand::InHand;
use super::words;
use crate::app::components::fractions;
use crate::app::route::Route;
use crate::app::use_store;
use crate::tickets::{Mark, Stick};
use leptos::prelude::*;
use std::ops::Range;
use std::sync::Arc;

/// The list of marks, each with its tick.
#[component]
pub fn MarkList(
    /// The stick in hand.
    hand: InHand,
    /// The stick.
    stick: Arc<Stick>,
) -> impl IntoView {
    let n_marks = stick.marks.len();
    let count = move || format!("{} of {n_marks} made", hand.made.with(|made| made.len()));
    let groups = runs(&stick.marks)
        .into_iter()
        .map(|run| {
            let face = stick.marks.get(run.start).map_or("", |mark| mark.face.name());
            let rows = run.clone().map(|index| view! { <MarkRow hand stick=stick.clone() index/> }).collect_view();
            view! {
                <h3 class="marks__face">{face}</h3>
                <ol class="marks__list" start=(run.start + 1).to_string()>{rows}</ol>
            }
        })
        .collect_view();
    let closed = move || {
        (!hand.lies_so.get() && !hand.is_cut())
            .then(|| view! { <p class="marks__closed">"Answer the question above to tick marks."</p> })
    };
    view! {
        <section class="marks" aria-labelledby="marks-title">
            <div class="marks__head">
                <h2 class="marks__title" id="marks-title">"Marks, in order"</h2>
                <p class="marks__count">{count}</p>
            </div>
            {closed}
            {groups}
        </section>
    }
}

/// Marks that follow each other on one face: the order stays, and the stick is turned no more than it must.
fn runs(marks: &[Mark]) -> Vec<Range<usize>> {
    let mut runs: Vec<Range<usize>> = Vec::new();
    for (index, mark) in marks.iter().enumerate() {
        match runs.last_mut() {
            Some(run) if marks[run.start].face == mark.face => run.end = index + 1,
            _ => runs.push(index..index + 1),
        }
    }
    runs
}

#[component]
fn MarkRow(hand: InHand, stick: Arc<Stick>, index: usize) -> impl IntoView {
    let is_made = move || hand.made.with(|made| made.contains(&index));
    let is_closed = move || hand.is_cut() || !hand.lies_so.get();
    let id = format!("mark-{index}");
    let of_label = id.clone();
    let what = stick.marks.get(index).map_or_else(String::new, |mark| mark.what.clone());
    let tick = move |event: leptos::ev::Event| hand.tick(index, event_target_checked(&event));
    view! {
        <li class="mark" class:mark--made=is_made>
            <label class="mark__tick" for=of_label>
                <input class="mark__box" type="checkbox" id=id prop:checked=is_made disabled=is_closed on:change=tick/>
                <span class="mark__what"><span class="mark__number">{index + 1}</span> {fractions(&what)}</span>
                <Measure stick=stick.clone() index/>
            </label>
            <MarkDetail stick index/>
        </li>
    }
}

#[component]
fn Measure(stick: Arc<Stick>, index: usize) -> impl IntoView {
    let store = use_store();
    let text = move || stick.marks.get(index).map(|mark| fractions(&words::edges(mark, store.units())));
    view! { <span class="mark__measure">{text}</span> }
}

#[component]
fn MarkDetail(stick: Arc<Stick>, index: usize) -> impl IntoView {
    let store = use_store();
    let mate = stick.marks.get(index).and_then(|mark| mark.mate.clone());
    let note = stick.marks.get(index).map(|mark| mark.note.clone()).filter(|note| !note.is_empty());
    let known = move |mark: &String| store.built().is_some_and(|built| built.stick(mark).is_some());
    let mate = move || {
        mate.clone().filter(known).map(|mate| {
            let href = Route::bench(&mate).hash();
            view! { <a class="mark__mate" href=href><span class="quiet">"Its mate: "</span> {mate}</a> }
        })
    };
    let text = move || {
        stick.marks.get(index).map(|mark| {
            let units = store.units();
            let parts = [
                words::across(mark, units),
                words::depth(mark, units),
                Some(words::from_other_end(&stick, mark, units)),
            ];
            fractions(&parts.into_iter().flatten().collect::<Vec<_>>().join(" · "))
        })
    };
    view! {
        <div class="mark__more">
            <p class="mark__detail">{text}</p>
            {note.map(|note| view! { <p class="mark__note">{fractions(&note)}</p> })}
            {mate}
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tickets::{Face, MarkKind};
    use crate::units::Length;

    #[test]
    fn marks_of_one_face_in_a_row_stand_together() {
        let mark = |face| Mark::line("", face, Length::ZERO, MarkKind::Line);
        let marks = [Face::Outer, Face::Outer, Face::Top, Face::Outer].map(mark);
        assert_eq!(runs(&marks), [0..2, 2..3, 3..4]);
        assert!(runs(&[]).is_empty());
    }
}
