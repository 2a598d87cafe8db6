//! The whole calculation of the strength, printed by itself for an engineer.
use crate::app::components::{fold, print_alone, word};
use crate::app::dom::{Tag, button, parts};
use crate::app::files::{download, file_name};
use crate::app::{Strong, use_store};
use crate::report;
use leptos::prelude::*;

fn whole(strong: &Strong) -> String {
    report::calculation(&strong.good.project, &strong.good.built, &strong.strength)
}

/// The calculation: to print, and as a page of its own.
pub fn calculation() -> Tag {
    let store = use_store();
    let print_sheet = print_alone();
    let print = move |_| {
        if let Some(strong) = untrack(move || store.strong()) {
            print_sheet(whole(&strong));
        }
    };
    let keep = move |_| {
        if let Some(strong) = untrack(move || store.strong()) {
            let page = report::page(&strong.good.project.name, &whole(&strong));
            download(&file_name(&strong.good.project.name, "strength.html"), &page, "text/html");
        }
    };
    fold("The calculation of the strength", "inputs, loads, every check with its working", false, || {
        parts()
            .child(word(
                "For an engineer or the building authority: what it is worked from, every \
                 load and every check, the governing ones step by step with document and \
                 clause.",
            ))
            .child(button("button button--main", print).child("Print the calculation"))
            .child(button("button", keep).child("Keep it as a page"))
    })
}
