//! The sheets: what to order, where to rip, and the order they are laid in.
use super::fact;
use crate::app::cached::Cached;
use crate::app::components::{caution, facts, figures, fold, fractions, word};
use crate::app::dom::{Tag, live, parts, tag};
use crate::app::use_store;
use crate::design::Built;
use crate::ordering::{Sheet, SheetPlan};
use crate::project::Project;
use crate::units::{Length, show_area};
use crate::wording::length;

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
pub fn sheets() -> Tag {
    let store = use_store();
    let plan = Cached::new(move || store.built().map(|built| built.sheets.clone()));
    let list = move || {
        let plan = plan.get()?;
        let n_sheets = plan.sheets.len();
        let rows = plan
            .sheets
            .into_iter()
            .enumerate()
            .map(|(index, sheet)| row(index + 1, n_sheets, sheet))
            .collect::<Vec<_>>();
        Some(rows)
    };
    fold("Sheets", fact(ordered), true, || {
        parts()
            .child(facts(&[
                ("To order", fact(ordered)),
                ("Covers each", fact(|_, project| Some(length(project.roofing.cover, project.units)))),
                ("Rake to rake", fact(|built, project| Some(length(built.sheets.width, project.units)))),
                ("Left sheet", fact(|built, project| rip(&built.sheets, built.sheets.sheets.first(), project))),
                ("Right sheet", fact(|built, project| rip(&built.sheets, built.sheets.sheets.last(), project))),
                (
                    "Roof covered",
                    fact(|built, project| {
                        Some(show_area(built.sheets.width * built.sheets.length.length(), project.units).to_string())
                    }),
                ),
                (
                    "Metal to buy, by cover",
                    fact(|built, project| {
                        let strip = project.roofing.cover * built.sheets.length.length();
                        Some(show_area(strip * built.sheets.sheets.len() as f64, project.units).to_string())
                    }),
                ),
            ]))
            .child(figures("Sheets from left to right", &["Sheet", "Starts", "Covers", "Cut"], live(list)))
            .child(word(
                "Starts: from the left rake, seen from outside facing the wall. Tick the \
                 places on the lowest purlin; a cut edge lies at the rake, under its \
                 trim.",
            ))
            .child(word(
                "The first sheet decides them all. Set it square to the eave: 3 along the \
                 eave, 4 up the rake, 5 between, in any unit, as large as the roof \
                 allows. Then one screw at each corner, and measure again.",
            ))
            .child(word(
                "Lay from the end away from the weather, so that each lap opens away from \
                 the wind (common practice).",
            ))
            .child(caution(
                "Sheets cut like knives, ripped edges worst: gloves, sleeves, and nobody \
                 under the roof.",
            ))
    })
}

fn row(number: usize, n_sheets: usize, sheet: Sheet) -> Tag {
    let store = use_store();
    let say = move |value: Length| move || fractions(&length(value, store.units()));
    let cut = match (sheet.is_ripped, number) {
        (false, _) => "whole",
        (true, 1) if n_sheets > 1 => "ripped at the left",
        (true, _) => "ripped at the right",
    };
    tag("tr")
        .child(tag("th").attr("scope", "row").child(number))
        .child(tag("td").live(say(sheet.start)))
        .child(tag("td").live(say(sheet.cover)))
        .child(tag("td").child(cut))
}
