//! Level push of the wind on beam, posts and roof edge, and the least push on the whole.
use super::super::say::{num, pounds, psf};
use super::super::{Edition, Place, Refused};
use super::velocity::{MINIMUM_WIND, velocity_pressure};
use crate::units::{Area, AreaLoad, Force, Length};
use crate::unmade::Input;
use crate::working::{Step, Worked};

/// A part as the wind sees it: its outline square to the wind.
#[derive(Clone, Debug, PartialEq)]
pub struct Projected {
    /// Which part: `roof edge`, `post P2`.
    pub name: String,
    /// Its area square to the wind; nothing is taken to shelter it.
    pub area: Area,
}

/// Wind along the wall, either way.
#[derive(Clone, Debug, PartialEq)]
pub struct AlongWall {
    /// On each square foot that the wind sees.
    pub pressure: AreaLoad,
    /// The force on each part, in their order.
    pub forces: Vec<Force>,
    /// All of them.
    pub total: Force,
}

/// Wind along the wall on what it sees: F = q_h·G·C_f·A (by 7-22 with K_d), not below 16 psf on A.
///
/// C_f is stated by the user: [`Place::member_force_coefficient`]. Both directions are alike.
///
/// # Errors
/// When the wind speed or C_f is missing, or C_f is not above zero.
pub fn wind_along_wall(place: &Place, height: Length, parts: &[Projected]) -> Result<Worked<AlongWall>, Refused> {
    let q = velocity_pressure(place, height)?;
    let coefficient = place.member_force_coefficient.ok_or_else(|| {
        Refused::missing(
            Input::ForceCoefficient,
            "the force coefficient C_f of beam, posts and roof edge is missing (ASCE 7 chapter 29, members of an open \
             frame); the least wind of 16 psf alone would be too little",
        )
    })?;
    if !(coefficient.is_finite() && coefficient > 0.0) {
        return Err(Refused::because("the force coefficient C_f must be above zero"));
    }
    let computed = q.value.pressure(coefficient);
    let pressure = computed.max(MINIMUM_WIND);
    let mut steps = q.steps;
    let says = format!("{}; not below 16 psf: {}", q.value.says("C_f", coefficient), psf(pressure));
    steps.push(Step::new("p on parts of the frame", says, place.edition.recalled("chapter 29; least 27.1.5")));
    let mut forces = Vec::new();
    for part in parts {
        let force = pressure * part.area;
        let says = format!(
            "F = p·A = {}·{} ft² = {}",
            num(pressure.to_psf(), 1),
            num(part.area.to_square_feet(), 2),
            pounds(force)
        );
        steps.push(Step::new(format!("F on {}", part.name), says, place.edition.recalled("chapter 29")));
        forces.push(force);
    }
    let total = forces.iter().sum();
    Ok(Worked::new(AlongWall { pressure, forces, total }, steps))
}

/// The least level push on an open building: 16 psf on its area square to the wind (ASCE 7, 27.1.5, from memory). Out from
/// the wall that area is the roof's rise times its width.
#[must_use]
pub fn level_minimum(edition: Edition, area: Area) -> Worked<Force> {
    let force = MINIMUM_WIND * area;
    let says = format!("F = 16·A = 16·{} ft² = {}", num(area.to_square_feet(), 1), pounds(force));
    Worked::new(force, vec![Step::new("F, least level push", says, edition.recalled("27.1.5"))])
}
