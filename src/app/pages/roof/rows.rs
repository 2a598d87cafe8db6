//! The purlin rows, from the eave up.
use super::fact;
use crate::app::cached::{Cached, text_of};
use crate::app::components::{facts, fold, fractions, word};
use crate::app::dom::{Tag, parts, tag};
use crate::app::route::Route;
use crate::app::use_store;
use crate::geometry::PurlinRow;
use crate::units::{Fineness, Length};
use crate::wording::{length, tape};
use leptos::prelude::*;

/// All rows.
pub fn rows() -> Tag {
    let store = use_store();
    let rows =
        Cached::new(move || store.built().map(|built| (built.shape.purlins.clone(), built.shape.rafter.tail.0.x)));
    let summary = text_of(move || {
        rows.with(|rows| rows.as_ref().map_or_else(String::new, |(rows, _)| format!("{} rows", rows.len())))
    });
    let step = fact(|built, project| {
        let [first, second, ..] = built.shape.purlins.as_slice() else { return None };
        Some(length(second.from_tail - first.from_tail, project.units))
    });
    let list = move || {
        let (rows, tail) = rows.get()?;
        let cards = rows.into_iter().map(|row| card(row, tail)).collect::<Vec<_>>();
        Some(tag("ol").class("purlins").child(cards))
    };
    fold("Purlin rows", summary, true, || {
        parts()
            .child(word(
                "Each measure is to the row’s lower edge, along the rafters’ top edge. \
                 Hook the tape on the tail of the first and the last rafter, snap a line \
                 between, X above the line.",
            ))
            .live(list)
            .child(facts(&[("Row to row", step), ("Both diagonals of the rows", diagonal())]))
            .child(word(
                "Equal diagonals, rake to rake from the lowest edge to the highest, mean \
                 the rows are square: then the sheets will be.",
            ))
    })
}

/// Corner to corner over all rows: √(w² + h²), from the lower edge of the first to the upper edge of the last.
fn diagonal() -> Signal<String> {
    fact(|built, project| {
        let (first, last) = (built.shape.purlins.first()?, built.shape.purlins.last()?);
        let high = last.from_tail + project.frame.timbers.purlin.sawn.breadth - first.from_tail;
        let wide = built.sheets.width;
        let across = Length::try_inches(wide.to_inches().hypot(high.to_inches()))?;
        Some(length(across, project.units))
    })
}

fn card(row: PurlinRow, tail: Length) -> Tag {
    let store = use_store();
    let from_tail = move || fractions(&tape(row.from_tail, store.units(), Fineness::Sixteenth));
    let from_zero = move || fractions(&tape(tail - row.from_tail, store.units(), Fineness::Sixteenth));
    let butts: Vec<String> =
        row.pieces.iter().filter_map(|piece| piece.right).map(|butt| format!("R{}", butt.rafter)).collect();
    let butts = if butts.is_empty() { "in one piece".to_owned() } else { format!("butts on {}", butts.join(", ")) };
    let number = row.number;
    let pieces = row
        .pieces
        .iter()
        .enumerate()
        .map(|(index, piece)| {
            let mark = row.mark(index);
            let (href, long) = (Route::bench(&mark).hash(), piece.length());
            tag("li").child(
                tag("a")
                    .class("purlin__piece")
                    .attr("href", href)
                    .child(mark)
                    .child(" ")
                    .live(move || fractions(&length(long, store.units()))),
            )
        })
        .collect::<Vec<_>>();
    tag("li").class("purlin").child(tag("p").class("purlin__mark").child("N").child(number)).child(
        tag("div")
            .class("purlin__measures")
            .child(
                tag("p")
                    .class("purlin__figure")
                    .live(from_tail)
                    .child(tag("span").class("purlin__from").child(" from the tails")),
            )
            .child(tag("p").class("purlin__other").live(from_zero).child(" from zero, the ledger heel"))
            .child(tag("p").class("purlin__other").child(butts))
            .child(tag("ul").class("purlin__pieces").child(pieces)),
    )
}
