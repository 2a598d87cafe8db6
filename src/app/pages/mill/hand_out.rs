//! The order handed on: as text for a message, as rows for a spreadsheet.
use super::clipboard;
use crate::app::files::{download, file_name};
use crate::app::use_store;
use crate::ordering::{Cells, order_csv, order_text};
use leptos::prelude::*;

/// Buttons that hand the order on.
#[component]
pub fn HandOut() -> impl IntoView {
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
    view! {
        <div class="hand-out">
            <div class="actions">
                <button type="button" class="button button--main" on:click=copy>"Copy as text"</button>
                <button type="button" class="button" on:click=move |_| rows(Cells::Comma, "csv")>"Spreadsheet, 12.5"</button>
                <button type="button" class="button" on:click=move |_| rows(Cells::Semicolon, "csv")>"Spreadsheet, 12,5"</button>
            </div>
            <p class="hand-out__said" role="status">
                {move || {
                    said.get().map(|went| {
                        if went { "The order is on the clipboard: paste it into a message." } else { "Not copied: take it from here." }
                    })
                }}
            </p>
            {move || by_hand.get().map(|text| view! { <textarea class="hand-out__text" readonly=true rows="8" aria-label="The order as text" prop:value=text></textarea> })}
        </div>
    }
}
