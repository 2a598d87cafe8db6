//! How a piece lies for the sticks that come out of it: which end is where, and its size along them.
use super::place::Place;
use crate::design::Built;
use crate::materials::Section;
use crate::project::{MeasuredSize, Piece};
use crate::tickets::Stick;
use crate::units::Length;

/// A piece laid out for a place, its first stick's low end toward its near end, or turned end for end.
#[derive(Clone, Debug, PartialEq)]
pub struct Lie {
    /// The far end lies where the first stick's low end is.
    pub is_turned: bool,
    /// A size was measured.
    pub is_measured: bool,
    /// Its length, as measured where it was.
    pub length: Length,
    low: Section,
    high: Section,
    /// Where each stick of the place begins, from the end it is laid out from.
    starts: Vec<Length>,
}

impl Lie {
    /// Laid out: docked as the order has it, with less where the piece is short, and what is over left at the other end.
    #[must_use]
    pub fn new(piece: &Piece, place: &Place, built: &Built, is_turned: bool) -> Self {
        let length = piece.real_length.unwrap_or(piece.length);
        let sawn = place.sticks(built).next().map_or(place.section, |stick| stick.timber.sawn);
        let turned_about = |measured: Section| in_sense(measured, piece.section, place.section);
        let near = piece.near.or(piece.far).map_or(sawn, turned_about);
        let far = piece.far.or(piece.near).map_or(sawn, turned_about);
        let (low, high) = if is_turned { (far, near) } else { (near, far) };
        let is_measured = piece.near.is_some() || piece.far.is_some();
        Self { is_turned, is_measured, length, low, high, starts: starts(place, built, length) }
    }

    /// Its size so far from the end it is laid out from, straight between the two ends.
    #[must_use]
    pub fn section_at(&self, from_end: Length) -> Section {
        let share = if self.length > Length::ZERO { (from_end / self.length).clamp(0.0, 1.0) } else { 0.0 };
        let between = |low: Length, high: Length| low + (high - low) * share;
        Section::new(between(self.low.breadth, self.high.breadth), between(self.low.depth, self.high.depth))
    }

    /// Its size at a place of its `index`th stick, measured from that stick's zero.
    #[must_use]
    pub fn on_stick(&self, index: usize, stick: &Stick, from_zero: Length) -> Section {
        let start = self.starts.get(index).copied().unwrap_or(Length::ZERO);
        self.section_at(start + from_zero - stick.low)
    }

    /// The smallest it is along its `index`th stick.
    #[must_use]
    pub fn least(&self, index: usize, stick: &Stick) -> Section {
        let (low, high) = (self.on_stick(index, stick, stick.low), self.on_stick(index, stick, stick.high));
        Section::new(low.breadth.min(high.breadth), low.depth.min(high.depth))
    }

    /// The size at both ends of its `index`th stick, as the bench keeps it; nothing where none was measured.
    #[must_use]
    pub fn sizes(&self, index: usize, stick: &Stick) -> Vec<MeasuredSize> {
        let at = |from_zero: Length| {
            let Section { breadth, depth } = self.on_stick(index, stick, from_zero);
            MeasuredSize { from_zero, breadth, depth }
        };
        if self.is_measured { vec![at(stick.low), at(stick.high)] } else { Vec::new() }
    }
}

/// A measured size with its sides named as the stick names them.
fn in_sense(measured: Section, of: Section, wanted: Section) -> Section {
    if (of.breadth <= of.depth) == (wanted.breadth <= wanted.depth) {
        return measured;
    }
    Section::new(measured.depth, measured.breadth)
}

fn starts(place: &Place, built: &Built, length: Length) -> Vec<Length> {
    let share = if place.docked > Length::ZERO { ((length - place.net) / place.docked).clamp(0.0, 1.0) } else { 0.0 };
    let n_sticks = place.marks.len().max(1) as f64;
    let own: Length = place.sticks(built).map(Stick::net_length).sum();
    let cut = if n_sticks > 1.0 { (place.net - own) / (n_sticks - 1.0) } else { Length::ZERO };
    let dock = place.docked * (share / n_sticks / 2.0);
    let mut at = Length::ZERO;
    let mut all = Vec::new();
    for stick in place.sticks(built) {
        all.push(at + dock);
        at = at + dock * 2.0 + stick.net_length() + cut;
    }
    all
}
