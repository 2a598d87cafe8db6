//! Earthquake: base shear of the timber frame, when the user gives the site's values.
use super::say::{num, pounds, psf};
use super::{DesignCategory, Edition, Refused, Seismic};
use crate::units::{Area, AreaLoad, Force, Length};
use crate::working::{Step, Worked};

/// R of a timber frame in ASCE 7 Table 12.2-1.
const RESPONSE: f64 = 1.5;
/// Tallest timber frame in categories B and C, feet.
const TALLEST: f64 = 35.0;
/// Least C_s.
const LEAST: f64 = 0.01;

/// What to read before earthquakes are left out.
pub const SEISMIC_EXEMPTION: &str = "Test first whether ASCE 7, 11.1.2 exempts the dwelling: some small one- and \
two-family houses need no earthquake design. If it does not, earthquakes may not be left out.";

/// What an earthquake shakes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeismicWeight {
    /// Dead load of roof and frame.
    pub dead: Force,
    /// p_f of the lean-to's roof, for the share of snow that counts.
    pub flat_snow: AreaLoad,
    /// Roof on plan.
    pub roof: Area,
}

/// The share of the flat-roof snow that an earthquake shakes: 20 % where p_f is above 30 psf (7-16), 15 % where it is
/// above 45 psf (7-22).
#[must_use]
pub fn snow_share(edition: Edition, flat_snow: AreaLoad) -> Worked<AreaLoad> {
    let (limit, share) = match edition {
        Edition::Asce7_16 => (30.0, 0.20),
        Edition::Asce7_22 => (45.0, 0.15),
    };
    let (load, says) = if flat_snow.to_psf() > limit {
        let load = flat_snow * share;
        let says = format!("p_f = {} > {} psf: {}·p_f = {}", psf(flat_snow), num(limit, 0), num(share, 2), psf(load));
        (load, says)
    } else {
        (AreaLoad::ZERO, format!("p_f = {} ≤ {} psf: no snow counts", psf(flat_snow), num(limit, 0)))
    };
    let citation = edition.seen("12.7.2, in a trade magazine on the snow changes");
    Worked::new(load, vec![Step::new("snow shaken along", says, citation)])
}

/// In category A every part takes a level force of 1 % of its dead load, and nothing else (ASCE 7, 1.4.2 and 11.7, from memory).
fn in_category_a(edition: Edition, weight: &SeismicWeight) -> Worked<Force> {
    let force = weight.dead * LEAST;
    let says = format!("F = 0.01·W = 0.01·{} = {}: category A asks no more", pounds(weight.dead), pounds(force));
    Worked::new(force, vec![Step::new("F, level force in category A", says, edition.recalled("1.4.2 and 11.7"))])
}

/// V = C_s·W with C_s = S_DS·I_e/R ≥ 0.01 and R = 1.5, at strength level; W dead load and the share of snow.
///
/// The short-period C_s, which no period lowers here. ASCE 7 Table 12.2-1 and 12.8.1, from memory: timber frames up to
/// 35 ft in categories B and C, not permitted in D to F.
///
/// # Errors
/// In a category outside those, above that height, or for values that make no sense.
pub fn base_shear(
    edition: Edition,
    seismic: &Seismic,
    height: Length,
    weight: &SeismicWeight,
) -> Result<Worked<Force>, Refused> {
    check_limits(seismic, height)?;
    if seismic.category == DesignCategory::A {
        return Ok(in_category_a(edition, weight));
    }
    let share = snow_share(edition, weight.flat_snow);
    let shaken = weight.dead + share.value * weight.roof;
    let coefficient = (seismic.s_ds * seismic.importance / RESPONSE).max(LEAST);
    let shear = shaken * coefficient;
    let mut steps = share.steps;
    steps.push(Step::new(
        "W, weight shaken",
        format!("W = D + snow = {} + {} = {}", pounds(weight.dead), pounds(share.value * weight.roof), pounds(shaken)),
        edition.recalled("12.7.2"),
    ));
    let says = format!(
        "C_s = S_DS·I_e/R ≥ 0.01: {}·{}/1.5 → {}",
        num(seismic.s_ds, 3),
        num(seismic.importance, 2),
        num(coefficient, 3)
    );
    steps.push(Step::new("C_s, response coefficient", says, edition.recalled("12.8.1.1, Table 12.2-1 timber frames")));
    let says = format!("V = C_s·W = {}·{} = {}", num(coefficient, 3), pounds(shaken), pounds(shear));
    steps.push(Step::new("V, base shear", says, edition.recalled("12.8-1")));
    Ok(Worked::new(shear, steps))
}

