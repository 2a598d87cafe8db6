//! The holes bored for ties: where each one is on its stick, and the wood it takes.
//!
//! One definition for the solids, the sheets, and what is in the way of what. All stand in a row on the middle of the timber
//! as sawn: up a post's foot and right through it; at both tips of a scarf, square through both halves; at a rafter's seats
//! square through the rafter alone, which is as far as a lead hole goes (common practice: the tie cuts its own way on into the
//! beam or the ledger).
use super::beam_piece::in_scarf;
use crate::design::Shape;
use crate::geometry::{BeamPiece, Bulk, Point, Polygon, PostShape, RafterShape};
use crate::materials::Face;
use crate::project::{BoreWay, Project, Side, TailCut, Tie};
use crate::solid::{Axis, Convex, Solid, Vector, cylinder, prism};
use crate::units::Length;

/// The joint a hole is bored for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TieJoint {
    /// A post's foot in its base.
    PostBase,
    /// The scarf of that number.
    Scarf(usize),
    /// A rafter on the ledger.
    RafterHead,
    /// A rafter on the beam.
    RafterSeat,
}

/// One hole in one stick.
#[derive(Clone, Debug, PartialEq)]
pub struct TieHole {
    /// What it is, in the words of the sheet.
    pub what: String,
    /// The joint.
    pub joint: TieJoint,
    /// What the tie goes on into.
    pub mate: String,
    /// Which one of its row, from 0.
    pub index: usize,
    /// From a post's foot, a tip of the scarf, or the middle of a seat.
    pub measured: Length,
    /// Along the stick from its zero.
    pub near: Length,
    /// The face it is bored from.
    pub face: Face,
    /// Across that face, from the face named in `from`.
    pub across: Length,
    /// The face the measure across is taken from.
    pub from: Face,
    /// Across the hole.
    pub diameter: Length,
    /// In a scarf: the tip it is measured from is this stick's own.
    pub is_at_end: bool,
}

impl TieHole {
    /// What the drill goes through. `axes`: along the stick, across its face from the face `from`, and into the wood; they
    /// start at the arris of the reference faces at zero.
    #[must_use]
    pub fn tool(&self, zero: Vector, [along, aside, into]: [Vector; 3], through: Length) -> Vec<Convex> {
        let at = zero + along * self.near.to_inches() + aside * self.across.to_inches();
        cylinder(at, at + into * through.to_inches(), self.diameter)
    }
}

/// Every hole of a tie in one row. `place`: what it is called with its number, and where it is along the stick.
fn row(tie: &Tie, like: &TieHole, place: impl Fn(usize, Length) -> (String, Length)) -> Vec<TieHole> {
    let all = tie.holes().into_iter().enumerate();
    all.map(|(index, measured)| {
        let (what, near) = place(index + 1, measured);
        TieHole { what, near, index, measured, ..like.clone() }
    })
    .collect()
}

fn like(tie: &Tie, joint: TieJoint, mate: &str, (face, from, width): (Face, Face, Length)) -> TieHole {
    TieHole {
        what: String::new(),
        joint,
        mate: mate.to_owned(),
        index: 0,
        measured: Length::ZERO,
        near: Length::ZERO,
        face,
        across: width / 2.0,
        from,
        diameter: tie.bored(),
        is_at_end: false,
    }
}

/// The holes of a post's foot, lowest first.
#[must_use]
pub fn post_holes(project: &Project, post: &PostShape) -> Vec<TieHole> {
    let (tie, sawn) = (&project.fixings.post_base, project.frame.timbers.post.sawn);
    let faces = match tie.bores.map(|bores| bores.way) {
        Some(BoreWay::Outward) => (Face::Outer, Face::Left, sawn.breadth),
        _ => (Face::Left, Face::Outer, sawn.depth),
    };
    row(tie, &like(tie, TieJoint::PostBase, "base", faces), |number, up| {
        (format!("hole {number} for its base"), post.body() - up)
    })
}

