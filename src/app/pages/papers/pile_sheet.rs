//! What he has, on paper: what to take from each stick of the pile, what is missing, and what is not needed.
use super::pack::ROOM;
use crate::app::Good;
use crate::app::components::{fractions, table};
use crate::app::dom::{Tag, parts, tag};
use crate::drawing::{pile, svg};
use crate::ordering::{PileBar, asked_length, from_yard, heart_looks, missing_lines, pile_proof, pile_verdict};
use crate::wording::length;

/// The pile.
pub fn pile_sheet(good: Good) -> Tag {
    let (project, built) = (good.project, good.built);
    let units = project.units;
    let says = |words: String| tag("p").class("paper__word").child(fractions(&words));
    if project.yard.iter().all(|lot| lot.count == 0) {
        return says("The pile is empty: enter at the Mill what lies there.".to_owned());
    }
    let answer = from_yard(&project, &built.order.sticks);
    let name = |place: usize| {
        let lot = project.yard.get(place)?;
        Some((format!("{} × {}", lot.section.label(units), asked_length(lot.length, units)), lot.remark.clone()))
    };
    let row = |bar: &PileBar| {
        let (stick, remark) = name(bar.lot)?;
        let cell = |words: &str| tag("td").child(fractions(words));
        Some(
            tag("tr")
                .child(tag("td").class("paper__boxes").child("☐"))
                .child(tag("th").attr("scope", "row").child(fractions(&stick)))
                .child(cell(&remark))
                .child(cell(&bar.sticks.join(" + ")))
                .child(cell(&length(bar.left, units))),
        )
    };
    let rows = answer.bars.iter().filter_map(row).collect::<Vec<_>>();
    let mut lines: Vec<Tag> = heart_looks(&project, &answer).into_iter().map(says).collect();
    if !answer.comes_out() {
        lines.extend(missing_lines(&answer.missing, &project).into_iter().map(says));
        lines.push(says(pile_proof(&project, &answer)));
    }
    for (place, n) in &answer.unused {
        lines.extend(name(*place).map(|(stick, _)| says(format!("{n} of {stick} not needed."))));
    }
    let title = "The pile at one scale";
    let html = svg::print(&pile(&project, &built, &answer, ROOM.0), ROOM.0, title);
    let docked = length(project.mill.trim_each_end, units);
    parts()
        .child(tag("p").class("paper__total").child(pile_verdict(&answer)))
        .child(says(format!("{docked} are docked from each end before the first mark, of all but purlins and blocks.")))
        .child(table("paper__table", &["Taken", "Of the pile", "Remark", "Out of it", "Left"], rows))
        .child(lines)
        .child(tag("div").class("paper__drawing").html(&html))
        .child(tag("p").class("paper__caution").child(
            "Old sticks hide checks, rot and iron. Look at all four faces and both ends, and at the grain, before one is counted on.",
        ))
}
