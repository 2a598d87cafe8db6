//! The snow of the place, and the roof above that sheds and drifts it.
use crate::app::components::{
    AREA_LOAD, Caution, EntryField, Fold, LENGTH, NUMBER, OneOf, SlopeField, Toggle, known, listed,
};
use crate::app::{Lens, use_store};
use crate::lens;
use crate::loads::{Edition, RiskCategory, SnowExposure, Terrain, Thermal};
use crate::project::{Project, Soffit};
use crate::units::show_area_load;
use crate::wording;
use leptos::prelude::*;

const EDITIONS: &[(Edition, &str)] = &[(Edition::Asce7_16, "ASCE 7-16"), (Edition::Asce7_22, "ASCE 7-22")];

const RISKS: &[(RiskCategory, &str)] =
    &[(RiskCategory::I, "I"), (RiskCategory::II, "II"), (RiskCategory::III, "III"), (RiskCategory::IV, "IV")];

const TERRAINS: &[(Terrain, &str)] = &[
    (Terrain::B, "B: town, suburb, wood"),
    (Terrain::C, "C: open country"),
    (Terrain::D, "D: flat and open, water"),
    (Terrain::AboveTreeLine, "above the tree line, windswept"),
    (Terrain::AlaskaTreeless, "Alaska, without trees"),
];

const EXPOSURES: &[(SnowExposure, &str)] = &[
    (SnowExposure::Full, "no shelter on any side"),
    (SnowExposure::Partial, "in between"),
    (SnowExposure::Sheltered, "close among conifers or taller buildings"),
];

/// Snow.
#[component]
pub fn Snow() -> impl IntoView {
    let store = use_store();
    let is_late = store.slice(|project| project.place.edition == Edition::Asce7_22);
    let summary = known(|project| {
        let snow = project.place.ground_snow?;
        Some(format!("ground {}", show_area_load(snow, project.units).without_zeros()))
    });
    view! {
        <Fold title="Snow" summary>
            <Caution text="Ask the local building authority for these, never a neighbour: a hill away they differ. Leave empty what you do not know."/>
            <EntryField
                entry=AREA_LOAD.open(&lens!(place.ground_snow)) label="Ground snow" decimal_keys=true
                hint="p_g, from the building authority; 0 where none falls"
            />
            <OneOf
                of=listed(&lens!(place.edition), EDITIONS) label="Standard worked by"
                hint="the one the local code adopts: ground snow of one is not that of the other"
            />
            <Show when=move || is_late.get()>
                <EntryField
                    entry=NUMBER.open(&lens!(place.winter_wind)) label="Winter wind, W2" decimal_keys=true
                    hint="from the standard’s map: the share of winter with wind over 10 mph (4.5 m/s)"
                />
            </Show>
            <OneOf
                of=listed(&lens!(place.risk), RISKS) label="Risk category"
                hint="I sheds and farm buildings, II houses and most else, III crowds, IV needed in an emergency"
            />
            <OneOf of=listed(&lens!(place.terrain), TERRAINS) label="The ground around" hint="as it will stay"/>
            <OneOf of=listed(&lens!(place.snow_exposure), EXPOSURES) label="Shelter of the lean-to" hint="how the wind reaches its roof"/>
        </Fold>
    }
}

/// What may be warm under the roof above, but for a factor the user states.
#[derive(Clone, Copy, PartialEq)]
enum Warmth {
    Heated,
    JustAboveFreezing,
    OpenAir,
    BelowFreezing,
    HeatedGreenhouse,
    Stated,
}

const WARMTHS: &[(Warmth, &str)] = &[
    (Warmth::Heated, "heated"),
    (Warmth::JustAboveFreezing, "kept just above freezing"),
    (Warmth::OpenAir, "unheated, or a cold vented roof"),
    (Warmth::BelowFreezing, "kept below freezing"),
    (Warmth::HeatedGreenhouse, "greenhouse, always heated"),
    (Warmth::Stated, "by a factor of your own, C_t"),
];

/// C_t that is put in when the user wants to state one: that of an unheated building, the careful choice.
const UNHEATED: f64 = 1.2;

fn warmth() -> Lens<Warmth> {
    Lens::new(
        "above.thermal",
        |project: &Project| match project.above.thermal {
            Thermal::Heated => Warmth::Heated,
            Thermal::JustAboveFreezing => Warmth::JustAboveFreezing,
            Thermal::OpenAir => Warmth::OpenAir,
            Thermal::BelowFreezing => Warmth::BelowFreezing,
            Thermal::HeatedGreenhouse => Warmth::HeatedGreenhouse,
            Thermal::Stated(_) => Warmth::Stated,
        },
        |project: &mut Project, warmth| {
            project.above.thermal = match warmth {
                Warmth::Heated => Thermal::Heated,
                Warmth::JustAboveFreezing => Thermal::JustAboveFreezing,
                Warmth::OpenAir => Thermal::OpenAir,
                Warmth::BelowFreezing => Thermal::BelowFreezing,
                Warmth::HeatedGreenhouse => Thermal::HeatedGreenhouse,
                Warmth::Stated => Thermal::Stated(UNHEATED),
            };
        },
    )
}

fn stated() -> Lens<f64> {
    Lens::maybe(
        "above.thermal_factor",
        |project: &Project| match project.above.thermal {
            Thermal::Stated(factor) => Some(factor),
            _ => None,
        },
        |project: &mut Project, factor| project.above.thermal = Thermal::Stated(factor),
    )
}

/// The roof above.
#[component]
pub fn RoofAbove() -> impl IntoView {
    let store = use_store();
    let is_level = store.slice(|project| project.site.soffit == Soffit::Level);
    let is_stated = store.slice(|project| matches!(project.above.thermal, Thermal::Stated(_)));
    let summary = known(|project| {
        let level = project.above.eave_to_ridge?;
        Some(format!("ridge {} in from its eave", wording::length(level, project.units)))
    });
    view! {
        <Fold title="The roof above" summary>
            <p class="page__word">"Its snow slides down on the lean-to and blows into the corner at the wall."</p>
            <EntryField
                entry=LENGTH.open(&lens!(above.eave_to_ridge)) label="Eave to ridge"
                hint="level, not along the slope; of the side over the lean-to" is_length=true
            />
            <EntryField
                entry=LENGTH.open(&lens!(above.whole_length)) label="The whole roof, square to the wall"
                hint="level, eave to eave: the snow that can blow down" is_length=true
            />
            <Show when=move || is_level.get()>
                <SlopeField field=lens!(site.upper_pitch) label="Slope of the roof above"/>
            </Show>
            <Toggle field=lens!(above.sheds_here) label="It sheds here" hint="its eave runs along this wall; off for a gable wall"/>
            <Toggle field=lens!(above.slippery) label="It is slippery" hint="metal, slate, glass, smooth membrane"/>
            <Toggle field=lens!(above.snow_guards) label="Snow guards hold its snow" hint="built to hold it, not a gutter"/>
            <OneOf of=listed(&warmth(), WARMTHS) label="Under it, it is" hint="warmth melts its snow; the lean-to itself is open air"/>
            <Show when=move || is_stated.get()>
                <EntryField entry=NUMBER.entry(&stated()) label="C_t" decimal_keys=true hint="0.8 to 1.5, from the standard’s table"/>
            </Show>
            <OneOf of=listed(&lens!(above.exposure), EXPOSURES) label="Shelter of the roof above" hint="how the wind reaches it"/>
        </Fold>
    }
}
