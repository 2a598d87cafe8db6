//! The loads, each drawn on the section or the elevation it acts on, with its working.
use crate::analysis::{ElevationLoad, RoofCase, elevation_loads, section_loads};
use crate::app::cached::Cached;
use crate::app::components::{drawing_view, late_fold};
use crate::app::dom::{Tag, parts, tag};
use crate::app::{Strong, use_store};
use crate::drawing::{load_in_elevation, load_section, svg};
use crate::report;
use crate::working::Step;
use leptos::prelude::*;

/// A load with the drawing it is shown on.
#[derive(Clone, PartialEq)]
enum Shown {
    Section(RoofCase),
    Elevation(ElevationLoad),
}

impl Shown {
    fn all(strong: &Strong) -> Vec<Self> {
        let (project, loads) = (&strong.good.project, &strong.strength.loads);
        let section = section_loads(project, loads).into_iter().map(Self::Section);
        let elevation = elevation_loads(project, &strong.good.built.shape, loads).into_iter().map(Self::Elevation);
        section.chain(elevation).collect()
    }

    fn name(&self) -> &str {
        match self {
            Self::Section(case) => &case.name,
            Self::Elevation(load) => &load.name,
        }
    }

    const fn symbol(&self) -> &'static str {
        match self {
            Self::Section(case) => case.action.symbol(),
            Self::Elevation(load) => load.action.symbol(),
        }
    }

    fn steps(&self) -> &[Step] {
        match self {
            Self::Section(case) => &case.steps,
            Self::Elevation(load) => &load.steps,
        }
    }

    fn draw(&self, strong: &Strong, width: f64) -> String {
        let (project, built) = (&strong.good.project, &strong.good.built);
        let scene = match self {
            Self::Section(case) => load_section(project, built, case),
            Self::Elevation(load) => load_in_elevation(project, built, load),
        };
        svg::print(&scene, width, self.name())
    }
}

/// The loads of the roof and of the beam line.
pub fn loads() -> Tag {
    late_fold("Loads, drawn where they act", "each by itself, with its working", body)
}

fn body() -> Tag {
    let store = use_store();
    let chosen = RwSignal::new(0_usize);
    let cases = Cached::new(move || store.strong().map(|strong| Shown::all(&strong)).unwrap_or_default());
    let options = move || {
        let mut all = Vec::new();
        for (index, case) in cases.get().into_iter().enumerate() {
            let is_chosen = index == chosen.get_untracked();
            let says = format!("{}: {}", case.symbol(), case.name());
            all.push(tag("option").attr("value", index.to_string()).attr("selected", is_chosen).child(says));
        }
        all
    };
    let pick = move |event: leptos::ev::Event| chosen.set(event_target_value(&event).parse().unwrap_or(0));
    let draw = move |width: f64| {
        store.strong().map_or_else(String::new, |strong| {
            cases.with(|cases| cases.get(chosen.get()).map_or_else(String::new, |case| case.draw(&strong, width)))
        })
    };
    let steps = Cached::new(move || {
        cases.with(|cases| cases.get(chosen.get()).map(|case| report::load_working(case.steps()))).unwrap_or_default()
    });
    parts()
        .child(tag("label").class("field__label").attr("for", "load-case").child("Load"))
        .child(
            tag("select")
                .attr("id", "load-case")
                .class("field__input field__pick case-pick")
                .on("change", pick)
                .live(options),
        )
        .child(drawing_view(draw, "The load where it acts", None))
        .child(tag("div").live_html(move || steps.get()))
}
