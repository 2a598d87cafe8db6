//! The snow of the place, and the roof above that sheds and drifts it.
use crate::app::components::{Choices, FieldRow, NUMBER, Of, caution, entry_field, field_table, fold, known, word};
use crate::app::dom::{Tag, parts};
use crate::app::{Lens, use_store};
use crate::loads::{Edition, RiskCategory, SnowExposure, Terrain, Thermal};
use crate::project::{Project, Soffit};
use crate::units::show_area_load;
use crate::wording;
use crate::{at, one_of};

const EDITIONS: &[(Edition, &str)] = &[(Edition::Asce7_16, "ASCE 7-16"), (Edition::Asce7_22, "ASCE 7-22")];

const RISKS: &[(RiskCategory, &str)] =
    &[(RiskCategory::I, "I"), (RiskCategory::II, "II"), (RiskCategory::III, "III"), (RiskCategory::IV, "IV")];

const TERRAINS: &[(Terrain, &str)] = &[
    (Terrain::B, Terrain::B.words()),
    (Terrain::C, Terrain::C.words()),
    (Terrain::D, Terrain::D.words()),
    (Terrain::AboveTreeLine, Terrain::AboveTreeLine.words()),
    (Terrain::AlaskaTreeless, Terrain::AlaskaTreeless.words()),
];

const EXPOSURES: &[(SnowExposure, &str)] = &[
    (SnowExposure::Full, SnowExposure::Full.words()),
    (SnowExposure::Partial, SnowExposure::Partial.words()),
    (SnowExposure::Sheltered, SnowExposure::Sheltered.words()),
];

const SNOW: &[FieldRow] = &[
    FieldRow::new(
        "Ground snow",
        "p_g, from the building authority; 0 where none falls. By ASCE 7-22 that of the risk category, so another standard empties it",
        Of::AreaLoad(at!(place.ground_snow)),
    ),
    FieldRow::new(
        "Standard worked by",
        "the one the local code adopts: ground snow of one is not that of the other",
        Of::Choice(Choices {
            path: "place.edition",
            words: || EDITIONS.iter().map(|(_, word)| *word).collect(),
            see: |project| EDITIONS.iter().position(|(value, _)| *value == project.place.edition),
            put: |project, place| {
                if let Some((edition, _)) = EDITIONS.get(place) {
                    project.place.work_by(*edition);
                }
            },
        }),
    ),
    FieldRow::when(
        "Winter wind, W2",
        "from the standard’s map: the share of winter with wind over 10 mph (4.5 m/s)",
        Of::Number(at!(place.winter_wind)),
        |project| project.place.edition == Edition::Asce7_22,
    ),
    FieldRow::new(
        "Risk category",
        "I sheds and farm buildings, II houses and most else, III crowds, IV \
         needed in an emergency",
        one_of!(place.risk, RISKS),
    ),
    FieldRow::new("The ground around", "as it will stay", one_of!(place.terrain, TERRAINS)),
    FieldRow::new("Shelter of the lean-to", "how the wind reaches its roof", one_of!(place.snow_exposure, EXPOSURES)),
];

/// Snow.
pub fn snow() -> Tag {
    let summary = known(|project| {
        let snow = project.place.ground_snow?;
        Some(format!("ground {}", show_area_load(snow, project.units).without_zeros()))
    });
    fold("Snow", summary, false, || {
        parts()
            .child(caution(
                "Ask the local building authority for these, never a neighbour: a hill \
                 away they differ. Leave empty what you do not know.",
            ))
            .child(field_table(SNOW))
    })
}

/// What may be warm under the roof above; a factor of the user's own stands last.
const WARMTHS: [Thermal; 6] = [
    Thermal::Heated,
    Thermal::JustAboveFreezing,
    Thermal::OpenAir,
    Thermal::BelowFreezing,
    Thermal::HeatedGreenhouse,
    // That of an unheated building, the careful choice, is put in to begin with.
    Thermal::Stated(1.2),
];

const WARMTH: Choices = Choices {
    path: "above.thermal",
    words: || WARMTHS.iter().map(|warmth| warmth.words()).collect(),
    see: |project| {
        let now = std::mem::discriminant(&project.above.thermal);
        WARMTHS.iter().position(|warmth| std::mem::discriminant(warmth) == now)
    },
    put: |project, place| {
        if let Some(warmth) = WARMTHS.get(place) {
            project.above.thermal = *warmth;
        }
    },
};

const ABOVE: &[FieldRow] = &[
    FieldRow::new(
        "Eave to ridge",
        "level, not along the slope; of the side over the lean-to",
        Of::Length(at!(above.eave_to_ridge)),
    ),
    FieldRow::new(
        "The whole roof, square to the wall",
        "level, eave to eave: the snow that can blow down",
        Of::Length(at!(above.whole_length)),
    ),
    // Where it is sloped its slope is asked with the eave.
    FieldRow::when("Slope of the roof above", "", Of::Slope(at!(site.upper_pitch)), |project| {
        project.site.soffit == Soffit::Level
    }),
    FieldRow::new(
        "It sheds here",
        "its eave runs along this wall; off for a gable wall",
        Of::Toggle(at!(above.sheds_here)),
    ),
    FieldRow::new("It is slippery", "metal, slate, glass, smooth membrane", Of::Toggle(at!(above.slippery))),
    FieldRow::new("Snow guards hold its snow", "built to hold it, not a gutter", Of::Toggle(at!(above.snow_guards))),
    FieldRow::new(
        "Under it, it is",
        "a cold vented roof over good insulation counts as just above freezing (from memory)",
        Of::Choice(WARMTH),
    ),
];

const EXPOSED: &[FieldRow] =
    &[FieldRow::new("Shelter of the roof above", "how the wind reaches it", one_of!(above.exposure, EXPOSURES))];

/// C_t where the user states it.
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
pub fn roof_above() -> Tag {
    let store = use_store();
    let is_stated = store.slice(|project| matches!(project.above.thermal, Thermal::Stated(_)));
    let summary = known(|project| {
        let level = project.above.eave_to_ridge?;
        Some(format!("{} from eave to ridge", wording::length(level, project.units)))
    });
    fold("The roof above", summary, false, || {
        parts()
            .child(word("Its snow slides down on the lean-to and blows into the corner at the wall."))
            .child(field_table(ABOVE))
            .shown(
                move || is_stated.get(),
                move || {
                    entry_field(NUMBER.entry(&stated()), "C_t".into())
                        .hint("0.8 to 1.5, from the standard’s table")
                        .decimal_keys()
                },
            )
            .child(field_table(EXPOSED))
    })
}
