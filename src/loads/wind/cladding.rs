//! Components and cladding: rafters under 700 ft² of tributary area, purlins, sheets and screws.
use super::super::say::{num, psf};
use super::super::{LeanTo, Place, Refused};
use super::single_slope::check_height;
use super::velocity::{MINIMUM_WIND, cladding_velocity_pressure};
use crate::units::AreaLoad;
use crate::working::{Step, Worked};

/// Where on the roof.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Zone {
    /// Zone 1: the field.
    Field,
    /// Zone 2: along the edges.
    Edge,
    /// Zone 3: the corners, and where the width of the zones is not known, anywhere.
    Corner,
}

/// Pressure on a component in one zone, square to the roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ZonePressure {
    /// Where.
    pub zone: Zone,
    /// Towards the top, plus.
    pub down: AreaLoad,
    /// Away from it, minus.
    pub up: AreaLoad,
}

/// Zone with C_N down and up, at 7.5° and at 15°: clear flow, smallest areas (ASCE 7 Fig. 30.7-1, from memory).
const FIGURE: [(Zone, [f64; 2], [f64; 2]); 3] = [
    (Zone::Field, [1.6, -1.4], [1.8, -1.9]),
    (Zone::Edge, [2.4, -2.1], [2.7, -2.9]),
    (Zone::Corner, [3.2, -4.2], [3.6, -3.8]),
];
const LEAST_ANGLE: f64 = 7.5;
const MOST_ANGLE: f64 = 15.0;
/// Rounding noise of an angle that goes through its tangent, degrees.
const ANGLE_NOISE: f64 = 1e-9;

/// Pressures on components by zone: p = q_h·G·C_N (by 7-22 with K_d), not below 16 psf either way.
///
/// The values are for clear flow and the smallest area, which is the careful side for larger ones. Between 7.5° and 15°
/// they are interpolated. The width of the zones is not carried: take [`Zone::Corner`] where it matters.
///
/// # Errors
/// When the wind speed is missing, or the roof is outside the angles or heights of the figure.
pub fn cladding_pressures(place: &Place, lean_to: &LeanTo) -> Result<Worked<Vec<ZonePressure>>, Refused> {
    lean_to.check_sizes()?;
    let q = cladding_velocity_pressure(place, lean_to.mean_roof_height())?;
    let degrees = lean_to.slope.to_degrees();
    if !(LEAST_ANGLE - ANGLE_NOISE..=MOST_ANGLE + ANGLE_NOISE).contains(&degrees) {
        let says = format!(
            "coefficients of roof components (ASCE 7 Fig. 30.7-1) are carried from 7.5° to 15° only, here {}°; the rows \
             for other angles are missing",
            num(degrees, 1)
        );
        return Err(Refused::because(says));
    }
    check_height(lean_to.mean_roof_height(), lean_to.roof_length().length())?;
    let share = (degrees - LEAST_ANGLE) / (MOST_ANGLE - LEAST_ANGLE);
    let mut steps = q.steps;
    let mut found = Vec::new();
    for (zone, low, high) in FIGURE {
        let at = |side: usize| low[side] + (high[side] - low[side]) * share;
        let down = q.value.pressure(at(0)).max(MINIMUM_WIND);
        let up = q.value.pressure(at(1)).min(-MINIMUM_WIND);
        let citation = place.edition.recalled("Fig. 30.7-1, clear flow, smallest area");
        let says = format!(
            "θ = {}°: C_N = {} and {}; {}; {}; not below 16 psf: {} and {}",
            num(degrees, 2),
            num(at(0), 2),
            num(at(1), 2),
            q.value.says("C_N", at(0)),
            q.value.says("C_N", at(1)),
            psf(down),
            psf(up)
        );
        steps.push(Step::new(zone.words(), says, citation));
        found.push(ZonePressure { zone, down, up });
    }
    Ok(Worked::new(found, steps))
}

impl Zone {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Field => "p on components, zone 1, field",
            Self::Edge => "p on components, zone 2, edge",
            Self::Corner => "p on components, zone 3, corner",
        }
    }
}
