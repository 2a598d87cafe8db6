//! Snow that lies evenly: flat, on the slope, least, and with rain on it.
use super::super::say::{num, psf};
use super::super::{Edition, LeanTo, Place, Refused, RiskCategory, SnowExposure, Thermal};
use super::factors::{exposure_factor, importance_factor, thermal_factor};
use crate::units::{AreaLoad, Density, Run, Slope};
use crate::working::{Step, Worked};

/// Single slopes below this many degrees also carry the least load.
const LOW_SLOPE: f64 = 15.0;

/// p_f = 0.7·C_e·C_t·I_s·p_g (ASCE 7-16, 7.3-1); by 7-22 without I_s.
///
/// # Errors
/// When the ground snow is missing, or a factor cannot be read.
pub fn flat_snow(place: &Place, exposure: SnowExposure, thermal: Thermal) -> Result<Worked<AreaLoad>, Refused> {
    let ground = place.ground_snow()?;
    let edition = place.edition;
    let ce = exposure_factor(edition, place.terrain, exposure)?;
    let ct = thermal_factor(edition, thermal)?;
    let is = importance_factor(edition, place.risk);
    let load = ground * (0.7 * ce.value * ct.value * is.value);
    let (letters, numbers) = match edition {
        Edition::Asce7_16 => ("·I_s", format!("·{}", num(is.value, 2))),
        Edition::Asce7_22 => ("", String::new()),
    };
    let says = format!(
        "p_f = 0.7·C_e·C_t{letters}·p_g = 0.7·{}·{}{numbers}·{} = {}",
        num(ce.value, 1),
        num(ct.value, 2),
        num(ground.to_psf(), 1),
        psf(load)
    );
    let mut steps = ce.steps;
    steps.extend(ct.steps);
    steps.extend(is.steps);
    steps.push(Step::new("p_f, flat-roof snow", says, edition.seen("7.3-1, in published examples")));
    Ok(Worked::new(load, steps))
}

/// C_s by slope on the level projection (ASCE 7 Fig. 7.4-1, from memory): 1 up to a free angle, then straight to 0 at 70°.
///
/// A thermal factor between two lines takes the line of the colder roof, which keeps more snow.
#[must_use]
pub fn slope_factor(edition: Edition, slope: Slope, thermal: f64, slippery: bool) -> Worked<f64> {
    let (free, rest, roof) = if thermal <= 1.0 {
        if slippery { (5.0, 65.0, "warm, slippery") } else { (30.0, 40.0, "warm, not slippery") }
    } else if thermal <= 1.1 {
        if slippery { (10.0, 60.0, "cool, slippery") } else { (37.5, 32.5, "cool, not slippery") }
    } else if slippery {
        (15.0, 55.0, "cold, slippery")
    } else {
        (45.0, 25.0, "cold, not slippery")
    };
    let degrees = slope.to_degrees();
    let (value, says) = if degrees <= free {
        (1.0, format!("{roof} roof, θ = {}° ≤ {}°: C_s = 1.0", num(degrees, 2), num(free, 1)))
    } else if degrees >= 70.0 {
        (0.0, format!("θ = {}° ≥ 70°: C_s = 0", num(degrees, 2)))
    } else {
        let value = 1.0 - (degrees - free) / rest;
        let says = format!(
            "{roof} roof: C_s = 1 − (θ − {})/{} = 1 − ({} − {})/{} = {}",
            num(free, 1),
            num(rest, 1),
            num(degrees, 2),
            num(free, 1),
            num(rest, 1),
            num(value, 3)
        );
        (value, says)
    };
    Worked::new(value, vec![Step::new("C_s, slope", says, edition.recalled("Fig. 7.4-1"))])
}

/// p_s = C_s·p_f on the lean-to (ASCE 7, 7.4-1).
///
/// # Errors
/// As [`flat_snow`], and for sizes that make no roof.
pub fn balanced_snow(place: &Place, lean_to: &LeanTo) -> Result<Worked<AreaLoad>, Refused> {
    lean_to.check_sizes()?;
    let flat = flat_snow(place, place.snow_exposure, lean_to.thermal)?;
    let thermal = thermal_factor(place.edition, lean_to.thermal)?.value;
    let factor = slope_factor(place.edition, lean_to.slope, thermal, lean_to.is_slippery());
    let load = flat.value * factor.value;
    let says = format!("p_s = C_s·p_f = {}·{} = {}", num(factor.value, 3), num(flat.value.to_psf(), 1), psf(load));
    let mut steps = flat.steps;
    steps.extend(factor.steps);
    steps.push(Step::new("p_s, balanced snow", says, place.edition.seen("7.4-1, in a published load calculation")));
    Ok(Worked::new(load, steps))
}

/// The least load of a low slope, p_m: a case by itself; `None` from 15° up (ASCE 7, 7.3.4).
///
/// # Errors
/// When the ground snow is missing.
pub fn minimum_snow(place: &Place, slope: Slope) -> Result<Option<Worked<AreaLoad>>, Refused> {
    let ground = place.ground_snow()?;
    if slope.to_degrees() >= LOW_SLOPE {
        return Ok(None);
    }
    let edition = place.edition;
    let (load, says, citation) = match edition {
        Edition::Asce7_16 => {
            let is = importance_factor(edition, place.risk).value;
            let counted = ground.min(AreaLoad::psf(20.0));
            let load = counted * is;
            let says = format!("p_m = I_s·min(p_g, 20) = {}·{} = {}", num(is, 2), num(counted.to_psf(), 1), psf(load));
            (load, says, edition.recalled("7.3.4"))
        }
        Edition::Asce7_22 => {
            let most = most_minimum(place.risk);
            let load = ground.min(most);
            let says = format!(
                "p_m = min(p_g, p_m,max) = min({}, {}) = {}",
                num(ground.to_psf(), 1),
                num(most.to_psf(), 0),
                psf(load)
            );
            (load, says, edition.recalled("7.3.3, table of p_m,max"))
        }
    };
    Ok(Some(Worked::new(load, vec![Step::new("p_m, least load of a low slope", says, citation)])))
}

