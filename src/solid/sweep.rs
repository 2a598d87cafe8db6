//! The room a body takes while it is moved straight from one place to another.
use super::NEAR;
use super::convex::{Convex, Facet, Plane};
use super::vector::Vector;

/// How a facet lies to the move: it looks along it, against it, or lies along it within NEAR over the whole move.
#[derive(Clone, Copy, PartialEq)]
enum Faces {
    Along,
    Against,
    Aside,
}

fn faces(plane: &Plane, by: Vector) -> Faces {
    let rise = plane.normal.dot(by);
    match rise {
        _ if rise > NEAR => Faces::Along,
        _ if rise < -NEAR => Faces::Against,
        _ => Faces::Aside,
    }
}

/// Everything a body passes through while it is moved by `by`, its first and last place included: a convex body again.
///
/// Facets that look along the move go with it, the others stay; between them each edge of the outline seen along the
/// move is drawn out into a facet.
#[must_use]
pub fn swept(body: &Convex, by: Vector) -> Convex {
    if by.norm() <= NEAR {
        return body.clone();
    }
    let mut facets = Vec::new();
    for facet in body.facets() {
        match faces(&facet.plane, by) {
            Faces::Along => {
                facets.push(moved(facet, by));
                facets.extend(sides(body, facet, by));
            }
            Faces::Against => facets.push(facet.clone()),
            Faces::Aside => facets.push(grown(body, facet, by)),
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

/// The facets drawn out by the edges between one that goes and one that stays. Their planes come from those two: of a
/// sliver the corners tell little.
fn sides(body: &Convex, facet: &Facet, by: Vector) -> Vec<Facet> {
    let count = facet.corners.len();
    let edges = (0..count).map(|index| (facet.corners[index], facet.corners[(index + 1) % count]));
    edges
        .filter_map(|(from, to)| {
            let other = neighbour(body, from, to).filter(|other| faces(&other.plane, by) == Faces::Against)?;
            let (one, two) = (facet.plane.normal, other.plane.normal);
            let normal = (two * one.dot(by) - one * two.dot(by)).unit()?;
            let corners = vec![from, to, to + by, from + by];
            // An edge is in both planes within rounding only: none of its ends may stand out of the third.
            let offset = corners.iter().map(|corner| normal.dot(*corner)).fold(f64::NEG_INFINITY, f64::max);
            Some(Facet { plane: Plane { normal, offset }, corners, skin: facet.skin })
        })
        .collect()
}

/// The facet on the other side of an edge.
fn neighbour(body: &Convex, from: Vector, to: Vector) -> Option<&Facet> {
    body.facets().iter().find(|facet| {
        let corners = &facet.corners;
        let count = corners.len();
        (0..count).any(|index| corners[index] == to && corners[(index + 1) % count] == from)
    })
}

/// A facet along the move, with the room it passes through in its own plane: the hull of its first and last place. An
/// edge goes where the facet beyond it goes.
fn grown(body: &Convex, facet: &Facet, by: Vector) -> Facet {
    let count = facet.corners.len();
    let leaves = |index: usize| {
        let (from, to) = (facet.corners[index % count], facet.corners[(index + 1) % count]);
        neighbour(body, from, to).is_some_and(|other| faces(&other.plane, by) == Faces::Along)
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
