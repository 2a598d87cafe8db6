//! What the footings stand on, and earthquakes.
use crate::app::cached::text_of;
use crate::app::components::{
    FieldRow, NOT_KNOWN, NUMBER, Of, caution, entry_field, field_table, fold, known, listed, listed_field, number_field,
};
use crate::app::dom::{Tag, live, parts, tag};
use crate::app::{Lens, use_store};
use crate::at;
use crate::fastening::{NO_PRESUMPTIVE_VALUE, soil, soil_table};
use crate::loads::{DesignCategory, RiskCategory, Seismic};
use crate::project::Project;
use crate::units::show_area_load;
use crate::wording;

const SOIL: &[FieldRow] = &[FieldRow::new(
    "Soil under the footings",
    "dig a hole as deep as they go and look",
    Of::Key(at!(ground.soil), soils),
)];

const FROST: &[FieldRow] = &[
    FieldRow::new(
        "Frost depth",
        "from the building authority: how deep footings must go",
        Of::Length(at!(ground.frost_depth)),
    ),
    FieldRow::new(
        "It heaves when it freezes",
        "silt and wet clay do; clean gravel does not",
        Of::Toggle(at!(ground.is_frost_prone)),
    ),
];

fn soils() -> Vec<(String, String)> {
    let all = soil_table().iter().map(|soil| (soil.key.clone(), soil.name.clone()));
    [(String::new(), NOT_KNOWN.to_owned())].into_iter().chain(all).collect()
}

/// Soil and frost.
pub fn soil_and_frost() -> Tag {
    let summary = known(|project| {
        let depth = project.ground.frost_depth?;
        Some(format!("frost {} deep", wording::length(depth, project.units)))
    });
    fold("Soil and frost", summary, false, || {
        parts().child(field_table(SOIL)).child(about_soil()).child(field_table(FROST))
    })
}

/// What the soil carries and where that stands.
fn about_soil() -> Tag {
    let store = use_store();
    live(move || {
        let project = store.project();
        let text = match soil(&project.ground.soil) {
            Ok(soil) => {
                let carries = show_area_load(soil.vertical, project.units).without_zeros();
                format!("{}: carries {carries} where nobody has tested it ({}).", soil.name, soil.source)
            }
            Err(_) => NO_PRESUMPTIVE_VALUE.to_owned(),
        };
        tag("p").class("source").child(text)
    })
}

const CATEGORIES: &[(DesignCategory, &str)] = &[
    (DesignCategory::A, "A"),
    (DesignCategory::B, "B"),
    (DesignCategory::C, "C"),
    (DesignCategory::D, "D"),
    (DesignCategory::E, "E"),
    (DesignCategory::F, "F"),
];

/// I_e by risk category: ASCE 7 Table 1.5-2, from memory.
const fn importance(risk: RiskCategory) -> f64 {
    match risk {
        RiskCategory::I | RiskCategory::II => 1.0,
        RiskCategory::III => 1.25,
        RiskCategory::IV => 1.5,
    }
}

/// S_DS; the first value brings the rest along, the category as strict as there is until it is chosen.
fn acceleration() -> Lens<Option<f64>> {
    Lens::new(
        "place.seismic.s_ds",
        |project: &Project| project.place.seismic.map(|seismic| seismic.s_ds),
        |project: &mut Project, s_ds: Option<f64>| {
            let place = &mut project.place;
            let (category, importance) = (DesignCategory::F, importance(place.risk));
            let before = place.seismic.unwrap_or(Seismic { s_ds: 0.0, category, importance });
            place.seismic = s_ds.map(|s_ds| Seismic { s_ds, ..before });
        },
    )
}

fn of_seismic<T: 'static>(
    name: &str,
    get: impl Fn(&Seismic) -> T + Send + Sync + 'static,
    set: impl Fn(&mut Seismic, T) + Send + Sync + 'static,
) -> Lens<T> {
    Lens::maybe(
        format!("place.seismic.{name}"),
        move |project: &Project| project.place.seismic.as_ref().map(&get),
        move |project: &mut Project, value| {
            if let Some(seismic) = project.place.seismic.as_mut() {
                set(seismic, value);
            }
        },
    )
}

/// Earthquake.
pub fn earthquake() -> Tag {
    let store = use_store();
    let is_given = store.slice(|project| project.place.seismic.is_some());
    let summary = text_of(move || if is_given.get() { "reckoned with" } else { "left out" }.to_owned());
    let category =
        || of_seismic("category", |seismic| seismic.category, |seismic, category| seismic.category = category);
    let importance =
        || of_seismic("importance", |seismic| seismic.importance, |seismic, value| seismic.importance = value);
    fold("Earthquake", summary, false, || {
        parts()
            .child(caution(
                "Left out until you type a value. Where the authority asks for earthquake \
                 design, it may not be left out.",
            ))
            .child(
                entry_field(NUMBER.open(&acceleration()), "Acceleration, S_DS".into())
                    .hint("a share of gravity, from the authority or the map; empty leaves earthquakes out")
                    .decimal_keys(),
            )
            .shown(
                move || is_given.get(),
                move || {
                    parts()
                        .child(listed_field(
                            listed(&category(), CATEGORIES),
                            "Design category",
                            "from the authority; F, the strictest, stands here until you choose",
                        ))
                        .child(
                            number_field(importance(), "Importance, I_e", 1.0, 1.5, 0.25)
                                .hint("1 for risk category I and II, 1.25 for III, 1.5 for IV (from memory)"),
                        )
                },
            )
    })
}
