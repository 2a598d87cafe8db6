//! What cannot be had, brought or lifted as the order stands.
use super::hauling::hauling_problems;
use super::order::Order;
use super::roof_sheets::SheetPlan;
use crate::project::{Nearest, Problem, Project};
use crate::tickets::{Role, Stick};
use crate::units::Length;
use crate::wording::{length, weight};

/// What can be done about a stick that no length of the mill holds.
#[must_use]
pub fn ways_out(sticks: &[Stick], mark: &str) -> &'static str {
    match sticks.iter().find(|stick| stick.mark == mark).map(|stick| stick.role) {
        Some(Role::Beam | Role::Ledger) => "Move the scarf, dock less, or ask the mill for a special length.",
        Some(Role::Rafter) => "Shorten the tail, bring the beam nearer, or ask the mill for a special length.",
        Some(Role::Post) => "Lower the beam, raise the pier, or ask the mill for a special length.",
        _ => "Shorten the stick, dock less, or ask the mill for a special length.",
    }
}

/// What the mill and the truck cannot bring.
#[must_use]
pub fn supply_problems(project: &Project, sticks: &[Stick], order: &Order, sheets: &SheetPlan) -> Vec<Problem> {
    let say = |value: Length| length(value, project.units);
    let mut found = Vec::new();
    if let Some((mark, wanted)) = order.unplaced.first() {
        let (more, needs) = match order.unplaced.len() {
            1 => (String::new(), "needs"),
            n => (format!(" and {} more", n - 1), "need"),
        };
        let says = format!(
            "{mark}{more} {needs} {} with trim, {} more than the mill's longest, {}. {}",
            say(*wanted),
            say(*wanted - project.mill.longest()),
            say(project.mill.longest()),
            ways_out(sticks, mark)
        );
        found.push(Problem::caution("mill.lengths", says));
    }
    let sheet = sheets.length.length();
    if sheet > project.roofing.longest_sheet {
        let says = format!(
            "The sheets are {} long; {} is the longest that can be brought. They would need an end lap.",
            say(sheet),
            say(project.roofing.longest_sheet)
        );
        found
            .push(Problem { nearest: Some(Nearest::Length(sheet)), ..Problem::caution("roofing.longest_sheet", says) });
    }
    if let Some(heaviest) =
        sticks.iter().find(|stick| stick.role == Role::Beam && stick.green_weight > project.mill.heaviest_pick)
    {
        let says = format!(
            "{} weighs {} green; the crew lifts {}.",
            heaviest.mark,
            weight(heaviest.green_weight, project.units),
            weight(project.mill.heaviest_pick, project.units)
        );
        found.push(Problem::caution("mill.heaviest_pick", says));
    }
    found.extend(hauling_problems(project, order));
    found
}
