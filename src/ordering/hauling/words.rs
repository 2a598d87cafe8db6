//! What is said of the loads, on screen, in a message and on paper.
use std::fmt::Write;

use super::balance::{Balance, COUPLING_SHARE};
use super::loads::{Hauling, Load};
use crate::ordering::{Order, asked_length};
use crate::project::{HAIR, Problem, Project};
use crate::units::{Length, Weight};
use crate::wording::{length, weight};

/// A load that stands out this far behind is flagged in the United States (49 CFR 393.87, from memory).
const FLAGGED_FROM: Length = Length::inches(48.0);

/// How many loads there are, and whether fewer would do.
#[must_use]
pub fn proof_words(hauling: &Hauling) -> String {
    let loads = match hauling.loads.len() {
        0 => return "nothing to haul".to_owned(),
        1 => "1 load".to_owned(),
        n => format!("{n} loads"),
    };
    if hauling.is_proven() {
        format!("{loads}, proven fewest for this payload")
    } else {
        format!("{loads}; no fewer than {} are possible", hauling.least)
    }
}

/// What to know of a load before it is tied down, most pressing first.
#[must_use]
pub fn load_words(project: &Project, load: &Load) -> Vec<String> {
    let mut all = Vec::new();
    all.extend(overhang_words(project, load));
    all.extend(coupling_words(project, load));
    all.push(strap_words(load));
    all.extend(turn_words(project, load));
    all
}

fn overhang_words(project: &Project, load: &Load) -> Option<String> {
    let out = load.stands_out();
    let say = |value: Length| length(value, project.units);
    (out > Length::ZERO).then(|| {
        let flag = if out + Length::inches(0.01) >= FLAGGED_FROM {
            "A red flag at the ends by day, a light by night"
        } else {
            "Mark the ends with a red flag"
        };
        format!(
            "The longest stands out {} past the bed. {flag}; how far it may, and how it is marked, is the law of your road \
             (in the United States a flag from 4 ft on, 49 CFR 393.87, from memory).",
            say(out)
        )
    })
}

/// Weight on the coupling, and what to do about it.
fn coupling_words(project: &Project, load: &Load) -> Option<String> {
    let say = |value: Length| length(value, project.units);
    let Balance { share: Some(share), on_coupling: Some(on), shift: Some(shift), wanted: Some(wanted), .. } =
        load.balance
    else {
        return None;
    };
    let percent = share * 100.0;
    let (least, most) = (COUPLING_SHARE.0 * 100.0, COUPLING_SHARE.1 * 100.0);
    let hangs = if on.is_negative() {
        format!("it would lift the coupling by {}", weight(-on, project.units))
    } else {
        format!("{percent:.0} % of it, {}, hangs on the coupling", weight(on, project.units))
    };
    let first = format!(
        "Butted against the front of the bed, the load's middle lies {} back and {hangs}; {least:.0} to {most:.0} % is wanted \
         (common practice), the middle {} to {} back.",
        say(load.balance.middle),
        say(wanted.0),
        say(wanted.1)
    );
    let then = if shift == Length::ZERO {
        "It lies well.".to_owned()
    } else if load.balance.can_shift {
        format!("Lay the whole load {} farther back.", say(shift))
    } else if shift.is_negative() {
        format!(
            "It is {} too far back: too light a coupling lets the trailer sway. Put shorter sticks in the place of long ones, \
             or take a longer trailer.",
            say(-shift)
        )
    } else {
        format!(
            "It should lie {} farther back, where its ends would stand out too far: move the short sticks back first.",
            say(shift)
        )
    };
    Some(format!("{first} {then} The trailer's own weight is not known here: it is taken to be balanced by its maker."))
}

/// Straps by the length of the longest stick: two for the first ten feet, one more for each ten or part of it.
fn strap_words(load: &Load) -> String {
    let over = (load.longest().to_feet() - 10.0 - 1e-6).max(0.0);
    let straps = 2 + (over / 10.0).ceil() as usize;
    format!(
        "At least {straps} straps over the whole load, each rated for its share (in the United States two for the first 10 ft \
         and one for each 10 ft more, 49 CFR 393.110, from memory)."
    )
}

/// Where one rule of loading gave way to another.
fn turn_words(project: &Project, load: &Load) -> Vec<String> {
    let mut all = Vec::new();
    let units = project.units;
    if let Some((upper, lower)) =
        load.heavy_over_light.and_then(|(a, b)| Some((load.pieces.get(a)?, load.pieces.get(b)?)))
    {
        all.push(format!(
            "What is needed first lies on top, so the heaviest does not lie lowest everywhere: {} goes over {}. Bearers straight \
             above each other; where you stack it all anew at home, load by weight instead.",
            upper.cargo.section.label(units),
            lower.cargo.section.label(units)
        ));
    }
    match load.before_their_turn {
        0 => (),
        1 => all
            .push("The fewest loads go before the order of raising: one stick here comes before its turn.".to_owned()),
        n => all
            .push(format!("The fewest loads go before the order of raising: {n} sticks here come before their turn.")),
    }
    all
}

/// Sticks of an order that no load brings, tied to the truck's field.
#[must_use]
pub fn hauling_problems(project: &Project, order: &Order) -> Option<Problem> {
    let truck = &project.truck;
    let longest = order.lines.iter().map(|line| line.length).fold(Length::ZERO, Length::max);
    let over = longest - truck.bed - truck.overhang;
    (over > HAIR).then(|| {
        let say = |value: Length| length(value, project.units);
        let says = format!(
            "The longest stick is {}, {} more than the bed and what may stand out: a longer trailer, the mill's delivery, or \
             shorter pieces.",
            say(longest),
            say(over)
        );
        Problem::caution("truck.bed", says).nearest(longest - truck.overhang)
    })
}

/// The loads as text for a message to whoever drives.
#[must_use]
pub fn hauling_text(project: &Project, hauling: &Hauling) -> String {
    let mut out = String::new();
    // Writing to a String cannot fail.
    let _ = write_text(&mut out, project, hauling);
    out
}

fn write_text(out: &mut String, project: &Project, hauling: &Hauling) -> std::fmt::Result {
    let heavy = |value: Weight| weight(value, project.units);
    writeln!(out, "{}: {}", project.name, proof_words(hauling))?;
    for load in &hauling.loads {
        let delivery = if load.delivery > 1 { ", second delivery" } else { "" };
        writeln!(out, "\nLoad {}{delivery}: about {} green. Load in this order:", load.number, heavy(load.weight))?;
        for run in runs(project, load) {
            writeln!(out, "{run}")?;
        }
        for says in load_words(project, load) {
            writeln!(out, "- {says}")?;
        }
    }
    for one in &hauling.left_behind {
        writeln!(out, "\n{}", one.says)?;
    }
    Ok(())
}

/// The sticks of a load in the order they are loaded, those of one kind that follow each other together.
#[must_use]
pub fn runs(project: &Project, load: &Load) -> Vec<String> {
    let mut all: Vec<(String, Vec<String>)> = Vec::new();
    for one in &load.pieces {
        let cargo = &one.cargo;
        let kind = format!("{} × {}", cargo.section.label(project.units), asked_length(cargo.length, project.units));
        let marks = if cargo.marks.is_empty() { "spare".to_owned() } else { cargo.marks.join(" + ") };
        match all.last_mut() {
            Some((known, list)) if *known == kind => list.push(marks),
            _ => all.push((kind, vec![marks])),
        }
    }
    all.into_iter().map(|(kind, marks)| format!("{} of {kind}: {}", marks.len(), marks.join(", "))).collect()
}
