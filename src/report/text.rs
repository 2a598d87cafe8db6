//! The design as plain text, in the project's units.
use std::fmt::Write;

use crate::checks::{Strength, Waiting, waiting};
use crate::design::{Built, Design, Shape};
use crate::joinery::{exception_says, own_joints_of};
use crate::project::Project;
use crate::tickets::{Mark, Stick};
use crate::units::{Length, UnitSystem, show_money, show_slope, show_wood_volume};
use crate::wording::{length, tape, weight};

/// The caution every sheet carries.
const CAUTION: &str = "A check by formulas, many of them from memory: have a licensed engineer and your local building \
                       authority look at it before you buy, cut or lift.";

/// The whole design.
#[must_use]
pub fn text(project: &Project, design: &Design) -> String {
    let mut out = String::new();
    // Writing to a String cannot fail.
    let _ = write_all(&mut out, project, design);
    out
}

fn write_all(out: &mut String, project: &Project, design: &Design) -> std::fmt::Result {
    writeln!(out, "{}", project.name)?;
    if !project.note.is_empty() {
        writeln!(out, "{}", project.note)?;
    }
    writeln!(out, "{CAUTION}\n")?;
    for problem in &design.problems {
        let word = if problem.stops() { "STOP" } else { "LOOK" };
        writeln!(out, "{word} {}: {}", problem.field, problem.says)?;
    }
    if let Some(built) = &design.built {
        geometry(out, project, built)?;
        order(out, project, built)?;
        roof(out, project, built)?;
        if let Some(found) = &design.strength {
            strength(out, project, found)?;
        }
        for stick in &built.sticks {
            sheet(out, project, &built.shape, stick)?;
        }
    }
    Ok(())
}

fn strength(out: &mut String, project: &Project, found: &Strength) -> std::fmt::Result {
    writeln!(out, "\nSTRENGTH, worst first")?;
    let groups = waiting(found.checks.iter().enumerate());
    for (place, check) in found.checks.iter().enumerate() {
        let group = groups.iter().find(|group| group.places.len() > 1 && group.places.contains(&place));
        match group {
            None => {
                let word = if check.passes() { "  " } else { "NO" };
                writeln!(out, "{word} {}", check.says(project.units))?;
            }
            Some(group) if group.places.first() == Some(&place) => gathered(out, found, group)?,
            Some(_) => {}
        }
    }
    Ok(())
}

/// Checks that wait for the same: one line for what is missing, then what it leaves open.
fn gathered(out: &mut String, found: &Strength, group: &Waiting) -> std::fmt::Result {
    let field = group.input.map(|input| format!(" ({})", input.field())).unwrap_or_default();
    writeln!(out, "NO {}{field}", group.says())?;
    for check in group.places.iter().filter_map(|place| found.checks.get(*place)) {
        let at = if check.at.is_empty() { String::new() } else { format!(" {}", check.at) };
        writeln!(out, "     {} {}{at}", check.member, check.name)?;
    }
    Ok(())
}

fn geometry(out: &mut String, project: &Project, built: &Built) -> std::fmt::Result {
    let (line, room) = (&built.shape.line, &built.shape.clearances);
    let say = |value: Length| length(value, project.units);
    writeln!(out, "\nROOF LINE")?;
    writeln!(out, "  pitch {}, run {}", show_slope(line.pitch, project.units), say(line.run.length()))?;
    writeln!(out, "  ledger seat {}, beam seat {}", say(line.ledger_seat), say(line.beam_seat))?;
    writeln!(
        out,
        "  height above seat: ledger {}, beam {}",
        say(line.height_above_ledger_seat),
        say(line.height_above_beam_seat)
    )?;
    writeln!(out, "  top of metal at the wall {}", say(room.top_of_metal_at_wall))?;
    writeln!(out, "  clear under the beam {}", say(room.under_beam))?;
    let widths: Vec<String> = room.between_braces.iter().map(|width| say(*width)).collect();
    writeln!(out, "  clear between braces at {}: {}", say(project.site.passage_height), widths.join(", "))
}

