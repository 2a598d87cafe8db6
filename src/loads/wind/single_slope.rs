//! Main frame on an open roof of one slope: wind square to the wall, from either side.
use super::super::say::num;
use super::super::{LeanTo, Place, Refused, Spread};
use super::velocity::{VelocityPressure, velocity_pressure};
use super::{Across, WindCase};
use crate::units::{Length, Slope};
use crate::working::{Step, Worked};

/// Whether wind passes under the roof.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Flow {
    /// At most half of the passage is blocked.
    Clear,
    /// More than half is blocked.
    Obstructed,
}

impl Flow {
    pub(super) const BOTH: [Self; 2] = [Self::Clear, Self::Obstructed];

    pub(super) const fn words(self) -> &'static str {
        match self {
            Self::Clear => "clear flow",
            Self::Obstructed => "obstructed flow",
        }
    }
}

/// The two load cases of the figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadCase {
    /// Case A.
    A,
    /// Case B.
    B,
}

impl LoadCase {
    pub(super) const BOTH: [Self; 2] = [Self::A, Self::B];

    pub(super) const fn letter(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::B => "B",
        }
    }
}

/// Where the wind comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WindFrom {
    /// γ = 0: over the high edge, from the house; it lifts.
    House,
    /// γ = 180: over the eave, from outside.
    Eave,
    /// γ = 90: along the wall from its left end.
    Left,
    /// γ = 270: along the wall from its right end.
    Right,
}

/// Net coefficients of the two halves of the roof, plus towards the top.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NetCoefficients {
    /// C_NW: the half the wind meets first.
    pub windward: f64,
    /// C_NL: the other half.
    pub leeward: f64,
}

/// A half's two values, windward and leeward.
type Pair = (f64, f64);

/// Rows of ASCE 7 Fig. 27.3-4, from memory: angle, then case A and case B, each with γ = 0 clear and obstructed, γ = 180
/// clear and obstructed.
const FIGURE: [(f64, [Pair; 4], [Pair; 4]); 7] = [
    (
        0.0,
        [(1.2, 0.3), (-0.5, -1.2), (1.2, 0.3), (-0.5, -1.2)],
        [(-1.1, -0.1), (-1.1, -0.6), (-1.1, -0.1), (-1.1, -0.6)],
    ),
    (7.5, [(-0.6, -1.0), (-1.0, -1.5), (0.9, 1.5), (-0.2, -1.2)], [(-1.4, 0.0), (-1.7, -0.8), (1.6, 0.3), (0.8, -0.3)]),
    (15.0, [(-0.9, -1.3), (-1.1, -1.5), (1.3, 1.6), (0.4, -1.1)], [(-1.9, 0.0), (-2.1, -0.6), (1.8, 0.6), (1.2, -0.3)]),
    (22.5, [(-1.5, -1.6), (-1.5, -1.7), (1.7, 1.8), (0.5, -1.0)], [(-2.4, -0.3), (-2.3, -0.9), (2.2, 0.7), (1.3, 0.0)]),
    (30.0, [(-1.8, -1.8), (-1.5, -1.8), (2.1, 2.1), (0.6, -1.0)], [(-2.5, -0.5), (-2.3, -1.1), (2.6, 1.0), (1.6, 0.1)]),
    (37.5, [(-1.8, -1.8), (-1.5, -1.8), (2.1, 2.2), (0.7, -0.9)], [(-2.4, -0.6), (-2.2, -1.1), (2.7, 1.1), (1.9, 0.3)]),
    (45.0, [(-1.6, -1.8), (-1.3, -1.8), (2.2, 2.5), (0.8, -0.9)], [(-2.3, -0.7), (-1.9, -1.2), (2.6, 1.4), (2.1, 0.4)]),
];

/// Lowest angle that is interpolated; below it the level row holds.
const LEVEL_BELOW: f64 = 7.5;
/// Rounding noise of an angle that goes through its tangent, degrees.
const ANGLE_NOISE: f64 = 1e-9;
const STEEPEST: f64 = 45.0;