/// The holes of both scarfs of a piece of the beam, each tip's from that tip on. A lower lap is bored from below.
#[must_use]
pub fn scarf_holes(project: &Project, shape: &Shape, piece: &BeamPiece) -> Vec<TieHole> {
    let (tie, breadth) = (&project.fixings.scarf, project.frame.timbers.beam.sawn.breadth);
    let mut all = Vec::new();
    for (end, side) in [(piece.left, Side::Left), (piece.right, Side::Right)] {
        let Some((scarf, is_lower)) = end else { continue };
        let other = if side == Side::Right { piece.number + 1 } else { piece.number - 1 };
        let face = if is_lower { Face::Underside } else { Face::Top };
        // The upper half ends over the lower one's root.
        for is_lower_tip in [false, true] {
            let is_at_end = is_lower_tip == is_lower;
            let tip = if is_at_end { piece.number } else { other };
            let joint = TieJoint::Scarf(scarf);
            let one = like(tie, joint, &format!("B{other}"), (face, Face::Outer, breadth));
            all.extend(row(tie, &TieHole { is_at_end, ..one }, |number, on| {
                let x = if is_lower_tip { project.frame.scarfs.lap - on } else { on };
                let what = format!("scarf {scarf}, hole {number} from the tip of B{tip}");
                (what, in_scarf(shape, scarf, piece.start, Point::new(x, Length::ZERO)).x)
            }));
        }
    }
    all
}

/// The holes of a rafter at its head and over the beam, from the middle of each seat as drawn uphill.
#[must_use]
pub fn rafter_holes(project: &Project, rafter: &RafterShape) -> Vec<TieHole> {
    let (fixings, breadth) = (&project.fixings, project.frame.timbers.rafter.sawn.breadth);
    let mut all = Vec::new();
    for (tie, joint, notch, on) in [
        (&fixings.rafter_head, TieJoint::RafterHead, &rafter.ledger, "ledger"),
        (&fixings.rafter_seat, TieJoint::RafterSeat, &rafter.beam, "beam"),
    ] {
        let middle = (notch.seat_end.x + notch.corner.x) / 2.0;
        all.extend(row(tie, &like(tie, joint, on, (Face::Top, Face::Left, breadth)), |number, uphill| {
            (format!("hole {number} for its tie to the {on}"), middle - uphill)
        }));
    }
    all
}

/// What a rafter loses at its ends and over its seats: what it is called, what lies in it, its corners on the rafter's side.
#[must_use]
pub fn rafter_shaping(rafter: &RafterShape) -> Vec<(String, Option<&'static str>, Vec<Point>)> {
    let (low, high) = rafter.outline().bounds();
    let bottom = Point::new(low.x, rafter.depth);
    let mut all = vec![("wall end".to_owned(), None, vec![rafter.head.0, rafter.head.1, bottom])];
    if rafter.tail_cut == TailCut::Plumb {
        let top = Point::new(high.x, Length::ZERO);
        all.push(("tail end".to_owned(), None, vec![rafter.tail.0, rafter.tail.1, top]));
    }
    for (notch, on) in [(&rafter.ledger, "ledger"), (&rafter.beam, "beam")] {
        let corners = vec![notch.seat_end, notch.corner, notch.heel_below];
        all.push((format!("{on} bird's mouth"), Some(on), corners));
    }
    all
}

