//! What comes out of the pile, in words for the page, a message and paper.
use super::{Missing, PileAnswer, asked_length};
use crate::project::{Heart, Project};
use crate::wording::length;

/// Whether it all comes out, or how much is missing.
#[must_use]
pub fn pile_verdict(answer: &PileAnswer) -> String {
    let n_sticks: usize = answer.bars.iter().map(|bar| bar.sticks.len()).sum();
    match answer.missing.len() {
        0 => format!("It all comes out of it: {n_sticks} sticks out of {} of the pile.", answer.bars.len()),
        n => format!("{n} of {} sticks are missing.", n_sticks + n),
    }
}

/// Whether more could be cut out of the pile.
#[must_use]
pub fn pile_proof(project: &Project, answer: &PileAnswer) -> String {
    if answer.is_proven() {
        return "Nothing more can be cut out of this pile: proven.".to_owned();
    }
    let more = length(answer.at_most_more, project.units);
    format!("At most {more} more of the frame, end to end, could come out of this pile.")
}

/// Which of the pile must be looked at for their heart.
#[must_use]
pub fn heart_looks(project: &Project, answer: &PileAnswer) -> Vec<String> {
    let mut all = Vec::new();
    for (lot, n, heart) in answer.to_look_at() {
        let Some(of) = project.yard.get(lot) else { continue };
        let size = format!("{} × {}", of.section.label(project.units), asked_length(of.length, project.units));
        all.push(format!("Look at the heart of {n} of the {size}: they are to be {}.", heart.name()));
    }
    all
}

/// A sentence for each section and length that is missing; one for a section of which nothing lies there.
#[must_use]
pub fn missing_lines(missing: &[Missing], project: &Project) -> Vec<String> {
    let units = project.units;
    let mut all: Vec<(&Missing, Vec<&str>)> = Vec::new();
    for stick in missing {
        let is_like = |known: &Missing| {
            let is_as_long = stick.longest.is_none() || length(known.needed, units) == length(stick.needed, units);
            (known.section, known.heart, known.longest, known.rip)
                == (stick.section, stick.heart, stick.longest, stick.rip)
                && is_as_long
        };
        match all.iter_mut().find(|(known, _)| is_like(known)) {
            Some((_, marks)) => marks.push(&stick.mark),
            None => all.push((stick, vec![&stick.mark])),
        }
    }
    let says = |(stick, marks): (&Missing, Vec<&str>)| {
        let section = stick.section.label(units);
        let of_heart = if stick.has_other_heart { format!(" {}", stick.heart.name()) } else { String::new() };
        let why = match stick.longest {
            None if stick.has_other_heart => format!("what lies there of that size is not{of_heart}"),
            None => "nothing of that size lies there".to_owned(),
            Some(longest) if longest < stick.needed => {
                format!("the longest there{of_heart} is {}", asked_length(longest, units))
            }
            Some(_) => format!("all long enough{of_heart} are used up"),
        };
        let lot = stick.rip.and_then(|place| project.yard.get(place));
        let rip = lot.map_or_else(String::new, |lot| {
            let of = format!("{} × {}", lot.section.label(units), asked_length(lot.length, units));
            format!("; each could be ripped out of a {of} that is left, if you can rip it")
        });
        let marks = marks.join(", ");
        let needed = match stick.longest {
            None => String::new(),
            Some(_) => format!(" × {} with both ends docked", length(stick.needed, units)),
        };
        format!("{section}{needed}: {marks}; {why}{rip}.")
    };
    all.into_iter().map(says).collect()
}

/// A line for each stick of the pile that is begun, then what is missing and what is left.
#[must_use]
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
    lines.extend(heart_looks(project, answer));
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
