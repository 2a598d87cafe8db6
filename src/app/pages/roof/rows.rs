//! The purlin rows, from the eave up.
use super::fact;
use crate::app::components::{Fact, Facts, Fold, fractions};
use crate::app::route::Route;
use crate::app::use_store;
use crate::geometry::PurlinRow;
use crate::units::{Fineness, Length};
use crate::wording::{length, tape};
use leptos::prelude::*;

/// All rows.
#[component]
pub fn Rows() -> impl IntoView {
    let store = use_store();
    let rows =
        Memo::new(move |_| store.built().map(|built| (built.shape.purlins.clone(), built.shape.rafter.tail.0.x)));
    let summary = Signal::derive(move || {
        rows.with(|rows| rows.as_ref().map_or_else(String::new, |(rows, _)| format!("{} rows", rows.len())))
    });
    let step = fact(|built, project| {
        let [first, second, ..] = built.shape.purlins.as_slice() else { return None };
        Some(length(second.from_tail - first.from_tail, project.units))
    });
    let list = move || {
        let (rows, tail) = rows.get()?;
        let cards = rows.into_iter().map(|row| view! { <Row row tail/> }).collect_view();
        Some(view! { <ol class="purlins">{cards}</ol> })
    };
    view! {
        <Fold title="Purlin rows" summary open=true>
            <p class="page__word">
                "Each measure is to the row’s lower edge, along the rafters’ top edge. Hook the tape on the tail of the first and the last
                rafter, snap a line between, X above the line."
            </p>
            {list}
            <Facts>
                <Fact name="Row to row" value=step/>
                <Fact name="Both diagonals of the rows" value=diagonal()/>
            </Facts>
            <p class="page__word">
                "Equal diagonals, rake to rake from the lowest edge to the highest, mean the rows are square: then the sheets will be."
            </p>
        </Fold>
    }
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

#[component]
fn Row(row: PurlinRow, tail: Length) -> impl IntoView {
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
            view! { <li><a class="purlin__piece" href=href>{mark} " " {move || fractions(&length(long, store.units()))}</a></li> }
        })
        .collect_view();
    view! {
        <li class="purlin">
            <p class="purlin__mark">"N" {number}</p>
            <div class="purlin__measures">
                <p class="purlin__figure">{from_tail} <span class="purlin__from">" from the tails"</span></p>
                <p class="purlin__other">{from_zero} " from zero, the ledger heel"</p>
                <p class="purlin__other">{butts}</p>
                <ul class="purlin__pieces">{pieces}</ul>
            </div>
        </li>
    }
}
