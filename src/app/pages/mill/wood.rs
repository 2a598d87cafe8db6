//! What the wood does as it dries: its weight, its size, and what that moves in the frame in five years.
use super::message::message;
use crate::app::cached::{Cached, text_of};
use crate::app::components::{
    Segment, caution, drawing_view, fact_line, fact_list, figures, fractions, group, late_fold, segments, word,
};
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::use_store;
use crate::drawing;
use crate::materials::{FIBRE_SATURATION_PERCENT, Species, species};
use crate::project::Project;
use crate::study::{Movement, Seasoning, Way, YEARS, seasoning, seasoning_text, small_length};
use crate::units::{UnitSystem, Weight, show_density, show_slope, show_weight};
use leptos::prelude::*;
use std::sync::Arc;

/// What drying does to the drawn frame.
type Dried = Cached<Option<Arc<Seasoning>>>;

/// Wettest that is asked about, percent.
const WETTEST: f64 = 200.0;

/// The fold; nothing of it is reckoned before it is opened.
pub fn wood_fold() -> Tag {
    let store = use_store();
    let summary = text_of(move || {
        let project = store.project();
        let name = species(&project.frame.species).map_or("", |wood| wood.name.as_str());
        format!("{name}, dries to {} %", project.site.service_moisture_percent)
    });
    late_fold("What the wood does in five years", summary, body)
}

fn body() -> Tag {
    let store = use_store();
    let dried: Dried = Cached::new(move || {
        let good = store.drawn()?;
        seasoning(&good.project, &good.built).map(Arc::new)
    });
    parts()
        .child(joint(dried))
        .live(move || dried.get().map(|found| first_year(&store.project(), &found)))
        .live(move || dried.get().map(|found| movements(&store.project(), &found)))
        .live(move || dried.get().map(|found| sections(&store.project(), &found)))
        .child(message("Copy as text", "What the wood does, as text", move || {
            dried.get_untracked().map(|found| seasoning_text(&store.project_untracked(), &found))
        }))
        .child(weights())
        .child(caution(
            "Years are a guide, not a promise: look at the joints each autumn, and have a split through a joint seen by an \
             engineer or a framer.",
        ))
}

/// The joint as cut and as dried.
fn joint(dried: Dried) -> Tag {
    let store = use_store();
    let at = RwSignal::new(YEARS);
    let label = text_of(move || {
        let times = dried.get().map_or(1.0, |found| drawing::dried_times(&found));
        format!(
            "A post’s head, the beam and a brace: broken lines as cut, wood as dried, its shrinking drawn {times} times larger"
        )
    });
    let draw = move |width: f64| {
        let scene = store
            .drawn()
            .zip(dried.get())
            .and_then(|(good, found)| drawing::dried(&good.project, &good.built, &found, at.get()));
        scene.map_or_else(String::new, |scene| drawing::svg::print(&scene, width, &label.get_untracked()))
    };
    let all = [(1, "Year one"), (3, "Year three"), (5, "Year five"), (YEARS, "Dry")];
    let choices =
        all.map(|(place, name)| Segment::new(name.to_owned(), move || at.get() == place, move || at.set(place)));
    parts().child(segments("dried-at", "Drawn as it is in", (), choices.into())).child(drawing_view(draw, label, None))
}

/// Movements that want a hand in the first year.
const FIRST_YEAR: [&str; 6] = ["ledger_heads", "purlin_heads", "wedges", "brace_slack", "drawbore", "metal_at_wall"];

fn first_year(project: &Project, found: &Seasoning) -> Tag {
    let one = |key: &&str| {
        let movement = found.movement(key)?;
        let size = small_length(movement.sizes[1], project.units);
        Some(
            tag("li")
                .child(tag("strong").child(movement.what))
                .child(fractions(&format!(": {size} in year one. ")))
                .child(movement.advice),
        )
    };
    group(
        "What to do in year one",
        tag("ul").class("says").child(FIRST_YEAR.iter().filter_map(one).collect::<Vec<_>>()),
    )
}

