//! Bearing: on the side of the grain, on its end, and between (NDS 3.10).
use crate::units::{Angle, Area, Force, Length, Stress};
use crate::working::{Citation, Step, Worked};

use super::adjusted::{bearing_factors, end_grain_strength, product};
use super::factors::bearing_area;
use super::figures::{number, psi};
use super::tension::axial_stress;
use super::{Member, Property, Refused, Verdict};

/// Share of `F_c*` above which end grain must bear on a metal plate.
const PLATE_SHARE: f64 = 0.75;

/// Where a stick is pressed on its side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// The area pressed, less mortises.
    pub area: Area,
    /// Its length along the grain of the pressed stick.
    pub length: Length,
    /// From the end of the pressed stick.
    pub from_end: Length,
}

/// `F_c⊥'`, `C_b` included.
///
/// # Errors
/// When the seat has no length.
pub fn bearing_across_strength(member: &Member, seat: &Seat) -> Result<Worked<Stress>, Refused> {
    let mut factors = bearing_factors(member);
    factors.push(bearing_area(seat.length, seat.from_end)?);
    Ok(product(member, Property::BearingAcross, "F_c⊥'", &factors))
}

/// A push square to the grain.
///
/// # Errors
/// When the seat has no length or no area.
pub fn check_bearing_across(member: &Member, push: Force, seat: &Seat) -> Result<Worked<Verdict>, Refused> {
    let mut strength = bearing_across_strength(member, seat)?;
    let (found, step) = axial_stress("f_c⊥", "Bearing across the grain", push, seat.area, "3.10.2")?;
    strength.steps.push(step);
    Ok(Worked::new(Verdict::stress(found, strength.value), strength.steps))
}

/// A push on the end of the stick: `f_c ≤ F_c*`, and at most 0.75 of it where no metal plate or the like lies between
/// (NDS 3.10.1, from memory).
///
/// # Errors
/// When no area is left.
pub fn check_end_grain(member: &Member, push: Force, net: Area, has_plate: bool) -> Result<Worked<Verdict>, Refused> {
    let mut strength = end_grain_strength(member);
    let share = if has_plate { 1.0 } else { PLATE_SHARE };
    let allowed = strength.value * share;
    let citation = Citation::from_memory("NDS 2018", "3.10.1");
    let (found, step) = axial_stress("f_c", "End-grain bearing", push, net, "3.10.1")?;
    strength.steps.push(step);
    let why = if has_plate { "on a metal plate" } else { "wood on wood: more needs a metal plate" };
    let says = format!(
        "{}·F_c* = {}·{} = {} psi: {why}",
        number(share),
        number(share),
        psi(strength.value.to_psi()),
        psi(allowed.to_psi())
    );
    strength.steps.push(Step::new("End-grain bearing allowed", says, citation));
    Ok(Worked::new(Verdict::stress(found, allowed), strength.steps))
}

/// `F_θ' = F_c*·F_c⊥'/(F_c*·sin²θ + F_c⊥'·cos²θ)`: bearing at an angle `θ` between load and grain (NDS Eq. 3.10-1).
///
/// # Errors
/// Outside 0 to 90°, or for a strength that is not above zero.
pub fn hankinson(along: Stress, across: Stress, angle: Angle) -> Result<Worked<Stress>, Refused> {
    let degrees = angle.to_degrees();
    if !(-1e-9..=90.0 + 1e-9).contains(&degrees) {
        return Err(Refused::because("The angle between load and grain lies between 0 and 90°."));
    }
    if along <= Stress::ZERO || across <= Stress::ZERO {
        return Err(Refused::because("Bearing at an angle needs both strengths above zero."));
    }
    let (p, q) = (along.to_psi(), across.to_psi());
    let (sin, cos) = (angle.sin(), angle.cos());
    let value = Stress::psi(p * q / (p * sin * sin + q * cos * cos));
    let says = format!(
        "F_θ' = F_c*·F_c⊥'/(F_c*·sin²θ + F_c⊥'·cos²θ) = {}·{}/({}·sin²{deg} + {}·cos²{deg}) = {} psi",
        psi(p),
        psi(q),
        psi(p),
        psi(q),
        psi(value.to_psi()),
        deg = format!("{}°", number(degrees)),
    );
    let step = Step::new("Bearing at an angle", says, Citation::seen("timber formula sheet", "NDS Eq. 3.10-1"));
    Ok(Worked::new(value, vec![step]))
}

