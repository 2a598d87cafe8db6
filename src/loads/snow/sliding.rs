//! Snow that slides off the upper roof onto the lean-to.
use super::super::say::{feet, named, num, plf, psf};
use super::super::{LeanTo, Place, Refused, Spread};
use super::balanced::flat_snow;
use crate::units::{AreaLoad, Length, LineLoad, Slope};
use crate::unmade::Input;
use crate::working::{Citation, Step, Worked};

/// How far out from the upper eave slid snow spreads, feet.
const STRIP: f64 = 15.0;

/// Slid snow on the lean-to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlidSnow {
    /// All of it along a foot of the upper eave, before any falls past the lean-to.
    pub along_eave: LineLoad,
    /// Its load on plan.
    pub load: AreaLoad,
    /// Where its strip begins, from the wall.
    pub from: Length,
    /// Where its strip ends, from the wall.
    pub to: Length,
}

impl SlidSnow {
    /// Its load on the roof.
    #[must_use]
    pub fn spread(&self) -> Spread {
        Spread::uniform(self.from, self.to, self.load)
    }
}

/// 0.4·p_f·W a foot of eave, spread over 15 ft out from the upper eave (ASCE 7, 7.9, from memory); p_f is that of the
/// upper roof. What would land beyond the lean-to's eave, under the upper overhang or in a gap is not on it. The roof
/// is taken to slide unless it has snow guards.
///
/// # Errors
/// When the ground snow is missing, or a factor of the upper roof.
pub fn sliding_snow(place: &Place, lean_to: &LeanTo) -> Result<Worked<Option<SlidSnow>>, Refused> {
    lean_to.check_sizes()?;
    if let Some((says, citation)) = stays_put(place, lean_to) {
        return Ok(Worked::new(None, vec![Step::new("slid snow", says, citation)]));
    }
    let upper = &lean_to.upper;
    let flat = flat_snow(place, upper.exposure, upper.thermal)?;
    let width = upper.eave_to_ridge.ok_or_else(|| {
        Refused::missing(
            Input::EaveToRidge,
            "the distance from the eave above to its ridge is missing; slid snow needs it",
        )
    })?;
    let along_eave = flat.value * width.length() * 0.4;
    let load = along_eave / Length::feet(STRIP);
    let mut steps: Vec<Step> = named("upper roof", flat.steps).collect();
    let says = format!(
        "0.4·p_f·W = 0.4·{}·{} = {}; over 15 ft: {}",
        num(flat.value.to_psf(), 1),
        num(width.length().to_feet(), 2),
        plf(along_eave),
        psf(load)
    );
    steps.push(Step::new("slid snow of the upper roof", says, place.edition.recalled("7.9")));
    let eave = upper.overhang.length() - lean_to.gap.map_or(Length::ZERO, |gap| gap.length());
    let from = eave.max(Length::ZERO);
    let to = (eave + Length::feet(STRIP)).min(lean_to.roof_length().length());
    if load <= AreaLoad::ZERO || to <= from {
        let says = "none of it lands on the lean-to";
        steps.push(Step::new("slid snow on the lean-to", says, place.edition.recalled("7.9")));
        return Ok(Worked::new(None, steps));
    }
    let says =
        format!("15 ft from the upper eave, as far as the lean-to lies under it: from {} to {}", feet(from), feet(to));
    steps.push(Step::new("strip of slid snow", says, place.edition.recalled("7.9")));
    Ok(Worked::new(Some(SlidSnow { along_eave, load, from, to }), steps))
}

/// Why nothing slides, if so.
fn stays_put(place: &Place, lean_to: &LeanTo) -> Option<(&'static str, Citation)> {
    let upper = &lean_to.upper;
    let steep = if upper.slippery { Slope::in_twelve(0.25) } else { Slope::in_twelve(2.0) };
    if !upper.sheds_here {
        Some(("the upper roof sheds to other sides", Citation::common_practice("a gable wall gets no slid snow")))
    } else if upper.snow_guards {
        Some(("snow guards hold the upper roof's snow", Citation::common_practice("snow guards hold the snow")))
    } else if upper.slope <= steep {
        Some((
            "the upper roof is too flat to slide: slippery up to 1/4 in 12, other up to 2 in 12",
            place.edition.recalled("7.9"),
        ))
    } else {
        None
    }
}
