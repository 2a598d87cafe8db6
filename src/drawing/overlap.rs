//! What lies before what: flat pieces in space put in an order in which each may be painted over those before it.
//!
//! Exact for any pieces: one piece's plane parts the others into those behind it and those before it, and a piece
//! that reaches through the plane is cut in two (binary space partition: Fuchs, Kedem, Naylor 1980).
use crate::solid::{Plane, Vector, halves};

/// Nearer than this to a plane a corner lies in it, in inches.
const NEAR: f64 = 1e-5;
/// How many pieces are tried for the one that parts the rest best.
const TRIED: usize = 9;

/// A flat convex piece, or a straight line of two corners.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece<T> {
    /// Its corners in order.
    pub corners: Vec<Vector>,
    /// Its plane; a line has none.
    pub plane: Option<Plane>,
    /// Lines on it that are drawn with it.
    pub lines: Vec<(Vector, Vector)>,
    /// Its grain.
    pub grain: Vec<(Vector, Vector)>,
    /// What it is.
    pub of: T,
}

/// The pieces, the farthest first, as seen from far away in that direction. Faces must look that way.
#[must_use]
pub fn farthest_first<T: Clone>(pieces: Vec<Piece<T>>, toward: Vector) -> Vec<Piece<T>> {
    let mut sorted = Vec::with_capacity(pieces.len());
    // Groups still to be parted, the farthest on top.
    let mut waiting = vec![(pieces, false)];
    while let Some((mut group, is_done)) = waiting.pop() {
        let splitter = if is_done { None } else { best(&group) };
        let Some(plane) = splitter else {
            sorted.append(&mut group);
            continue;
        };
        let (mut behind, mut level, mut before) = (Vec::new(), Vec::new(), Vec::new());
        for piece in group {
            part(piece, &plane, &mut behind, &mut level, &mut before);
        }
        if plane.normal.dot(toward) < 0.0 {
            std::mem::swap(&mut behind, &mut before);
        }
        waiting.push((before, false));
        waiting.push((level, true));
        waiting.push((behind, false));
    }
    sorted
}

/// The plane of the piece that cuts fewest others and parts the rest most evenly; nothing where there are only lines.
fn best<T>(group: &[Piece<T>]) -> Option<Plane> {
    let step = group.len().div_ceil(TRIED).max(1);
    let mut best: Option<(usize, Plane)> = None;
    for (index, piece) in group.iter().enumerate() {
        // The first plane of all is tried even where every tried piece is a line.
        let Some(plane) = piece.plane.filter(|_| index % step == 0 || best.is_none()) else { continue };
        let cost = cost(group, &plane);
        if best.is_none_or(|(known, _)| cost < known) {
            best = Some((cost, plane));
        }
    }
    best.map(|(_, plane)| plane)
}

fn cost<T>(group: &[Piece<T>], plane: &Plane) -> usize {
    let (mut cut, mut behind, mut before) = (0_usize, 0_usize, 0_usize);
    for piece in group {
        let (low, high) = reach(piece, plane);
        match (low < -NEAR, high > NEAR) {
            (true, true) => cut += 1,
            (true, false) => behind += 1,
            (false, true) => before += 1,
            (false, false) => {}
        }
    }
    cut * 6 + behind.abs_diff(before)
}

fn reach<T>(piece: &Piece<T>, plane: &Plane) -> (f64, f64) {
    let at = piece.corners.iter().map(|corner| plane.outside(*corner));
    at.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
}

fn part<T: Clone>(
    piece: Piece<T>,
    plane: &Plane,
    behind: &mut Vec<Piece<T>>,
    level: &mut Vec<Piece<T>>,
    before: &mut Vec<Piece<T>>,
) {
    let (low, high) = reach(&piece, plane);
    match (low < -NEAR, high > NEAR) {
        (false, false) if piece.plane.is_none() => before.push(piece),
        (false, false) => level.push(piece),
        (true, false) => behind.push(piece),
        (false, true) => before.push(piece),
        (true, true) => {
            let (under, over) = cut(&piece, plane);
            behind.push(under);
            before.push(over);
        }
    }
}

