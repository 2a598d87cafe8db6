//! The room a body takes while it is moved straight from one place to another.
use super::NEAR;
use super::convex::{Convex, Facet, Plane};
use super::vector::Vector;

/// Everything a body passes through while it is moved by `by`, its first and last place included: a convex body again.
///
/// Facets that look along the move go with it, the others stay; between them each edge of the outline seen along the
/// move is drawn out into a facet.
#[must_use]
pub fn swept(body: &Convex, by: Vector) -> Convex {
    if by.norm() <= NEAR {
        return body.clone();
    }
    let goes = |plane: &Plane| plane.normal.dot(by) > NEAR * by.norm();
    let mut facets = Vec::new();
    for facet in body.facets() {
        let is_level = facet.plane.normal.dot(by).abs() <= NEAR * by.norm();
        if is_level {
            continue;
        }
        let shift = if goes(&facet.plane) { by } else { Vector::ZERO };
        facets.push(moved(facet, shift));
        if goes(&facet.plane) {
            facets.extend(sides(body, facet, by));
        }
    }
    // Facets that lie along the move grow with it.
    for facet in body.facets() {
        if facet.plane.normal.dot(by).abs() <= NEAR * by.norm() {
            facets.push(grown(facet, by));
        }
    }
    Convex::new(facets)
}

fn moved(facet: &Facet, by: Vector) -> Facet {
    Facet {
        plane: Plane { normal: facet.plane.normal, offset: facet.plane.offset + facet.plane.normal.dot(by) },
        corners: facet.corners.iter().map(|corner| *corner + by).collect(),
        skin: facet.skin,
    }
}

/// The facets drawn out by the edges between one that goes and one that stays.
fn sides(body: &Convex, facet: &Facet, by: Vector) -> Vec<Facet> {
    let count = facet.corners.len();
    let edges = (0..count).map(|index| (facet.corners[index], facet.corners[(index + 1) % count]));
    edges
        .filter(|(from, to)| {
            let other = body.facets().iter().find(|other| has_edge(other, *to, *from));
            other.is_some_and(|other| other.plane.normal.dot(by) < -NEAR * by.norm())
        })
        .filter_map(|(from, to)| {
            let corners = vec![from, to, to + by, from + by];
            let normal = (to - from).cross(by).unit()?;
            Some(Facet { plane: Plane::through(from, normal), corners, skin: facet.skin })
        })
        .collect()
}

fn has_edge(facet: &Facet, from: Vector, to: Vector) -> bool {
    let same = |a: Vector, b: Vector| (a - b).norm() <= NEAR;
    let count = facet.corners.len();
    (0..count).any(|index| same(facet.corners[index], from) && same(facet.corners[(index + 1) % count], to))
}

/// A facet along the move, with the room it passes through in its own plane: the hull of its first and last place.
fn grown(facet: &Facet, by: Vector) -> Facet {
    let count = facet.corners.len();
    let leaves = |index: usize| {
        let edge = facet.corners[(index + 1) % count] - facet.corners[index % count];
        edge.cross(facet.plane.normal).dot(by) > 0.0
    };
    let mut corners = Vec::with_capacity(count + 2);
    for index in 0..count {
        let (before, after) = (leaves(index + count - 1), leaves(index));
        let corner = facet.corners[index];
        match (before, after) {
            (false, false) => corners.push(corner),
            (true, true) => corners.push(corner + by),
            (false, true) => corners.extend([corner, corner + by]),
            (true, false) => corners.extend([corner + by, corner]),
        }
    }
    Facet { plane: facet.plane, corners, skin: facet.skin }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Point, Polygon};
    use crate::solid::{Axis, prism};
    use crate::units::Length;

    /// By hand: a right wedge of legs 3 and 4, 5 thick. Moved 10 across its 4-leg it sweeps 30 + 4·5·10; moved 10 along
    /// its thickness 30 + 6·10.
    #[test]
    fn the_room_is_the_body_and_its_shadow_drawn_out() {
        let outline = Polygon::new([(0.0, 0.0), (3.0, 0.0), (0.0, 4.0)].map(|(x, y)| Point::inches(x, y)).to_vec());
        let wedge = prism(&outline, Axis::Y, Length::ZERO, Length::inches(5.0)).remove(0);
        for (by, expected) in [
            ((10.0, 0.0, 0.0), 30.0 + 200.0),
            ((-10.0, 0.0, 0.0), 30.0 + 200.0),
            ((0.0, 10.0, 0.0), 30.0 + 60.0),
            ((0.0, 0.0, -7.0), 30.0 + 3.0 * 5.0 * 7.0),
            // Along (1, 0, 1): the outline's shadow is 7/√2 wide, the move √2·2 long.
            ((2.0, 0.0, 2.0), 30.0 + 7.0 * 2.0 * 5.0),
        ] {
            let room = swept(&wedge, Vector::inches(by.0, by.1, by.2));
            assert!((room.volume() - expected).abs() < 1e-9, "{by:?}: {} is not {expected}", room.volume());
        }
    }
}
