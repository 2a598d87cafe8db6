//! The sticks of stock as cargo: how long and heavy each is, and when the raising needs it.
use crate::design::{Built, Shape};
use crate::joinery::{posts_of, raising_order};
use crate::materials::Section;
use crate::ordering::{OrderLine, asked_length};
use crate::project::{HAIR, Project, Role, Truck};
use crate::units::{Length, Weight, sort_by_number, sort_with};
use crate::wording::{length, weight};

/// When a stick is needed, first to last (the order of raising, common practice): the ledger, whose seats all else is
/// measured from; each piece of the beam with its posts and braces; rafters; blocks; purlins; spares.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// Pieces of the ledger.
    Ledger,
    /// The piece of the beam that goes up as that one, from 1, with its posts and braces.
    Beam(usize),
    /// Rafters.
    Rafters,
    /// Blocks.
    Blocks,
    /// Purlins.
    Purlins,
    /// What no stick of the frame comes out of.
    Spare,
}

/// A stick of stock on its way.
#[derive(Clone, Debug, PartialEq)]
pub struct Cargo {
    /// Section as ordered.
    pub section: Section,
    /// Length as ordered.
    pub length: Length,
    /// Green weight.
    pub weight: Weight,
    /// The sticks that come out of it.
    pub marks: Vec<String>,
    /// When the first of them is needed.
    pub stage: Stage,
    /// The delivery it comes with, 1 or 2.
    pub delivery: usize,
}

/// A stick that this truck cannot bring.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftBehind {
    /// The stick.
    pub cargo: Cargo,
    /// What it is too long by, past bed and overhang; nothing where it is only too heavy.
    pub too_long: Option<Length>,
    /// Why, and the ways out.
    pub says: String,
}

/// The stages of the sticks of the beam line.
fn beam_stages(shape: &Shape) -> Vec<(String, Stage)> {
    let mut all: Vec<(String, Stage)> = Vec::new();
    for (index, piece) in raising_order(&shape.beam.pieces).into_iter().enumerate() {
        let stage = Stage::Beam(index + 1);
        all.push((format!("B{}", piece.number), stage));
        for post in posts_of(shape, piece) {
            // A post under a lap stands with the piece that comes first.
            let mark = format!("P{}", post.number);
            if all.iter().any(|(known, _)| *known == mark) {
                continue;
            }
            all.push((mark, stage));
            let own = shape.braces.iter().filter(|brace| brace.post == post.number);
            all.extend(own.map(|brace| (brace.mark(), stage)));
        }
    }
    all
}

/// Every stick of those lines of an order.
#[must_use]
pub fn cargoes(built: &Built, lines: &[OrderLine]) -> Vec<Cargo> {
    let beam = beam_stages(&built.shape);
    let role = |mark: &String| built.stick(mark).map(|stick| stick.role);
    let stage = |mark: &String| match role(mark) {
        Some(Role::Ledger) => Stage::Ledger,
        Some(Role::Rafter) => Stage::Rafters,
        Some(Role::Block) => Stage::Blocks,
        Some(Role::Purlin) => Stage::Purlins,
        _ => beam.iter().find(|(known, _)| known == mark).map_or(Stage::Spare, |(_, stage)| *stage),
    };
    let mut all = Vec::new();
    for line in lines {
        let one = line.weight / line.count.max(1) as f64;
        for number in 0..line.count {
            let marks = line.holds.get(number).cloned().unwrap_or_default();
            all.push(Cargo {
                section: line.section,
                length: line.length,
                weight: one,
                stage: marks.iter().map(stage).min().unwrap_or(Stage::Spare),
                delivery: line.delivery,
                marks,
            });
        }
    }
    sort_by_number(&mut all, |cargo| -cargo.weight.to_pounds());
    sort_with(&mut all, |a, b| (a.delivery, a.stage).cmp(&(b.delivery, b.stage)));
    all
}

/// Parts those that the truck cannot bring from those that it can.
#[must_use]
pub fn left_behind(project: &Project, cargo: Vec<Cargo>) -> (Vec<Cargo>, Vec<LeftBehind>) {
    let truck = &project.truck;
    let longest = truck.bed + truck.overhang + HAIR;
    let (mut goes, mut stays) = (Vec::new(), Vec::new());
    for one in cargo {
        let too_long = (one.length > longest).then(|| one.length - truck.bed - truck.overhang);
        if too_long.is_none() && one.weight <= truck.payload {
            goes.push(one);
        } else {
            let says = match too_long {
                Some(over) => too_long_words(project, &one, over),
                None => too_heavy_words(project, &one),
            };
            stays.push(LeftBehind { cargo: one, too_long, says });
        }
    }
    (goes, stays)
}

impl Cargo {
    /// What it is called: `8x10 × 18′ (B1)`.
    #[must_use]
    pub fn name(&self, project: &Project) -> String {
        let units = project.units;
        let long = asked_length(self.length, units);
        let of = if self.marks.is_empty() { "spare".to_owned() } else { self.marks.join(" + ") };
        format!("{} × {long} ({of})", self.section.label(units))
    }

    /// How far it stands out past the bed when it lies against the bed's front.
    #[must_use]
    pub fn stands_out(&self, truck: &Truck) -> Length {
        (self.length - truck.bed).max(Length::ZERO)
    }
}

fn too_long_words(project: &Project, cargo: &Cargo, over: Length) -> String {
    let say = |value: Length| length(value, project.units);
    let truck = &project.truck;
    let is_parted = cargo.marks.iter().any(|mark| mark.starts_with('B') || mark.starts_with('L'));
    let shorter = if is_parted { "one more scarf, for shorter pieces" } else { "stock cut shorter at the mill" };
    format!(
        "{} cannot go: the bed is {} and {} may stand out, so it is {} too long. Three ways out: a longer trailer, the mill \
         delivers it, or {shorter}.",
        cargo.name(project),
        say(truck.bed),
        say(truck.overhang),
        say(over)
    )
}

fn too_heavy_words(project: &Project, cargo: &Cargo) -> String {
    let say = |value: Weight| weight(value, project.units);
    format!(
        "{} cannot go: it weighs {} green and the payload is {}. Take a truck that carries more, or have the mill deliver it.",
        cargo.name(project),
        say(cargo.weight),
        say(project.truck.payload)
    )
}
