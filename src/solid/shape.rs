//! Bodies of the trade, and solids made of them.
use crate::geometry::{Point, Polygon};
use crate::units::{Length, Volume};

use super::NEAR;
use super::convex::{Convex, Facet, Plane, Skin};
use super::pieces::convex_pieces;
use super::vector::{Vector, Within};

/// Which way a flat outline is drawn out into a body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axis {
    /// Along the wall; the outline lies in (y, z).
    X,
    /// Out from the wall; the outline lies in (x, z).
    Y,
    /// Up; the outline lies in (x, y).
    Z,
}

impl Axis {
    /// A point of the outline at a depth.
    #[must_use]
    pub fn place(self, point: Point, depth: Length) -> Vector {
        match self {
            Self::X => Vector::new(depth, point.x, point.y),
            Self::Y => Vector::new(point.x, depth, point.y),
            Self::Z => Vector::new(point.x, point.y, depth),
        }
    }

    fn direction(self) -> Vector {
        match self {
            Self::X => Vector::inches(1.0, 0.0, 0.0),
            Self::Y => Vector::inches(0.0, 1.0, 0.0),
            Self::Z => Vector::inches(0.0, 0.0, 1.0),
        }
    }
}

/// A simple outline drawn out from one depth to another, as convex bodies. Empty where it has no thickness.
#[must_use]
pub fn prism(outline: &Polygon, axis: Axis, from: Length, to: Length) -> Vec<Convex> {
    let (low, high) = (from.min(to), from.max(to));
    if (high - low).to_inches() <= NEAR {
        return Vec::new();
    }
    convex_pieces(outline)
        .into_iter()
        .map(|piece| {
            let ring = |depth: Length| piece.iter().map(|point| axis.place(*point, depth)).collect::<Vec<_>>();
            drawn_out(ring(low), ring(high), axis.direction())
        })
        .collect()
}

/// A box between two opposite corners; nothing where it is flat.
#[must_use]
pub fn cuboid(a: Vector, b: Vector) -> Vec<Convex> {
    let (low, high) = (a.min(b), a.max(b));
    if (high - low).x <= NEAR || (high - low).y <= NEAR || (high - low).z <= NEAR {
        return Vec::new();
    }
    let ring = |z: f64| {
        vec![
            Vector::inches(low.x, low.y, z),
            Vector::inches(high.x, low.y, z),
            Vector::inches(high.x, high.y, z),
            Vector::inches(low.x, high.y, z),
        ]
    };
    vec![drawn_out(ring(low.z), ring(high.z), Axis::Z.direction())]
}

/// A round hole or peg from one place to another: a prism of sixteen sides with the circle's own area.
#[must_use]
pub fn cylinder(from: Vector, to: Vector, diameter: Length) -> Vec<Convex> {
    const SIDES: usize = 16;
    let Some(axis) = (to - from).unit() else { return Vec::new() };
    let aside = if axis.x.abs() < 0.9 { Axis::X.direction() } else { Axis::Y.direction() };
    let Some(u) = axis.cross(aside).unit() else { return Vec::new() };
    let v = axis.cross(u);
    // Area of the polygon on a radius r: n/2·r²·sin(2π/n).
    let slice = std::f64::consts::TAU / SIDES as f64;
    let radius = diameter.to_inches() / 2.0 * (slice / slice.sin()).sqrt();
    let ring = |centre: Vector| {
        let at = |index: usize| {
            let angle = slice * index as f64;
            centre + (u * angle.cos() + v * angle.sin()) * radius
        };
        (0..SIDES).map(at).collect::<Vec<_>>()
    };
    let mut body = drawn_out(ring(from), ring(to), axis);
    for facet in body.facets_mut().iter_mut().skip(2) {
        facet.skin = Skin::Round;
    }
    vec![body]
}

/// The wedge of six corners, in pairs along three edges that run the same way: the second and the third edge lie beside
/// the first, and the ends may lean. Nothing where it is flat.
#[must_use]
pub fn wedge(edges: [(Vector, Vector); 3]) -> Option<Convex> {
    let [a, b, c] = edges;
    closed(vec![
        vec![a.0, b.0, c.0],
        vec![a.1, c.1, b.1],
        vec![a.0, a.1, b.1, b.0],
        vec![b.0, b.1, c.1, c.0],
        vec![c.0, c.1, a.1, a.0],
    ])
}

