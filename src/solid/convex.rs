//! A convex body bounded by flat facets, and cutting it by a plane.
use super::NEAR;
use super::vector::{Vector, Within};

/// A plane: the places p with normal·p = offset. The normal points out of the body it bounds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Plane {
    /// Outward, of length one.
    pub normal: Vector,
    /// Distance from the origin along the normal, in inches.
    pub offset: f64,
}

impl Plane {
    /// The plane through a place, facing along a direction of length one.
    #[must_use]
    pub fn through(place: Vector, normal: Vector) -> Self {
        Self { normal, offset: normal.dot(place) }
    }

    /// How far outside a place lies; negative within.
    #[must_use]
    pub fn outside(&self, place: Vector) -> f64 {
        self.normal.dot(place) - self.offset
    }

    /// The same plane seen from the other side.
    #[must_use]
    pub fn flipped(&self) -> Self {
        Self { normal: -self.normal, offset: -self.offset }
    }
}

/// What a facet of a stick is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Skin {
    /// The sawn face.
    Sawn,
    /// The end of the stick or another face across the grain.
    End,
    /// Cut by a joint.
    Cut,
    /// Part of a round hole.
    Round,
}

/// One flat facet, its corners counter-clockwise as seen from outside.
#[derive(Clone, Debug, PartialEq)]
pub struct Facet {
    /// Its plane.
    pub plane: Plane,
    /// Its corners.
    pub corners: Vec<Vector>,
    /// What it is.
    pub skin: Skin,
}

/// A convex body.
#[derive(Clone, Debug, PartialEq)]
pub struct Convex {
    facets: Vec<Facet>,
    within: Within,
}

impl Convex {
    /// A body of those facets, which must close it: a corner is the same to the bit in each of its facets.
    #[must_use]
    pub fn new(facets: Vec<Facet>) -> Self {
        let corners = facets.iter().flat_map(|facet| facet.corners.iter().copied());
        let within = corners.fold(Within::NOTHING, Within::and);
        Self { facets, within }
    }

    /// Its facets.
    #[must_use]
    pub fn facets(&self) -> &[Facet] {
        &self.facets
    }

    pub(super) fn facets_mut(&mut self) -> &mut [Facet] {
        &mut self.facets
    }

    /// The upright box around it.
    #[must_use]
    pub const fn within(&self) -> Within {
        self.within
    }

