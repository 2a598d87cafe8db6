//! What is said of the loads, on screen, in a message and on paper.
use std::fmt::Write;

use super::balance::{COUPLING_SHARE, EMPTY_SHARE};
use super::cargo::Cargo;
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
    all.extend(laying_words(project, load));
    all.extend(coupling_words(project, load));
    all.extend(exchange_words(load));
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
    all.extend(share_words(project, hauling));
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

/// What share is usual, and what it is reckoned of.
fn share_words(project: &Project, hauling: &Hauling) -> Option<String> {
    hauling.loads.first()?.balance.wanted?;
    let (least, most) = (COUPLING_SHARE.0 * 100.0, COUPLING_SHARE.1 * 100.0);
    let own = match project.truck.own_weight {
        Some(own) => format!(
            "Its own {} are counted, {} % of them on the coupling as if it were well built: weigh the coupling empty to know",
            weight(own, project.units),
            EMPTY_SHARE * 100.0
        ),
        None => "Its own weight is not known here, so the share is of the load alone, and its maker is trusted with the rest".to_owned(),
    };
    Some(format!("{least:.0} to {most:.0} % of a loaded trailer should hang on the coupling (common practice). {own}."))
}

/// How far behind the headboard a trailer's load begins.
fn laying_words(project: &Project, load: &Load) -> Option<String> {
    load.balance.share?;
    let behind = load.balance.behind;
    if behind <= HAIR {
        return Some("Butt every stick against the headboard.".to_owned());
    }
    let far = about(project, behind);
    let mut nearer: Vec<(Length, Length)> = Vec::new();
    for one in load.pieces.iter().filter(|one| one.behind < behind - HAIR) {
        let known = (one.cargo.length, one.behind);
        if !nearer.contains(&known) {
            nearer.push(known);
        }
    }
    let but = |(long, at): &(Length, Length)| match *at <= HAIR {
        true => format!("those of {} against it", asked_length(*long, project.units)),
        false => format!("those of {} only {}", asked_length(*long, project.units), about(project, *at)),
    };
    let but: Vec<String> = nearer.iter().map(but).collect();
    let but = if but.is_empty() { String::new() } else { format!("; {}, for they reach far enough", but.join(", ")) };
    Some(format!("Lay the front ends {far} behind the headboard, and fill the gap with blocks{but}."))
}

/// Weight on the coupling, what it was before, and what remains to be done.
fn coupling_words(project: &Project, load: &Load) -> Option<String> {
    let balance = &load.balance;
    let (share, on, shift) = (balance.share?, balance.on_coupling?, balance.shift?);
    let hangs = if on.is_negative() {
        format!("lifts the coupling by {}", weight(-on, project.units))
    } else {
        format!("puts {:.0} %, {}, on the coupling", share * 100.0, weight(on, project.units))
    };
    let butted = match (balance.behind > HAIR, balance.share_butted) {
        (true, Some(butted)) => format!(" (butted it would be {:.0} %)", butted * 100.0),
        _ => String::new(),
    };
    let far = about(project, shift.abs());
    let then = match (shift == Length::ZERO, shift.is_negative()) {
        (true, _) => "it lies well.".to_owned(),
        (_, true) => format!(
            "it lies {far} too far back, and a trailer light at the coupling sways. Nothing goes forward of the headboard, and no \
             exchange of sticks mends it: take a longer trailer."
        ),
        _ => format!(
            "its middle should lie {far} farther back, and nothing may reach farther out: look up what the coupling carries, or \
             take a longer trailer."
        ),
    };
    let middle = about(project, balance.middle);
    Some(format!("Its middle is {middle} from the bed’s front and {hangs}{butted}: {then}"))
}

/// What was exchanged for the weight on the coupling.
fn exchange_words(load: &Load) -> Vec<String> {
    let list = |sticks: &[Cargo]| sticks.iter().map(Cargo::of).collect::<Vec<_>>().join(", ");
    let mut all = Vec::new();
    for one in &load.exchanged {
        let (came, went) = (list(&one.came), list(&one.went));
        let what = match (one.came.is_empty(), one.went.is_empty()) {
            (false, true) => format!("{came} came here from load {}", one.with),
            (true, _) => format!("{went} went to load {}", one.with),
            _ => format!("{came} came here from load {}, and {went} went there", one.with),
        };
        all.push(format!("For the weight on the coupling {what}."));
    }
    all
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
    let why = if load.exchanged.is_empty() { "The fewest loads go" } else { "Fewest loads and a steady trailer go" };
    match load.before_their_turn {
        0 => (),
        1 => all.push(format!("{why} before the order of raising: one stick here comes before its turn.")),
        n => all.push(format!("{why} before the order of raising: {n} sticks here come before their turn.")),
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
        match all.last_mut() {
            Some((known, list)) if *known == kind => list.push(cargo.of()),
            _ => all.push((kind, vec![cargo.of()])),
        }
    }
    all.into_iter().map(|(kind, marks)| format!("{} of {kind}: {}", marks.len(), marks.join(", "))).collect()
}
