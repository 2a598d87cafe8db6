//! The order handed on: as text for a message, as rows for a spreadsheet.
use super::clipboard;
use crate::app::dom::{Tag, button, tag};
use crate::app::files::{download, file_name};
use crate::app::use_store;
use crate::ordering::{Cells, order_csv, order_text};
use leptos::prelude::*;

/// Buttons that hand the order on.
pub fn hand_out() -> Tag {
    let store = use_store();
    let said = RwSignal::new(None::<bool>);
    let by_hand = RwSignal::new(None::<String>);
    let copy = move |_| {
        let Some(good) = store.good() else { return };
        let text = order_text(&good.project, &good.built.order);
        let kept = text.clone();
        clipboard::copy(&text, move |went| {
            let _ = said.try_set(Some(went));
            let _ = by_hand.try_set((!went).then_some(kept));
        });
    };
    let rows = move |cells: Cells, ending: &'static str| {
        if let Some(good) = store.good() {
            let name = file_name(&format!("{} order", good.project.name), ending);
            download(&name, &order_csv(&good.project, &good.built.order, cells), "text/csv");
        }
    };
    tag("div")
        .class("hand-out")
        .child(
            tag("div")
                .class("actions")
                .child(button("button button--main", copy).child("Copy as text"))
                .child(button("button", move |_| rows(Cells::Comma, "csv")).child("Spreadsheet, 12.5"))
                .child(button("button", move |_| rows(Cells::Semicolon, "csv")).child("Spreadsheet, 12,5")),
        )
        .child(tag("p").class("hand-out__said").attr("role", "status").live(move || {
            said.get().map(|went| {
                if went {
                    "The order is on the clipboard: paste it into a message."
                } else {
                    "Not copied: take it from here."
                }
            })
        }))
        .live(move || {
            by_hand.get().map(|text| {
                tag("textarea")
                    .class("hand-out__text")
                    .attr("readonly", true)
                    .attr("rows", "8")
                    .attr("aria-label", "The order as text")
                    .live_prop("value", move || text.clone())
            })
        })
}
