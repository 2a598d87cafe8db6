//! Papers: the print pack, drawings as files, the project's file, and what the tool is.
mod about;
mod calculation;
mod choose;
mod drawing_file;
mod history;
mod order_sheet;
mod pack;
mod roof_sheet;
mod rules;
mod stick_sheet;
mod thumbs;

use crate::app::components::{Fold, Page, TextField};
use crate::app::files::{FileIn, FileOut};
use crate::app::route::Place;
use crate::lens;
use about::About;
use calculation::Calculation;
use choose::{Choose, Wanted};
use drawing_file::DrawingFiles;
use history::History;
use leptos::prelude::*;
use pack::Pack;
use rules::RulesFold;
use thumbs::Thumbs;

/// Papers.
#[component]
pub fn PapersPage() -> impl IntoView {
    let wanted = RwSignal::new(Wanted::default());
    let about = Signal::derive(|| "To print, to keep, to hand on".to_owned());
    view! {
        <Page place=Place::Papers title="Papers" about lead=move || view! { <Thumbs wanted/> }>
            <Choose wanted/>
            <Fold title="This project’s file" summary=Signal::derive(|| "save, share, open".to_owned()) open=true>
                <p class="page__word">"Everything of this project in one file: a copy to keep, or for another phone. Opening one never writes over a project you have."</p>
                <FileOut/>
                <FileIn/>
                <TextField field=lens!(note) label="Note" hint="stands under the name on every sheet" most=200/>
            </Fold>
            <Calculation/>
            <DrawingFiles/>
            <p class="page__word">"Name, other projects, units and light are under the project’s name at the top."</p>
            <RulesFold/>
            <History/>
            <About/>
            <Pack wanted/>
        </Page>
    }
}
