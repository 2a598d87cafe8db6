//! Every wind case of the main frame.
use super::super::{LeanTo, Place, Refused};
use super::WindCase;
use super::along_wall::level_minimum;
use super::overhang::overhang_case;
use super::side::side_cases;
use super::single_slope::single_slope_cases;
use crate::units::Force;
use crate::working::Worked;

/// Wind on the roof as the main frame feels it.
#[derive(Clone, Debug, PartialEq)]
pub struct Wind {
    /// The cases; each by itself.
    pub cases: Vec<WindCase>,
    /// The least level push square to the wall, in or out, on the roof's rise.
    pub least_across: Worked<Force>,
    /// What could not be worked out.
    pub not_judged: Vec<Refused>,
}

/// All wind cases: the roof as an overhang, both flows square to the wall, both flows along it.
///
/// # Errors
/// When the wind speed is missing or the sizes make no roof; a figure that does not hold for this roof stands in
/// [`Wind::not_judged`].
pub fn wind_cases(place: &Place, lean_to: &LeanTo) -> Result<Wind, Refused> {
    let mut cases = vec![overhang_case(place, lean_to)?];
    let mut not_judged = Vec::new();
    for found in [single_slope_cases(place, lean_to), side_cases(place, lean_to)] {
        match found {
            Ok(found) => cases.extend(found),
            Err(refused) => not_judged.push(refused),
        }
    }
    let rise = lean_to.roof_length().rise(lean_to.slope);
    Ok(Wind { cases, least_across: level_minimum(place.edition, rise * lean_to.width), not_judged })
}
