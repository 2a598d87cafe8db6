//! A load that changes along one direction of the roof, piece by straight piece.
use crate::units::{AreaLoad, Length, LineLoad};

/// A stretch over which the load runs straight from one value to another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Piece {
    /// Where it begins.
    pub from: Length,
    /// Where it ends, beyond `from`.
    pub to: Length,
    /// Load at its beginning.
    pub start: AreaLoad,
    /// Load at its end.
    pub end: AreaLoad,
}

impl Piece {
    fn at(&self, place: Length) -> AreaLoad {
        self.start + (self.end - self.start) * ((place - self.from) / (self.to - self.from))
    }

    fn total(&self) -> LineLoad {
        (self.start + self.end) / 2.0 * (self.to - self.from)
    }

    /// Total times its lever about the origin, in pounds (a moment a unit width): exact for a straight piece.
    fn first_moment(&self) -> f64 {
        let (a, b) = (self.from.to_feet(), self.to.to_feet());
        let (p, q) = (self.start.to_psf(), self.end.to_psf());
        (b - a) / 6.0 * (p * (2.0 * a + b) + q * (a + 2.0 * b))
    }
}

/// A load along one direction, on plan; plus is down. Pieces lie in order and do not overlap; where there is none the
/// load is zero. It may jump between two pieces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Spread {
    pieces: Vec<Piece>,
}

impl Spread {
    /// A straight run of load between two places; empty where the places are not in order.
    #[must_use]
    pub fn straight(from: Length, to: Length, start: AreaLoad, end: AreaLoad) -> Self {
        let pieces = if to > from { vec![Piece { from, to, start, end }] } else { Vec::new() };
        Self { pieces }
    }

    /// The same load all the way.
    #[must_use]
    pub fn uniform(from: Length, to: Length, load: AreaLoad) -> Self {
        Self::straight(from, to, load, load)
    }

    /// The pieces, in order.
    #[must_use]
    pub fn pieces(&self) -> &[Piece] {
        &self.pieces
    }

    /// The load at a place; at a jump, that of the piece which begins there.
    #[must_use]
    pub fn at(&self, place: Length) -> AreaLoad {
        let begins = self.pieces.iter().find(|piece| piece.from <= place && place < piece.to);
        let ends = self.pieces.iter().find(|piece| piece.to == place);
        begins.or(ends).map_or(AreaLoad::ZERO, |piece| piece.at(place))
    }

    /// The whole load on a strip one unit wide.
    #[must_use]
    pub fn total(&self) -> LineLoad {
        self.pieces.iter().map(Piece::total).sum()
    }

    /// Where the whole load acts; `None` when there is none.
    #[must_use]
    pub fn centre(&self) -> Option<Length> {
        let moment: f64 = self.pieces.iter().map(Piece::first_moment).sum();
        Length::try_feet(moment / self.total().to_plf())
    }

    /// The largest load down; zero when nothing presses down.
    #[must_use]
    pub fn peak(&self) -> AreaLoad {
        self.pieces.iter().fold(AreaLoad::ZERO, |peak, piece| peak.max(piece.start).max(piece.end))
    }

    /// Every value times a number.
    #[must_use]
    pub fn times(&self, factor: f64) -> Self {
        let scaled = |piece: &Piece| Piece { start: piece.start * factor, end: piece.end * factor, ..*piece };
        Self { pieces: self.pieces.iter().map(scaled).collect() }
    }

    /// What lies before a place; the rest falls off, nothing is squeezed.
    #[must_use]
    pub fn cut_at(&self, limit: Length) -> Self {
        let kept = self.pieces.iter().filter(|piece| piece.from < limit);
        let cut = |piece: &Piece| {
            if piece.to <= limit { *piece } else { Piece { to: limit, end: piece.at(limit), ..*piece } }
        };
        Self { pieces: kept.map(cut).collect() }
    }

    /// The same load seen from the far end of a line of this length.
    #[must_use]
    pub fn mirrored(&self, length: Length) -> Self {
        let turned = |piece: &Piece| Piece {
            from: length - piece.to,
            to: length - piece.from,
            start: piece.end,
            end: piece.start,
        };
        Self { pieces: self.pieces.iter().rev().map(turned).collect() }
    }

    /// Both loads together.
    #[must_use]
    pub fn plus(&self, other: &Self) -> Self {
        let both = || self.pieces.iter().chain(&other.pieces);
        let mut places: Vec<Length> = both().flat_map(|piece| [piece.from, piece.to]).collect();
        crate::units::sort_lengths(&mut places);
        places.dedup();
        let mut pieces = Vec::new();
        for pair in places.windows(2) {
            let [from, to] = *pair else { continue };
            let over: Vec<&Piece> = both().filter(|piece| piece.from <= from && to <= piece.to).collect();
            if over.is_empty() {
                continue;
            }
            let start = over.iter().map(|piece| piece.at(from)).sum();
            let end = over.iter().map(|piece| piece.at(to)).sum();
            pieces.push(Piece { from, to, start, end });
        }
        Self { pieces }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9, "{found} is not {expected}");
    }

    fn wedge() -> Spread {
        Spread::straight(Length::ZERO, Length::feet(6.0), AreaLoad::psf(30.0), AreaLoad::ZERO)
    }

    #[test]
    fn a_wedge() {
        // Triangle: half base by height, centre at a third from the tall end.
        check(wedge().total().to_plf(), 90.0);
        check(wedge().centre().map_or(f64::NAN, Length::to_feet), 2.0);
        check(wedge().at(Length::feet(3.0)).to_psf(), 15.0);
        check(wedge().at(Length::feet(6.0)).to_psf(), 0.0);
        check(wedge().at(Length::feet(7.0)).to_psf(), 0.0);
        check(wedge().mirrored(Length::feet(10.0)).at(Length::feet(9.0)).to_psf(), 25.0);
        check(wedge().times(2.0).peak().to_psf(), 60.0);
    }

    #[test]
    fn a_cut_wedge_is_not_squeezed() {
        let cut = wedge().cut_at(Length::feet(4.0));
        check(cut.at(Length::feet(4.0)).to_psf(), 10.0);
        check(cut.total().to_plf(), 80.0);
        assert_eq!(wedge().cut_at(Length::feet(8.0)), wedge());
        assert_eq!(wedge().cut_at(Length::ZERO), Spread::default());
    }

    #[test]
    fn sums_keep_total_and_jumps() {
        let strip = Spread::uniform(Length::feet(2.0), Length::feet(8.0), AreaLoad::psf(10.0));
        let sum = wedge().plus(&strip);
        check(sum.total().to_plf(), 150.0);
        check(sum.at(Length::feet(2.0)).to_psf(), 30.0);
        check(sum.at(Length::feet(1.0)).to_psf(), 25.0);
        check(sum.at(Length::feet(7.0)).to_psf(), 10.0);
        assert_eq!(sum.pieces().len(), 3);
        assert_eq!(sum, strip.plus(&wedge()));
        let gap = strip.plus(&Spread::uniform(Length::feet(9.0), Length::feet(10.0), AreaLoad::psf(1.0)));
        check(gap.at(Length::feet(8.5)).to_psf(), 0.0);
    }

    #[test]
    fn nothing_has_no_centre() {
        assert_eq!(Spread::default().centre(), None);
        assert_eq!(Spread::uniform(Length::feet(2.0), Length::feet(1.0), AreaLoad::psf(1.0)), Spread::default());
    }
}
