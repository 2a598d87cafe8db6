//! A simple polygon as convex pieces: ears cut off, then put together again where the whole stays convex.
use crate::geometry::{Point, Polygon};

use super::NEAR;

/// The convex pieces of a simple polygon, each counter-clockwise. A polygon that crosses itself gives what it gives.
#[must_use]
pub fn convex_pieces(polygon: &Polygon) -> Vec<Vec<Point>> {
    let mut corners = straight(&polygon.corners);
    if signed_area(&corners) < 0.0 {
        corners.reverse();
    }
    if is_convex(&corners) {
        return if corners.len() < 3 { Vec::new() } else { vec![corners] };
    }
    merged(ears(corners))
}

fn turn(a: Point, b: Point, c: Point) -> f64 {
    let (a, b, c) = (inches(a), inches(b), inches(c));
    (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0)
}

fn inches(point: Point) -> (f64, f64) {
    (point.x.to_inches(), point.y.to_inches())
}

fn signed_area(corners: &[Point]) -> f64 {
    let next = |index: usize| inches(corners[(index + 1) % corners.len()]);
    corners
        .iter()
        .enumerate()
        .map(|(index, corner)| {
            let ((ax, ay), (bx, by)) = (inches(*corner), next(index));
            ax * by - bx * ay
        })
        .sum::<f64>()
        / 2.0
}

/// Without the corners that lie straight between their neighbours.
fn straight(corners: &[Point]) -> Vec<Point> {
    let count = corners.len();
    let kept = (0..count).filter(|index| {
        let (before, at, after) = (corners[(index + count - 1) % count], corners[*index], corners[(index + 1) % count]);
        let span = before.distance(after).to_inches().max(1e-9);
        turn(before, at, after).abs() > NEAR * span
    });
    kept.map(|index| corners[index]).collect()
}

fn is_convex(corners: &[Point]) -> bool {
    let count = corners.len();
    (0..count).all(|index| turn(corners[index], corners[(index + 1) % count], corners[(index + 2) % count]) > -NEAR)
}

fn ears(mut corners: Vec<Point>) -> Vec<Vec<Point>> {
    let mut triangles = Vec::new();
    while corners.len() > 3 {
        let count = corners.len();
        let ear = (0..count).find(|index| is_ear(&corners, *index));
        let Some(index) = ear else { break };
        let (before, after) = ((index + count - 1) % count, (index + 1) % count);
        triangles.push(vec![corners[before], corners[index], corners[after]]);
        corners.remove(index);
    }
    if corners.len() >= 3 && signed_area(&corners) > NEAR {
        triangles.push(corners);
    }
    triangles
}

fn is_ear(corners: &[Point], index: usize) -> bool {
    let count = corners.len();
    let (before, after) = ((index + count - 1) % count, (index + 1) % count);
    let (a, b, c) = (corners[before], corners[index], corners[after]);
    if turn(a, b, c) <= NEAR {
        return false;
    }
    let others = (0..count).filter(|other| ![before, index, after].contains(other));
    !others
        .map(|other| corners[other])
        .any(|place| turn(a, b, place) > -NEAR && turn(b, c, place) > -NEAR && turn(c, a, place) > -NEAR)
}

/// Pieces that share an edge are joined while the whole stays convex.
fn merged(mut pieces: Vec<Vec<Point>>) -> Vec<Vec<Point>> {
    'again: loop {
        for first in 0..pieces.len() {
            for second in first + 1..pieces.len() {
                if let Some(joined) = joined(&pieces[first], &pieces[second]) {
                    pieces[first] = joined;
                    pieces.remove(second);
                    continue 'again;
                }
            }
        }
        return pieces;
    }
}

fn joined(one: &[Point], other: &[Point]) -> Option<Vec<Point>> {
    let same = |a: Point, b: Point| a.distance(b).to_inches() <= NEAR;
    for (index, from) in one.iter().enumerate() {
        let to = one[(index + 1) % one.len()];
        let meets = (0..other.len()).find(|at| same(other[*at], to) && same(other[(at + 1) % other.len()], *from));
        let Some(at) = meets else { continue };
        let mut whole: Vec<Point> = (1..=one.len()).map(|step| one[(index + step) % one.len()]).collect();
        whole.extend((2..other.len()).map(|step| other[(at + step) % other.len()]));
        return is_convex(&whole).then(|| straight(&whole));
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(corners: &[(f64, f64)], n_pieces: usize) {
        let polygon = Polygon::new(corners.iter().map(|(x, y)| Point::inches(*x, *y)).collect());
        let pieces = convex_pieces(&polygon);
        assert_eq!(pieces.len(), n_pieces, "{pieces:?}");
        let area: f64 = pieces.iter().map(|piece| signed_area(piece)).sum();
        assert!((area - polygon.area().to_square_inches()).abs() < 1e-9);
        assert!(pieces.iter().all(|piece| is_convex(piece)));
    }

    #[test]
    fn shapes_of_the_trade_are_divided_without_loss() {
        check(&[(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)], 1);
        // A half lap: an L, either way round.
        check(&[(0.0, 0.0), (8.0, 0.0), (8.0, 2.0), (3.0, 2.0), (3.0, 4.0), (0.0, 4.0)], 2);
        check(&[(0.0, 4.0), (3.0, 4.0), (3.0, 2.0), (8.0, 2.0), (8.0, 0.0), (0.0, 0.0)], 2);
        // A rafter with two notches.
        check(
            &[
                (0.0, 0.0),
                (100.0, 0.0),
                (100.0, 8.0),
                (92.0, 8.0),
                (91.0, 6.0),
                (86.0, 8.0),
                (12.0, 8.0),
                (11.0, 6.0),
                (6.0, 8.0),
                (0.0, 8.0),
            ],
            4,
        );
    }
}
