//! One quantity along a member, piece by piece.
use std::marker::PhantomData;

use super::polynomial::{Polynomial, derivative, sign_changes, to_unit, value};
use super::quantities::Measured;
use crate::units::Length;

/// One piece: a polynomial of the distance from its start.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    pub(super) start: f64,
    pub(super) length: f64,
    pub(super) curve: Polynomial,
}

/// Smallest and largest value, and where; the first place where several share it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Extremes<Q> {
    /// The smallest value.
    pub min: Q,
    /// Where, from the `from` end.
    pub min_at: Length,
    /// The largest value.
    pub max: Q,
    /// Where, from the `from` end.
    pub max_at: Length,
}

impl<Q: Measured> Extremes<Q> {
    /// The one farther from nothing, with its sign; the smallest where both are as far.
    #[must_use]
    pub fn farthest(&self) -> Q {
        if self.max.bare().abs() > self.min.bare().abs() { self.max } else { self.min }
    }
}

/// A quantity along a member, from its `from` end.
#[derive(Clone, Debug, PartialEq)]
pub struct Diagram<Q> {
    pieces: Vec<Piece>,
    kind: PhantomData<Q>,
}

impl<Q: Measured> Diagram<Q> {
    pub(super) const fn new(pieces: Vec<Piece>) -> Self {
        Self { pieces, kind: PhantomData }
    }

    /// The places where the load breaks, ends included.
    #[must_use]
    pub fn breaks(&self) -> Vec<Length> {
        let starts = self.pieces.iter().map(|piece| Length::inches(piece.start));
        starts.chain([self.end()]).collect()
    }

    fn end(&self) -> Length {
        Length::inches(self.pieces.last().map_or(0.0, |piece| piece.start + piece.length))
    }

    /// Its value; where it jumps, the value just before. A place off the member counts as the nearer end.
    #[must_use]
    pub fn at(&self, place: Length) -> Q {
        let place = place.to_inches();
        self.read(self.pieces.partition_point(|piece| piece.start < place), place)
    }

    /// Its value by the piece before the one of that number.
    fn read(&self, next: usize, place: f64) -> Q {
        let piece = self.pieces.get(next.saturating_sub(1));
        Q::of(piece.map_or(0.0, |piece| value(&piece.curve, (place - piece.start).clamp(0.0, piece.length))))
    }

    /// Its values just before and just after a place; they differ where it jumps.
    #[must_use]
    pub fn sides(&self, place: Length) -> (Q, Q) {
        let place = place.to_inches();
        let before = self.pieces.partition_point(|piece| piece.start < place);
        let after = self.pieces.partition_point(|piece| piece.start <= place);
        (self.read(before, place), self.read(after, place))
    }

    /// The exact extremes: ends of the pieces and the places where a piece turns.
    #[must_use]
    pub fn extremes(&self) -> Extremes<Q> {
        let (mut min, mut max) = ((f64::INFINITY, 0.0), (f64::NEG_INFINITY, 0.0));
        for piece in &self.pieces {
            let curve = to_unit(&piece.curve, piece.length);
            let turns = sign_changes(&derivative(&curve));
            let mut see = |place: f64| {
                let here = value(&curve, place);
                let at = piece.start + place * piece.length;
                if here < min.0 {
                    min = (here, at);
                }
                if here > max.0 {
                    max = (here, at);
                }
            };
            see(0.0);
            turns.as_slice().iter().for_each(|place| see(*place));
            see(1.0);
        }
        if self.pieces.is_empty() {
            (min, max) = ((0.0, 0.0), (0.0, 0.0));
        }
        Extremes { min: Q::of(min.0), min_at: Length::inches(min.1), max: Q::of(max.0), max_at: Length::inches(max.1) }
    }

    /// The places where it passes through zero, rising along the member; a stretch at zero has none.
    #[must_use]
    pub fn zeros(&self) -> Vec<Length> {
        let mut found: Vec<f64> = Vec::new();
        let mut last = 0.0_f64;
        for piece in &self.pieces {
            let curve = to_unit(&piece.curve, piece.length);
            if last * curve[0] < 0.0 {
                found.push(piece.start);
            }
            let inside = sign_changes(&curve);
            found.extend(inside.as_slice().iter().map(|place| piece.start + place * piece.length));
            last = value(&curve, 1.0);
        }
        found.into_iter().map(Length::inches).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Force;

    fn steps() -> Diagram<Force> {
        let flat = |start, level| Piece { start, length: 10.0, curve: [level, 0.0, 0.0, 0.0, 0.0, 0.0] };
        Diagram::new(vec![flat(0.0, 5.0), flat(10.0, -3.0)])
    }

    #[test]
    fn a_jump_has_two_sides() {
        let diagram = steps();
        let sides = diagram.sides(Length::inches(10.0));
        assert_eq!(sides, (Force::pounds(5.0), Force::pounds(-3.0)));
        assert_eq!(diagram.at(Length::inches(-1.0)), Force::pounds(5.0));
        assert_eq!(diagram.at(Length::inches(99.0)), Force::pounds(-3.0));
        assert_eq!(diagram.zeros(), vec![Length::inches(10.0)]);
        assert_eq!(diagram.breaks().len(), 3);
    }

    #[test]
    fn extremes_name_the_first_place() {
        let extremes = steps().extremes();
        assert_eq!((extremes.max, extremes.max_at), (Force::pounds(5.0), Length::ZERO));
        assert_eq!((extremes.min, extremes.min_at), (Force::pounds(-3.0), Length::inches(10.0)));
    }

    #[test]
    fn a_turn_inside_is_found() {
        // 4t − t² turns at 2 with 4.
        let arch = Piece { start: 3.0, length: 5.0, curve: [0.0, 4.0, -1.0, 0.0, 0.0, 0.0] };
        let extremes = Diagram::<Force>::new(vec![arch]).extremes();
        assert!((extremes.max.to_pounds() - 4.0).abs() < 1e-12 && (extremes.max_at.to_inches() - 5.0).abs() < 1e-12);
        assert!((extremes.min.to_pounds() + 5.0).abs() < 1e-12 && (extremes.min_at.to_inches() - 8.0).abs() < 1e-12);
    }
}