/// A push at an angle to the grain: a brace's housing, a sloping seat, the table of a scarf.
///
/// # Errors
/// As [`hankinson`] and [`bearing_across_strength`].
pub fn check_bearing_at_angle(
    member: &Member,
    push: Force,
    angle: Angle,
    seat: &Seat,
) -> Result<Worked<Verdict>, Refused> {
    let along = end_grain_strength(member);
    let across = bearing_across_strength(member, seat)?;
    let strength = hankinson(along.value, across.value, angle)?;
    let (found, step) = axial_stress("f_θ", "Bearing at an angle", push, seat.area, "3.10.3")?;
    let mut steps = along.steps;
    steps.extend(across.steps);
    steps.extend(strength.steps);
    steps.push(step);
    Ok(Worked::new(Verdict::stress(found, strength.value), steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::members::LoadDuration;
    use crate::members::test_members::{dry, inches, wet};

    fn seat(length: f64, from_end: f64) -> Seat {
        Seat {
            area: Area::square_inches(6.0 * length),
            length: Length::inches(length),
            from_end: Length::inches(from_end),
        }
    }

    #[test]
    fn across_the_grain() {
        // Hem-Fir: 405 psi; wet 0.67; 3 in: C_b = 1.125. No load duration.
        let beam = wet("Hem-Fir", inches(8.0, 10.0)).during(LoadDuration::TenMinutes);
        let strength = |seat| bearing_across_strength(&beam, &seat).unwrap().value.to_psi();
        assert!((strength(seat(3.0, 12.0)) - 405.0 * 0.67 * 1.125).abs() < 1e-9);
        assert!((strength(seat(3.0, 0.0)) - 405.0 * 0.67).abs() < 1e-9);
        let verdict = check_bearing_across(&beam, Force::pounds(1800.0), &seat(3.0, 0.0)).unwrap().value;
        assert!((verdict.ratio - 100.0 / (405.0 * 0.67)).abs() < 1e-9);
        assert!(check_bearing_across(&beam, Force::pounds(1.0), &seat(0.0, 0.0)).is_err());
        let empty = Seat { area: Area::ZERO, ..seat(3.0, 0.0) };
        assert!(check_bearing_across(&beam, Force::pounds(1.0), &empty).is_err());
    }

    #[test]
    fn end_grain_with_and_without_a_plate() {
        let post = dry("Hem-Fir", inches(8.0, 8.0));
        let ratio = |plate| {
            let checked = check_end_grain(&post, Force::pounds(46_000.0 / 2.0), Area::square_inches(40.0), plate);
            checked.unwrap().value.ratio
        };
        // 575 psi found, F_c* 575 psi.
        assert!((ratio(true) - 1.0).abs() < 1e-9);
        assert!((ratio(false) - 4.0 / 3.0).abs() < 1e-9);
    }

    #[test]
    fn hankinson_runs_from_along_to_across() {
        let (along, across) = (Stress::psi(1000.0), Stress::psi(400.0));
        let at = |degrees: f64| hankinson(along, across, Angle::degrees(degrees)).map(|worked| worked.value.to_psi());
        assert!((at(0.0).unwrap() - 1000.0).abs() < 1e-9);
        assert!((at(90.0).unwrap() - 400.0).abs() < 1e-9);
        // 45°: twice the product by the sum.
        assert!((at(45.0).unwrap() - 2.0 * 400_000.0 / 1400.0).abs() < 1e-9);
        assert!(at(91.0).is_err() && at(-1.0).is_err());
        assert!(hankinson(Stress::ZERO, across, Angle::degrees(10.0)).is_err());
    }

    #[test]
    fn at_an_angle_lies_between() {
        let beam = dry("Hem-Fir", inches(8.0, 10.0));
        let verdict = check_bearing_at_angle(&beam, Force::pounds(1800.0), Angle::degrees(45.0), &seat(3.0, 0.0));
        let capacity = 2.0 * 575.0 * 405.0 / 980.0;
        assert!((verdict.unwrap().value.ratio - 100.0 / capacity).abs() < 1e-9);
    }
}