/// Everything that moves, year by year, and what it means.
fn movements(project: &Project, found: &Seasoning) -> Tag {
    let units = project.units;
    let row = |name: &str, cells: Vec<String>| {
        let cells = cells.into_iter().map(|cell| tag("td").child(fractions(&cell)));
        tag("tr").child(tag("th").attr("scope", "row").child(name)).child(cells.collect::<Vec<_>>())
    };
    let pitch_name = match units {
        UnitSystem::Imperial => "Roof’s pitch, in 12",
        UnitSystem::Metric => "Roof’s pitch",
    };
    let pitch = row(pitch_name, found.pitch.iter().map(|pitch| pitch_words(*pitch, units)).collect());
    let moves = found
        .movements
        .iter()
        .map(|movement| row(movement.what, movement.sizes.iter().map(|size| small_length(*size, units)).collect()));
    let mut rows = vec![pitch];
    rows.extend(moves);
    let means = found.movements.iter().map(meaning);
    group(
        "What moves, year by year",
        parts()
            .child(tag("div").class("moves").child(figures(
                "What moves as the wood dries, year by year",
                &["What", "Raised", "Year 1", "2", "3", "4", "5", "Dry"],
                rows,
            )))
            .child(tag("dl").class("meanings").child(means.collect::<Vec<_>>()))
            .child(word(format!(
                "Sizes shrink by the mean of radial and tangential from {FIBRE_SATURATION_PERCENT} % down (Wood Handbook ch. 4, \
                 from memory); along the grain nothing moves. The pace is common practice: a softwood stick dries an inch of \
                 its lesser side in a year, hardwood in two; here that is nine tenths of the way, and the way is an even \
                 falling off. Faces shrink while the heart is wet, so it counts from the first day.",
            ))),
    )
}

/// A pitch finely enough to see it move.
fn pitch_words(pitch: crate::units::Slope, units: UnitSystem) -> String {
    match units {
        UnitSystem::Imperial => format!("{:.3}", pitch.to_in_twelve()),
        UnitSystem::Metric => format!("{:.2}°", pitch.to_degrees()),
    }
}

fn meaning(movement: &Movement) -> Tag {
    let sign = match movement.way {
        Way::Drop => "↓ ",
        Way::Gap => "↔ ",
        Way::Margin => "− ",
    };
    parts()
        .child(tag("dt").child(tag("span").attr("aria-hidden", "true").child(sign)).child(movement.what))
        .child(tag("dd").child(fractions(&format!("{} ", movement.means))).child(movement.advice))
}

/// Each section, what it loses.
fn sections(project: &Project, found: &Seasoning) -> Tag {
    let units = project.units;
    let rows = found.sections.iter().map(|one| {
        let cells = [
            format!("{:.0}", one.years_to_dry),
            format!("{:.0} %", one.percent[1]),
            format!("{:.0} %", one.percent[5]),
            small_length(one.breadth_lost[5], units),
            small_length(one.depth_lost[5], units),
            small_length(one.depth_lost[YEARS], units),
            format!("{} to {}", small_length(one.depth_range.0, units), small_length(one.depth_range.1, units)),
        ];
        let name = format!("{} {}", one.role.name(), one.section.label(units));
        let cells = cells.map(|cell| tag("td").child(fractions(&cell)));
        tag("tr").child(tag("th").attr("scope", "row").child(name)).child(cells)
    });
    let wood = &found.wood;
    let pitch = show_slope(found.pitch[YEARS], units);
    group(
        "What each stick loses",
        parts()
            .child(figures(
                "What each section loses as it dries",
                &[
                    "Stick",
                    "Years to dry",
                    "Year 1",
                    "Year 5",
                    "Breadth, year 5",
                    "Depth, year 5",
                    "Depth, dry",
                    "By its rings",
                ],
                rows.collect::<Vec<_>>(),
            ))
            .child(word(format!(
                "{}: {} % radial, {} % tangential from green to oven-dry. {}. The roof ends at {pitch}.",
                wood.name, wood.radial_percent, wood.tangential_percent, wood.source
            ))),
    )
}