fn order(out: &mut String, project: &Project, built: &Built) -> std::fmt::Result {
    writeln!(out, "\nORDER")?;
    for line in &built.order.lines {
        writeln!(
            out,
            "  {:>3} x {:<8} {:>10}  {:>8}  {:>9}  {}",
            line.count,
            line.section.label(project.units),
            length(line.length, project.units),
            show_wood_volume(line.volume, project.units).to_string(),
            weight(line.weight, project.units),
            show_money(line.price, &project.currency)
        )?;
        let later = (line.delivery == 2).then(|| "second delivery".to_owned());
        let words: Vec<String> = later
            .into_iter()
            .chain(line.spare_words())
            .chain(line.words.iter().map(|word| word.clone().into_owned()))
            .collect();
        writeln!(out, "        {}", words.join(", "))?;
    }
    writeln!(
        out,
        "  in all {}, {} green, {}, {}",
        show_wood_volume(built.order.volume, project.units),
        weight(built.order.weight, project.units),
        show_money(built.order.price, &project.currency),
        built.order.proof_words()
    )
}

fn roof(out: &mut String, project: &Project, built: &Built) -> std::fmt::Result {
    let plan = &built.sheets;
    writeln!(out, "\nROOF")?;
    writeln!(
        out,
        "  {} sheets of {}, {} wide in all",
        plan.sheets.len(),
        length(plan.length.length(), project.units),
        length(plan.width, project.units)
    )?;
    for row in &built.shape.purlins {
        let butts: Vec<String> =
            row.pieces.iter().filter_map(|piece| piece.right.map(|butt| format!("R{}", butt.rafter))).collect();
        let on = if butts.is_empty() { "no butt".to_owned() } else { format!("butts on {}", butts.join(", ")) };
        writeln!(out, "  row {}: {} from the tails, {on}", row.number, length(row.from_tail, project.units))?;
    }
    Ok(())
}

fn sheet(out: &mut String, project: &Project, shape: &Shape, stick: &Stick) -> std::fmt::Result {
    writeln!(
        out,
        "\n{}  {} {}  {}  {}  balances {} from zero{}",
        stick.mark,
        stick.timber.ordered.label(project.units),
        stick.role.name(),
        length(stick.net_length(), project.units),
        weight(stick.green_weight, project.units),
        length(stick.bulk.balance(), project.units),
        if stick.is_measured { ", both as measured" } else { "" }
    )?;
    if let Some(first) = &stick.same_as {
        return writeln!(out, "  same as {first}");
    }
    writeln!(out, "  {}\n  zero: {}", stick.ask, stick.zero)?;
    for joint in own_joints_of(project, shape, &stick.mark) {
        writeln!(out, "  {}", exception_says(project, joint).unwrap_or_default())?;
    }
    for mark in &stick.marks {
        writeln!(out, "  {}", line(project.units, mark))?;
    }
    Ok(())
}

fn line(units: UnitSystem, mark: &Mark) -> String {
    let say = |value| tape(value, units, mark.fineness);
    let mut text = format!("{:<11} {:>12}", mark.face.name(), say(mark.near));
    text.push_str(&mark.far.map_or_else(|| " ".repeat(16), |far| format!(" to {:>12}", say(far))));
    text.push_str(&format!("  {}", mark.what));
    if let (Some((near, far)), Some(from)) = (mark.across, mark.across_from) {
        let range = if near == far { say(near) } else { format!("{} to {}", say(near), say(far)) };
        text.push_str(&format!(", {range} from the {}", from.name()));
    }
    if let Some(depth) = mark.depth {
        text.push_str(&format!(", {} deep", say(depth)));
    }
    if !mark.note.is_empty() {
        text.push_str(&format!(" ({})", mark.note));
    }
    text
}
