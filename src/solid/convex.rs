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
    /// A body of those facets, which must close it.
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

    /// Every facet of this skin.
    #[must_use]
    pub fn skinned(mut self, skin: Skin) -> Self {
        for facet in &mut self.facets {
            facet.skin = skin;
        }
        self
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
        let (low, high) = self.reach(plane);
        if high <= NEAR {
            return (Some(self.clone()), None);
        }
        if low >= -NEAR {
            return (None, Some(self.clone()));
        }
        let (mut inside, mut outside) = (Vec::new(), Vec::new());
        let mut rim: Vec<Vector> = Vec::new();
        for facet in &self.facets {
            let (within, beyond) = cut_facet(facet, plane, &mut rim);
            inside.extend(within);
            outside.extend(beyond);
        }
        let rim = around(&rim, plane.normal);
        if rim.len() >= 3 {
            outside.push(Facet { plane: plane.flipped(), corners: rim.iter().rev().copied().collect(), skin });
            inside.push(Facet { plane: *plane, corners: rim, skin });
        }
        (Some(Self::new(inside)), Some(Self::new(outside)))
    }

    /// What it shares with another body; nothing where they only touch.
    #[must_use]
    pub fn shared(&self, other: &Self) -> Option<Self> {
        if !self.within.meets(&other.within) {
            return None;
        }
        // A facet that all of it lies outside of parts them at once.
        if other.facets.iter().any(|facet| self.reach(&facet.plane).0 >= -NEAR)
            || self.facets.iter().any(|facet| other.reach(&facet.plane).0 >= -NEAR)
        {
            return None;
        }
        let mut left = self.clone();
        for facet in &other.facets {
            if left.reach(&facet.plane).1 > NEAR {
                left = left.cut(&facet.plane, facet.skin).0?;
            }
        }
        Some(left)
    }

    /// What is left of it when another body is cut away, in convex pieces that share no wood.
    #[must_use]
    pub fn without(self, other: &Self) -> Vec<Self> {
        if self.shared(other).is_none() {
            return vec![self];
        }
        let mut pieces = Vec::new();
        let mut left = self;
        for facet in &other.facets {
            if left.reach(&facet.plane).1 <= NEAR {
                continue;
            }
            // The new face looks into the hole.
            let (inside, outside) = left.cut(&facet.plane, facet.skin);
            pieces.extend(outside);
            match inside {
                Some(inside) => left = inside,
                None => break,
            }
        }
        pieces
    }

    /// The body's mirror image in the plane x = at.
    #[must_use]
    pub fn mirrored(&self, at: f64) -> Self {
        let turn = |place: Vector| Vector { x: 2.0 * at - place.x, ..place };
        let facets = self.facets.iter().map(|facet| {
            let corners: Vec<Vector> = facet.corners.iter().rev().map(|corner| turn(*corner)).collect();
            let normal = Vector { x: -facet.plane.normal.x, ..facet.plane.normal };
            Facet { plane: Plane::through(corners[0], normal), corners, skin: facet.skin }
        });
        Self::new(facets.collect())
    }
}

/// A facet's part within the plane and its part outside; places on the plane go to the rim.
fn cut_facet(facet: &Facet, plane: &Plane, rim: &mut Vec<Vector>) -> (Option<Facet>, Option<Facet>) {
    let at: Vec<f64> = facet.corners.iter().map(|corner| plane.outside(*corner)).collect();
    let (mut inside, mut outside) = (Vec::new(), Vec::new());
    for (index, corner) in facet.corners.iter().enumerate() {
        let next = (index + 1) % facet.corners.len();
        let (here, there) = (at[index], at[next]);
        if here <= NEAR {
            inside.push(*corner);
        }
        if here >= -NEAR {
            outside.push(*corner);
        }
        if here.abs() <= NEAR {
            rim.push(*corner);
        }
        if (here < -NEAR && there > NEAR) || (here > NEAR && there < -NEAR) {
            let crossing = crossing((*corner, here), (facet.corners[next], there));
            inside.push(crossing);
            outside.push(crossing);
            rim.push(crossing);
        }
    }
    let part = |corners: Vec<Vector>, is_there: bool| {
        (is_there && corners.len() >= 3).then_some(Facet { plane: facet.plane, corners, skin: facet.skin })
    };
    let is_inside = at.iter().any(|at| *at < -NEAR);
    let is_outside = at.iter().any(|at| *at > NEAR);
    (part(inside, is_inside), part(outside, is_outside))
}

/// Where an edge crosses the plane. Always reckoned from the end within, so that two facets of one edge agree to the bit.
fn crossing(a: (Vector, f64), b: (Vector, f64)) -> Vector {
    let ((from, low), (to, high)) = if a.1 < b.1 { (a, b) } else { (b, a) };
    from + (to - from) * (low / (low - high))
}

/// The rim's places once each, counter-clockwise as seen against the normal.
fn around(rim: &[Vector], normal: Vector) -> Vec<Vector> {
    let mut places: Vec<Vector> = Vec::new();
    for place in rim {
        if places.iter().all(|known| (*known - *place).norm() > NEAR) {
            places.push(*place);
        }
    }
    let Some(first) = places.first().copied() else { return places };
    let centre = places.iter().fold(Vector::ZERO, |sum, place| sum + *place) * (1.0 / places.len() as f64);
    let Some(u) = (first - centre).unit() else { return places };
    let v = normal.cross(u);
    let angle = |place: &Vector| (*place - centre).dot(v).atan2((*place - centre).dot(u));
    places.sort_by(|a, b| angle(a).total_cmp(&angle(b)));
    places
}
