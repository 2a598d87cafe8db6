//! What is said of the loads, on screen, in a message and on paper.
use std::fmt::Write;

use super::balance::COUPLING_SHARE;
use super::loads::{Hauling, Load};
use crate::ordering::{Order, asked_length};
use crate::project::{HAIR, Problem, Project};
use crate::units::{Length, UnitSystem, Weight};
use crate::wording::{length, weight};

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
    let out = load.stands_out();
    if out > Length::ZERO {
        all.push(format!("The longest stands out {} past the bed: a red flag at its end.", about(project, out)));
    }
    all.extend(coupling_words(project, load));
    all.push(format!("At least {} straps over the whole load.", n_straps(load)));
    all.extend(turn_words(project, load));
    all
}

/// What holds for all loads, said once.
#[must_use]
pub fn hauling_notes(project: &Project, hauling: &Hauling) -> Vec<String> {
    let mut all = Vec::new();
    if hauling.loads.iter().any(|load| load.stands_out() > Length::ZERO) {
        all.push(
            "A red flag by day and a light by night where sticks stand out; how far they may, and how they are marked, is the \
             law of your road (in the United States a flag from 4 ft on, 49 CFR 393.87, from memory)."
                .to_owned(),
        );
    }
    if let Some(wanted) = hauling.loads.first().and_then(|load| load.balance.wanted) {
        let (least, most) = (COUPLING_SHARE.0 * 100.0, COUPLING_SHARE.1 * 100.0);
        all.push(format!(
            "{least:.0} to {most:.0} % of a load should hang on the coupling (common practice): its middle {} to {} from the \
             bed’s front, every stick butted there. The trailer’s own weight is not known here and taken as balanced by its maker.",
            about(project, wanted.0),
            about(project, wanted.1)
        ));
    }
    all.push(
        "Straps rated for the load: two for the first 10 ft of the longest stick, one more for each 10 ft or part of it (in the \
         United States 49 CFR 393.110, from memory)."
            .to_owned(),
    );
    all
}

/// A length on a trailer, to the inch or centimetre.
#[must_use]
pub fn about(project: &Project, value: Length) -> String {
    let step = match project.units {
        UnitSystem::Imperial => Length::inches(1.0),
        UnitSystem::Metric => Length::millimetres(10.0),
    };
    asked_length(value.round_to(step), project.units)
}

/// Weight on the coupling, and what to do about it.
fn coupling_words(project: &Project, load: &Load) -> Option<String> {
    let balance = &load.balance;
    let (share, on, shift) = (balance.share?, balance.on_coupling?, balance.shift?);
    let hangs = if on.is_negative() {
        format!("lifts the coupling by {}", weight(-on, project.units))
    } else {
        format!("puts {:.0} % of itself, {}, on the coupling", share * 100.0, weight(on, project.units))
    };
    let far = about(project, shift.abs());
    let then = match (shift == Length::ZERO, balance.can_shift, shift.is_negative()) {
        (true, ..) => "it lies well.".to_owned(),
        (_, true, _) => format!("lay it all {far} farther back."),
        (_, _, true) => format!(
            "it lies {far} too far back, and a trailer light at the coupling sways. Exchange long sticks for shorter ones of \
             another load, or take a longer trailer."
        ),
        _ => format!("its middle should lie {far} farther back: move the short sticks back first."),
    };
    let middle = about(project, balance.middle);
    Some(format!("Its middle is {middle} from the bed’s front and {hangs}: {then}"))
}

/// Straps by the length of the longest stick: two for the first ten feet, one more for each ten or part of it.
fn n_straps(load: &Load) -> usize {
    let over = (load.longest().to_feet() - 10.0 - 1e-6).max(0.0);
    2 + (over / 10.0).ceil() as usize
}

/// Where one rule of loading gave way to another.
fn turn_words(project: &Project, load: &Load) -> Vec<String> {
    let mut all = Vec::new();
    let units = project.units;
    if let Some((upper, lower)) =
        load.heavy_over_light.and_then(|(a, b)| Some((load.pieces.get(a)?, load.pieces.get(b)?)))
    {
        all.push(format!(
            "What is needed first lies on top, so the heavy does not lie lowest everywhere: {} goes over {}. Bearers straight \
             above each other; if you stack it all anew at home, load by weight instead.",
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
    writeln!(out)?;
    hauling_notes(project, hauling).into_iter().try_for_each(|note| writeln!(out, "{note}"))
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