    /// Every corner, once for each facet it belongs to.
    pub fn corners(&self) -> impl Iterator<Item = Vector> + '_ {
        self.facets.iter().flat_map(|facet| facet.corners.iter().copied())
    }

    /// Moved.
    #[must_use]
    pub fn moved(&self, by: Vector) -> Self {
        let facets = self.facets.iter().map(|facet| Facet {
            plane: Plane { normal: facet.plane.normal, offset: facet.plane.offset + facet.plane.normal.dot(by) },
            corners: facet.corners.iter().map(|corner| *corner + by).collect(),
            skin: facet.skin,
        });
        Self { facets: facets.collect(), within: Within { low: self.within.low + by, high: self.within.high + by } }
    }

    /// Volume in cubic inches and first moments in inches to the fourth: the facets as pyramids over one corner.
    #[must_use]
    pub fn moments(&self) -> (f64, Vector) {
        let Some(apex) = self.corners().next() else { return (0.0, Vector::ZERO) };
        let (mut volume, mut moment) = (0.0, Vector::ZERO);
        for facet in &self.facets {
            for pair in facet.corners[1..].windows(2) {
                let (a, b, c) = (facet.corners[0] - apex, pair[0] - apex, pair[1] - apex);
                let tetrahedron = a.dot(b.cross(c)) / 6.0;
                volume += tetrahedron;
                moment = moment + (a + b + c + apex * 4.0) * (tetrahedron / 4.0);
            }
        }
        (volume, moment)
    }

    /// Volume in cubic inches.
    #[must_use]
    pub fn volume(&self) -> f64 {
        self.moments().0
    }

    /// How far it reaches on each side of a plane: the lowest and the highest of its corners.
    #[must_use]
    pub fn reach(&self, plane: &Plane) -> (f64, f64) {
        self.corners()
            .map(|corner| plane.outside(corner))
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)))
    }

    /// Cut by a plane: what is within it, and what is outside. The new facets have that skin.
    #[must_use]
    pub fn cut(&self, plane: &Plane, skin: Skin) -> (Option<Self>, Option<Self>) {
        self.clone().parted(plane, skin)
    }

    /// As `cut`; facets that lie on one side are handed on as they are.
    fn parted(self, plane: &Plane, skin: Skin) -> (Option<Self>, Option<Self>) {
        let at: Vec<f64> = self.corners().map(|corner| plane.outside(corner)).collect();
        if at.iter().all(|at| *at <= NEAR) {
            return (Some(self), None);
        }
        if at.iter().all(|at| *at >= -NEAR) {
            return (None, Some(self));
        }
        let n_facets = self.facets.len() + 1;
        let (mut inside, mut outside) = (Vec::with_capacity(n_facets), Vec::with_capacity(n_facets));
        let mut rim = Rim::default();
        let mut rest = at.as_slice();
        for facet in self.facets {
            let (here, after) = rest.split_at(facet.corners.len());
            rest = after;
            let (within, beyond) = cut_facet(facet, here, plane, &mut rim);
            inside.extend(within);
            outside.extend(beyond);
        }
        for (facets, edges, plane) in [(&mut inside, rim.inside, *plane), (&mut outside, rim.outside, plane.flipped())]
        {
            facets.extend(rings(edges).into_iter().map(|corners| Facet { plane, corners, skin }));
        }
        (Some(Self::new(inside)), Some(Self::new(outside)))
    }

    /// A facet of one has all of the other outside it, or their boxes do not meet.
    fn is_apart(&self, other: &Self) -> bool {
        let parts = |facet: &Facet, body: &Self| body.corners().all(|corner| facet.plane.outside(corner) >= -NEAR);
        !self.within.meets(&other.within)
            || other.facets.iter().any(|facet| parts(facet, self))
            || self.facets.iter().any(|facet| parts(facet, other))
    }

    /// What it shares with another body; nothing where they only touch.
    #[must_use]
    pub fn shared(&self, other: &Self) -> Option<Self> {
        if self.is_apart(other) {
            return None;
        }
        let mut left = self.clone();
        for facet in &other.facets {
            left = left.parted(&facet.plane, facet.skin).0?;
        }
        Some(left)
    }

    /// What is left of it when another body is cut away, in convex pieces that share no wood.
    #[must_use]
    pub fn without(self, other: &Self) -> Vec<Self> {
        if self.is_apart(other) {
            return vec![self];
        }
        let mut pieces = Vec::new();
        let mut left = self.clone();
        for facet in &other.facets {
            // The new face looks into the hole.
            let (inside, outside) = left.parted(&facet.plane, facet.skin);
            pieces.extend(outside);
            // Edges can pass each other where no facet parts the bodies: it stays whole.
            let Some(inside) = inside else { return vec![self] };
            left = inside;
        }
        pieces
    }

    /// The body's mirror image in a plane.
    #[must_use]
    pub fn mirrored(&self, plane: &Plane) -> Self {
        let turn = |place: Vector| place - plane.normal * (2.0 * plane.outside(place));
        let facets = self.facets.iter().map(|facet| {
            let corners: Vec<Vector> = facet.corners.iter().rev().map(|corner| turn(*corner)).collect();
            let normal = facet.plane.normal - plane.normal * (2.0 * plane.normal.dot(facet.plane.normal));
            Facet { plane: Plane::through(corners[0], normal), corners, skin: facet.skin }
        });
        Self::new(facets.collect())
    }
}

type Edge = (Vector, Vector);

/// Edges in the cutting plane of the facets on each side of it.
#[derive(Default)]
struct Rim {
    inside: Vec<Edge>,
    outside: Vec<Edge>,
}

