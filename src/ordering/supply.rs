//! What cannot be had, brought or lifted as the order stands.
use super::order::Order;
use super::roof_sheets::SheetPlan;
use crate::project::{Nearest, Problem, Project};
use crate::tickets::{Role, Stick};
use crate::units::Length;
use crate::wording::{length, weight};

/// What the mill and the truck cannot bring.
#[must_use]
pub fn supply_problems(project: &Project, sticks: &[Stick], order: &Order, sheets: &SheetPlan) -> Vec<Problem> {
    let say = |value: Length| length(value, project.units);
    let mut found = Vec::new();
    if let Some((mark, wanted)) = order.unplaced.first() {
        let more = match order.unplaced.len() {
            1 => String::new(),
            n => format!(" and {} more", n - 1),
        };
        let says = format!(
            "{mark}{more} needs {} with trim; the mill's longest is {}.",
            say(*wanted),
            say(project.mill.longest())
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
    found
}
