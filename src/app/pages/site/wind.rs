//! The wind of the place.
use crate::app::components::{
    Caution, ELEVATION, EntryField, Fold, NUMBER, NumberField, OneOf, WIND_SPEED, known, listed,
};
use crate::lens;
use crate::loads::WindExposure;
use crate::units::{Speed, show_speed};
use leptos::prelude::*;

const EXPOSURES: &[(WindExposure, &str)] = &[
    (WindExposure::B, "B: town, suburb, wood"),
    (WindExposure::C, "C: open country"),
    (WindExposure::D, "D: flat and open, water"),
];

/// Wind.
#[component]
pub fn Wind() -> impl IntoView {
    let summary = known(|project| {
        let wind = project.place.wind_speed?;
        Some(show_speed(Speed::mph(wind.to_mph()), project.units).to_string())
    });
    view! {
        <Fold title="Wind" summary>
            <Caution text="Ask the local building authority for the speed, never a neighbour: it hangs on the risk category and the hill. Leave empty what you do not know."/>
            <EntryField
                entry=WIND_SPEED.open(&lens!(place.wind_speed)) label="Wind speed" decimal_keys=true
                hint="V, the basic wind speed of the risk category, from the building authority"
            />
            <OneOf
                of=listed(&lens!(place.wind_exposure), EXPOSURES) label="Exposure"
                hint="the ground the wind comes over, on the openest side; where in doubt the authority says"
            />
            <NumberField
                field=lens!(place.topography) label="Hill factor, K_zt" least=1.0 most=3.0 step=0.05
                hint="1 on level ground; more near a crest or ridge: the authority or an engineer says"
            />
            <EntryField
                entry=ELEVATION.entry(&lens!(place.ground_elevation)) label="Ground above the sea"
                hint="off a map; 0 is the careful choice: thin air pushes less"
            />
            <EntryField
                entry=NUMBER.open(&lens!(place.member_force_coefficient)) label="Force coefficient, C_f" decimal_keys=true
                hint="of posts, beam and roof edge for wind along the wall: the standard’s, by an engineer"
            />
        </Fold>
    }
}