/// The wood those holes take from a stick that is `through` thick where they are bored, along it from its zero. `lost`: what
/// else is cut from it there, as outlines seen square to the drill: along the stick, and down from the top. Pockets and mortises
/// are not among them: a hole that meets one is in its way.
#[must_use]
pub fn taken_from(holes: &[TieHole], through: Length, lost: &[Polygon]) -> Bulk {
    let mut taken = Bulk::default();
    for hole in holes {
        // A drill that meets nothing else leaves a round hole from face to face.
        let around = hole.diameter * 0.75;
        let meets = |part: &&Polygon| {
            let (low, high) = part.bounds();
            low.x < hole.near + around && high.x > hole.near - around
        };
        let parts: Vec<&Polygon> = lost.iter().filter(meets).collect();
        if parts.is_empty() {
            taken = taken.with(Bulk::hole(hole.diameter, through, hole.near));
            continue;
        }
        let end = |deep: Length| Vector::new(hole.near, Length::ZERO, deep);
        let mut wood = Solid::new(cylinder(end(Length::ZERO), end(through), hole.diameter));
        for part in parts.into_iter().flat_map(|part| prism(part, Axis::Y, -hole.diameter, hole.diameter)) {
            wood.cut(&part);
        }
        let at = wood.centre().map_or(hole.near, |centre| Length::inches(centre.x));
        taken = taken.with(Bulk::new(wood.volume(), at));
    }
    taken
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::project::{Bores, demo};

    fn near(holes: &[TieHole], expected: &[f64]) {
        let found: Vec<f64> = holes.iter().map(|hole| hole.near.to_inches()).collect();
        assert_eq!(found.len(), expected.len(), "{found:?}");
        for (one, two) in found.iter().zip(expected) {
            assert!((one - two).abs() < 1e-6, "{found:?} is not {expected:?}");
        }
    }

    /// By hand: the barn's posts are 8 in square; two holes 3½ and 6½ in up, bored along the beam from the left face or out from
    /// the outer one, 4 in across it either way.
    #[test]
    fn a_foot_is_measured_up() {
        let mut barn = demo::wool_barn();
        let built = lay_out(&barn).built.unwrap();
        let post = &built.shape.posts[1];
        let body = post.body().to_inches();
        let holes = post_holes(&barn, post);
        near(&holes, &[body - 3.5, body - 6.5]);
        assert_eq!((holes[1].face, holes[1].from, holes[1].across), (Face::Left, Face::Outer, Length::inches(4.0)));
        let bores = barn.fixings.post_base.bores.unwrap();
        barn.fixings.post_base.bores = Some(Bores { way: BoreWay::Outward, ..bores });
        let holes = post_holes(&barn, post);
        assert_eq!(
            (holes[0].face, holes[0].from, holes[0].what.as_str()),
            (Face::Outer, Face::Left, "hole 1 for its base")
        );
        barn.fixings.post_base.count = 0;
        assert_eq!(post_holes(&barn, post), []);
    }

    /// By hand: scarf 1 of the barn reaches from 159 to 199 in, B1 below, so that B2 begins at 159 in. From B2's tip on 4 and 7 in
    /// are 163 and 166 in; from B1's tip back 195 and 192 in. B1 is bored from below, B2 from the top: the same holes.
    #[test]
    fn a_scarf_is_measured_from_both_tips() {
        let mut barn = demo::wool_barn();
        let inches = Length::inches;
        barn.fixings.scarf.bores =
            Some(Bores { diameter: inches(0.5), first: inches(4.0), apart: inches(3.0), way: BoreWay::AlongBeam });
        let built = lay_out(&barn).built.unwrap();
        let pieces = &built.shape.beam.pieces;
        let lower = scarf_holes(&barn, &built.shape, &pieces[0]);
        near(&lower, &[163.0, 166.0, 195.0, 192.0]);
        assert_eq!(lower[2].what, "scarf 1, hole 1 from the tip of B1");
        assert!(lower[2].is_at_end && !lower[0].is_at_end && lower[0].face == Face::Underside);
        let upper = scarf_holes(&barn, &built.shape, &pieces[1]);
        near(&upper[..4], &[4.0, 7.0, 36.0, 33.0]);
        assert!(upper[0].is_at_end && upper[0].face == Face::Top && upper[0].mate == "B1");
    }

    /// By hand, 3 in 12: the ledger's seat is 3 in level, 12/√153 of it along the slope, and its inner corner lies where the heel,
    /// ¾ in plumb, ends: 2 in less ¾·3/√153. The middle is half a seat up from there.
    #[test]
    fn a_seat_is_measured_from_its_middle_uphill() {
        let mut barn = demo::wool_barn();
        let inches = Length::inches;
        barn.fixings.rafter_head.bores =
            Some(Bores { diameter: inches(0.25), first: inches(0.25), apart: inches(1.0), way: BoreWay::AlongBeam });
        let built = lay_out(&barn).built.unwrap();
        let slope = 153.0_f64.sqrt();
        let middle = 2.0 - 0.75 * 3.0 / slope - 1.5 * 12.0 / slope;
        let holes = rafter_holes(&barn, &built.shape.rafter);
        near(&holes, &[middle - 0.25, middle - 1.25]);
        assert_eq!((holes[0].face, holes[0].across, holes[0].from), (Face::Top, Length::inches(2.0), Face::Left));
    }

    /// π/4·½²·8 = 1.571 in³; half of it past the end, all of the rest in the middle of what is left of a half circle:
    /// 4r/3π in from its edge.
    #[test]
    fn a_hole_at_an_end_takes_half() {
        let inches = Length::inches;
        let one =
            like(&demo::wool_barn().fixings.scarf, TieJoint::PostBase, "base", (Face::Left, Face::Outer, inches(8.0)));
        let hole = TieHole { near: inches(10.0), diameter: inches(0.5), ..one };
        let past = Polygon::rectangle(Point::inches(10.0, 0.0), Point::inches(20.0, 8.0));
        let whole = taken_from(std::slice::from_ref(&hole), inches(8.0), &[]);
        let half = taken_from(&[hole], inches(8.0), &[past]);
        let volume = std::f64::consts::FRAC_PI_4 * 0.25 * 8.0;
        assert!((whole.volume().to_cubic_inches() - volume).abs() < 1e-9 && whole.balance() == inches(10.0));
        assert!((half.volume().to_cubic_inches() - volume / 2.0).abs() < 1e-9);
        let centre = 4.0 * 0.25 / (3.0 * std::f64::consts::PI);
        assert!((10.0 - half.balance().to_inches() - centre).abs() < 2e-3, "{:?}", half.balance());
    }
}
