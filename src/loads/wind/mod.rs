//! Wind on the lean-to: main frame over the roof, components and cladding, and along the wall.
//!
//! All pressures are at strength level; the combinations take 0.6 of them. A pressure p acts square to the roof, plus is
//! towards the top. On plan it is p downward and p·tan θ level: outward, towards the eave, when p is plus.
//! A lean-to has the house on one side, so the free-standing roof is an approximation: clear and obstructed flow are
//! both taken, and the roof-overhang rule beside them, since the wall behind stops the wind.
mod along_wall;
mod cases;
mod cladding;
mod overhang;
mod side;
mod single_slope;
#[cfg(test)]
mod tests;
mod velocity;

pub use along_wall::{AlongWall, Projected, level_minimum, wind_along_wall};
pub use cases::{Wind, wind_cases};
pub use cladding::{Zone, ZonePressure, cladding_pressures, effective_area};
pub use overhang::overhang_case;
pub use side::side_cases;
pub use single_slope::{Flow, LoadCase, NetCoefficients, WindFrom, net_coefficients, single_slope_cases};
pub use velocity::{
    Kd, MINIMUM_WIND, VelocityPressure, exposure_coefficient, ground_elevation_factor, velocity_pressure,
};

use super::Spread;
use crate::working::Step;

/// The direction a wind pressure changes along.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Across {
    /// Out from the wall.
    OutFromWall,
    /// Along the wall from its left end.
    AlongWall,
}

/// One wind case of the main frame: pressure square to the roof.
#[derive(Clone, Debug, PartialEq)]
pub struct WindCase {
    /// In words.
    pub name: String,
    /// Where the wind comes from.
    pub from: WindFrom,
    /// The direction the pressure changes along; it is the same all the way across.
    pub across: Across,
    /// Pressure square to the roof against the distance on plan, plus towards the top.
    pub pressure: Spread,
    /// How it came about.
    pub steps: Vec<Step>,
}
