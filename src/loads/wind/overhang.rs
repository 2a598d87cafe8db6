//! The roof-overhang rule: the wall behind stops the wind, which then presses up.
use super::super::{LeanTo, Place, Refused, Spread};
use super::single_slope::WindFrom;
use super::velocity::velocity_pressure;
use super::{Across, WindCase};
use crate::units::Length;
use crate::working::Step;

/// Pressure under the roof, as on the wall.
const UNDER: f64 = 0.8;
/// Suction on its top.
const ON_TOP: f64 = 0.9;

/// The whole roof taken as an overhang of the house: C_p 0.8 under it and about 0.9 suction on top, net −1.7
/// (ASCE 7, 27.3.3; the suction about so, from memory). It has no limits of height or angle in what is carried here.
///
/// # Errors
/// When the wind speed is missing, or the sizes make no roof.
pub fn overhang_case(place: &Place, lean_to: &LeanTo) -> Result<WindCase, Refused> {
    lean_to.check_sizes()?;
    let q = velocity_pressure(place, lean_to.mean_roof_height())?;
    let net = -(UNDER + ON_TOP);
    let pressure = Spread::uniform(Length::ZERO, lean_to.roof_length().length(), q.value.pressure(net));
    let mut steps = q.steps;
    let citation = place.edition.recalled("27.3.3");
    steps.push(Step::new("net C_p", "C_p = −(0.8 under + 0.9 suction on top) = −1.7", citation));
    steps.push(Step::new("p over the whole roof", q.value.says("C_p", net), citation));
    Ok(WindCase {
        name: "wind onto the wall, the roof taken as its overhang".to_owned(),
        from: WindFrom::Eave,
        across: Across::OutFromWall,
        pressure,
        steps,
    })
}
