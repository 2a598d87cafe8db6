//! The sheets: what to order, where to rip, and the order they are laid in.
use super::fact;
use crate::app::components::{Caution, Fact, Facts, Fold, fractions};
use crate::app::use_store;
use crate::design::Built;
use crate::ordering::{Sheet, SheetPlan};
use crate::project::Project;
use crate::units::{Length, show_area};
use crate::wording::length;
use leptos::prelude::*;

/// What is ordered, in one sentence.
fn ordered(built: &Built, project: &Project) -> Option<String> {
    let plan = &built.sheets;
    Some(format!("{} of {}", plan.sheets.len(), length(plan.length.length(), project.units)))
}

/// The rip of the first or the last sheet in words.
fn rip(plan: &SheetPlan, sheet: Option<&Sheet>, project: &Project) -> Option<String> {
    let sheet = sheet?;
    let cover = length(sheet.cover, project.units);
    let off = length(project.roofing.cover.max(sheet.cover) - sheet.cover, project.units);
    Some(if sheet.is_ripped && plan.sheets.len() > 1 { format!("to {cover} ({off} off)") } else { "whole".to_owned() })
}

/// The sheets.
#[component]
pub fn Sheets() -> impl IntoView {
    let store = use_store();
    let plan = Memo::new(move |_| store.built().map(|built| built.sheets.clone()));
    let list = move || {
        let plan = plan.get()?;
        let n_sheets = plan.sheets.len();
        let rows = plan
            .sheets
            .into_iter()
            .enumerate()
            .map(|(index, sheet)| view! { <Row number=index + 1 n_sheets sheet/> })
            .collect_view();
        Some(rows)
    };
    view! {
        <Fold title="Sheets" summary=fact(ordered) open=true>
            <Facts>
                <Fact name="To order" value=fact(ordered)/>
                <Fact name="Covers each" value=fact(|_, project| Some(length(project.roofing.cover, project.units)))/>
                <Fact name="Rake to rake" value=fact(|built, project| Some(length(built.sheets.width, project.units)))/>
                <Fact name="Left sheet" value=fact(|built, project| rip(&built.sheets, built.sheets.sheets.first(), project))/>
                <Fact name="Right sheet" value=fact(|built, project| rip(&built.sheets, built.sheets.sheets.last(), project))/>
                <Fact name="Roof covered" value=fact(|built, project| {
                    Some(show_area(built.sheets.width * built.sheets.length.length(), project.units).to_string())
                })/>
                <Fact name="Metal to buy, by cover" value=fact(|built, project| {
                    let strip = project.roofing.cover * built.sheets.length.length();
                    Some(show_area(strip * built.sheets.sheets.len() as f64, project.units).to_string())
                })/>
            </Facts>
            <div class="table-box" tabindex="0" role="group" aria-label="Sheets from left to right">
                <table class="table table--figures">
                    <thead>
                        <tr>
                            <th scope="col">"Sheet"</th>
                            <th scope="col">"Starts"</th>
                            <th scope="col">"Covers"</th>
                            <th scope="col">"Cut"</th>
                        </tr>
                    </thead>
                    <tbody>{list}</tbody>
                </table>
            </div>
            <p class="page__word">"Starts: from the left rake, seen from outside facing the wall. Tick the places on the lowest purlin; a cut edge lies at the rake, under its trim."</p>
            <p class="page__word">
                "The first sheet decides them all. Set it square to the eave: 3 along the eave, 4 up the rake, 5 between, in any unit, as large
                as the roof allows. Then one screw at each corner, and measure again."
            </p>
            <p class="page__word">"Lay from the end away from the weather, so that each lap opens away from the wind (common practice)."</p>
            <Caution text="Sheets cut like knives, ripped edges worst: gloves, sleeves, and nobody under the roof."/>
        </Fold>
    }
}

#[component]
fn Row(number: usize, n_sheets: usize, sheet: Sheet) -> impl IntoView {
    let store = use_store();
    let say = move |value: Length| move || fractions(&length(value, store.units()));
    let cut = match (sheet.is_ripped, number) {
        (false, _) => "whole",
        (true, 1) if n_sheets > 1 => "ripped at the left",
        (true, _) => "ripped at the right",
    };
    view! {
        <tr>
            <th scope="row">{number}</th>
            <td>{say(sheet.start)}</td>
            <td>{say(sheet.cover)}</td>
            <td>{cut}</td>
        </tr>
    }
}
