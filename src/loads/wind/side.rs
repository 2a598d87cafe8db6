//! Main frame on an open roof of one slope: wind along the wall.
use super::super::say::{feet, num};
use super::super::{LeanTo, Place, Refused, Spread};
use super::single_slope::{Flow, LoadCase, WindFrom, check_angle, outside_figure};
use super::velocity::{VelocityPressure, velocity_pressure};
use super::{Across, WindCase};
use crate::units::Length;
use crate::working::{Step, Worked};

/// C_N by distance from the edge the wind meets: up to h, from h to 2h, beyond (ASCE 7 Fig. 27.3-7, from memory).
const fn coefficients(flow: Flow, case: LoadCase) -> [f64; 3] {
    match (flow, case) {
        (Flow::Clear, LoadCase::A) => [-0.8, -0.6, -0.3],
        (Flow::Obstructed, LoadCase::A) => [-1.2, -0.9, -0.6],
        (Flow::Clear, LoadCase::B) => [0.8, 0.5, 0.3],
        (Flow::Obstructed, LoadCase::B) => [0.5, 0.5, 0.3],
    }
}

/// The eight cases of wind along the wall: both flows, both ends, A and B. The roof lifts or presses; how the wind
/// pushes on the frame itself is [`super::wind_along_wall`].
///
/// # Errors
/// When the wind speed is missing, or the roof lies outside the figure.
pub fn side_cases(place: &Place, lean_to: &LeanTo) -> Result<Vec<WindCase>, Refused> {
    lean_to.check_sizes()?;
    let mut q = velocity_pressure(place, lean_to.mean_roof_height())?;
    check_angle(lean_to.slope.to_degrees())?;
    q.steps.extend(outside_figure(place, lean_to.mean_roof_height(), lean_to.width));
    let mut cases = Vec::new();
    for flow in Flow::BOTH {
        for case in LoadCase::BOTH {
            for from in [WindFrom::Left, WindFrom::Right] {
                cases.push(one_case(place, lean_to, &q, (flow, case, from)));
            }
        }
    }
    Ok(cases)
}

fn one_case(
    place: &Place,
    lean_to: &LeanTo,
    q: &Worked<VelocityPressure>,
    (flow, case, from): (Flow, LoadCase, WindFrom),
) -> WindCase {
    let (height, width) = (lean_to.mean_roof_height(), lean_to.width);
    let net = coefficients(flow, case);
    let edges = [Length::ZERO, height, height * 2.0, width.max(height * 2.0)];
    let zone = |index: usize| Spread::uniform(edges[index], edges[index + 1], q.value.pressure(net[index]));
    let seen_from_left = zone(0).plus(&zone(1)).plus(&zone(2)).cut_at(width);
    let (pressure, end) = match from {
        WindFrom::Right => (seen_from_left.mirrored(width), "right"),
        WindFrom::House | WindFrom::Eave | WindFrom::Left => (seen_from_left, "left"),
    };
    let mut steps = q.steps.clone();
    let says = format!(
        "{}, case {}: C_N = {} up to h = {}, {} up to 2h, {} beyond",
        flow.words(),
        case.letter(),
        num(net[0], 2),
        feet(height),
        num(net[1], 2),
        num(net[2], 2)
    );
    steps.push(Step::new("C_N, net coefficients", says, place.edition.recalled("Fig. 27.3-7")));
    for (name, coefficient) in ["p up to h", "p from h to 2h", "p beyond 2h"].into_iter().zip(net) {
        steps.push(Step::new(name, q.value.says("C_N", coefficient), place.edition.recalled("27.3.2")));
    }
    WindCase {
        name: format!("wind along the wall from the {end}, {}, case {}", flow.words(), case.letter()),
        from,
        across: Across::AlongWall,
        pressure,
        steps,
    }
}
