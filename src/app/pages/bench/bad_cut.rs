//! A bad cut, and the ways out that are computed for it. Nothing of it is kept.
use super::typed::{picked, read, typed};
use crate::app::components::{caution, fold, fractions, word};
use crate::app::dom::{Tag, parts, tag};
use crate::app::{Good, use_store};
use crate::tickets::{Answer, BadCut, Slip, Stick, rescue};
use leptos::prelude::*;
use std::sync::Arc;

/// What is told of the cut.
#[derive(Clone, Copy)]
struct Told {
    mark: RwSignal<usize>,
    slip: RwSignal<usize>,
    by: RwSignal<String>,
    to: RwSignal<usize>,
}

/// What may have gone wrong, in the order of the list.
const SLIPS: [&str; 3] = ["Off its line", "On the wrong side of its line", "End cut short"];

/// The part of a stick's page for what went wrong.
pub fn bad_cut(stick: Arc<Stick>) -> Tag {
    let store = use_store();
    let told =
        Told { mark: RwSignal::new(0), slip: RwSignal::new(0), by: RwSignal::new(String::new()), to: RwSignal::new(0) };
    let marks =
        stick.marks.iter().enumerate().map(|(at, mark)| format!("{}  {}, {}", at + 1, mark.what, mark.face.name()));
    let form = tag("div")
        .class("bench-form")
        .child(picked("bad-mark", "Mark", marks.collect(), told.mark))
        .child(picked("bad-slip", "What went wrong", SLIPS.map(str::to_owned).to_vec(), told.slip))
        .shown(move || told.slip.get() != 1, move || typed("bad-by", "By how much", "", told.by))
        .shown(
            move || told.slip.get() == 0,
            move || picked("bad-to", "Toward", vec!["its left end".to_owned(), "its right end".to_owned()], told.to),
        );
    let answers = move || {
        let good = store.good()?;
        match slip(told, store.units(), stick.to_left) {
            Ok(slip) => Some(shown(&good, &stick, told.mark.get(), slip)),
            Err(why) => (!told.by.with(String::is_empty))
                .then(|| tag("p").class("field__refused").child(format!("Not taken: {why}"))),
        }
    };
    let words = "What can still be done, from this frame’s measures. A ticked mark counts as cut. Tolerances, shims and loose \
                 tenons are common practice; nothing of this is kept.";
    let holds = || {
        parts()
            .child(word(words))
            .child(caution(
                "a mended joint is not the one that was checked: its strength is not judged here; ask an engineer.",
            ))
            .child(form)
            .child(tag("div").attr("role", "status").live(answers))
    };
    fold("A bad cut", "what can still be done", false, holds)
}

fn slip(told: Told, units: crate::units::UnitSystem, to_left: bool) -> Result<Slip, String> {
    let kind = told.slip.get();
    if kind == 1 {
        return Ok(Slip::WrongSide);
    }
    let by = read(told.by, units)?;
    if kind == 2 {
        return Ok(Slip::Short(by.abs()));
    }
    // The way its measures run.
    let is_up = (told.to.get() == 1) != to_left;
    Ok(Slip::Off(if is_up { by.abs() } else { -by.abs() }))
}

fn shown(good: &Good, stick: &Stick, mark: usize, slip: Slip) -> Tag {
    let bad = BadCut { stick, mark, slip };
    let answers = rescue(&good.project, &good.built.shape, &good.built.sticks, &bad);
    let row = |answer: &Answer| {
        tag("li").class("rescue__way").class_if("rescue__way--closed", !answer.is_open).child(fractions(&answer.says))
    };
    tag("ol").class("rescue").child(answers.iter().map(row).collect::<Vec<_>>())
}
