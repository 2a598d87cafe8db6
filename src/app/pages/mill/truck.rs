//! Ticking the pieces off the truck.
use super::order_memo;
use crate::app::components::{fold, fractions, word};
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::use_store;
use crate::ordering::{OrderLine, as_ordered, asked_length, n_pieces, piece_name};
use crate::project::Piece;
use leptos::prelude::*;
use std::collections::BTreeMap;

fn n_here(line: &OrderLine, received: &BTreeMap<String, Piece>) -> usize {
    (1..=line.count).filter(|number| received.get(&piece_name(line, *number)).is_some_and(Piece::is_kept)).count()
}

/// Every ordered piece with its tick.
pub fn truck() -> Tag {
    let store = use_store();
    let order = order_memo();
    let received = store.slice(|project| project.progress.pieces.clone());
    let counts = Memo::new(move |_| {
        let Some(order) = order.get() else { return (0, 0, 0) };
        let here = received.with(|received| order.lines.iter().map(|line| n_here(line, received)).sum::<usize>());
        (here, n_pieces(&order), received.with(|pieces| pieces.values().filter(|piece| piece.is_kept()).count()) - here)
    });
    let summary = Signal::derive(move || {
        let (here, all, _) = counts.get();
        format!("{here} of {all} on the truck")
    });
    let lines = move || {
        let order = order.get()?;
        Some(order.lines.iter().cloned().map(|line| card(line, received)).collect::<Vec<_>>())
    };
    fold(
        "On the truck",
        summary,
        false,
        parts()
            .child(word("Measure each piece, look at its four faces, then tick it. Send back what is short or wound."))
            .live(lines)
            .live(move || {
                let (_, _, n_over) = counts.get();
                (n_over > 0).then(|| over(n_over))
            }),
    )
}

/// Pieces ticked for an order that has changed since.
fn over(n_over: usize) -> Tag {
    let store = use_store();
    let order = order_memo();
    let forget = move |_| {
        let Some(order) = order.get_untracked() else { return };
        let known: Vec<String> =
            order.lines.iter().flat_map(|line| (1..=line.count).map(|number| piece_name(line, number))).collect();
        store.tick(|progress| progress.pieces.retain(|name, _| known.contains(name)));
    };
    tag("div")
        .class("problem")
        .child(
            tag("p").class("problem__says").child(tag("strong").class("problem__word").child("Look at this: ")).child(
                format!("{n_over} ticked pieces are not on the order as it is now: the frame changed after they came."),
            ),
        )
        .child(button("button button--small", forget).child("Take those ticks away"))
}

fn card(line: OrderLine, received: Memo<BTreeMap<String, Piece>>) -> Tag {
    let store = use_store();
    let of_line = line.clone();
    let here = Memo::new(move |_| received.with(|received| n_here(&of_line, received)));
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
            for number in 1..=count {
                if is_full {
                    progress.pieces.remove(&piece_name(&whole, number));
                } else {
                    progress.pieces.entry(piece_name(&whole, number)).or_insert_with(|| as_ordered(&whole));
                }
            }
        });
    };
    let ticks = (1..=count)
        .map(|number| tick(piece_name(&line, number), as_ordered(&line), number, line.piece_words(number), received))
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

fn tick(name: String, piece: Piece, number: usize, sticks: String, received: Memo<BTreeMap<String, Piece>>) -> Tag {
    let store = use_store();
    // Many short sticks out of one piece need the whole row.
    let is_wide = sticks.chars().count() > 9;
    let of_name = name.clone();
    let on = Memo::new(move |_| received.with(|received| received.get(&of_name).is_some_and(Piece::is_kept)));
    let turn = move |_| {
        let next = !on.get_untracked();
        store.tick(|progress| {
            if next {
                progress.pieces.insert(name.clone(), piece.clone());
            } else {
                progress.pieces.remove(&name);
            }
        });
    };
    tag("label")
        .class("tick")
        .class_if("tick--wide", is_wide)
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
                .child(tag("span").class("tick__stick").child(sticks)),
        )
}
