//! The outside of a solid: flat patches without the walls between its bodies, and the edges a drawing shows.
use super::convex::{Convex, Facet, Plane, Skin};
use super::shape::Solid;
use super::vector::{Vector, Within};
use super::{NEAR, SAME_PLANE};

/// A flat convex part of the outside, counter-clockwise as seen from outside.
#[derive(Clone, Debug, PartialEq)]
pub struct Patch {
    /// Out of the wood.
    pub normal: Vector,
    /// Its corners.
    pub corners: Vec<Vector>,
    /// What it is.
    pub skin: Skin,
}

/// An edge of the outside, from one place to the other, with the face it bounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outline {
    /// Its ends.
    pub ends: (Vector, Vector),
    /// Normal of the face it belongs to.
    pub normal: Vector,
}

/// The outside of a solid.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Surface {
    /// Flat parts that together are the whole outside.
    pub patches: Vec<Patch>,
    /// Edges of the flat faces, each once for each face it bounds; none along round holes.
    pub edges: Vec<Outline>,
}

impl Surface {
    /// The outside of a solid.
    #[must_use]
    pub fn of(solid: &Solid) -> Self {
        let mut groups: Vec<(Plane, Vec<&Facet>, Vec<&Facet>)> = Vec::new();
        for facet in solid.bodies().iter().flat_map(Convex::facets) {
            sort_in(&mut groups, facet);
        }
        let mut surface = Self::default();
        for (plane, facing, against) in &groups {
            let front = bare(facing, against);
            let back = bare(against, facing);
            for (patches, normal) in [(front, plane.normal), (back, -plane.normal)] {
                surface.edges.extend(edges(&patches, normal));
                surface.patches.extend(patches);
            }
        }
        surface
    }
}

/// Puts a facet with those of its plane: facing the plane's way, or against it.
fn sort_in<'a>(groups: &mut Vec<(Plane, Vec<&'a Facet>, Vec<&'a Facet>)>, facet: &'a Facet) {
    let same = |plane: &Plane, sign: f64| {
        (plane.normal * sign - facet.plane.normal).norm() < SAME_PLANE
            && (plane.offset * sign - facet.plane.offset).abs() < SAME_PLANE
    };
    for (plane, facing, against) in groups.iter_mut() {
        if same(plane, 1.0) {
            return facing.push(facet);
        }
        if same(plane, -1.0) {
            return against.push(facet);
        }
    }
    groups.push((facet.plane, vec![facet], Vec::new()));
}

/// The parts of facets that no facet of the other side covers.
fn bare(facets: &[&Facet], covers: &[&Facet]) -> Vec<Patch> {
    let covers: Vec<(Within, &Facet)> = covers.iter().map(|cover| (around(&cover.corners), *cover)).collect();
    let mut patches = Vec::new();
    for facet in facets {
        let here = around(&facet.corners);
        let mut parts = vec![facet.corners.clone()];
        for (_, cover) in covers.iter().filter(|(there, _)| here.touches(there)) {
            parts = parts.into_iter().flat_map(|part| uncovered(part, cover)).collect();
        }
        let patch = |corners| Patch { normal: facet.plane.normal, corners, skin: facet.skin };
        patches.extend(parts.into_iter().map(patch));
    }
    patches
}

fn around(corners: &[Vector]) -> Within {
    corners.iter().copied().fold(Within::NOTHING, Within::and)
}

/// What of a flat convex part lies beside a convex cover in the same plane.
fn uncovered(part: Vec<Vector>, cover: &Facet) -> Vec<Vec<Vector>> {
    let count = cover.corners.len();
    let mut beside = Vec::new();
    let mut left = part.clone();
    for index in 0..count {
        let (from, to) = (cover.corners[index], cover.corners[(index + 1) % count]);
        let Some(out) = (to - from).cross(cover.plane.normal).unit() else { continue };
        let (inside, outside) = halves(&left, &Plane::through(from, out), NEAR);
        beside.extend(outside);
        match inside {
            Some(inside) => left = inside,
            // Nothing of it lies under the cover: it stays whole.
            None => return vec![part],
        }
    }
    beside
}

/// A flat convex part's halves within and outside a plane, corners nearer to it than `near` lying in it.
#[must_use]
pub fn halves(part: &[Vector], plane: &Plane, near: f64) -> (Option<Vec<Vector>>, Option<Vec<Vector>>) {
    let at: Vec<f64> = part.iter().map(|corner| plane.outside(*corner)).collect();
    let (mut inside, mut outside) = (Vec::with_capacity(part.len() + 1), Vec::with_capacity(part.len() + 1));
    for (index, corner) in part.iter().enumerate() {
        let next = (index + 1) % part.len();
        let (here, there) = (at[index], at[next]);
        if here <= near {
            inside.push(*corner);
        }
        if here >= -near {
            outside.push(*corner);
        }
        if (here < -near && there > near) || (here > near && there < -near) {
            let place = *corner + (part[next] - *corner) * (here / (here - there));
            inside.push(place);
            outside.push(place);
        }
    }
    let there = |corners: Vec<Vector>, is_there: bool| (is_there && corners.len() >= 3).then_some(corners);
    let is_inside = at.iter().any(|at| *at < -near);
    let is_outside = at.iter().any(|at| *at > near);
    (there(inside, is_inside), there(outside, is_outside))
}

