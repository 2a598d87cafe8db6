//! All marks of a stick in the order they are made, face after face.
use super::in_hand::InHand;
use super::joint_ticks::joints;
use super::words;
use crate::app::components::fractions;
use crate::app::dom::{Tag, parts, tag};
use crate::app::route::Route;
use crate::app::use_store;
use crate::tickets::{Mark, Stick};
use leptos::prelude::*;
use std::ops::Range;
use std::sync::Arc;

/// The list of marks, each with its tick.
pub fn mark_list(hand: InHand, stick: Arc<Stick>) -> Tag {
    let n_marks = stick.marks.len();
    let count = move || format!("{} of {n_marks} made", hand.made.with(|made| made.len()));
    let groups = runs(&stick.marks)
        .into_iter()
        .map(|run| {
            let face = stick.marks.get(run.start).map_or("", |mark| mark.face.name());
            let rows = run.clone().map(|index| mark_row(hand, stick.clone(), index)).collect::<Vec<_>>();
            parts()
                .child(tag("h3").class("marks__face").child(face))
                .child(tag("ol").class("marks__list").attr("start", (run.start + 1).to_string()).child(rows))
        })
        .collect::<Vec<_>>();
    let closed = move || {
        (!hand.lies_so.get() && !hand.is_cut())
            .then(|| tag("p").class("marks__closed").child("Answer the question above to tick marks."))
    };
    tag("section")
        .class("marks")
        .attr("aria-labelledby", "marks-title")
        .child(
            tag("div")
                .class("marks__head")
                .child(tag("h2").class("marks__title").attr("id", "marks-title").child("Marks, in order"))
                .child(tag("p").class("marks__count").live(count)),
        )
        .live(closed)
        .child(joints(hand, &stick))
        .child(groups)
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

fn mark_row(hand: InHand, stick: Arc<Stick>, index: usize) -> Tag {
    let is_made = move || hand.made.with(|made| made.contains(&index));
    let is_closed = move || hand.is_cut() || !hand.lies_so.get();
    let id = format!("mark-{index}");
    let of_label = id.clone();
    let what = stick.marks.get(index).map_or_else(String::new, |mark| mark.what.to_string());
    let tick = move |event: leptos::ev::Event| hand.tick(&[index], event_target_checked(&event));
    tag("li")
        .class("mark")
        .live_class("mark--made", is_made)
        .child(
            tag("label")
                .class("mark__tick")
                .attr("for", of_label)
                .child(
                    tag("input")
                        .class("mark__box")
                        .attr("type", "checkbox")
                        .attr("id", id)
                        .live_prop("checked", is_made)
                        .live_attr("disabled", is_closed)
                        .on("change", tick),
                )
                .child(
                    tag("span")
                        .class("mark__what")
                        .child(tag("span").class("mark__number").child(index + 1))
                        .child(fractions(&what)),
                )
                .child(measure(stick.clone(), index)),
        )
        .child(mark_detail(stick, index))
}

fn measure(stick: Arc<Stick>, index: usize) -> Tag {
    let store = use_store();
    let text = move || stick.marks.get(index).map(|mark| fractions(&words::edges(mark, store.units())));
    tag("span").class("mark__measure").live(text)
}

fn mark_detail(stick: Arc<Stick>, index: usize) -> Tag {
    let store = use_store();
    let mate = stick.marks.get(index).and_then(|mark| mark.mate.clone());
    let note = stick.marks.get(index).map(|mark| mark.note.clone()).filter(|note| !note.is_empty());
    let known = move |mark: &String| store.built().is_some_and(|built| built.stick(mark).is_some());
    let mate = move || {
        mate.clone().filter(known).map(|mate| {
            let href = Route::bench(&mate).hash();
            tag("a")
                .class("mark__mate")
                .attr("href", href)
                .child(tag("span").class("quiet").child("Its mate: "))
                .child(mate)
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
    tag("div")
        .class("mark__more")
        .child(tag("p").class("mark__detail").live(text))
        .child(note.map(|note| tag("p").class("mark__note").child(fractions(&note))))
        .live(mate)
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
