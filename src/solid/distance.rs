//! How much lies between two convex bodies.
use super::convex::{Convex, Facet};
use super::vector::Vector;

/// The least distance between two convex bodies that share no room, in inches, and the place midway; nothing between
/// bodies that touch or run into each other is zero.
///
/// The nearest places are a corner and a facet, or two edges; all pairs are tried.
#[must_use]
pub fn between(one: &Convex, two: &Convex) -> (f64, Vector) {
    let mut best = (f64::INFINITY, Vector::ZERO);
    corners_to_facets(one, two, &mut best);
    corners_to_facets(two, one, &mut best);
    for (a, b) in edges(one) {
        for (c, d) in edges(two) {
            let (p, q) = nearest_on_edges((a, b), (c, d));
            keep(&mut best, p, q);
        }
    }
    best
}

fn keep(best: &mut (f64, Vector), p: Vector, q: Vector) {
    let gap = (q - p).norm();
    if gap < best.0 {
        *best = (gap, (p + q) * 0.5);
    }
}

/// Corners that lie square over a facet of the other body.
fn corners_to_facets(one: &Convex, two: &Convex, best: &mut (f64, Vector)) {
    for corner in one.corners() {
        for facet in two.facets() {
            let out = facet.plane.outside(corner);
            let foot = corner - facet.plane.normal * out;
            if out >= 0.0 && out < best.0 && is_over(facet, foot) {
                keep(best, corner, foot);
            }
        }
    }
}

fn is_over(facet: &Facet, place: Vector) -> bool {
    let count = facet.corners.len();
    (0..count).all(|index| {
        let (from, to) = (facet.corners[index], facet.corners[(index + 1) % count]);
        (to - from).cross(place - from).dot(facet.plane.normal) >= -1e-9
    })
}

/// Each edge once: the two facets it belongs to run along it in opposite ways.
fn edges(body: &Convex) -> Vec<(Vector, Vector)> {
    let rings = body.facets().iter().map(|facet| &facet.corners);
    let all = rings.flat_map(|ring| (0..ring.len()).map(|index| (ring[index], ring[(index + 1) % ring.len()])));
    let first = |(from, to): &(Vector, Vector)| (from.x, from.y, from.z) < (to.x, to.y, to.z);
    all.filter(first).collect()
}

/// The nearest places on two edges (closed form, clamped to their ends).
fn nearest_on_edges((a, b): (Vector, Vector), (c, d): (Vector, Vector)) -> (Vector, Vector) {
    let (u, v, w) = (b - a, d - c, a - c);
    let (uu, uv, vv, uw, vw) = (u.dot(u), u.dot(v), v.dot(v), u.dot(w), v.dot(w));
    let spread = uu * vv - uv * uv;
    let s = if spread > 1e-12 * uu * vv { ((uv * vw - vv * uw) / spread).clamp(0.0, 1.0) } else { 0.0 };
    let t = ((uv * s + vw) / vv).clamp(0.0, 1.0);
    let s = ((uv * t - uw) / uu).clamp(0.0, 1.0);
    (a + u * s, c + v * t)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solid::{cuboid, cylinder};
    use crate::units::Length;

    fn block(a: (f64, f64, f64), b: (f64, f64, f64)) -> Convex {
        cuboid(Vector::inches(a.0, a.1, a.2), Vector::inches(b.0, b.1, b.2)).remove(0)
    }

    #[test]
    fn faces_edges_and_corners_by_hand() {
        let one = block((0.0, 0.0, 0.0), (2.0, 2.0, 2.0));
        for (two, expected) in [
            (block((5.0, 0.5, 0.5), (6.0, 1.0, 1.0)), 3.0),
            (block((5.0, 6.0, 0.0), (6.0, 7.0, 1.0)), 5.0),
            (block((4.0, 4.0, 3.0), (5.0, 5.0, 4.0)), 3.0),
        ] {
            assert!((between(&one, &two).0 - expected).abs() < 1e-12);
            assert!((between(&two, &one).0 - expected).abs() < 1e-12);
        }
        // A peg of 1 in whose axis runs 3 in from the block leaves 2.5 in, less the corner's excess over the circle.
        let peg = cylinder(Vector::inches(5.0, 0.0, 1.0), Vector::inches(5.0, 2.0, 1.0), Length::inches(1.0));
        assert!((between(&one, &peg[0]).0 - 2.5).abs() < 0.02);
    }
}
