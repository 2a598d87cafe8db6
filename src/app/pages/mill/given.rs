//! Every piece that stays given its place at once; what is left over, and what to ask for instead.
use super::clipboard;
use super::piece::piece_words;
use crate::app::cached::Cached;
use crate::app::components::{figures, fractions, word};
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::store::Strong;
use crate::app::use_store;
use crate::ordering::asked_length;
use crate::ordering::came::{Place, ask_text};
use crate::project::{Piece, Project};
use crate::study::{Given, Receiving, Shared, give};
use crate::units::UnitSystem;
use leptos::prelude::*;
use std::collections::BTreeMap;
use std::sync::Arc;

/// An answer, and the pieces it was worked out for.
#[derive(Clone)]
struct Answer {
    pieces: BTreeMap<String, Piece>,
    strong: Strong,
    places: Arc<Vec<Place>>,
    shared: Arc<Shared>,
}

/// The button and what it answers.
pub fn given() -> Tag {
    let store = use_store();
    let pieces = store.slice(|project| project.progress.pieces.clone());
    let answer = RwSignal::new(None::<Answer>);
    let find = move |_| {
        let Some(strong) = store.strong() else { return };
        let found = {
            let receiving = Receiving::new(&strong.good.project, &strong.good.built, &strong.strength);
            (receiving.share_out(), receiving.places().to_vec())
        };
        let (shared, places) = (Arc::new(found.0), Arc::new(found.1));
        answer.set(Some(Answer { pieces: pieces.get_untracked(), strong, places, shared }));
    };
    let is_any = Cached::new(move || pieces.with(|pieces| !pieces.is_empty()));
    let is_placed = Cached::new(move || pieces.with(|pieces| pieces.values().any(|piece| !piece.place.is_empty())));
    let release = move |_| store.tick(|progress| progress.pieces.values_mut().for_each(|piece| piece.place.clear()));
    // What was true of other pieces is not shown for these.
    let shown = move || answer.get().filter(|answer| pieces.with(|pieces| *pieces == answer.pieces));
    tag("section")
        .class("truck")
        .attr("aria-labelledby", "given-title")
        .child(tag("h3").class("truck__head").attr("id", "given-title").child("Which piece becomes which stick"))
        .child(word(
            "All pieces that stay against all sticks of their section, at once: as many sticks as can be have a piece, with the \
             least against them in all. One you gave a place keeps it.",
        ))
        .child(
            tag("div")
                .class("actions")
                .child(
                    button("button button--main", find)
                        .live_attr("disabled", move || !is_any.get())
                        .child("Give every stick its place"),
                )
                .shown(move || is_placed.get(), move || {
                    button("button", release).child("Leave all places open again")
                }),
        )
        .live(move || shown().map(|answer_now| told(answer_now, answer)))
}

fn told(now: Answer, answer: RwSignal<Option<Answer>>) -> Tag {
    let store = use_store();
    let units = store.units();
    let Answer { pieces, strong, places, shared } = now.clone();
    let short = |index: usize| places.get(index).map(Place::short).unwrap_or_default();
    let name = |piece: &str| pieces.get(piece).map(|of| piece_words(piece, of, units)).unwrap_or_default();
    let mut given: Vec<&Given> = shared.given.iter().filter(|given| !given.is_plain()).collect();
    crate::units::sort_by_number(&mut given, |given| given.verdict.place as f64);
    let n_plain = shared.given.len() - given.len();
    let rows: Vec<Tag> = given
        .into_iter()
        .map(|given| row(&short(given.verdict.place), &name(&given.piece), &given.why, given.verdict.fits()))
        .chain(shared.left.iter().map(|left| row("none", &name(&left.piece), &left.says, true)))
        .collect();
    let plain = (n_plain > 0).then(|| word(format!("{n_plain} are as ordered and go where they were ordered for.")));
    let table = (!rows.is_empty()).then(|| figures("Pieces and their places", &["Stick", "Piece", "Why"], rows));
    let write = move |_| {
        store.edit(|project| give(project, &now.strong.good.built, &now.places, &now.shared));
        let pieces = store.project_untracked().progress.pieces.clone();
        answer.set(Some(Answer { pieces, ..now.clone() }));
    };
    let is_written = shared.given.iter().all(|given| {
        let place = places.get(given.verdict.place).map(|place| &place.name);
        pieces.get(&given.piece).map(|piece| &piece.place) == place
    });
    let n_given = shared.given.len();
    parts()
        .child(tag("p").class("page__word").attr("role", "status").child(format!(
            "{n_given} of {} places have a piece; {} pieces have no place.",
            places.len(),
            shared.left.len()
        )))
        .child(plain)
        .child(table)
        .child(if is_written {
            tag("p")
                .class("page__word")
                .child("These places are written; what was measured is on the sheets of the bench.")
        } else {
            button("button button--main", write).child("Write these places")
        })
        .child(instead(&strong.good.project, &strong, &places, &shared, units))
}

fn row(stick: &str, piece: &str, why: &str, fits: bool) -> Tag {
    let mark = if fits { "" } else { "! " };
    tag("tr")
        .child(tag("th").attr("scope", "row").child(stick))
        .child(tag("td").child(fractions(piece)))
        .child(tag("td").class("came__why").child(mark).child(fractions(why)))
}

/// What to ask for in the place of what went back or fits nowhere.
fn instead(project: &Project, strong: &Strong, places: &[Place], shared: &Shared, units: UnitSystem) -> Option<Tag> {
    let mut shown = project.clone();
    shown.units = units;
    let text = ask_text(&shown, &strong.good.built, places, &shared.asks)?;
    let said = RwSignal::new(None::<bool>);
    let lines = shared.asks.iter().map(|ask| {
        let marks: Vec<String> = ask.places.iter().filter_map(|index| places.get(*index)).map(Place::short).collect();
        let says = format!(
            "{} × {} × {}, for {}",
            ask.places.len(),
            ask.section.label(units),
            asked_length(ask.length, units),
            marks.join("; ")
        );
        tag("li").child(fractions(&says))
    });
    let lines: Vec<Tag> = lines.collect();
    let none = lines.is_empty().then(|| word("Nothing more is to be sawn: what is here and still to come is enough."));
    let kept = text.clone();
    let copy = move |_| {
        clipboard::copy(&kept, move |went| {
            let _ = said.try_set(Some(went));
        });
    };
    let went =
        move || said.get().map(|went| if went { "It is on the clipboard." } else { "Not copied: take it from here." });
    let by_hand = move || {
        tag("textarea")
            .class("hand-out__text")
            .attr("readonly", true)
            .attr("rows", "6")
            .attr("aria-label", "What to ask for, as text")
            .child(text.clone())
    };
    Some(
        tag("section")
            .class("came__ask")
            .child(tag("h4").class("came__title").child("What to ask the mill for instead"))
            .child(none)
            .child(tag("ul").class("came__list").child(lines))
            .child(button("button button--small", copy).child("Copy it as text"))
            .child(tag("p").attr("role", "status").live(went))
            .shown(move || said.get() == Some(false), by_hand),
    )
}
