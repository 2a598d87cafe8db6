//! What comes out of the pile, in words for a message.
use super::yard::{looks, missing_lines};
use crate::ordering::{PileAnswer, asked_length};
use crate::project::{Heart, Project};
use crate::wording::length;

/// A line for each stick of the pile that is begun, then what is missing and what is left.
pub fn pile_text(project: &Project, answer: &PileAnswer) -> String {
    let units = project.units;
    let name = |place: usize| {
        let lot = project.yard.get(place)?;
        let heart = if lot.heart == Heart::Either { String::new() } else { format!(", {}", lot.heart.name()) };
        let remark = if lot.remark.is_empty() { String::new() } else { format!(" ({})", lot.remark) };
        Some(format!("{} x {}{heart}{remark}", lot.section.label(units), asked_length(lot.length, units)))
    };
    let mut lines = vec![project.name.clone(), "Out of the pile:".to_owned()];
    for bar in &answer.bars {
        let left = length(bar.left, units);
        lines.push(format!("{}: {}, {left} left", name(bar.lot).unwrap_or_default(), bar.sticks.join(" + ")));
    }
    lines.extend(looks(project, answer));
    if answer.comes_out() {
        lines.push("Nothing is missing.".to_owned());
    } else {
        lines.push("Missing:".to_owned());
        lines.extend(missing_lines(&answer.missing, project));
    }
    let left = answer.unused.iter().map(|(lot, n)| format!("{n} of {} not needed", name(*lot).unwrap_or_default()));
    lines.extend(left);
    lines.join("\n")
}
