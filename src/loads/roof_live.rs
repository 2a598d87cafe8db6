//! Roof live load: people and stores at upkeep.
use super::say::num;
use super::{Edition, Refused};
use crate::units::{Area, AreaLoad, Slope};
use crate::working::{Step, Worked};

/// L_o: roof live load before reductions, psf. Also the most; 12 is the least.
const BASIC: f64 = 20.0;
const LEAST: f64 = 12.0;

/// L_r = L_o·R_1·R_2 on plan, between 12 and 20 psf, L_o = 20 (ASCE 7, 4.8).
///
/// R_1 by the member's tributary area A_t on plan in ft², R_2 by the rise F in 12. R_2 was compared with printed
/// problems at F = 3, 4 and 6; the rest is from memory.
///
/// # Errors
/// When the area is below zero, or the slope.
pub fn roof_live(edition: Edition, slope: Slope, tributary: Area) -> Result<Worked<AreaLoad>, Refused> {
    if tributary.is_negative() || slope < Slope::LEVEL {
        return Err(Refused::because("the area a member carries and the slope must not be below zero"));
    }
    let (area, rise) = (tributary.to_square_feet(), slope.to_in_twelve());
    let (r1, r1_says) = if area <= 0.0 {
        (1.0, "R_1 = 1.0: no stick is taken to carry more than 200 ft²".to_owned())
    } else if area <= 200.0 {
        (1.0, format!("A_t = {} ft² ≤ 200: R_1 = 1.0", num(area, 0)))
    } else if area < 600.0 {
        let r1 = 1.2 - 0.001 * area;
        (r1, format!("R_1 = 1.2 − 0.001·A_t = 1.2 − 0.001·{} = {}", num(area, 0), num(r1, 3)))
    } else {
        (0.6, format!("A_t = {} ft² ≥ 600: R_1 = 0.6", num(area, 0)))
    };
    let (r2, r2_says) = if rise <= 4.0 {
        (1.0, format!("F = {} ≤ 4: R_2 = 1.0", num(rise, 2)))
    } else if rise < 12.0 {
        let r2 = 1.2 - 0.05 * rise;
        (r2, format!("R_2 = 1.2 − 0.05·F = 1.2 − 0.05·{} = {}", num(rise, 2), num(r2, 3)))
    } else {
        (0.6, format!("F = {} ≥ 12: R_2 = 0.6", num(rise, 2)))
    };
    let load = (BASIC * r1 * r2).clamp(LEAST, BASIC);
    let says = format!(
        "L_r = L_o·R_1·R_2 = 20·{}·{} = {} psf, kept from 12 to 20: {} psf",
        num(r1, 3),
        num(r2, 3),
        num(BASIC * r1 * r2, 1),
        num(load, 1)
    );
    let steps = vec![
        Step::new("R_1, for the area carried", r1_says, edition.recalled("4.8")),
        Step::new("R_2, for the slope", r2_says, edition.recalled("4.8")),
        Step::new("L_r, roof live load", says, edition.recalled("4.8")),
    ];
    Ok(Worked::new(AreaLoad::psf(load), steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn check(rise: f64, area: f64, expected: f64) {
        let load = roof_live(Edition::Asce7_16, Slope::in_twelve(rise), Area::square_feet(area)).unwrap();
        let found = load.value.to_psf();
        assert!((found - expected).abs() < 1e-9, "{rise} in 12, {area} ft²: {found} is not {expected}");
    }

    #[test]
    fn both_sides_of_every_branch() {
        check(3.0, 200.0, 20.0);
        check(3.0, 300.0, 18.0);
        check(3.0, 599.0, 20.0 * (1.2 - 0.599));
        check(3.0, 600.0, 12.0);
        check(4.0, 0.0, 20.0);
        check(5.0, 0.0, 19.0);
        check(11.0, 0.0, 13.0);
        check(12.0, 0.0, 12.0);
        // 20 · 0.8 · 0.7 = 11.2: held at 12.
        check(10.0, 400.0, 12.0);
    }

    #[test]
    fn refuses_what_is_below_zero() {
        assert!(roof_live(Edition::Asce7_16, Slope::in_twelve(-1.0), Area::ZERO).is_err());
        assert!(roof_live(Edition::Asce7_16, Slope::LEVEL, Area::square_feet(-1.0)).is_err());
    }
}
