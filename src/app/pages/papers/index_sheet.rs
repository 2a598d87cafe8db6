//! The first page of the shop book: every stick in the order of work, with the sheet it is on.
use super::super::bench::{WHY, bore_words, entries_of, words};
use crate::app::Good;
use crate::app::components::{fractions, table};
use crate::app::dom::{Tag, parts, tag};
use crate::tickets::{Turn, work_order};
use crate::wording::length;

/// The index; `sheets` are the sticks that have a sheet, and the number of the first one's; `joints` is the number of theirs.
pub fn index_sheet(good: &Good, (sheets, first): (&[String], usize), joints: Option<usize>) -> Tag {
    let Some(fitted) = entries_of(Some(good.clone())) else {
        return tag("p")
            .class("paper__word")
            .child("The order is still being worked out: print this page in a moment.");
    };
    let (sticks, units) = (&good.built.sticks, good.project.units);
    let work = work_order(sticks, &fitted.fit.entries);
    let row = |(at, turn): (usize, &Turn)| {
        let page = |mark: &String| sheets.iter().position(|known| known == mark).map(|at| first + at);
        let pattern = turn.sticks.first();
        let size = pattern.and_then(|mark| good.built.stick(mark)).map_or_else(String::new, |stick| {
            format!("{}, {}", stick.timber.sawn.label(units), length(stick.net_length(), units))
        });
        let named = |mark: &String| match page(mark) {
            Some(page) => format!("☐ {mark} (sheet {page})"),
            None => format!("☐ {mark}"),
        };
        let marks: Vec<String> = turn.sticks.iter().map(named).collect();
        let cells = [(at + 1).to_string(), words(sticks, turn), size, marks.join("  ")];
        tag("tr").child(cells.map(|cell| tag("td").child(fractions(&cell))))
    };
    let rows: Vec<Tag> = work.turns.iter().enumerate().map(row).collect();
    parts()
        .child(tag("p").class("paper__word").child(WHY))
        .child(table("paper__table", &["Turn", "What", "Size", "Sticks"], rows))
        .child(tag("p").class("paper__word").child(bore_words(&work.bore)))
        .child(joints.map(|sheet| {
            let says = format!("How the joints go together: each different one is drawn apart on sheet {sheet}.");
            tag("p").class("paper__word").child(says)
        }))
}
