//! Marks of the holes bored for ties, and the wood they take.
use super::mark::{Mark, MarkKind};
use crate::design::Shape;
use crate::geometry::{BeamPiece, Bulk, Point, Polygon, PostShape, RafterShape};
use crate::joinery::{
    ScarfShape, TieHole, TieJoint, in_scarf, post_holes, rafter_holes, rafter_shaping, scarf_holes, taken_from,
};
use crate::project::Project;
use crate::units::Length;
use crate::wording::length;

/// A mark for each of them: how wide, how far through, and its own distance.
pub(super) fn tie_marks(project: &Project, holes: &[TieHole]) -> Vec<Mark> {
    let say = |value: Length| length(value, project.units);
    let mark = |hole: &TieHole| {
        let (wide, from) = (say(hole.diameter), say(hole.measured));
        let note = match hole.joint {
            TieJoint::PostBase => format!("bore {wide} through, square to the face; {from} up from the foot"),
            TieJoint::Scarf(_) => {
                format!("bore {wide} through both halves at once, the scarf closed; {from} into the lap from that tip")
            }
            TieJoint::RafterHead | TieJoint::RafterSeat => {
                format!("bore {wide} through the rafter only, square to the top edge; the {} stays whole", hole.mate)
            }
        };
        Mark::line(hole.what.clone(), hole.face, hole.near, MarkKind::Fixing)
            .across((hole.across, hole.across), hole.from)
            .bored(hole.diameter, Length::ZERO)
            .note(note)
            .mate(&hole.mate)
    };
    holes.iter().map(mark).collect()
}

/// Of a post's foot.
pub(super) fn at_foot(project: &Project, post: &PostShape) -> (Vec<Mark>, Bulk) {
    let (holes, sawn) = (post_holes(project, post), project.frame.timbers.post.sawn);
    // A hole for the base runs across the face that its place is not measured on.
    let is_along = holes.first().is_some_and(|hole| hole.face == crate::materials::Face::Left);
    let through = if is_along { sawn.breadth } else { sawn.depth };
    let past = Polygon::rectangle(
        Point::new(post.body(), Length::ZERO),
        Point::new(post.body() + sawn.breadth + sawn.depth, through),
    );
    (tie_marks(project, &holes), taken_from(&holes, through, &[past]))
}

/// Of the scarfs of a piece of the beam.
pub(super) fn in_scarfs(project: &Project, shape: &Shape, piece: &BeamPiece) -> (Vec<Mark>, Bulk) {
    let (holes, depth) = (scarf_holes(project, shape, piece), project.frame.timbers.beam.sawn.depth);
    let mut lost = Vec::new();
    for (scarf, is_lower) in [piece.left, piece.right].into_iter().flatten().filter(|_| !holes.is_empty()) {
        let waste = ScarfShape::of(project, &shape.beam.scarfs[scarf - 1]).waste(is_lower);
        let placed = |point: Point| {
            let on = in_scarf(shape, scarf, piece.start, point);
            Point::new(on.x, depth - on.y)
        };
        lost.extend(waste.iter().filter(|part| part.corners.len() >= 3).map(|part| part.map(placed)));
    }
    (tie_marks(project, &holes), taken_from(&holes, depth, &lost))
}

/// Of a rafter's seats.
pub(super) fn at_seats(project: &Project, rafter: &RafterShape) -> (Vec<Mark>, Bulk) {
    let holes = rafter_holes(project, rafter);
    if holes.is_empty() {
        return (Vec::new(), Bulk::default());
    }
    let (low, high) = rafter.outline().bounds();
    let far = rafter.depth * 4.0;
    let mut lost: Vec<Polygon> =
        rafter_shaping(rafter).into_iter().map(|(_, _, corners)| Polygon::new(corners)).collect();
    for (from, to) in [(low.x - far, low.x), (high.x, high.x + far)] {
        lost.push(Polygon::rectangle(Point::new(from, Length::ZERO), Point::new(to, rafter.depth)));
    }
    (tie_marks(project, &holes), taken_from(&holes, rafter.depth, &lost))
}
