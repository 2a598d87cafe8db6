//! What stands already: the wall, its eave, the ground, and what must pass under the new roof.
use crate::units::{Length, Slope};

/// The underside of the existing eave.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Soffit {
    /// Boxed level.
    Level,
    /// Follows the upper roof, lowest at its outer edge.
    Sloped,
}

/// The place. Heights are above the datum the user picked (slab, threshold, laser line).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Site {
    /// Underside of the existing eave at its outer edge.
    pub eave_edge: Length,
    /// How far the existing eave stands out from the wall face; zero where there is none.
    pub eave_projection: Length,
    /// Shape of the eave's underside.
    pub soffit: Soffit,
    /// Slope of the roof above.
    pub upper_pitch: Slope,
    /// Ground at the foot of the wall.
    pub ground_at_wall: Length,
    /// Ground under the left end of the beam.
    pub ground_left: Length,
    /// Ground under the right end of the beam.
    pub ground_right: Length,
    /// Centre of the first post or stud of the wall that the ledger is fixed to, from the beam's left end.
    pub first_wall_post: Length,
    /// Distance between those posts or studs.
    pub wall_post_spacing: Length,
    /// Height that must pass between the posts.
    pub passage_height: Length,
    /// Width that must pass between two posts at that height; zero where nothing must.
    pub passage_width: Length,
    /// Moisture content the wood will settle at, percent.
    pub service_moisture_percent: f64,
}

impl Site {
    /// Ground under the beam at `x` from its left end, on the straight line between its two ends.
    #[must_use]
    pub fn ground_at(&self, x: Length, beam_length: Length) -> Length {
        self.ground_left + (self.ground_right - self.ground_left) * (x / beam_length)
    }

    /// Underside of the existing eave at distance `y` out from the wall face, or nothing beyond it.
    #[must_use]
    pub fn eave_underside(&self, y: Length) -> Option<Length> {
        if y > self.eave_projection {
            return None;
        }
        Some(match self.soffit {
            Soffit::Level => self.eave_edge,
            Soffit::Sloped => self.eave_edge + (self.eave_projection - y) * self.upper_pitch.tan(),
        })
    }
}
