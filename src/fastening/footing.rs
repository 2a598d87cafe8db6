//! A plain concrete footing: area on the soil, thickness, frost, and its weight against uplift.
use super::Refused;
use super::refused::above_zero;
use super::written::{inches, number, pounds};
use crate::units::{Area, AreaLoad, Density, Force, Length, UnitSystem, Volume, Weight};
use crate::wording;
use crate::working::{Citation, Step, Worked};

/// A footing seen from above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FootingShape {
    /// A disc.
    Round(Length),
    /// A square.
    Square(Length),
}

/// A footing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Footing {
    /// Its shape and width.
    pub shape: FootingShape,
    /// Its thickness.
    pub thickness: Length,
}

impl Footing {
    /// Width across.
    #[must_use]
    pub const fn width(&self) -> Length {
        match self.shape {
            FootingShape::Round(width) | FootingShape::Square(width) => width,
        }
    }

    /// Area on the soil.
    #[must_use]
    pub fn area(&self) -> Area {
        let square = self.width() * self.width();
        match self.shape {
            FootingShape::Round(_) => square * std::f64::consts::FRAC_PI_4,
            FootingShape::Square(_) => square,
        }
    }

    /// Volume of the concrete.
    #[must_use]
    pub fn volume(&self) -> Volume {
        self.area() * self.thickness
    }
}

/// Area a service load needs: A = P/(q − t·γ), so that footing and load together press no more than q.
///
/// `dug_out` takes off the weight of the soil the footing replaces, where that is counted.
///
/// # Errors
/// When the footing alone is too heavy for the soil, or a part is missing.
pub fn required_area(
    load: Force,
    soil: AreaLoad,
    thickness: Length,
    concrete: Density,
    dug_out: Option<Density>,
) -> Result<Worked<Area>, Refused> {
    above_zero("the load on the footing", load.to_pounds())?;
    above_zero("the bearing value of the soil", soil.to_psf())?;
    above_zero("the thickness of the footing", thickness.to_inches())?;
    let own = concrete.area_load(thickness) - dug_out.map_or(AreaLoad::ZERO, |soil| soil.area_load(thickness));
    let left = soil - own;
    if left <= AreaLoad::ZERO {
        return Err(Refused::because(format!(
            "The footing alone presses {:.0} psf; the soil carries {:.0} psf. Make it thinner or find better ground.",
            own.to_psf(),
            soil.to_psf()
        )));
    }
    let area = Area::square_feet(load.to_pounds() / left.to_psf());
    let says = format!(
        "A = P/(q − own weight) = {}/({:.0} − {}) = {:.2} ft²",
        pounds(load),
        soil.to_psf(),
        number(own.to_psf()),
        area.to_square_feet()
    );
    Ok(Worked::new(
        area,
        vec![Step::new("area of the footing", says, Citation::common_practice("P + own weight over q"))],
    ))
}

/// What a footing presses on the soil with, load and own weight.
///
/// # Errors
/// For a footing of no size.
pub fn bearing_pressure(footing: &Footing, load: Force, concrete: Density) -> Result<Worked<AreaLoad>, Refused> {
    above_zero("the width of the footing", footing.width().to_inches())?;
    above_zero("the thickness of the footing", footing.thickness.to_inches())?;
    let own = (concrete * footing.volume()).force();
    let area = footing.area().to_square_feet();
    let pressure = AreaLoad::psf((load + own).to_pounds() / area);
    let says =
        format!("(P + own weight)/A = ({} + {})/{area:.2} = {:.0} psf", pounds(load), pounds(own), pressure.to_psf());
    let citation = Citation::common_practice("P + own weight over A");
    Ok(Worked::new(pressure, vec![Step::new("pressure on the soil", says, citation)]))
}