/// What wood weighs at a moisture that is chosen here.
fn weights() -> Tag {
    let store = use_store();
    let wood = Cached::new(move || species(&store.project().frame.species).cloned());
    let chosen = RwSignal::new(None::<f64>);
    let green = move || wood.get().and_then(|wood| wood.green_percent()).unwrap_or(60.0);
    let moisture = Cached::new(move || chosen.get().unwrap_or_else(green).round().clamp(0.0, WETTEST));
    let step = move |by: f64| chosen.set(Some((moisture.get_untracked() + by).clamp(0.0, WETTEST)));
    let typed = move |event: web_sys::Event| chosen.set(event_target_value(&event).parse().ok());
    let slide = tag("input")
        .class("slide__range")
        .attr("type", "range")
        .attr("id", "wood-moisture")
        .attr("min", "0")
        .attr("max", WETTEST.to_string())
        .attr("step", "1")
        .live_prop("value", move || moisture.get().to_string())
        .on("input", typed);
    group(
        "What it weighs",
        parts()
            .child(
                tag("label")
                    .class("field__label")
                    .attr("for", "wood-moisture")
                    .child(tag("span").class("field__name").child("Moisture, % of the dry weight"))
                    .child(
                        tag("output")
                            .class("slide__now")
                            .attr("for", "wood-moisture")
                            .live_text(move || format!("{} %", moisture.get())),
                    ),
            )
            .child(
                tag("div")
                    .class("slide")
                    .child(button("step", move |_| step(-1.0)).attr("aria-label", "Drier by 1 %").child("−"))
                    .child(slide)
                    .child(button("step", move |_| step(1.0)).attr("aria-label", "Wetter by 1 %").child("+")),
            )
            .live(move || wood.get().map(|wood| weighed(&wood, moisture.get()))),
    )
}

fn weighed(wood: &Species, moisture: f64) -> Tag {
    let store = use_store();
    let project = store.project();
    let units = project.units;
    let (Some(density), Some(by_green)) = (wood.density_at(moisture), wood.per_green_volume(moisture)) else {
        return word(format!(
            "The basic gravity of {} is not known here, so its weight at a moisture is not either.",
            wood.name
        ));
    };
    let share = by_green / wood.green_density;
    let say = |weight: Weight| show_weight(weight * share, units).to_string();
    let name = match units {
        UnitSystem::Imperial => "A cubic foot, as large as it is then",
        UnitSystem::Metric => "A cubic metre, as large as it is then",
    };
    let mut list = fact_list(()).child(fact_line(name, show_density(density, units).to_string()));
    if let Some(built) = store.built() {
        if let Some(stick) = built.heaviest() {
            list = list.child(fact_line(&format!("Heaviest stick, {}, as cut", stick.mark), say(stick.green_weight)));
        }
        let all: Weight = built.sticks.iter().map(|stick| stick.green_weight).sum();
        list = list.child(fact_line("All sticks, as cut", say(all)));
    }
    let green =
        wood.green_percent().map_or_else(String::new, |percent| format!("Green it comes at about {percent:.0} %"));
    let known =
        |name: &str, percent: Option<f64>| percent.map_or_else(String::new, |percent| format!(", {name} {percent} %"));
    parts().child(list).child(word(format!(
        "{green}{}{}. Weight is that of water, 62.4 lb/ft³ or 1000 kg/m³, × basic gravity {} × (1 + moisture), over the volume that is left below {FIBRE_SATURATION_PERCENT} % \
         (Wood Handbook ch. 4). {}. One board differs from the next: weigh one.",
        known("heartwood", wood.water.green_heart_percent),
        known("sapwood", wood.water.green_sap_percent),
        wood.water.basic_gravity.unwrap_or_default(),
        wood.water.source
    )))
}
