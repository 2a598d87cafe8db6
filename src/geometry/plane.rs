//! Points and polygons in a plane, and the bulk of what is cut from a stick.
use crate::units::{Area, Length, Volume};

/// A point in a plane; what x and y mean is the user's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// First coordinate.
    pub x: Length,
    /// Second coordinate.
    pub y: Length,
}

impl Point {
    /// The point (x, y).
    #[must_use]
    pub const fn new(x: Length, y: Length) -> Self {
        Self { x, y }
    }

    /// The point at (x, y) inches.
    #[must_use]
    pub const fn inches(x: f64, y: f64) -> Self {
        Self { x: Length::inches(x), y: Length::inches(y) }
    }

    /// The point moved by (x, y).
    #[must_use]
    pub fn moved(self, x: Length, y: Length) -> Self {
        Self { x: self.x + x, y: self.y + y }
    }

    /// Distance to another point.
    #[must_use]
    pub fn distance(self, other: Self) -> Length {
        (self.x - other.x).hypot(self.y - other.y)
    }
}

/// A simple closed polygon, its corners in order.
#[derive(Clone, Debug, PartialEq)]
pub struct Polygon {
    /// The corners; the last joins the first.
    pub corners: Vec<Point>,
}

impl Polygon {
    /// A polygon of those corners, repeated ones dropped.
    #[must_use]
    pub fn new(corners: Vec<Point>) -> Self {
        let near = Length::inches(1e-9);
        let mut kept: Vec<Point> = Vec::with_capacity(corners.len());
        for corner in corners {
            if kept.last().is_none_or(|last| last.distance(corner) > near) {
                kept.push(corner);
            }
        }
        while kept.len() > 1 && kept[0].distance(kept[kept.len() - 1]) <= near {
            kept.pop();
        }
        Self { corners: kept }
    }

    /// An upright rectangle between two opposite corners.
    #[must_use]
    pub fn rectangle(a: Point, b: Point) -> Self {
        Self::new(vec![a, Point::new(b.x, a.y), b, Point::new(a.x, b.y)])
    }

    /// Area, always positive (shoelace formula).
    #[must_use]
    pub fn area(&self) -> Area {
        Area::square_inches(self.shoelace().0.abs())
    }

    /// Centre of the area.
    #[must_use]
    pub fn centroid(&self) -> Point {
        let (area, x, y) = self.shoelace();
        if area == 0.0 {
            // Nothing there has no centre; its weight is nothing too, so any place will do.
            return self.corners.first().copied().unwrap_or(Point::inches(0.0, 0.0));
        }
        Point::inches(x / (6.0 * area), y / (6.0 * area))
    }

    /// Signed area and its six-fold first moments, in inches.
    fn shoelace(&self) -> (f64, f64, f64) {
        let mut sums = (0.0, 0.0, 0.0);
        for (index, a) in self.corners.iter().enumerate() {
            let b = self.corners[(index + 1) % self.corners.len()];
            let (ax, ay) = (a.x.to_inches(), a.y.to_inches());
            let (bx, by) = (b.x.to_inches(), b.y.to_inches());
            let cross = ax * by - bx * ay;
            sums = (sums.0 + cross / 2.0, sums.1 + (ax + bx) * cross, sums.2 + (ay + by) * cross);
        }
        sums
    }

    /// Lowest and highest corner of the upright box around it.
    #[must_use]
    pub fn bounds(&self) -> (Point, Point) {
        let mut corners = self.corners.iter();
        let first = corners.next().copied().unwrap_or(Point::inches(0.0, 0.0));
        corners.fold((first, first), |(low, high), corner| {
            (
                Point::new(low.x.min(corner.x), low.y.min(corner.y)),
                Point::new(high.x.max(corner.x), high.y.max(corner.y)),
            )
        })
    }

    /// Every corner put through `place`.
    #[must_use]
    pub fn map(&self, place: impl Fn(Point) -> Point) -> Self {
        Self { corners: self.corners.iter().copied().map(place).collect() }
    }
}

/// A volume of wood and where along the stick it balances.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bulk {
    volume: Volume,
    /// Volume times place, in⁴.
    moment: f64,
}

impl Bulk {
    /// A piece of wood of that volume, balancing at that place.
    #[must_use]
    pub fn new(volume: Volume, at: Length) -> Self {
        Self { volume, moment: volume.to_cubic_inches() * at.to_inches() }
    }

    /// A prism of constant section from one place to another.
    #[must_use]
    pub fn prism(section: Area, from: Length, to: Length) -> Self {
        Self::new(section * (to - from).abs(), (from + to) / 2.0)
    }

    /// A side outline (x along the stick) of constant thickness.
    #[must_use]
    pub fn plate(outline: &Polygon, thickness: Length) -> Self {
        Self::new(outline.area() * thickness, outline.centroid().x)
    }

    /// A hole of that diameter bored square through that much wood.
    #[must_use]
    pub fn hole(diameter: Length, through: Length, at: Length) -> Self {
        Self::new(diameter * diameter * std::f64::consts::FRAC_PI_4 * through, at)
    }

    /// Both together.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self { volume: self.volume + other.volume, moment: self.moment + other.moment }
    }

    /// This with the other cut out of it.
    #[must_use]
    pub fn without(self, other: Self) -> Self {
        Self { volume: self.volume - other.volume, moment: self.moment - other.moment }
    }

    /// How much wood.
    #[must_use]
    pub const fn volume(self) -> Volume {
        self.volume
    }

    /// Where it balances.
    #[must_use]
    pub fn balance(self) -> Length {
        let volume = self.volume.to_cubic_inches();
        if volume > 0.0 { Length::inches(self.moment / volume) } else { Length::ZERO }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_trapezium_has_the_textbook_area_and_centre() {
        // Parallel sides 7.5 and 2.5, 40 apart: A = 200, x = 40/3 · (7.5 + 5)/10 = 16.667.
        let lap = Polygon::new(vec![
            Point::inches(0.0, 0.0),
            Point::inches(40.0, 0.0),
            Point::inches(40.0, 2.5),
            Point::inches(0.0, 7.5),
        ]);
        assert!((lap.area().to_square_inches() - 200.0).abs() < 1e-9);
        assert!((lap.centroid().x.to_inches() - 16.667).abs() < 1e-3);
    }

    #[test]
    fn a_stick_less_its_mortise_balances_farther_from_it() {
        let stick = Bulk::prism(Area::square_inches(64.0), Length::ZERO, Length::inches(100.0));
        let mortise = Bulk::new(Volume::cubic_inches(64.0), Length::inches(10.0));
        let cut = stick.without(mortise);
        assert!((cut.volume().to_cubic_inches() - 6336.0).abs() < 1e-9);
        // (6400·50 − 64·10)/6336 = 50.404
        assert!((cut.balance().to_inches() - 50.404).abs() < 1e-3);
    }
}
