//! The holes of the ledger's fixings, where they go through each of its pieces.
//!
//! One definition for the solids and the sheets: a hole that is bored takes wood from both; a maker's own screw, which is driven
//! as its maker says, takes none.
use crate::geometry::{Bore, Bulk, FixingPlace, LedgerPiece, bores, fixing_places};
use crate::project::Project;
use crate::solid::{Convex, Solid, Vector, cuboid, cylinder};
use crate::units::{Length, Volume};

/// One hole in one piece.
#[derive(Clone, Debug, PartialEq)]
pub struct LedgerHole {
    /// Where it is.
    pub place: FixingPlace,
    /// The wood it takes from this piece, along the piece from its left end.
    pub taken: Bulk,
}

/// A piece of the ledger with both its laps cut, in boxes: its left end, its middle, its right end. At a splice the left piece
/// keeps its lower half, the right one its upper half.
#[must_use]
pub fn ledger_boxes(project: &Project, piece: &LedgerPiece, top: Length) -> Vec<Convex> {
    let sawn = project.frame.timbers.ledger.sawn;
    let back = project.frame.ledger_packing;
    let (under, middle) = (top - sawn.depth, top - sawn.depth / 2.0);
    let between = |x: (Length, Length), z: (Length, Length)| {
        cuboid(Vector::new(x.0, back, z.0), Vector::new(x.1, back + sawn.breadth, z.1))
    };
    let lap = project.frame.ledger_lap;
    let low = if piece.left_splice { piece.start + lap } else { piece.start };
    let high = if piece.right_splice { piece.end - lap } else { piece.end };
    let mut all = between((low, high), (under, top));
    all.extend(between((piece.start, low), (middle, top)));
    all.extend(between((high, piece.end), (under, middle)));
    all
}

/// The holes that meet this piece's wood; `top` is the height of the ledger's top in the frame.
#[must_use]
pub fn ledger_holes(project: &Project, piece: &LedgerPiece, top: Length) -> Vec<LedgerHole> {
    let bores = bores(project);
    let widest = bores.iter().map(|bore| bore.diameter).fold(Length::ZERO, Length::max);
    let (low, high) = (piece.start - widest, piece.end + widest);
    let mut wood = Vec::new();
    let mut found = Vec::new();
    for place in fixing_places(project).into_iter().filter(|place| place.x > low && place.x < high) {
        if wood.is_empty() {
            wood = ledger_boxes(project, piece, top);
        }
        let mut taken = Bulk::default();
        for bore in &bores {
            taken = taken.with(wood_of(project, (&place, bore), &wood, (top, piece.start)));
        }
        if taken.volume() > Volume::ZERO {
            found.push(LedgerHole { place, taken });
        }
    }
    found
}

/// What the drill goes through at that place, whether or not a piece has wood everywhere there.
#[must_use]
pub fn ledger_drill(project: &Project, place: &FixingPlace, top: Length) -> Vec<Convex> {
    bores(project).iter().flat_map(|bore| drill(project, (place, bore), top)).collect()
}

fn drill(project: &Project, (place, bore): (&FixingPlace, &Bore), top: Length) -> Vec<Convex> {
    let sawn = project.frame.timbers.ledger.sawn;
    let front = project.frame.ledger_packing + sawn.breadth;
    let at = |deep: Length| Vector::new(place.x, front - deep, top - sawn.depth + place.up);
    cylinder(at(bore.to), at(bore.from), bore.diameter)
}

/// A hole that lies whole in one box by its closed form; one that breaks out of it, by what the drill shares with the wood.
fn wood_of(
    project: &Project,
    (place, bore): (&FixingPlace, &Bore),
    wood: &[Convex],
    (top, start): (Length, Length),
) -> Bulk {
    // Half as wide again as the hole: more than the drill's corners reach.
    let reach = bore.diameter.to_inches() * 0.75;
    let x = place.x.to_inches();
    let z = (top - project.frame.timbers.ledger.sawn.depth + place.up).to_inches();
    let is_within = |part: &Convex| {
        let part = part.within();
        part.low.x <= x - reach && x + reach <= part.high.x && part.low.z <= z - reach && z + reach <= part.high.z
    };
    if wood.iter().any(is_within) {
        return Bulk::hole(bore.diameter, bore.to - bore.from, place.x - start);
    }
    let shared = Solid::new(drill(project, (place, bore), top)).shared(&Solid::new(wood.to_vec()));
    let at = shared.centre().map_or(Length::ZERO, |centre| Length::inches(centre.x) - start);
    Bulk::new(shared.volume(), at)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::project::demo;

    fn piece(start: f64, end: f64, left_splice: bool, right_splice: bool) -> LedgerPiece {
        let (start, end) = (Length::inches(start), Length::inches(end));
        LedgerPiece { number: 1, start, end, left_splice, right_splice }
    }

    fn taken(project: &Project, piece: &LedgerPiece) -> Vec<(f64, f64)> {
        let holes = ledger_holes(project, piece, Length::inches(131.25));
        holes.iter().map(|hole| (hole.taken.volume().to_cubic_inches(), hole.taken.balance().to_inches())).collect()
    }

    /// ¾ in through 4 in of wood: π/4·0.75²·4 = 1.767 in³. The barn's studs at 4, 20 and 36 in; 5 in up, the one in the lap of a
    /// ledger 10 in deep lies half in either half, and at the very end of a piece half of it is gone.
    #[test]
    fn a_hole_takes_its_wood_from_the_piece_it_is_in() {
        let barn = demo::wool_barn();
        let whole = std::f64::consts::FRAC_PI_4 * 0.75 * 0.75 * 4.0;
        let check = |piece: LedgerPiece, expected: &[(f64, f64)]| {
            let found = taken(&barn, &piece);
            assert_eq!(found.len(), expected.len(), "{found:?}");
            for (one, two) in found.iter().zip(expected) {
                assert!((one.0 - two.0 * whole).abs() < 1e-9 && (one.1 - two.1).abs() < 1e-9, "{one:?} {two:?}");
            }
        };
        check(piece(0.0, 40.0, false, true), &[(1.0, 4.0), (1.0, 20.0), (0.5, 36.0)]);
        check(piece(32.0, 50.0, true, false), &[(0.5, 4.0)]);
        let cut = taken(&barn, &piece(20.0, 34.0, false, false));
        assert!(cut.len() == 1 && (cut[0].0 - whole / 2.0).abs() < 1e-9 && cut[0].1 > 0.1, "{cut:?}");
    }

    /// A hole in the lower half is the left piece's alone.
    #[test]
    fn in_a_lap_a_hole_is_that_of_its_half() {
        let mut barn = demo::wool_barn();
        barn.fixings.ledger.lowest = Length::inches(2.0);
        assert_eq!(taken(&barn, &piece(0.0, 40.0, false, true)).len(), 3);
        assert_eq!(taken(&barn, &piece(32.0, 50.0, true, false)).len(), 0);
    }
}
