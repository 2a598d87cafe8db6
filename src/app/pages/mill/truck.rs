//! As it comes: every piece ticked off the truck, measured, and given its place.
use super::given::given;
use super::order_memo;
use super::piece::{Opened, entry};
use crate::app::cached::{Cached, text_of};
use crate::app::components::{caution, fold, fractions, word};
use crate::app::dom::{Item, Tag, button, parts, tag};
use crate::app::use_store;
use crate::ordering::{OrderLine, as_ordered, asked_length, n_pieces, piece_name};
use crate::project::Piece;
use leptos::prelude::*;
use std::collections::BTreeMap;

type Pieces = BTreeMap<String, Piece>;

fn n_here(line: &OrderLine, received: &Pieces) -> usize {
    (1..=line.count).filter(|number| received.get(&piece_name(line, *number)).is_some_and(Piece::is_kept)).count()
}

/// Nothing is known of it but that it came.
fn is_plain(piece: &Piece) -> bool {
    *piece == Piece::as_ordered(piece.section, piece.length)
}

/// Every ordered piece with its tick, and what is known of it.
pub fn truck() -> Tag {
    let store = use_store();
    let order = order_memo();
    let received = store.slice(|project| project.progress.pieces.clone());
    let opened = Opened(RwSignal::new(None));
    let summary = text_of(move || {
        let Some(order) = order.get() else { return String::new() };
        let here = received.with(|received| order.lines.iter().map(|line| n_here(line, received)).sum::<usize>());
        format!("{here} of {} on the truck", n_pieces(&order))
    });
    let lines = move || {
        let order = order.get()?;
        Some(order.lines.iter().cloned().map(|line| card(line, received, opened)).collect::<Vec<_>>())
    };
    fold("As it comes", summary, false, || {
        parts()
            .child(word(
                "Tick a piece that is as ordered. Look at one that is not: measure it, name what is wrong, and it says at once \
                 whether it does.",
            ))
            .child(caution("Never stand where a load can roll when the straps come off; look up what a stick weighs before you lift it."))
            .live(lines)
            .child(over(received, opened))
            .child(given())
    })
}

/// Pieces that are here and no longer on the order: still wood that can become a stick.
fn over(received: Cached<Pieces>, opened: Opened) -> Tag {
    let store = use_store();
    let order = order_memo();
    let names = Cached::new(move || -> Vec<String> {
        let Some(order) = order.get() else { return Vec::new() };
        let known: Vec<String> =
            order.lines.iter().flat_map(|line| (1..=line.count).map(|number| piece_name(line, number))).collect();
        received.with(|received| received.keys().filter(|name| !known.contains(name)).cloned().collect())
    });
    let forget = move |_| {
        let names = names.get_untracked();
        store.tick(|progress| progress.pieces.retain(|name, _| !names.contains(name)));
    };
    let rows = move || {
        let item = |name: String| {
            Item::new(name.clone(), move || {
                let plain = received.with_untracked(|pieces| pieces.get(&name).cloned());
                plain.map_or_else(parts, |plain| row((name, plain), String::new(), received, opened))
            })
        };
        names.get().into_iter().map(item).collect()
    };
    parts().shown(
        move || names.with(|names| !names.is_empty()),
        move || {
            tag("section")
                .class("truck")
                .child(tag("h3").class("truck__head").child("Here, and not on the order as it is now"))
                .child(word(
                    "The frame changed after they came. They stay wood: a place is sought for them with the rest.",
                ))
                .child(tag("div").class("truck__ticks").each(rows))
                .child(button("button button--small", forget).child("Take them off the list"))
        },
    )
}

