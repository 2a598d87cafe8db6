//! Components and cladding: rafters under 700 ft² of tributary area, purlins, sheets and screws.
use super::super::say::{num, psf};
use super::super::{LeanTo, Place, Refused};
use super::single_slope::{check_angle, outside_figure};
use super::velocity::{MINIMUM_WIND, cladding_velocity_pressure};
use crate::units::{Area, AreaLoad, Length};
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

/// C_N of zones 1, 2 and 3 for a component that gathers from up to a²: angle, clear flow down and up, obstructed flow down
/// and up (ASCE 7 Fig. 30.7-1). Clear flow at 7.5° and 15° from memory; the other rows and obstructed flow are less sure.
const FIGURE: [(f64, [Row; 3]); 5] = [
    (0.0, [[1.2, -1.1, 0.5, -1.2], [1.8, -1.7, 0.8, -1.8], [2.4, -3.3, 1.0, -3.6]]),
    (7.5, [[1.6, -1.4, 0.8, -1.7], [2.4, -2.1, 1.2, -2.6], [3.2, -4.2, 1.6, -5.1]]),
    (15.0, [[1.8, -1.9, 1.2, -2.1], [2.7, -2.9, 1.8, -3.2], [3.6, -3.8, 2.4, -4.2]]),
    (30.0, [[2.6, -2.5, 1.6, -2.3], [3.9, -3.8, 2.4, -3.5], [5.2, -5.0, 3.2, -4.6]]),
    (45.0, [[2.6, -2.3, 2.1, -1.9], [3.9, -3.5, 3.2, -2.9], [5.2, -4.6, 4.2, -3.8]]),
];
type Row = [f64; 4];
const ZONES: [Zone; 3] = [Zone::Field, Zone::Edge, Zone::Corner];

/// C_N down and up of one zone at an angle, straight between the figure's angles, the worse of both flows.
fn coefficients(degrees: f64, zone: usize) -> (f64, f64) {
    let next = FIGURE.iter().position(|(angle, _)| degrees < *angle).unwrap_or(FIGURE.len() - 1).max(1);
    let ((low, from), (high, to)) = (FIGURE[next - 1], FIGURE[next]);
    let share = ((degrees - low) / (high - low)).clamp(0.0, 1.0);
    let at = |column: usize| from[zone][column] + (to[zone][column] - from[zone][column]) * share;
    (at(0).max(at(2)), at(1).min(at(3)))
}

/// The area one component gathers wind from: its span times what it carries, taken at least a third of the span wide
/// (ASCE 7, 26.2, from memory).
#[must_use]
pub fn effective_area(span: Length, carried: Length) -> Area {
    span * carried.max(span / 3.0)
}

/// a: a tenth of the roof's smaller side or 0.4·h, the smaller, but not under 4 % of that side or 3 ft (from memory).
fn zone_width(lean_to: &LeanTo) -> Length {
    let side = lean_to.roof_length().length().min(lean_to.width);
    (side * 0.1).min(lean_to.mean_roof_height() * 0.4).max(side * 0.04).max(Length::feet(3.0))
}

/// Pressures on components by zone: p = q_h·G·C_N (by 7-22 with K_d), not below 16 psf either way.
///
/// The worse of clear and obstructed flow: the house stands in the wind. A component that gathers from more than a² has
/// the edge's value in the corner, from more than 4·a² the field's everywhere. Between the figure's angles the values are
/// interpolated. Which part of the roof a zone covers is not carried: take [`Zone::Corner`] where it matters.
///
/// # Errors
/// When the wind speed is missing, or the roof is steeper than the figure.
pub fn cladding_pressures(
    place: &Place,
    lean_to: &LeanTo,
    effective: Area,
) -> Result<Worked<Vec<ZonePressure>>, Refused> {
    lean_to.check_sizes()?;
    let q = cladding_velocity_pressure(place, lean_to.mean_roof_height())?;
    let degrees = lean_to.slope.to_degrees();
    check_angle(degrees)?;
    let mut steps = q.steps;
    steps.extend(outside_figure(place, lean_to.mean_roof_height(), lean_to.roof_length().length()));
    let a = zone_width(lean_to);
    let says = format!(
        "a = {} ft, a² = {} ft²; the component gathers from {} ft²",
        num(a.to_feet(), 1),
        num((a * a).to_square_feet(), 1),
        num(effective.to_square_feet(), 1)
    );
    steps.push(Step::new("a, width of the zones", says, place.edition.recalled("26.2, Fig. 30.7-1")));
    let mut found = Vec::new();
    for (index, zone) in ZONES.into_iter().enumerate() {
        let row = index.min(if effective > a * a * 4.0 {
            0
        } else if effective > a * a {
            1
        } else {
            2
        });
        let (pressing, lifting) = coefficients(degrees, row);
        let down = q.value.pressure(pressing).max(MINIMUM_WIND);
        let up = q.value.pressure(lifting).min(-MINIMUM_WIND);
        let citation = place.edition.unsure("Fig. 30.7-1, clear and obstructed flow");
        let says = format!(
            "θ = {}°: C_N = {} and {}; {}; {}; not below 16 psf: {} and {}",
            num(degrees, 2),
            num(pressing, 2),
            num(lifting, 2),
            q.value.says("C_N", pressing),
            q.value.says("C_N", lifting),
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
