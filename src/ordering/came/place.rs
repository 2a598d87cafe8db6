//! Places in the frame that wait for a piece: one stick, or the short ones that come out of one piece together.
use crate::design::Built;
use crate::materials::Section;
use crate::ordering::piece_name;
use crate::project::{Piece, Project};
use crate::tickets::Stick;
use crate::units::Length;

/// One place.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// The marks of its sticks, as a piece names the place it is given to.
    pub name: String,
    /// Its sticks in the order they lie in the piece.
    pub marks: Vec<String>,
    /// Section as ordered.
    pub section: Section,
    /// The length ordered for it.
    pub stock: Length,
    /// Finished lengths with the saw's cuts between them.
    pub net: Length,
    /// Docked from the ends, where there is wood enough.
    pub docked: Length,
    /// Under which name the piece ordered for it is kept.
    pub asked_as: String,
}

impl Place {
    /// Its sticks.
    pub fn sticks<'a>(&'a self, built: &'a Built) -> impl Iterator<Item = &'a Stick> {
        self.marks.iter().filter_map(|mark| built.stick(mark))
    }

    /// The name with no more than two marks in it.
    #[must_use]
    pub fn short(&self) -> String {
        match self.marks.as_slice() {
            [first, second, rest @ ..] if !rest.is_empty() => format!("{first}, {second} and {} more", rest.len()),
            _ => self.marks.join(" and "),
        }
    }

    /// A piece of that section can lie there: which of its sides is called the breadth makes no difference.
    #[must_use]
    pub fn takes(&self, section: Section) -> bool {
        let near = |a: Length, b: Length| a.is_near(b, Length::inches(1.0 / 64.0));
        let sides = |of: Section| (of.breadth.min(of.depth), of.breadth.max(of.depth));
        let ((small, large), (own_small, own_large)) = (sides(section), sides(self.section));
        near(small, own_small) && near(large, own_large)
    }
}

/// Every place of the order, in its order; spares and what else holds no stick are none.
#[must_use]
pub fn places(project: &Project, built: &Built) -> Vec<Place> {
    let order = &built.order;
    let mut all = Vec::new();
    for line in &order.lines {
        for (index, marks) in line.holds.iter().enumerate().filter(|(_, marks)| !marks.is_empty()) {
            let asked = || order.sticks.iter().filter(|stick| marks.contains(&stick.mark));
            let cuts = project.mill.kerf * marks.len().saturating_sub(1) as f64;
            all.push(Place {
                name: marks.join(" + "),
                marks: marks.clone(),
                section: line.section,
                stock: line.length,
                net: asked().map(|stick| stick.net).sum::<Length>() + cuts,
                docked: asked().map(|stick| stick.allowance).sum(),
                asked_as: piece_name(line, index + 1),
            });
        }
    }
    all
}

/// The place the user gave a piece to, while the frame still has it; a stick that moved into another set is followed.
#[must_use]
pub fn pinned(piece: &Piece, places: &[Place]) -> Option<usize> {
    if piece.place.is_empty() {
        return None;
    }
    let first = piece.place.split(" + ").next().unwrap_or_default();
    places
        .iter()
        .position(|place| place.name == piece.place)
        .or_else(|| places.iter().position(|place| place.marks.iter().any(|mark| mark == first)))
        .filter(|index| places.get(*index).is_some_and(|place| place.takes(piece.section)))
}