/// p_m,max by risk category (ASCE 7-22, from memory).
const fn most_minimum(risk: RiskCategory) -> AreaLoad {
    match risk {
        RiskCategory::I => AreaLoad::psf(25.0),
        RiskCategory::II => AreaLoad::psf(30.0),
        RiskCategory::III => AreaLoad::psf(35.0),
        RiskCategory::IV => AreaLoad::psf(40.0),
    }
}

/// What rain adds to the balanced snow of a nearly level roof; `None` where it adds nothing (ASCE 7, 7.10, from memory).
///
/// Where 0 < p_g ≤ 20 psf and the slope in degrees is below W/50, W feet from eave to ridge: 5 psf. By 7-22: 8 psf, and
/// the limit on p_g is taken as p_m,max, a placeholder on the careful side. `length` is W.
///
/// # Errors
/// When the ground snow is missing.
pub fn rain_on_snow(place: &Place, slope: Slope, length: Run) -> Result<Option<Worked<AreaLoad>>, Refused> {
    let ground = place.ground_snow()?;
    let edition = place.edition;
    let (limit, load, citation) = match edition {
        Edition::Asce7_16 => (AreaLoad::psf(20.0), AreaLoad::psf(5.0), edition.recalled("7.10")),
        Edition::Asce7_22 => (most_minimum(place.risk), AreaLoad::psf(8.0), edition.unsure("7.10")),
    };
    let level_enough = length.length().to_feet() / 50.0;
    if ground <= AreaLoad::ZERO || ground > limit || slope.to_degrees() >= level_enough {
        return Ok(None);
    }
    let says = format!(
        "p_g = {} ≤ {} and θ = {}° < W/50 = {}: rain adds {}",
        psf(ground),
        psf(limit),
        num(slope.to_degrees(), 2),
        num(level_enough, 2),
        psf(load)
    );
    Ok(Some(Worked::new(load, vec![Step::new("rain on snow", says, citation)])))
}

/// γ = 0.13·p_g + 14 ≤ 30 lb/ft³ (ASCE 7, 7.7-1).
#[must_use]
pub fn density(edition: Edition, ground: AreaLoad) -> Worked<Density> {
    let value = (0.13 * ground.to_psf() + 14.0).min(30.0);
    let says = format!("γ = 0.13·p_g + 14 = 0.13·{} + 14 ≤ 30: {} lb/ft³", num(ground.to_psf(), 1), num(value, 2));
    let step = Step::new("γ, snow density", says, edition.seen("7.7-1, in published examples"));
    Worked::new(Density::pounds_per_cubic_foot(value), vec![step])
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn check_slope(degrees: f64, thermal: f64, slippery: bool, expected: f64) {
        let found = slope_factor(Edition::Asce7_16, Slope::degrees(degrees), thermal, slippery).value;
        assert!((found - expected).abs() < 1e-9, "{degrees}°, C_t {thermal}, {slippery}: {found} is not {expected}");
    }

    /// ASCE 7 Fig. 7.4-1 from memory: the free angle, halfway down the line, and 70° for each of the six lines.
    #[test]
    fn six_lines() {
        for (thermal, slippery, free) in [
            (0.85, true, 5.0),
            (1.0, true, 5.0),
            (1.0, false, 30.0),
            (1.1, true, 10.0),
            (1.1, false, 37.5),
            (1.2, true, 15.0),
            (1.3, true, 15.0),
            (1.2, false, 45.0),
        ] {
            check_slope(free - 0.001, thermal, slippery, 1.0);
            check_slope((free + 70.0) / 2.0, thermal, slippery, 0.5);
            check_slope(70.0, thermal, slippery, 0.0);
            check_slope(80.0, thermal, slippery, 0.0);
        }
        // Between two lines: the colder.
        check_slope(30.0, 1.05, true, 1.0 - 20.0 / 60.0);
        check_slope(30.0, 1.15, true, 1.0 - 15.0 / 55.0);
    }

    /// Cold slippery roofs computed from the formula: 2, 3, 4, 5, 6 in 12.
    #[test]
    fn cold_metal_roofs() {
        for (rise, expected) in [(2.0, 1.0), (3.0, 1.0), (4.0, 0.938), (5.0, 0.861), (6.0, 0.790)] {
            let found = slope_factor(Edition::Asce7_16, Slope::in_twelve(rise), 1.2, true).value;
            assert!((found - expected).abs() < 6e-4, "{rise} in 12: {found} is not {expected}");
        }
    }

    #[test]
    fn density_has_a_most() {
        let found = |psf| density(Edition::Asce7_16, AreaLoad::psf(psf)).value.to_pounds_per_cubic_foot();
        assert!((found(25.0) - 17.25).abs() < 1e-12);
        assert!((found(123.0) - 29.99).abs() < 1e-12);
        assert!((found(124.0) - 30.0).abs() < 1e-12);
    }
}
