//! A sheet that is printed by itself, from wherever it is asked for.
use crate::app::dom::{after_print, beside_app, print_only, tag};
use leptos::prelude::*;

const SHEET: &str = "single-sheet";

/// Makes room beside the app for one sheet, and gives what prints it: the sheet as HTML, shown on paper only.
pub fn print_alone() -> impl Fn(String) + Copy + 'static {
    let sheet = RwSignal::new(String::new());
    after_print(move || sheet.set(String::new()));
    beside_app(tag("div").class(SHEET).attr("aria-hidden", "true").live_html(move || sheet.get()));
    move |html| {
        sheet.set(html);
        print_only(SHEET);
    }
}
