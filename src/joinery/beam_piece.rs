//! What a piece of the beam carries: its ends, the posts under it, the braces in it.
use super::scarf::ScarfShape;
use crate::design::Shape;
use crate::geometry::{BeamPiece, Brace, Point, Polygon, PostShape, reduced_beam_depth};
use crate::project::{Project, Side};
use crate::units::Length;

/// The outline seen from outside: x from the piece's left end, y up from the underside.
#[must_use]
pub fn beam_outline(project: &Project, shape: &Shape, piece: &BeamPiece) -> Polygon {
    let depth = project.frame.timbers.beam.sawn.depth;
    let square = |x: Length| vec![Point::new(x, Length::ZERO), Point::new(x, depth)];
    let left = match piece.left {
        Some((number, is_lower)) => scarf_end(project, shape, number, is_lower, piece.start),
        None => square(Length::ZERO),
    };
    let right = match piece.right {
        Some((number, is_lower)) => scarf_end(project, shape, number, is_lower, piece.start),
        None => square(piece.length()),
    };
    Polygon::new(left.into_iter().chain(right.into_iter().rev()).collect())
}

/// One end in its scarf, from the underside up: x from `start`, y up from the underside.
#[must_use]
pub fn scarf_end(project: &Project, shape: &Shape, number: usize, is_lower: bool, start: Length) -> Vec<Point> {
    let profile = ScarfShape::of(project, &shape.beam.scarfs[number - 1]).profile(is_lower);
    profile.into_iter().map(|point| in_scarf(shape, number, start, point)).collect()
}

/// A point of the lap's coordinates along the beam, from `start`.
#[must_use]
pub fn in_scarf(shape: &Shape, number: usize, start: Length, point: Point) -> Point {
    let scarf = &shape.beam.scarfs[number - 1];
    match scarf.place.lower {
        Side::Left => Point::new(scarf.low + point.x - start, point.y),
        Side::Right => Point::new(scarf.high - point.x - start, point.y),
    }
}

/// The posts under a piece.
pub fn posts_of<'a>(shape: &'a Shape, piece: &'a BeamPiece) -> impl Iterator<Item = &'a PostShape> {
    shape.posts.iter().filter(|post| post.stands_under(piece.start, piece.end))
}

/// Depth of the beam's housing over a real post, from the underside of the real piece where it is deepest.
#[must_use]
pub fn housing_over(project: &Project, shape: &Shape, post: &PostShape) -> Length {
    let (sawn, progress) = (project.frame.timbers.beam.sawn, &project.progress);
    let over = shape.beam.pieces.iter().find(|piece| post.stands_under(piece.start, piece.end));
    let deepest = over.map(|piece| {
        let mark = format!("B{}", piece.number);
        let zero = piece.start + progress.dry_fit_shift(piece.number).map_or(Length::ZERO, |(_, error)| error);
        let timber = project.frame.timbers.post.sawn;
        let head = progress.most_between(&format!("P{}", post.number), timber, (Length::ZERO, timber.breadth));
        let (from, to) = (post.left - zero, post.right.max(post.left + head.breadth) - zero);
        progress.most_between(&mark, sawn, (from, to)).depth
    });
    deepest.unwrap_or(sawn.depth) - reduced_beam_depth(&project.frame, &project.joinery)
}

/// Braces whose pocket lies in this piece: in a lap it is the lower one.
pub fn braces_of<'a>(project: &'a Project, shape: &'a Shape, piece: &'a BeamPiece) -> impl Iterator<Item = &'a Brace> {
    let frame = &project.frame;
    shape.braces.iter().filter(move |brace| {
        let (near, far) = brace.on_beam(&brace.beam_pocket(frame));
        let middle = (near + far) / 2.0;
        let in_upper_lap = [piece.left, piece.right].into_iter().flatten().any(|(number, is_lower)| {
            let scarf = &shape.beam.scarfs[number - 1];
            !is_lower && middle > scarf.low && middle < scarf.high
        });
        middle > piece.start && middle < piece.end && !in_upper_lap
    })
}