/// C_N of an open single-slope roof, interpolated between angles; below 7.5° the level row (ASCE 7 Fig. 27.3-4).
///
/// # Errors
/// Above 45°, and for wind along the wall, which has its own figure.
pub fn net_coefficients(
    place: &Place,
    slope: Slope,
    flow: Flow,
    case: LoadCase,
    from: WindFrom,
) -> Result<Worked<NetCoefficients>, Refused> {
    let column = match (from, flow) {
        (WindFrom::House, Flow::Clear) => 0,
        (WindFrom::House, Flow::Obstructed) => 1,
        (WindFrom::Eave, Flow::Clear) => 2,
        (WindFrom::Eave, Flow::Obstructed) => 3,
        (WindFrom::Left | WindFrom::Right, _) => {
            return Err(Refused::because("wind along the wall has its own figure"));
        }
    };
    let degrees = slope.to_degrees();
    check_angle(degrees)?;
    let row = |index: usize| {
        let (angle, a, b) = FIGURE[index];
        let pairs = if case == LoadCase::A { a } else { b };
        (angle, pairs[column])
    };
    let upper = FIGURE.iter().position(|row| degrees <= row.0 + ANGLE_NOISE).unwrap_or(FIGURE.len() - 1);
    let (windward, leeward) = if degrees < LEVEL_BELOW - ANGLE_NOISE {
        row(0).1
    } else {
        let ((low, from), (high, to)) = (row(upper - 1), row(upper));
        let share = (degrees - low) / (high - low);
        (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share)
    };
    let says = format!(
        "θ = {}°, {}, case {}, γ = {}°: C_NW = {}, C_NL = {}",
        num(degrees, 2),
        flow.words(),
        case.letter(),
        if from == WindFrom::House { "0" } else { "180" },
        num(windward, 2),
        num(leeward, 2)
    );
    let step = Step::new("C_N, net coefficients", says, place.edition.recalled("Fig. 27.3-4"));
    Ok(Worked::new(NetCoefficients { windward, leeward }, vec![step]))
}

pub(super) fn check_angle(degrees: f64) -> Result<(), Refused> {
    if !(0.0..=STEEPEST + ANGLE_NOISE).contains(&degrees) {
        let says = format!("the figures of open single-slope roofs end at 45°, here {}°", num(degrees, 1));
        return Err(Refused::because(says));
    }
    Ok(())
}

/// The figures hold for 0.25 ≤ h/L ≤ 1.0, L the roof's level length with the wind. Outside that they are taken all the
/// same, as a placeholder that says so: the step, where there is something to say.
pub(super) fn outside_figure(place: &Place, height: Length, length: Length) -> Option<Step> {
    let ratio = height / length;
    if (0.25..=1.0).contains(&ratio) {
        return None;
    }
    let says =
        format!("h/L = {} is outside 0.25 to 1.0, where the figures hold; they are taken all the same", num(ratio, 2));
    Some(Step::new("h/L, mean roof height over length", says, place.edition.unsure("Fig. 27.3-4, limits")))
}

/// The eight cases of wind square to the wall: both flows, both directions, A and B.
///
/// # Errors
/// When the wind speed is missing, or the roof is steeper than the figure.
pub fn single_slope_cases(place: &Place, lean_to: &LeanTo) -> Result<Vec<WindCase>, Refused> {
    lean_to.check_sizes()?;
    let mut q = velocity_pressure(place, lean_to.mean_roof_height())?;
    q.steps.extend(outside_figure(place, lean_to.mean_roof_height(), lean_to.roof_length().length()));
    let mut cases = Vec::new();
    for flow in Flow::BOTH {
        for from in [WindFrom::House, WindFrom::Eave] {
            for case in LoadCase::BOTH {
                let net = net_coefficients(place, lean_to.slope, flow, case, from)?;
                cases.push(one_case(place, lean_to, &q, net, (flow, case, from)));
            }
        }
    }
    Ok(cases)
}

fn one_case(
    place: &Place,
    lean_to: &LeanTo,
    q: &Worked<VelocityPressure>,
    net: Worked<NetCoefficients>,
    (flow, case, from): (Flow, LoadCase, WindFrom),
) -> WindCase {
    let NetCoefficients { windward, leeward } = net.value;
    let (at_wall, at_eave, side) = match from {
        WindFrom::Eave => (leeward, windward, "the eave"),
        WindFrom::House | WindFrom::Left | WindFrom::Right => (windward, leeward, "the house"),
    };
    let (middle, end) = (lean_to.roof_length().length() / 2.0, lean_to.roof_length().length());
    let near = Spread::uniform(Length::ZERO, middle, q.value.pressure(at_wall));
    let far = Spread::uniform(middle, end, q.value.pressure(at_eave));
    let citation = place.edition.recalled("27.3.2");
    let mut steps = [q.steps.clone(), net.steps].concat();
    steps.push(Step::new("p on the half at the wall", q.value.says("C_N", at_wall), citation));
    steps.push(Step::new("p on the half at the eave", q.value.says("C_N", at_eave), citation));
    WindCase {
        name: format!("wind from {side}, {}, case {}", flow.words(), case.letter()),
        from,
        across: Across::OutFromWall,
        pressure: near.plus(&far),
        steps,
    }
}
