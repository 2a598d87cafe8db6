//! What cannot be had, brought or lifted as the order stands.
use super::hauling::hauling_problems;
use super::order::Order;
use super::roof_sheets::SheetPlan;
use crate::project::{Nearest, Problem, Project};
use crate::tickets::{Role, Stick};
use crate::units::{Length, Money};
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
    found.extend(shortages(project, order));
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

/// What the mill has too few of, and timber that costs nothing.
fn shortages(project: &Project, order: &Order) -> Vec<Problem> {
    let mut found = Vec::new();
    if let Some((mark, _)) = order.lacking.first() {
        let who = match order.lacking.len() {
            1 => format!("{mark} finds"),
            n => format!("{mark} and {} more find", n - 1),
        };
        let says = format!(
            "{who} no stick that is long enough: those the mill has are used up. Ask for another length, another mill, or \
             that more be sawn."
        );
        found.push(Problem::caution("mill.limits", says));
    }
    for (section, count) in &order.lacking_spares {
        let label = section.label(project.units);
        let says = format!("No {label} is left for {count} of its spares.");
        found.push(Problem::caution("mill.limits", says));
    }
    let free: Vec<String> = order
        .buying
        .iter()
        .filter(|buying| buying.price <= Money::ZERO && order.lines.iter().any(|line| line.kind() == buying.kind))
        .map(|buying| buying.kind.section.label(project.units))
        .collect();
    if !free.is_empty() {
        let says = format!(
            "Timber costs nothing here: no price is said for {}. The least wood is ordered instead of the cheapest.",
            free.join(", ")
        );
        found.push(Problem::caution("mill.per_board_foot", says));
    }
    found
}
