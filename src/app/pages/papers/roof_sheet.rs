//! Purlin rows and sheets on paper.
use crate::app::Good;
use crate::app::components::{fractions, table};
use crate::app::dom::{Tag, parts, tag};
use crate::units::{Fineness, Length};
use crate::wording::{length, tape};

/// The roof list.
pub fn roof_sheet(good: Good) -> Tag {
    let plan = &good.built.sheets;
    let units = good.project.units;
    let ordered = format!(
        "{} sheets of {}, cover {}, {} rake to rake.",
        plan.sheets.len(),
        length(plan.length.length(), units),
        length(good.project.roofing.cover, units),
        length(plan.width, units)
    );
    parts()
        .child(rows(good.clone()))
        .child(tag("p").class("paper__total").child(fractions(&ordered)))
        .child(sheets(good))
        .child(tag("p").class("paper__word").child(
            "First sheet square: 3 along the eave, 4 up the rake, 5 between. Keep off \
             wet or frosted metal; no sheets up in wind.",
        ))
}

fn rows(good: Good) -> Tag {
    let units = good.project.units;
    let tail = good.built.shape.rafter.tail.0.x;
    let say = |value: Length| fractions(&tape(value, units, Fineness::Sixteenth));
    let rows = good
        .built
        .shape
        .purlins
        .iter()
        .map(|row| {
            let butts: Vec<String> =
                row.pieces.iter().filter_map(|piece| piece.right).map(|butt| format!("R{}", butt.rafter)).collect();
            let pieces: Vec<String> = row.pieces.iter().map(|piece| length(piece.length(), units)).collect();
            tag("tr")
                .child(tag("th").attr("scope", "row").child("N").child(row.number))
                .child(tag("td").child(say(row.from_tail)))
                .child(tag("td").child(say(tail - row.from_tail)))
                .child(tag("td").child(if butts.is_empty() { "none".to_owned() } else { butts.join(", ") }))
                .child(tag("td").child(fractions(&pieces.join(" + "))))
        })
        .collect::<Vec<_>>();
    table("paper__table", &["Row", "Lower edge from the tails", "From zero, ledger heel", "Butts on", "Pieces"], rows)
}

fn sheets(good: Good) -> Tag {
    let units = good.project.units;
    let rows = good
        .built
        .sheets
        .sheets
        .iter()
        .enumerate()
        .map(|(index, sheet)| {
            tag("tr")
                .child(tag("th").attr("scope", "row").child(index + 1))
                .child(tag("td").child(fractions(&length(sheet.start, units))))
                .child(tag("td").child(fractions(&length(sheet.cover, units))))
                .child(tag("td").child(if sheet.is_ripped { "ripped, cut edge at the rake" } else { "whole" }))
        })
        .collect::<Vec<_>>();
    table("paper__table", &["Sheet", "Starts from the left rake", "Covers", "Cut"], rows)
}
