//! An angle, held in radians.

use super::quantity::{quantity, unit};

quantity! {
    /// An angle, held in radians.
    Angle
}
unit!(Angle, "radians", radians, try_radians, to_radians, (*1.0), (/ 1.0));
unit!(
    Angle,
    "degrees",
    degrees,
    try_degrees,
    to_degrees,
    (*std::f64::consts::PI / 180.0),
    (*180.0 / std::f64::consts::PI)
);

impl Angle {
    /// A quarter turn.
    pub const RIGHT: Self = Self::radians(std::f64::consts::FRAC_PI_2);

    /// Sine.
    #[must_use]
    pub fn sin(self) -> f64 {
        self.to_radians().sin()
    }

    /// Cosine.
    #[must_use]
    pub fn cos(self) -> f64 {
        self.to_radians().cos()
    }

    /// Tangent.
    #[must_use]
    pub fn tan(self) -> f64 {
        self.to_radians().tan()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn degrees_and_radians() {
        assert!((Angle::degrees(30.0).sin() - 0.5).abs() < 1e-15);
        assert!((Angle::degrees(60.0).cos() - 0.5).abs() < 1e-15);
        assert!((Angle::RIGHT.to_degrees() - 90.0).abs() < 1e-12);
    }
}