fn check_limits(seismic: &Seismic, height: Length) -> Result<(), Refused> {
    let wrong = |what: &str| Err(Refused::because(what));
    match seismic.category {
        DesignCategory::A => return Ok(()),
        DesignCategory::B | DesignCategory::C => {}
        DesignCategory::D | DesignCategory::E | DesignCategory::F => {
            return wrong(
                "timber frames are not permitted to resist earthquakes in categories D to F (ASCE 7 Table 12.2-1); \
                 ask an engineer for walls or braces that are",
            );
        }
    }
    let is_number = |value: f64| value.is_finite() && value > 0.0;
    if !is_number(seismic.s_ds) || !is_number(seismic.importance) {
        return wrong("S_DS and I_e must be above zero; the local building authority gives them");
    }
    if height > Length::feet(TALLEST) {
        return wrong("a timber frame that resists earthquakes is at most 35 ft tall (ASCE 7 Table 12.2-1)");
    }
    Ok(())
}

/// E_v = 0.2·S_DS·D (ASCE 7, 12.4.2.2, from memory); none in category A, whose level force stands alone (1.4.1).
///
/// # Errors
/// When S_DS is not a number above zero.
pub fn vertical_effect(edition: Edition, seismic: &Seismic, dead: Force) -> Result<Worked<Force>, Refused> {
    if seismic.category == DesignCategory::A {
        let step = Step::new("E_v, earthquake downward", "none in category A", edition.recalled("1.4.1"));
        return Ok(Worked::new(Force::ZERO, vec![step]));
    }
    if !(seismic.s_ds.is_finite() && seismic.s_ds > 0.0) {
        return Err(Refused::because("S_DS must be above zero; the local building authority gives it"));
    }
    let force = dead * (0.2 * seismic.s_ds);
    let says = format!("E_v = 0.2·S_DS·D = 0.2·{}·{} = {}", num(seismic.s_ds, 3), pounds(dead), pounds(force));
    Ok(Worked::new(force, vec![Step::new("E_v, earthquake downward", says, edition.recalled("12.4.2.2"))]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    fn site(category: DesignCategory) -> Seismic {
        Seismic { s_ds: 0.30, category, importance: 1.0 }
    }

    fn weight(psf: f64) -> SeismicWeight {
        SeismicWeight { dead: Force::pounds(3000.0), flat_snow: AreaLoad::psf(psf), roof: Area::square_feet(300.0) }
    }

    fn shear(edition: Edition, psf: f64) -> f64 {
        base_shear(edition, &site(DesignCategory::C), Length::feet(12.0), &weight(psf)).unwrap().value.to_pounds()
    }

    #[test]
    fn by_hand() {
        // C_s = 0.30/1.5 = 0.2. Snow counts only above the limit, then 0.2·40·300 = 2400 lb, or 0.15·50·300 = 2250 lb.
        assert!((shear(Edition::Asce7_16, 30.0) - 600.0).abs() < 1e-9);
        assert!((shear(Edition::Asce7_16, 40.0) - 0.2 * 5400.0).abs() < 1e-9);
        assert!((shear(Edition::Asce7_22, 45.0) - 600.0).abs() < 1e-9);
        assert!((shear(Edition::Asce7_22, 50.0) - 0.2 * 5250.0).abs() < 1e-9);
        let down = vertical_effect(Edition::Asce7_16, &site(DesignCategory::C), Force::pounds(3000.0)).unwrap();
        assert!((down.value.to_pounds() - 180.0).abs() < 1e-9);
    }

    #[test]
    fn a_floor_under_the_coefficient() {
        let weak = Seismic { s_ds: 0.001, ..site(DesignCategory::B) };
        let found = base_shear(Edition::Asce7_16, &weak, Length::feet(12.0), &weight(0.0)).unwrap();
        assert!((found.value.to_pounds() - 30.0).abs() < 1e-9);
    }

    /// 0.01·3000 = 30 lb whatever snow lies and however tall; nothing down.
    #[test]
    fn category_a_by_hand() {
        let site = Seismic { s_ds: 0.0, ..site(DesignCategory::A) };
        let of = |psf: f64, tall: f64| base_shear(Edition::Asce7_16, &site, Length::feet(tall), &weight(psf)).unwrap();
        assert_eq!([of(0.0, 12.0), of(60.0, 40.0)].map(|made| made.value), [Force::pounds(30.0); 2]);
        let down = vertical_effect(Edition::Asce7_22, &site, Force::pounds(3000.0)).unwrap();
        assert_eq!(down.value, Force::ZERO);
    }

    #[test]
    fn outside_the_limits() {
        let refused = |seismic: Seismic, height: f64| {
            base_shear(Edition::Asce7_16, &seismic, Length::feet(height), &weight(0.0)).unwrap_err().to_string()
        };
        assert!(refused(site(DesignCategory::D), 12.0).contains("not permitted"));
        assert!(refused(site(DesignCategory::B), 35.1).contains("35 ft"));
        assert!(refused(Seismic { s_ds: 0.0, ..site(DesignCategory::B) }, 12.0).contains("S_DS"));
        assert!(base_shear(Edition::Asce7_16, &site(DesignCategory::B), Length::feet(35.0), &weight(0.0)).is_ok());
    }
}