/// A body between two rings of four corners each, whose sides must be flat. Nothing where it is flat itself.
#[must_use]
pub fn tapered(low: [Vector; 4], high: [Vector; 4]) -> Option<Convex> {
    let side = |index: usize| {
        let next = (index + 1) % 4;
        vec![low[index], low[next], high[next], high[index]]
    };
    let mut rings = vec![low.to_vec(), high.to_vec()];
    rings.extend((0..4).map(side));
    closed(rings)
}

/// The convex body that those rings close, whichever way each runs.
fn closed(rings: Vec<Vec<Vector>>) -> Option<Convex> {
    let count = rings.iter().map(Vec::len).sum::<usize>() as f64;
    let centre = rings.iter().flatten().fold(Vector::ZERO, |sum, corner| sum + *corner) * (1.0 / count);
    let mut facets = Vec::new();
    for mut ring in rings {
        let normal = newell(&ring).unit()?;
        let is_inward = normal.dot(centre - ring[0]) > 0.0;
        if is_inward {
            ring.reverse();
        }
        let normal = if is_inward { -normal } else { normal };
        facets.push(Facet { plane: Plane::through(ring[0], normal), corners: ring, skin: Skin::Cut });
    }
    Some(Convex::new(facets))
}

/// A body between two rings of the same corners, the second lying along `axis` from the first.
fn drawn_out(mut low: Vec<Vector>, mut high: Vec<Vector>, axis: Vector) -> Convex {
    // Seen against the axis the upper ring must run counter-clockwise.
    if newell(&high).dot(axis) < 0.0 {
        low.reverse();
        high.reverse();
    }
    let flat = |corners: Vec<Vector>, normal: Vector| Facet {
        plane: Plane::through(corners[0], normal),
        corners,
        skin: Skin::Cut,
    };
    let count = low.len();
    let mut facets = vec![flat(high.clone(), axis), flat(low.iter().rev().copied().collect(), -axis)];
    for index in 0..count {
        let next = (index + 1) % count;
        let corners = vec![low[index], low[next], high[next], high[index]];
        if let Some(normal) = newell(&corners).unit() {
            facets.push(flat(corners, normal));
        }
    }
    Convex::new(facets)
}

/// Twice the area of a flat ring, as a vector square to it (Newell's method).
fn newell(ring: &[Vector]) -> Vector {
    let next = |index: usize| ring[(index + 1) % ring.len()];
    ring.iter()
        .enumerate()
        .fold(Vector::ZERO, |sum, (index, corner)| sum + (*corner - ring[0]).cross(next(index) - ring[0]))
}

/// Wood: convex bodies that share none.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Solid {
    bodies: Vec<Convex>,
}

impl Solid {
    /// A solid of bodies that share no wood.
    #[must_use]
    pub const fn new(bodies: Vec<Convex>) -> Self {
        Self { bodies }
    }

    /// Its bodies.
    #[must_use]
    pub fn bodies(&self) -> &[Convex] {
        &self.bodies
    }

    /// What is left when a body is cut away.
    pub fn cut(&mut self, tool: &Convex) {
        if !self.bodies.iter().any(|body| body.within().meets(&tool.within())) {
            return;
        }
        let bodies = std::mem::take(&mut self.bodies);
        for body in bodies {
            if body.within().meets(&tool.within()) {
                self.bodies.extend(body.without(tool));
            } else {
                self.bodies.push(body);
            }
        }
    }

    /// Volume.
    #[must_use]
    pub fn volume(&self) -> Volume {
        Volume::cubic_inches(self.bodies.iter().map(Convex::volume).sum())
    }

    /// Where it balances; nothing where there is no wood.
    #[must_use]
    pub fn centre(&self) -> Option<Vector> {
        let (mut volume, mut moment) = (0.0, Vector::ZERO);
        for body in &self.bodies {
            let (v, m) = body.moments();
            volume += v;
            moment = moment + m;
        }
        (volume > 1e-9).then(|| moment * (1.0 / volume))
    }

