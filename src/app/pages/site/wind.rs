//! The wind of the place.
use crate::app::components::{FieldRow, Of, caution, field_table, fold, known};
use crate::app::dom::{Tag, parts};
use crate::loads::WindExposure;
use crate::units::{Speed, show_speed};
use crate::{at, one_of};

const EXPOSURES: &[(WindExposure, &str)] = &[
    (WindExposure::B, WindExposure::B.words()),
    (WindExposure::C, WindExposure::C.words()),
    (WindExposure::D, WindExposure::D.words()),
];

const WIND: &[FieldRow] = &[
    FieldRow::new(
        "Wind speed",
        "V, the basic wind speed of the risk category, from the building authority",
        Of::Wind(at!(place.wind_speed)),
    ),
    FieldRow::new(
        "Exposure",
        "the ground the wind comes over, on the openest side; where in doubt the \
         authority says",
        one_of!(place.wind_exposure, EXPOSURES),
    ),
    FieldRow::new(
        "Hill factor, K_zt",
        "1 on level ground; more near a crest or ridge: the authority or an engineer says",
        Of::Between(at!(place.topography), [1.0, 3.0, 0.05]),
    ),
    FieldRow::new(
        "Ground above the sea",
        "off a map; 0 is the careful choice: thin air pushes less",
        Of::Elevation(at!(place.ground_elevation)),
    ),
    FieldRow::new(
        "Force coefficient, C_f",
        "of posts, beam and roof edge for wind along the wall: out of the \
         standard, by an engineer",
        Of::Number(at!(place.member_force_coefficient)),
    ),
];

/// Wind.
pub fn wind() -> Tag {
    let summary = known(|project| {
        let wind = project.place.wind_speed?;
        Some(show_speed(Speed::mph(wind.to_mph()), project.units).to_string())
    });
    fold("Wind", summary, false, || {
        parts()
            .child(caution(
                "Ask the local building authority for the speed, never a neighbour: it \
                 hangs on the risk category and the hill. Leave empty what you do not \
                 know.",
            ))
            .child(field_table(WIND))
    })
}
