//! How a picture in the round lies in its frame on the screen.
use super::eye::Eye;
use super::round::{Shown, reach};
use crate::geometry::Point;
use crate::units::Length;

/// Edge of the frame to the whole of what is shown, px.
const EDGE: f64 = 12.0;
/// Fewer pixels an inch than this, and grain would only be dirt.
const GRAIN: f64 = 3.0;
/// How close and how far one may come: times the size at which the whole fits.
const ZOOMS: (f64, f64) = (0.5, 24.0);

/// A look at something: from where, how close, and pushed how far aside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// From where.
    pub eye: Eye,
    /// Times the size at which the whole fits.
    pub zoom: f64,
    /// Pushed on the screen, in pixels right and down.
    pub push: (f64, f64),
}

impl Look {
    /// The whole, from there.
    #[must_use]
    pub const fn whole(eye: Eye) -> Self {
        Self { eye, zoom: 1.0, push: (0.0, 0.0) }
    }

    /// Closer by a factor; what lies under a place of the screen, in pixels right and down from the middle, stays there.
    #[must_use]
    pub fn closer(self, factor: f64, about: (f64, f64)) -> Self {
        let zoom = (self.zoom * factor).clamp(ZOOMS.0, ZOOMS.1);
        let factor = zoom / self.zoom;
        let push = |about: f64, push: f64| about - (about - push) * factor;
        Self { zoom, push: (push(about.0, self.push.0), push(about.1, self.push.1)), ..self }
    }

    /// Pushed on by pixels right and down.
    #[must_use]
    pub fn pushed(self, right: f64, down: f64) -> Self {
        Self { push: (self.push.0 + right, self.push.1 + down), ..self }
    }
}

/// Where a picture lies on a screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Framing {
    /// Width and height, px.
    pub size: (f64, f64),
    /// Pixels an inch.
    pub scale: f64,
    /// The place of the picture in the middle of the frame.
    pub middle: Point,
}

impl Framing {
    /// A look at what is shown, in a frame of that size.
    #[must_use]
    pub fn new(shown: &[Shown], look: &Look, size: (f64, f64)) -> Self {
        let (low, high) = reach(shown, look.eye);
        let fit = |room: f64, reach: Length| (room - EDGE * 2.0).max(1.0) / reach.to_inches().max(1.0);
        let scale = fit(size.0, high.x - low.x).min(fit(size.1, high.y - low.y)) * look.zoom;
        let middle = Point::new((low.x + high.x) / 2.0, (low.y + high.y) / 2.0);
        let (right, down) = (look.push.0 / scale, look.push.1 / scale);
        Self { size, scale, middle: middle.moved(Length::inches(-right), Length::inches(down)) }
    }

    /// Wood is large enough in it for its grain to be drawn.
    #[must_use]
    pub fn shows_grain(&self) -> bool {
        self.scale >= GRAIN
    }

    /// The place of the picture at a pixel, right and down from the upper left corner.
    #[must_use]
    pub fn place(&self, pixel: (f64, f64)) -> Point {
        let right = (pixel.0 - self.size.0 / 2.0) / self.scale;
        let up = (self.size.1 / 2.0 - pixel.1) / self.scale;
        self.middle.moved(Length::inches(right), Length::inches(up))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solid::{Solid, Vector, cuboid};

    fn block() -> Vec<Shown> {
        vec![Shown::thing(&Solid::new(cuboid(Vector::ZERO, Vector::inches(100.0, 20.0, 50.0))))]
    }

    /// By hand: 100 by 50 in within 424 by 424 px less 12 px at each edge is 4 px an inch.
    #[test]
    fn the_whole_fits() {
        let framing = Framing::new(&block(), &Look::whole(Eye::FRONT), (424.0, 424.0));
        assert!((framing.scale - 4.0).abs() < 1e-12);
        let corner = framing.place((12.0, 112.0));
        assert!(corner.distance(Point::inches(0.0, 50.0)).to_inches() < 1e-9, "{corner:?}");
    }

    /// At 4 px an inch grain is drawn, at half of that no more.
    #[test]
    fn small_wood_has_no_grain() {
        let framing = |zoom: f64| Framing::new(&block(), &Look { zoom, ..Look::whole(Eye::FRONT) }, (424.0, 424.0));
        assert!(framing(1.0).shows_grain() && !framing(0.5).shows_grain());
    }

    #[test]
    fn what_lies_under_the_finger_stays_there() {
        let look = Look::whole(Eye::CORNER).pushed(30.0, -8.0);
        let size = (360.0, 300.0);
        let finger = (250.0, 90.0);
        let about = (finger.0 - size.0 / 2.0, finger.1 - size.1 / 2.0);
        let before = Framing::new(&block(), &look, size).place(finger);
        for factor in [1.3, 4.0, 0.7, 1000.0, 0.0001] {
            let after = Framing::new(&block(), &look.closer(factor, about), size).place(finger);
            assert!(after.distance(before).to_inches() < 1e-9, "{factor}: {after:?} is not {before:?}");
        }
    }
}