    /// Whether there is wood at a place, its surface included.
    #[must_use]
    pub fn holds(&self, place: Vector) -> bool {
        let is_in = |body: &Convex| body.facets().iter().all(|facet| facet.plane.outside(place) <= NEAR);
        self.bodies.iter().any(is_in)
    }

    /// The upright box around it.
    #[must_use]
    pub fn within(&self) -> Within {
        self.bodies.iter().map(Convex::within).fold(Within::NOTHING, Within::with)
    }

    /// Moved.
    #[must_use]
    pub fn moved(&self, by: Vector) -> Self {
        Self::new(self.bodies.iter().map(|body| body.moved(by)).collect())
    }

    /// Wood that both claim.
    #[must_use]
    pub fn shared(&self, other: &Self) -> Self {
        if !self.within().meets(&other.within()) {
            return Self::default();
        }
        let pairs = self.bodies.iter().flat_map(|one| other.bodies.iter().filter_map(move |two| one.shared(two)));
        Self::new(pairs.collect())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn block(a: (f64, f64, f64), b: (f64, f64, f64)) -> Convex {
        cuboid(Vector::inches(a.0, a.1, a.2), Vector::inches(b.0, b.1, b.2)).remove(0)
    }

    fn check(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9 * expected.abs().max(1.0), "{found} is not {expected}");
    }

    /// By hand: 8 × 8 × 100 less a blind mortise 2 × 6 × 4 = 6400 − 48; its balance moves from 50 to
    /// (6400·50 − 48·10)/6352 = 50.3023.
    #[test]
    fn a_post_with_a_mortise() {
        let mut post = Solid::new(vec![block((0.0, 0.0, 0.0), (8.0, 8.0, 100.0))]);
        post.cut(&block((2.0, 1.0, 8.0), (4.0, 7.0, 12.0)));
        post.cut(&block((20.0, 1.0, 8.0), (24.0, 7.0, 12.0)));
        check(post.volume().to_cubic_inches(), 6352.0);
        check(post.centre().map_or(0.0, |centre| centre.z), (6400.0 * 50.0 - 480.0) / 6352.0);
        assert!(post.shared(&Solid::new(vec![block((2.0, 1.0, 8.0), (4.0, 7.0, 12.0))])).bodies().is_empty());
    }

    /// A hole has the circle's own area: π/4 · 1² · 8.
    #[test]
    fn a_round_hole_takes_what_the_auger_takes() {
        let mut post = Solid::new(vec![block((0.0, 0.0, 0.0), (8.0, 8.0, 10.0))]);
        for hole in cylinder(Vector::inches(4.0, -1.0, 5.0), Vector::inches(4.0, 9.0, 5.0), Length::inches(1.0)) {
            post.cut(&hole);
        }
        check(post.volume().to_cubic_inches(), 640.0 - std::f64::consts::FRAC_PI_4 * 8.0);
    }

    /// Bodies that touch share nothing; bodies that run a hair into each other share the hair.
    #[test]
    fn a_touch_is_no_overlap() {
        let lower = Solid::new(vec![block((0.0, 0.0, 0.0), (8.0, 8.0, 10.0))]);
        let upper = |z: f64| Solid::new(vec![block((0.0, 0.0, z), (8.0, 8.0, 20.0))]);
        assert!(lower.shared(&upper(10.0)).bodies().is_empty());
        check(lower.shared(&upper(9.99)).volume().to_cubic_inches(), 0.64);
    }

    #[test]
    fn a_mirror_image_has_the_same_wood() {
        let outline = Polygon::new([(0.0, 0.0), (9.0, 0.0), (4.0, 5.0)].map(|(x, y)| Point::inches(x, y)).to_vec());
        let wedge = prism(&outline, Axis::Y, Length::ZERO, Length::inches(2.0)).remove(0);
        let mirrored = wedge.mirrored(&Plane { normal: Axis::X.direction(), offset: 3.0 });
        check(wedge.volume(), 45.0);
        check(mirrored.volume(), 45.0);
        check(mirrored.moments().1.x / 45.0, 6.0 - wedge.moments().1.x / 45.0);
    }
}