/// Projection of a plain footing past the pier: no more than its thickness, which is at least 6 in (IRC R403.1.1).
///
/// # Errors
/// Where it is thinner, or reaches further.
pub fn projection(footing: &Footing, pier_width: Length) -> Result<Worked<Length>, Refused> {
    if footing.thickness < Length::inches(6.0) {
        return Err(Refused::because(format!(
            "A plain concrete footing is at least 6 in thick; this one is {} in.",
            inches(footing.thickness)
        )));
    }
    let past = (footing.width() - pier_width) * 0.5;
    if past > footing.thickness + Length::inches(1e-9) {
        return Err(Refused::because(format!(
            "The footing reaches {} in past the pier but is {} in thick: plain concrete may reach no further than it is thick.",
            inches(past),
            inches(footing.thickness)
        )));
    }
    let says = format!("{} in ≤ {} in thick", inches(past), inches(footing.thickness));
    let step = Step::new("projection past the pier", says, Citation::from_memory("IRC", "R403.1.1"));
    Ok(Worked::new(past, vec![step]))
}

/// How the bottom of a footing stands to frost.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Frost {
    /// Deep enough, or not known.
    pub is_deep_enough: Option<bool>,
    /// A sentence for the sheet.
    pub sentence: String,
}

/// The least depth of any footing below undisturbed ground.
const LEAST_DEPTH: Length = Length::inches(12.0);

/// The bottom of the footing against the local frost depth and the least 12 in (IRC R403.1.4, from memory).
///
/// A roof fixed to a house shares its movements: the exception for free-standing sheds does not fit.
#[must_use]
pub fn frost(bottom: Length, frost_depth: Option<Length>, units: UnitSystem) -> Frost {
    let say = |length| wording::length(length, units);
    let Some(depth) = frost_depth else {
        let is_deep_enough = (bottom < LEAST_DEPTH).then_some(false);
        let sentence = format!(
            "The frost depth is not given: ask the building department. Footings of a roof fixed to a house go as deep as \
             the house's, and at least {} below undisturbed ground.",
            say(LEAST_DEPTH)
        );
        return Frost { is_deep_enough, sentence };
    };
    let needed = depth.max(LEAST_DEPTH);
    if bottom >= needed {
        let sentence =
            format!("The footing's bottom at {} is below frost and the least depth of {}.", say(bottom), say(needed));
        return Frost { is_deep_enough: Some(true), sentence };
    }
    let sentence = format!(
        "The footing's bottom at {} is too high: it must lie {} below undisturbed ground (frost, and at least {}). A roof \
         fixed to a house that does not move lifts and cracks where its own footings freeze.",
        say(bottom),
        say(needed),
        say(LEAST_DEPTH)
    );
    Frost { is_deep_enough: Some(false), sentence }
}

/// Weight against uplift.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UpliftWeight {
    /// 0.6 of the wind's uplift.
    pub demand: Force,
    /// 0.6 of concrete and dead load.
    pub holds: Force,
}

impl UpliftWeight {
    /// Demand by what holds.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        self.demand / self.holds
    }
}

/// Weight of water, for concrete that may stand in it (from memory).
const WATER: Density = Density::pounds_per_cubic_foot(62.4);

