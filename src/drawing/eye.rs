//! From where a solid is looked at.
use crate::geometry::Point;
use crate::solid::Vector;
use crate::units::Angle;

/// A way of looking, without a vanishing point: what runs the same way in the frame runs the same way in the picture.
///
/// With neither turn nor tip it looks at the wall from outside, as every drawing does.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Eye {
    /// How far the eye has walked round the frame, toward its right end.
    pub turn: Angle,
    /// How far it stands above the level; below it is negative.
    pub tip: Angle,
}

impl Eye {
    /// From outside, facing the wall.
    pub const FRONT: Self = Self { turn: Angle::ZERO, tip: Angle::ZERO };
    /// From the right end, along the wall.
    pub const SIDE: Self = Self { turn: Angle::RIGHT, tip: Angle::ZERO };
    /// From above, the wall at the top.
    pub const TOP: Self = Self { turn: Angle::ZERO, tip: Angle::RIGHT };
    /// From outside, above the right corner.
    pub const CORNER: Self = Self { turn: Angle::degrees(35.0), tip: Angle::degrees(22.0) };

    /// Walked on round the frame and up; never over the top, so that up stays up.
    #[must_use]
    pub fn turned(self, turn: Angle, tip: Angle) -> Self {
        let whole = std::f64::consts::TAU;
        let round = (self.turn + turn).to_radians();
        let tip = (self.tip + tip).min(Angle::RIGHT).max(-Angle::RIGHT);
        Self { turn: Angle::radians(round - (round / whole).round() * whole), tip }
    }

    /// The direction that runs to the right in the picture, of length one.
    #[must_use]
    pub fn right(self) -> Vector {
        Vector::inches(self.turn.cos(), -self.turn.sin(), 0.0)
    }

    /// The direction that runs up in the picture, of length one.
    #[must_use]
    pub fn up(self) -> Vector {
        let (sin, cos) = (self.tip.sin(), self.tip.cos());
        Vector::inches(-sin * self.turn.sin(), -sin * self.turn.cos(), cos)
    }

    /// From the frame toward the eye, of length one.
    #[must_use]
    pub fn toward(self) -> Vector {
        let (sin, cos) = (self.tip.sin(), self.tip.cos());
        Vector::inches(cos * self.turn.sin(), cos * self.turn.cos(), sin)
    }

    /// Where a place shows, in inches: x to the right and y up.
    #[must_use]
    pub fn place(self, place: Vector) -> Point {
        Point::inches(self.right().dot(place), self.up().dot(place))
    }

    /// From where it looks, in words.
    #[must_use]
    pub fn says(self) -> String {
        let (turn, tip) = (self.turn.to_degrees(), self.tip.to_degrees());
        if tip > 89.0 {
            return "from above".to_owned();
        }
        if tip < -89.0 {
            return "from below".to_owned();
        }
        let side = if turn >= 0.0 { "right" } else { "left" };
        let round = match turn.abs() {
            away if away < 1.0 => "from outside".to_owned(),
            away if (away - 90.0).abs() < 1.0 => format!("from the {side} end"),
            away if away > 179.0 => "from the wall".to_owned(),
            away => format!("{away:.0}° to the {side} of straight from outside"),
        };
        match tip.round() {
            0.0 => round,
            up if up > 0.0 => format!("{round}, {up:.0}° above the level"),
            down => format!("{round}, {:.0}° below the level", -down),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(eye: Eye, place: (f64, f64, f64), expected: (f64, f64)) {
        let found = eye.place(Vector::inches(place.0, place.1, place.2));
        let off = (found.x.to_inches() - expected.0).hypot(found.y.to_inches() - expected.1);
        assert!(off < 1e-12, "{eye:?}: {found:?} is not {expected:?}");
    }

    /// The flat drawings: elevation x and z; from the right end the wall lies at the right; in plan it lies at the top.
    #[test]
    fn straight_looks_are_the_flat_drawings() {
        check(Eye::FRONT, (3.0, 5.0, 7.0), (3.0, 7.0));
        check(Eye::SIDE, (3.0, 5.0, 7.0), (-5.0, 7.0));
        check(Eye::TOP, (3.0, 5.0, 7.0), (3.0, -5.0));
        // From the left end the wall lies at the left.
        check(Eye::FRONT.turned(-Angle::RIGHT, Angle::ZERO), (3.0, 5.0, 7.0), (5.0, 7.0));
    }

    #[test]
    fn the_three_directions_stay_square_and_up_stays_up() {
        for (turn, tip) in [(20.0, 10.0), (-130.0, 70.0), (400.0, -95.0), (180.0, 300.0)] {
            let eye = Eye::FRONT.turned(Angle::degrees(turn), Angle::degrees(tip));
            let (right, up, toward) = (eye.right(), eye.up(), eye.toward());
            for (one, two) in [(right, up), (up, toward), (toward, right)] {
                assert!(one.dot(two).abs() < 1e-12 && (one.norm() - 1.0).abs() < 1e-12);
            }
            assert!(up.z >= -1e-12 && eye.turn.to_degrees().abs() <= 180.0 + 1e-9);
        }
    }

    #[test]
    fn it_says_from_where() {
        assert_eq!(Eye::FRONT.says(), "from outside");
        assert_eq!(Eye::SIDE.says(), "from the right end");
        assert_eq!(Eye::TOP.says(), "from above");
        assert_eq!(Eye::CORNER.says(), "35° to the right of straight from outside, 22° above the level");
    }
}
