//! What to ask for in the place of pieces that went back or fit nowhere.
use std::fmt::Write;

use super::assign::assign;
use super::place::Place;
use crate::design::Built;
use crate::materials::Section;
use crate::ordering::{OrderLine, asked_length, piece_name};
use crate::project::{HAIR, PieceState, Project, Role};
use crate::units::Length;
use crate::wording::length;

/// Sticks of one size to ask for.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// Section.
    pub section: Section,
    /// Length.
    pub length: Length,
    /// The places they are for: one stick for each.
    pub places: Vec<usize>,
}

/// Places that stay open once what was ordered and has not come yet is shared out among those in `open`.
#[must_use]
pub fn to_ask(project: &Project, built: &Built, places: &[Place], open: &[usize]) -> Vec<Ask> {
    let coming: Vec<&OrderLine> = built.order.lines.iter().flat_map(|line| yet_to_come(project, line)).collect();
    let of = |index: &usize| places.get(*index);
    let costs: Vec<Vec<Option<i64>>> = open
        .iter()
        .map(|index| coming.iter().map(|line| of(index).and_then(|place| waste(place, line))).collect())
        .collect();
    let mut asks: Vec<Ask> = Vec::new();
    for (index, _) in open.iter().zip(assign(&costs)).filter(|(_, given)| given.is_none()) {
        let Some(place) = of(index) else { continue };
        match asks.iter_mut().find(|ask| ask.section == place.section && ask.length == place.stock) {
            Some(ask) => ask.places.push(*index),
            None => asks.push(Ask { section: place.section, length: place.stock, places: vec![*index] }),
        }
    }
    asks
}

/// One entry for each piece of a line that nobody has seen yet.
fn yet_to_come<'a>(project: &Project, line: &'a OrderLine) -> Vec<&'a OrderLine> {
    let is_open = |number: &usize| !project.progress.pieces.contains_key(&piece_name(line, *number));
    (1..=line.count).filter(is_open).map(|_| line).collect()
}

/// Sixty-fourths of an inch it is longer than the place needs; nothing where it cannot lie there.
fn waste(place: &Place, line: &OrderLine) -> Option<i64> {
    let over = line.length - place.net - place.docked;
    (place.takes(line.section) && over + HAIR >= Length::ZERO).then_some((over.to_inches() * 64.0).round() as i64)
}

/// What goes back and what to ask for, as a few lines for a message to the mill; nothing where nothing is to be asked.
#[must_use]
pub fn ask_text(project: &Project, built: &Built, places: &[Place], asks: &[Ask]) -> Option<String> {
    let mut out = String::new();
    // Writing to a String cannot fail.
    let _ = write_asks(&mut out, project, built, places, asks);
    (!out.is_empty()).then_some(out)
}

fn write_asks(out: &mut String, project: &Project, built: &Built, places: &[Place], asks: &[Ask]) -> std::fmt::Result {
    let units = project.units;
    let pieces = &project.progress.pieces;
    let back: Vec<_> = pieces.iter().filter(|(_, piece)| piece.state == PieceState::SentBack).collect();
    if !back.is_empty() {
        writeln!(out, "{}: these go back", project.name)?;
    }
    for (name, piece) in back {
        let number = name.rsplit('/').next().unwrap_or_default();
        let long = piece.real_length.map_or_else(String::new, |long| format!("{} long", length(long, units)));
        let found = piece.defects.iter().map(|defect| defect.name().to_owned());
        let why: Vec<String> = found.chain([long, piece.remark.clone()]).filter(|why| !why.is_empty()).collect();
        let why = if why.is_empty() { String::new() } else { format!(": {}", why.join(", ")) };
        let (section, asked) = (piece.section.label(units), asked_length(piece.length, units));
        writeln!(out, "{section} x {asked}, number {number}{why}")?;
    }
    if asks.is_empty() {
        return Ok(());
    }
    writeln!(out, "{}: please saw", project.name)?;
    for ask in asks {
        let (section, long) = (ask.section.label(units), asked_length(ask.length, units));
        let of: Vec<&Place> = ask.places.iter().filter_map(|index| places.get(*index)).collect();
        let marks: Vec<String> = of.iter().map(|place| place.short()).collect();
        let role = of.first().and_then(|place| place.sticks(built).next()).map(|stick| stick.role);
        writeln!(out, "{} of {section} x {long}{} ({})", of.len(), role.map_or("", wish), marks.join("; "))?;
    }
    Ok(())
}

/// What a stick should be, in the words a sawyer is asked with (common practice).
const fn wish(role: Role) -> &'static str {
    match role {
        Role::Post => ", full size, no spiral grain",
        Role::Beam => ", full size, straight, no spiral grain, no large knots at the middle",
        Role::Brace => ", free of heart",
        Role::Rafter => ", straight, no large knots at the middle",
        Role::Ledger => ", straight",
        Role::Purlin | Role::Block => "",
    }
}
