//! Who carries a stick, by its weight.
use super::cargo::Cargo;
use crate::materials::Section;
use crate::project::Project;
use crate::units::{Length, Weight};

/// What one may lift with two hands where all is ideal, lb: the constant of the NIOSH revised lifting equation (23 kg). The
/// equation is for one person; it was not made for teams (from memory).
pub const NIOSH_POUNDS: f64 = 51.0;

/// What that equation leaves of it for a carry at knuckle height, by planning, lb (derived: H 12, V 30, D 36 in, CM 0.95).
pub const ERGONOMIC_POUNDS: f64 = 35.0;

/// From here on a stick takes a hand at each end, however light it is (common practice).
const LONG: Length = Length::inches(144.0);

/// How sticks of one size are carried.
#[derive(Clone, Debug, PartialEq)]
pub struct Carry {
    /// Section.
    pub section: Section,
    /// Length.
    pub length: Length,
    /// How many there are.
    pub count: usize,
    /// Green weight of one.
    pub weight: Weight,
    /// People that carry it at what each of this crew lifts; more than two walk in pairs with carriers.
    pub people: usize,
    /// It is more than the crew has hands for, or heavier than what it can put up.
    pub by_machine: bool,
    /// People at the ergonomic figure.
    pub ergonomic: usize,
}

/// How each size is carried, heaviest first.
#[must_use]
pub fn carries(project: &Project, cargo: &[Cargo]) -> Vec<Carry> {
    let mut all: Vec<Carry> = Vec::new();
    for one in cargo {
        let known = all.iter_mut().find(|carry| {
            let near = Weight::pounds(1e-6);
            carry.section == one.section && carry.length == one.length && carry.weight.is_near(one.weight, near)
        });
        match known {
            Some(carry) => carry.count += 1,
            None => all.push(carry(project, one)),
        }
    }
    crate::units::sort_by_number(&mut all, |one| -one.weight.to_pounds());
    all
}

fn carry(project: &Project, one: &Cargo) -> Carry {
    let heads = |each: f64| ((one.weight.to_pounds() - 1e-6) / each.max(1.0)).ceil().max(1.0) as usize;
    let by_crew = heads(project.crew.each_lifts.to_pounds());
    let at_least = if one.length > LONG { 2 } else { 1 };
    // Carriers take two: an odd one walks beside.
    let people = match by_crew.max(at_least) {
        few @ (1 | 2) => few,
        many => many + many % 2,
    };
    Carry {
        section: one.section,
        length: one.length,
        count: 1,
        weight: one.weight,
        people,
        by_machine: people > project.crew.n_people || one.weight > project.mill.heaviest_pick,
        ergonomic: heads(ERGONOMIC_POUNDS),
    }
}

impl Carry {
    /// In words: `two people`, `four with carriers`, `machine`.
    #[must_use]
    pub fn words(&self) -> String {
        match self.people {
            _ if self.by_machine => "machine".to_owned(),
            1 => "one person".to_owned(),
            2 => "two people".to_owned(),
            4 => "four with carriers".to_owned(),
            6 => "six with carriers".to_owned(),
            8 => "eight with carriers".to_owned(),
            many => format!("{many} with carriers"),
        }
    }
}