/// A facet's part within a plane and its part outside, from how far outside each corner is. A facet in the plane bounds
/// the side it looks away from.
fn cut_facet(facet: Facet, at: &[f64], plane: &Plane, rim: &mut Rim) -> (Option<Facet>, Option<Facet>) {
    let is_inside = at.iter().any(|at| *at < -NEAR);
    let is_outside = at.iter().any(|at| *at > NEAR);
    if !(is_inside && is_outside) {
        let stays = is_inside || (!is_outside && facet.plane.normal.dot(plane.normal) > 0.0);
        let edges = if stays { &mut rim.inside } else { &mut rim.outside };
        edges.extend(edges_on(&facet.corners, |index| at[index].abs() <= NEAR));
        return if stays { (Some(facet), None) } else { (None, Some(facet)) };
    }
    let count = facet.corners.len();
    let (mut inside, mut outside) = (Ring::of(count), Ring::of(count));
    for (index, corner) in facet.corners.iter().enumerate() {
        let next = (index + 1) % count;
        let (here, there) = (at[index], at[next]);
        if here <= NEAR {
            inside.push(*corner, here >= -NEAR);
        }
        if here >= -NEAR {
            outside.push(*corner, here <= NEAR);
        }
        if (here < -NEAR && there > NEAR) || (here > NEAR && there < -NEAR) {
            let crossing = crossing((*corner, here), (facet.corners[next], there));
            inside.push(crossing, true);
            outside.push(crossing, true);
        }
    }
    rim.inside.extend(edges_on(&inside.corners, |index| inside.is_on[index]));
    rim.outside.extend(edges_on(&outside.corners, |index| outside.is_on[index]));
    let part = |ring: Ring| Facet { plane: facet.plane, corners: ring.corners, skin: facet.skin };
    (Some(part(inside)), Some(part(outside)))
}

/// Corners, and which of them lie in the cutting plane.
struct Ring {
    corners: Vec<Vector>,
    is_on: Vec<bool>,
}

impl Ring {
    fn of(count: usize) -> Self {
        Self { corners: Vec::with_capacity(count + 1), is_on: Vec::with_capacity(count + 1) }
    }

    fn push(&mut self, corner: Vector, is_on: bool) {
        self.corners.push(corner);
        self.is_on.push(is_on);
    }
}

/// Edges of a ring with both ends in the cutting plane.
fn edges_on(corners: &[Vector], is_on: impl Fn(usize) -> bool) -> impl Iterator<Item = Edge> {
    let count = corners.len();
    let pairs = (0..count).map(move |index| (index, (index + 1) % count));
    pairs
        .filter(move |(index, next)| is_on(*index) && is_on(*next))
        .map(|(index, next)| (corners[index], corners[next]))
}

/// The rings that close a body whose facets have these edges in the cutting plane: what no neighbour runs along the
/// other way, backwards. Corners of neighbours are the same to the bit, so the body is closed however thin it is.
fn rings(edges: Vec<Edge>) -> Vec<Vec<Vector>> {
    let mut open: Vec<Edge> = Vec::with_capacity(edges.len());
    for (from, to) in edges {
        match open.iter().position(|edge| *edge == (from, to)) {
            Some(twin) => {
                open.swap_remove(twin);
            }
            None => open.push((to, from)),
        }
    }
    let mut found = Vec::new();
    while let Some((first, mut end)) = open.pop() {
        let mut ring = vec![first];
        while let Some(next) = open.iter().position(|(from, _)| *from == end).filter(|_| end != first) {
            ring.push(end);
            end = open.swap_remove(next).1;
        }
        if ring.len() >= 3 {
            found.push(ring);
        }
    }
    found
}

/// Where an edge crosses the plane. Always reckoned from the end within, so that two facets of one edge agree to the bit.
fn crossing(a: (Vector, f64), b: (Vector, f64)) -> Vector {
    let ((from, low), (to, high)) = if a.1 < b.1 { (a, b) } else { (b, a) };
    from + (to - from) * (low / (low - high))
}
