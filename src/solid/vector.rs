//! Places and directions in space, and upright boxes around them.
use std::ops::{Add, Mul, Neg, Sub};

use crate::units::Length;

/// A place or a direction, in inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Vector {
    /// Along the wall.
    pub x: f64,
    /// Out from the wall.
    pub y: f64,
    /// Up.
    pub z: f64,
}

impl Vector {
    /// Nowhere, or no direction.
    pub const ZERO: Self = Self { x: 0.0, y: 0.0, z: 0.0 };

    /// A place in inches.
    #[must_use]
    pub const fn inches(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// A place.
    #[must_use]
    pub fn new(x: Length, y: Length, z: Length) -> Self {
        Self::inches(x.to_inches(), y.to_inches(), z.to_inches())
    }

    /// Scalar product.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y + self.z * other.z
    }

    /// Vector product, right-handed.
    #[must_use]
    pub fn cross(self, other: Self) -> Self {
        Self {
            x: self.y * other.z - self.z * other.y,
            y: self.z * other.x - self.x * other.z,
            z: self.x * other.y - self.y * other.x,
        }
    }

    /// Length.
    #[must_use]
    pub fn norm(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// The same direction with length one; nothing where it has none.
    #[must_use]
    pub fn unit(self) -> Option<Self> {
        let norm = self.norm();
        (norm > 1e-12).then(|| self * (1.0 / norm))
    }

    /// The smaller of each coordinate.
    #[must_use]
    pub fn min(self, other: Self) -> Self {
        Self { x: self.x.min(other.x), y: self.y.min(other.y), z: self.z.min(other.z) }
    }

    /// The greater of each coordinate.
    #[must_use]
    pub fn max(self, other: Self) -> Self {
        Self { x: self.x.max(other.x), y: self.y.max(other.y), z: self.z.max(other.z) }
    }
}

impl Add for Vector {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { x: self.x + other.x, y: self.y + other.y, z: self.z + other.z }
    }
}

impl Sub for Vector {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self { x: self.x - other.x, y: self.y - other.y, z: self.z - other.z }
    }
}

impl Neg for Vector {
    type Output = Self;
    fn neg(self) -> Self {
        Self { x: -self.x, y: -self.y, z: -self.z }
    }
}

impl Mul<f64> for Vector {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self { x: self.x * factor, y: self.y * factor, z: self.z * factor }
    }
}

/// The upright box around something.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Within {
    /// Lowest corner.
    pub low: Vector,
    /// Highest corner.
    pub high: Vector,
}

impl Within {
    /// Around nothing: any place widens it.
    pub const NOTHING: Self = Self {
        low: Vector { x: f64::INFINITY, y: f64::INFINITY, z: f64::INFINITY },
        high: Vector { x: f64::NEG_INFINITY, y: f64::NEG_INFINITY, z: f64::NEG_INFINITY },
    };

    /// Around this and a place.
    #[must_use]
    pub fn and(self, place: Vector) -> Self {
        Self { low: self.low.min(place), high: self.high.max(place) }
    }

    /// Around both.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self { low: self.low.min(other.low), high: self.high.max(other.high) }
    }

    /// They share room or touch, within the width of two planes that count as one.
    #[must_use]
    pub fn touches(&self, other: &Self) -> bool {
        let near = Vector::inches(super::SAME_PLANE, super::SAME_PLANE, super::SAME_PLANE);
        let room = other.high + near - self.low;
        let other_room = self.high + near - other.low;
        [room.x, room.y, room.z, other_room.x, other_room.y, other_room.z].iter().all(|room| *room >= 0.0)
    }

    /// The gap between two boxes, in inches: never more than the gap between what is in them.
    #[must_use]
    pub fn gap(&self, other: &Self) -> f64 {
        (self.low - other.high).max(other.low - self.high).max(Vector::ZERO).norm()
    }

    /// They share room, more than a touch.
    #[must_use]
    pub fn meets(&self, other: &Self) -> bool {
        let near = super::NEAR;
        let apart = |low: f64, high: f64| low >= high - near;
        !(apart(self.low.x, other.high.x)
            || apart(other.low.x, self.high.x)
            || apart(self.low.y, other.high.y)
            || apart(other.low.y, self.high.y)
            || apart(self.low.z, other.high.z)
            || apart(other.low.z, self.high.z))
    }
}
