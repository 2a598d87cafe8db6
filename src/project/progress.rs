//! What is already done: marks made, sticks cut, sticks received.
use std::collections::{BTreeMap, BTreeSet};

use super::Piece;
use crate::materials::{Face, Section};
use crate::units::Length;

/// A knot on a face of the rough stick, as it lies on the horses.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Knot {
    /// The face it is seen on, by the faces of the sheet.
    pub face: Face,
    /// Its middle, from the stick's zero as it lies now.
    pub from_zero: Length,
    /// Its middle across the face, from the edge that is drawn uppermost.
    pub across: Length,
    /// How wide it is.
    pub size: Length,
}

/// The size of a real stick at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredSize {
    /// From the stick's zero.
    pub from_zero: Length,
    /// Breadth, as of its section.
    pub breadth: Length,
    /// Depth, as of its section.
    pub depth: Length,
}

/// A larger error is no dry fit's: it is not used until it is measured again (common practice).
pub const MOST_DRY_FIT: Length = Length::inches(1.0);

/// Ticks, kept by the stick's mark.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Progress {
    /// Marks already made on a stick, each by what and where it is: a mark that moves is a mark to be made.
    pub marked: BTreeMap<String, BTreeSet<String>>,
    /// Sticks that are cut, each with the layout it was cut to.
    pub cut: BTreeMap<String, String>,
    /// Knots found, by the stick's mark.
    pub knots: BTreeMap<String, Vec<Knot>>,
    /// The face that a stick's crown is toward as it lies now, by the stick's mark.
    pub crowns: BTreeMap<String, Face>,
    /// Sizes measured along a stick, by its mark.
    pub sizes: BTreeMap<String, Vec<MeasuredSize>>,
    /// How much longer than drawn the beam came out over a scarf in the dry fit, by the scarf's number; shorter below zero.
    pub dry_fits: BTreeMap<String, Length>,
    /// Sticks that came off the truck, by the section, length and number they were ordered under.
    pub pieces: BTreeMap<String, Piece>,
}

impl Progress {
    /// The size of a stick at one place along it: as sawn where nothing was measured, straight between two measured places,
    /// as at the nearest one past them.
    #[must_use]
    pub fn size_at(&self, stick: &str, sawn: Section, at: Length) -> Section {
        let Some(measured) = self.sizes.get(stick) else { return sawn };
        let below = measured.iter().filter(|size| size.from_zero <= at).max_by(|a, b| along(a, b));
        let above = measured.iter().filter(|size| size.from_zero >= at).min_by(|a, b| along(a, b));
        match (below, above) {
            (Some(low), Some(high)) if high.from_zero > low.from_zero => {
                let share = (at - low.from_zero) / (high.from_zero - low.from_zero);
                let between = |low: Length, high: Length| low + (high - low) * share;
                Section::new(between(low.breadth, high.breadth), between(low.depth, high.depth))
            }
            (Some(one), _) | (None, Some(one)) => Section::new(one.breadth, one.depth),
            (None, None) => sawn,
        }
    }

    /// The largest breadth and the largest depth of a stick from one place along it to another.
    #[must_use]
    pub fn most_between(&self, stick: &str, sawn: Section, (from, to): (Length, Length)) -> Section {
        let measured = self.sizes.get(stick).into_iter().flatten().map(|size| size.from_zero);
        let places = measured.filter(|place| *place > from && *place < to).chain([to]);
        places.fold(self.size_at(stick, sawn, from), |most, place| {
            let size = self.size_at(stick, sawn, place);
            Section::new(most.breadth.max(size.breadth), most.depth.max(size.depth))
        })
    }

    /// The scarf whose dry fit counts for that piece of the beam, and how much farther from the beam's left end than drawn the
    /// piece lies by it. Pieces and scarfs are numbered from the left, from 1: scarf 1 joins pieces 1 and 2.
    #[must_use]
    pub fn dry_fit_shift(&self, piece: usize) -> Option<(usize, Length)> {
        let measured = |scarf: usize| self.dry_fits.get(&scarf.to_string()).filter(|error| error.abs() <= MOST_DRY_FIT);
        (1..piece).rev().find_map(|scarf| measured(scarf).map(|error| (scarf, *error)))
    }
}

fn along(a: &MeasuredSize, b: &MeasuredSize) -> std::cmp::Ordering {
    a.from_zero.to_inches().total_cmp(&b.from_zero.to_inches())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 10 in deep at 20, 9 in at 60: 9¾ at 30; 10 before, 9 past them.
    #[test]
    fn a_stick_tapers_between_two_measures() {
        let size = |at: f64, depth: f64| MeasuredSize {
            from_zero: Length::inches(at),
            breadth: Length::inches(8.0),
            depth: Length::inches(depth),
        };
        let mut progress = Progress::default();
        let sawn = Section::new(Length::inches(8.0), Length::inches(10.5));
        let depth = |progress: &Progress, at: f64| progress.size_at("B1", sawn, Length::inches(at)).depth.to_inches();
        assert_eq!(depth(&progress, 30.0), 10.5);
        progress.sizes.insert("B1".to_owned(), vec![size(60.0, 9.0), size(20.0, 10.0)]);
        for (at, expected) in [(0.0, 10.0), (20.0, 10.0), (30.0, 9.75), (60.0, 9.0), (200.0, 9.0)] {
            assert_eq!(depth(&progress, at), expected);
        }
        // Between 10 and 30 the largest is at 20, between 50 and 70 at 50.
        for (from, to, expected) in [(10.0, 30.0, 10.0), (50.0, 70.0, 9.25), (70.0, 90.0, 9.0)] {
            let most = progress.most_between("B1", sawn, (Length::inches(from), Length::inches(to)));
            assert_eq!(most.depth.to_inches(), expected);
        }
    }
}