/// Edges of one plane's patches that no neighbour in the plane shares; none between the sides of a round hole.
fn edges(patches: &[Patch], normal: Vector) -> Vec<Outline> {
    let flat = patches.iter().filter(|patch| patch.skin != Skin::Round);
    let all: Vec<(Vector, Vector)> = flat
        .flat_map(|patch| {
            let count = patch.corners.len();
            (0..count).map(move |index| (patch.corners[index], patch.corners[(index + 1) % count]))
        })
        .collect();
    all.iter().flat_map(|edge| alone(*edge, &all)).map(|ends| Outline { ends, normal }).collect()
}

/// The parts of an edge that no edge runs along the other way.
fn alone((from, to): (Vector, Vector), all: &[(Vector, Vector)]) -> Vec<(Vector, Vector)> {
    let Some(along) = (to - from).unit() else { return Vec::new() };
    let length = (to - from).norm();
    let off = |place: Vector| {
        let away = place - from;
        (away - along * away.dot(along)).norm()
    };
    let mut free: Vec<(f64, f64)> = vec![(0.0, length)];
    for (a, b) in all {
        if (*b - *a).dot(along) >= 0.0 || off(*a) > SAME_PLANE || off(*b) > SAME_PLANE {
            continue;
        }
        let (start, end) = ((*b - from).dot(along), (*a - from).dot(along));
        free = free
            .into_iter()
            .flat_map(|(low, high)| [(low, high.min(start)), (low.max(end), high)])
            .filter(|(low, high)| high - low > SAME_PLANE)
            .collect();
    }
    free.into_iter().map(|(low, high)| (from + along * low, from + along * high)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solid::{cuboid, cylinder};
    use crate::units::Length;

    fn area(patches: &[Patch]) -> f64 {
        let ring = |corners: &[Vector]| {
            let fan = corners[1..].windows(2).map(|pair| (pair[0] - corners[0]).cross(pair[1] - corners[0]));
            fan.fold(Vector::ZERO, |sum, part| sum + part).norm() / 2.0
        };
        patches.iter().map(|patch| ring(&patch.corners)).sum()
    }

    /// By hand: a 4 × 4 × 10 block with 2 × 2 taken out of one arris for 4 in: what the two faces lose the notch's sides
    /// give back, and its two ends of 2 × 2 come to the 2·16 + 4·40 of the block.
    #[test]
    fn a_notch_shows_its_own_faces_and_no_inner_walls() {
        let mut solid = Solid::new(cuboid(Vector::ZERO, Vector::inches(10.0, 4.0, 4.0)));
        solid.cut(&cuboid(Vector::inches(3.0, 2.0, 2.0), Vector::inches(7.0, 5.0, 5.0))[0]);
        let surface = Surface::of(&solid);
        assert!((area(&surface.patches) - (192.0 + 8.0)).abs() < 1e-9, "{}", area(&surface.patches));
        // Each edge once for each of its two faces: the block's 12 edges, one of them parted by the notch, and the
        // notch's: 1 at the bottom, 2 × 2 down its ends, 2 × 2 across them, 2 along the faces it breaks.
        let total: f64 = surface.edges.iter().map(|edge| (edge.ends.1 - edge.ends.0).norm()).sum();
        let outer = 4.0 * 10.0 - 4.0 + 8.0 * 4.0;
        let notch = 3.0 * 4.0 + 4.0 * 2.0 + 4.0 * 2.0 - 4.0 * 2.0 + 4.0 * 2.0;
        assert!((total - 2.0 * (outer + notch)).abs() < 1e-6, "{total} is not {}", 2.0 * (outer + notch));
    }

    #[test]
    fn a_hole_shows_its_rims_and_no_lines_along_it() {
        let mut solid = Solid::new(cuboid(Vector::ZERO, Vector::inches(10.0, 4.0, 4.0)));
        let hole = cylinder(Vector::inches(5.0, -1.0, 2.0), Vector::inches(5.0, 5.0, 2.0), Length::inches(1.0));
        solid.cut(&hole[0]);
        let surface = Surface::of(&solid);
        let outer = 2.0 * (4.0 * 10.0 + 8.0 * 4.0);
        let rims = surface.edges.iter().map(|edge| (edge.ends.1 - edge.ends.0).norm()).sum::<f64>() - outer;
        // Two rims of a little over π·1 in.
        assert!((rims - std::f64::consts::TAU).abs() < 0.2, "{rims}");
    }
}
