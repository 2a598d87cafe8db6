//! Purlin rows and sheets on paper.
use crate::app::Good;
use crate::app::components::fractions;
use crate::units::{Fineness, Length};
use crate::wording::{length, tape};
use leptos::prelude::*;

/// The roof list.
#[component]
pub fn RoofSheet(good: Good) -> impl IntoView {
    let sheets = &good.built.sheets;
    let units = good.project.units;
    let ordered = format!(
        "{} sheets of {}, cover {}, {} rake to rake.",
        sheets.sheets.len(),
        length(sheets.length.length(), units),
        length(good.project.roofing.cover, units),
        length(sheets.width, units)
    );
    view! {
        <Rows good=good.clone()/>
        <p class="paper__total">{fractions(&ordered)}</p>
        <Sheets good/>
        <p class="paper__word">"First sheet square: 3 along the eave, 4 up the rake, 5 between. Keep off wet or frosted metal; no sheets up in wind."</p>
    }
}

#[component]
fn Rows(good: Good) -> impl IntoView {
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
            view! {
                <tr>
                    <th scope="row">"N" {row.number}</th>
                    <td>{say(row.from_tail)}</td>
                    <td>{say(tail - row.from_tail)}</td>
                    <td>{if butts.is_empty() { "none".to_owned() } else { butts.join(", ") }}</td>
                    <td>{fractions(&pieces.join(" + "))}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <table class="paper__table">
            <thead>
                <tr>
                    <th scope="col">"Row"</th>
                    <th scope="col">"Lower edge from the tails"</th>
                    <th scope="col">"From zero, ledger heel"</th>
                    <th scope="col">"Butts on"</th>
                    <th scope="col">"Pieces"</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
}

#[component]
fn Sheets(good: Good) -> impl IntoView {
    let units = good.project.units;
    let rows = good
        .built
        .sheets
        .sheets
        .iter()
        .enumerate()
        .map(|(index, sheet)| {
            view! {
                <tr>
                    <th scope="row">{index + 1}</th>
                    <td>{fractions(&length(sheet.start, units))}</td>
                    <td>{fractions(&length(sheet.cover, units))}</td>
                    <td>{if sheet.is_ripped { "ripped, cut edge at the rake" } else { "whole" }}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <table class="paper__table">
            <thead>
                <tr>
                    <th scope="col">"Sheet"</th>
                    <th scope="col">"Starts from the left rake"</th>
                    <th scope="col">"Covers"</th>
                    <th scope="col">"Cut"</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
    }
}
