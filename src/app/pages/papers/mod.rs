//! Papers: the print pack, drawings as files, the project's file, and what the tool is.
mod about;
mod calculation;
mod choose;
mod drawing_file;
mod history;
mod index_sheet;
mod joints_sheet;
mod loads_sheet;
mod order_sheet;
mod pack;
mod pile_sheet;
mod receiving_sheet;
mod roof_sheet;
mod rules;
mod states;
mod states_words;
mod stick_sheet;
mod thumbs;

use crate::app::components::{fold, page, text_field, word};
use crate::app::dom::{Tag, parts};
use crate::app::files::{file_in, file_out};
use crate::app::pages::templates::templates_fold;
use crate::app::route::Place;
use crate::lens;
use about::about;
use calculation::calculation;
use choose::{Wanted, choose};
pub use drawing_file::PENS;
use drawing_file::drawing_files;
use history::history;
use leptos::prelude::*;
use pack::pack;
use rules::rules_fold;
use states::states;
use thumbs::thumbs;

/// Papers.
pub fn papers_page() -> Tag {
    let wanted = RwSignal::new(Wanted::default());
    pack(wanted);
    let words = "To print, to keep, to hand on";
    page(
        Place::Papers,
        "Papers",
        words,
        thumbs(wanted),
        parts()
            .child(choose(wanted))
            .child(templates_fold())
            .child(fold("This project’s file", "save, share, open", true, || {
                parts()
                    .child(word(
                        "Everything of this project in one file: a copy to keep, or for another \
                         phone. Opening one never writes over a project you have.",
                    ))
                    .child(file_out())
                    .child(file_in("Open a file"))
                    .child(text_field(lens!(note), "Note", 200).hint("stands under the name on every sheet"))
            }))
            .child(calculation())
            .child(drawing_files())
            .child(word("Name, other projects, units and light are under the project’s name at the top."))
            .child(rules_fold())
            .child(states())
            .child(history())
            .child(about()),
    )
}