/// 0.6·W_up against 0.6·(concrete + dead); soil friction is not counted. `submerged` is the concrete that may stand in
/// ground water: its buoyancy is taken off.
///
/// # Errors
/// When nothing holds, or the uplift is negative.
pub fn uplift_weight(
    wind_up: Force,
    concrete: Weight,
    dead: Force,
    submerged: Volume,
) -> Result<Worked<UpliftWeight>, Refused> {
    if wind_up.is_negative() || submerged.is_negative() {
        return Err(Refused::because("Uplift and the volume under water are zero or more."));
    }
    let buoyancy = (WATER * submerged).force();
    let weight = concrete.force() + dead - buoyancy;
    above_zero("the weight that holds the footing down", weight.to_pounds())?;
    let found = UpliftWeight { demand: wind_up * 0.6, holds: weight * 0.6 };
    let says = format!(
        "0.6·W = 0.6·{} = {} lb against 0.6·(concrete + dead − buoyancy) = 0.6·({} + {} − {}) = {} lb",
        pounds(wind_up),
        pounds(found.demand),
        pounds(concrete.force()),
        pounds(dead),
        pounds(buoyancy),
        pounds(found.holds)
    );
    let citation = Citation::from_memory("ASCE 7-16", "2.4.1, 0.6D + 0.6W");
    Ok(Worked::new(found, vec![Step::new("weight against uplift", says, citation)]))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;

    const CONCRETE: Density = Density::pounds_per_cubic_foot(150.0);

    fn square(width: f64, thickness: f64) -> Footing {
        Footing { shape: FootingShape::Square(Length::inches(width)), thickness: Length::inches(thickness) }
    }

    /// 4,125 lb on 1,500 psf, 10 in of 150 pcf = 125 psf: 4125/1375 = 3 ft². Its pressure is then exactly 1,500 psf.
    #[test]
    fn area_and_pressure_agree() {
        let area = |dug_out| {
            let thickness = Length::inches(10.0);
            required_area(Force::pounds(4125.0), AreaLoad::psf(1500.0), thickness, CONCRETE, dug_out).unwrap().value
        };
        assert!((area(None).to_square_feet() - 3.0).abs() < 1e-9);
        let side = (area(None).to_square_inches()).sqrt();
        let pressure = bearing_pressure(&square(side, 10.0), Force::pounds(4125.0), CONCRETE).unwrap().value;
        assert!((pressure.to_psf() - 1500.0).abs() < 1e-6);
        // Soil of 120 pcf taken off: 4125/(1500 − 25) ft².
        let less = area(Some(Density::pounds_per_cubic_foot(120.0))).to_square_feet();
        assert!((less - 4125.0 / 1475.0).abs() < 1e-9);
    }

    #[test]
    fn a_footing_can_be_too_heavy() {
        let thick = Length::feet(11.0);
        assert!(required_area(Force::pounds(1.0), AreaLoad::psf(1500.0), thick, CONCRETE, None).is_err());
        assert!(required_area(Force::ZERO, AreaLoad::psf(1500.0), Length::inches(10.0), CONCRETE, None).is_err());
        assert!(bearing_pressure(&square(0.0, 10.0), Force::ZERO, CONCRETE).is_err());
    }

    #[test]
    fn round_is_smaller_than_square() {
        let round = Footing { shape: FootingShape::Round(Length::inches(24.0)), thickness: Length::inches(12.0) };
        assert!((round.volume().to_cubic_feet() - std::f64::consts::PI).abs() < 1e-9);
        assert_eq!(square(24.0, 12.0).volume(), Volume::cubic_feet(4.0));
    }

    #[test]
    fn projection_and_thickness() {
        let past = |width: f64, thickness: f64| projection(&square(width, thickness), Length::inches(10.0));
        assert_eq!(past(26.0, 8.0).unwrap().value, Length::inches(8.0));
        assert!(past(27.0, 8.0).is_err());
        assert!(past(20.0, 5.9).is_err());
        assert!(past(20.0, 6.0).is_ok());
    }

    #[test]
    fn frost_depths() {
        let at = |bottom: f64, depth: Option<f64>| {
            frost(Length::inches(bottom), depth.map(Length::inches), UnitSystem::Imperial)
        };
        assert_eq!(at(48.0, Some(48.0)).is_deep_enough, Some(true));
        assert_eq!(at(47.0, Some(48.0)).is_deep_enough, Some(false));
        assert_eq!(at(10.0, Some(0.0)).is_deep_enough, Some(false));
        assert_eq!(at(12.0, Some(0.0)).is_deep_enough, Some(true));
        assert_eq!(at(48.0, None).is_deep_enough, None);
        assert_eq!(at(8.0, None).is_deep_enough, Some(false));
        assert!(at(48.0, None).sentence.contains("as deep as the house's"));
        assert!(at(36.0, Some(48.0)).sentence.contains("too high"));
    }

    /// 1000 lb up: 600 against 0.6·(654 + 400) = 632.4; with 4.36 ft³ of it under water 0.6·(1054 − 272.06).
    #[test]
    fn uplift() {
        let weight = |wet: f64| {
            uplift_weight(Force::pounds(1000.0), Weight::pounds(654.0), Force::pounds(400.0), Volume::cubic_feet(wet))
        };
        let dry = weight(0.0).unwrap().value;
        assert!((dry.ratio() - 600.0 / 632.4).abs() < 1e-9);
        assert!((weight(4.36).unwrap().value.holds.to_pounds() - 0.6 * (1054.0 - 272.064)).abs() < 1e-6);
        assert!(weight(-1.0).is_err());
        assert!(weight(100.0).is_err());
        assert!(uplift_weight(Force::pounds(-1.0), Weight::pounds(1.0), Force::ZERO, Volume::ZERO).is_err());
    }
}