/// The piece's part below the plane and its part above it.
fn cut<T: Clone>(piece: &Piece<T>, plane: &Plane) -> (Piece<T>, Piece<T>) {
    let (under, over) = match piece.corners[..] {
        [from, to] => [plane, &plane.flipped()].map(|plane| line_within((from, to), plane)).into(),
        _ => halves(&piece.corners, plane, NEAR),
    };
    let half = |corners: Option<Vec<Vector>>, plane: &Plane| Piece {
        corners: corners.unwrap_or_default(),
        plane: piece.plane,
        lines: piece.lines.iter().filter_map(|line| long_line(*line, plane)).collect(),
        grain: piece.grain.iter().filter_map(|line| long_line(*line, plane)).collect(),
        of: piece.of.clone(),
    };
    (half(under, plane), half(over, &plane.flipped()))
}

/// The part of a line that is not outside the plane.
fn line_within((from, to): (Vector, Vector), plane: &Plane) -> Option<Vec<Vector>> {
    let (here, there) = (plane.outside(from), plane.outside(to));
    let crossing = || from + (to - from) * (here / (here - there));
    match (here <= NEAR, there <= NEAR) {
        (true, true) => Some(vec![from, to]),
        (true, false) if here < -NEAR => Some(vec![from, crossing()]),
        (false, true) if there < -NEAR => Some(vec![crossing(), to]),
        _ => None,
    }
}

fn long_line(line: (Vector, Vector), plane: &Plane) -> Option<(Vector, Vector)> {
    let kept = line_within(line, plane)?;
    ((kept[1] - kept[0]).norm() > NEAR * 10.0).then(|| (kept[0], kept[1]))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheet(of: usize, normal: (f64, f64, f64), corners: [(f64, f64, f64); 4]) -> Piece<usize> {
        let corners: Vec<Vector> = corners.iter().map(|(x, y, z)| Vector::inches(*x, *y, *z)).collect();
        let normal = Vector::inches(normal.0, normal.1, normal.2).unit().unwrap_or(Vector::ZERO);
        Piece { plane: Some(Plane::through(corners[0], normal)), corners, lines: Vec::new(), grain: Vec::new(), of }
    }

    fn level(of: usize, z: f64) -> Piece<usize> {
        sheet(of, (0.0, 0.0, 1.0), [(0.0, 0.0, z), (9.0, 0.0, z), (9.0, 9.0, z), (0.0, 9.0, z)])
    }

    #[test]
    fn the_nearest_is_painted_last() {
        let stack = vec![level(3, 3.0), level(1, 1.0), level(2, 2.0)];
        let order = |toward: f64| {
            let sorted = farthest_first(stack.clone(), Vector::inches(0.0, 0.0, toward));
            sorted.iter().map(|piece| piece.of).collect::<Vec<_>>()
        };
        assert_eq!(order(1.0), [1, 2, 3]);
        assert_eq!(order(-1.0), [3, 2, 1]);
    }

    /// Two sheets that run through each other: one is cut, and its nearer half comes after the other sheet.
    #[test]
    fn a_piece_through_another_is_cut() {
        let leaning = sheet(7, (-1.0, 0.0, 1.0), [(0.0, 0.0, 0.0), (9.0, 0.0, 9.0), (9.0, 9.0, 9.0), (0.0, 9.0, 0.0)]);
        let sorted = farthest_first(vec![level(4, 4.0), leaning], Vector::inches(0.0, 0.0, 1.0));
        assert_eq!(sorted.len(), 3);
        let middle = sorted[1].of;
        assert!(sorted[0].of == sorted[2].of && sorted[0].of != middle);
    }

    /// A line through a sheet is hidden below it and seen above it.
    #[test]
    fn a_line_is_cut_where_it_goes_through() {
        let ends = (Vector::inches(4.0, 4.0, 0.0), Vector::inches(5.0, 5.0, 8.0));
        let line = Piece { corners: vec![ends.0, ends.1], plane: None, lines: Vec::new(), grain: Vec::new(), of: 1 };
        let sorted = farthest_first(vec![line, level(4, 4.0)], Vector::inches(0.0, 0.0, 1.0));
        let order: Vec<usize> = sorted.iter().map(|piece| piece.of).collect();
        assert_eq!(order, [1, 4, 1]);
        assert!((sorted[2].corners[0].z - 4.0).abs() < 1e-9 && sorted[2].corners.len() == 2);
    }
}