fn card(line: OrderLine, received: Cached<Pieces>, opened: Opened) -> Tag {
    let store = use_store();
    let of_line = line.clone();
    let here = Cached::new(move || received.with(|received| n_here(&of_line, received)));
    let count = line.count;
    let (section, long) = (line.section, line.length);
    let name = move || {
        let units = store.units();
        format!("{} × {}", section.label(units), asked_length(long, units))
    };
    let whole = line.clone();
    let all = move |_| {
        let is_full = here.get_untracked() == count;
        store.tick(|progress| {
            for name in (1..=count).map(|number| piece_name(&whole, number)) {
                if !is_full {
                    progress.pieces.entry(name).or_insert_with(|| as_ordered(&whole));
                } else if progress.pieces.get(&name).is_some_and(is_plain) {
                    progress.pieces.remove(&name);
                }
            }
        });
    };
    let ticks = (1..=count)
        .map(|number| row((piece_name(&line, number), as_ordered(&line)), line.piece_words(number), received, opened))
        .collect::<Vec<_>>();
    tag("section")
        .class("truck")
        .child(
            tag("h3")
                .class("truck__head")
                .child(tag("span").class("truck__name").live(move || fractions(&name())))
                .child(tag("span").class("truck__count").live(move || format!("{} of {count}", here.get()))),
        )
        .child(tag("div").class("truck__ticks").attr("role", "group").live_attr("aria-label", name).child(ticks))
        .child((count > 1).then(|| {
            button("button button--small", all)
                .live(move || if here.get() == count { "None of these" } else { "All of these" })
        }))
}

/// A piece's tick, the button that opens it, and what is known of it while it is open.
fn row((name, plain): (String, Piece), sticks: String, received: Cached<Pieces>, opened: Opened) -> Tag {
    let number = name.rsplit('/').next().unwrap_or_default().to_owned();
    let (of_open, of_look) = (name.clone(), name.clone());
    let is_open = Cached::new(move || opened.0.with(|open| open.as_ref() == Some(&of_open)));
    let look = move |_| opened.0.update(|open| *open = (open.as_ref() != Some(&of_look)).then(|| of_look.clone()));
    let (section, long) = (plain.section, plain.length);
    let words = move || {
        let units = use_store().units();
        format!("Look at piece {number} of {} × {}", section.label(units), asked_length(long, units))
    };
    // Many short sticks out of one piece need the whole row.
    let is_wide = sticks.chars().count() > 9;
    let of_entry = (name.clone(), plain.clone());
    parts()
        .child(
            tag("div")
                .class("came")
                .class_if("tick--wide", is_wide)
                .child(tick((name, plain), sticks, received, opened))
                .child(
                    button("came__look", look)
                        .live_attr("aria-expanded", move || is_open.get().to_string())
                        .live_attr("aria-label", words)
                        .child(
                            tag("span").attr("aria-hidden", "true").live(
                                move || {
                                    if is_open.get() { "▴" } else { "look" }
                                },
                            ),
                        ),
                ),
        )
        .shown(move || is_open.get(), move || entry(of_entry.clone(), opened))
}

fn tick((name, plain): (String, Piece), sticks: String, received: Cached<Pieces>, opened: Opened) -> Tag {
    let store = use_store();
    let number = name.rsplit('/').next().unwrap_or_default().to_owned();
    let of_name = name.clone();
    let piece = Cached::new(move || received.with(|received| received.get(&of_name).cloned()));
    let on = Cached::new(move || piece.with(|piece| piece.as_ref().is_some_and(Piece::is_kept)));
    let turn = move |event: web_sys::Event| {
        let now = piece.get_untracked();
        // What was measured is not thrown away by a tap beside its mark.
        if now.as_ref().is_some_and(|piece| !is_plain(piece)) {
            event_target::<web_sys::HtmlInputElement>(&event).set_checked(on.get_untracked());
            opened.0.set(Some(name.clone()));
            return;
        }
        store.tick(|progress| match now {
            Some(_) => drop(progress.pieces.remove(&name)),
            None => drop(progress.pieces.insert(name.clone(), plain.clone())),
        });
    };
    let becomes = move || {
        piece.with(|piece| match piece {
            Some(piece) if !piece.is_kept() => "goes back".to_owned(),
            Some(piece) if !piece.place.is_empty() => piece.place.clone(),
            _ => sticks.clone(),
        })
    };
    let is_known = move || piece.with(|piece| piece.as_ref().is_some_and(|piece| !is_plain(piece)));
    tag("label")
        .class("tick")
        .child(
            tag("input")
                .class("tick__input")
                .attr("type", "checkbox")
                .live_prop("checked", move || on.get())
                .on("change", turn),
        )
        .child(tag("span").class("tick__box").attr("aria-hidden", "true"))
        .child(
            tag("span")
                .class("tick__words")
                .child(tag("span").class("tick__number").child(number))
                .child(tag("span").class("tick__stick").live_text(becomes))
                .shown(is_known, || tag("span").class("came__known").child(" · looked at")),
        )
}
