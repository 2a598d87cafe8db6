//! The curves along the beam: bending, shear, pull and movement, of one case or of all together.
use crate::analysis::{BraceModel, Drawn, Purpose, Quantity, band};
use crate::app::cached::Cached;
use crate::app::charts::{AlongCurve, Mark, draw_along};
use crate::app::components::{fold, word};
use crate::app::dom::{Tag, parts, tag};
use crate::app::{Strong, use_store};
use crate::design::Shape;
use crate::drawing::{load_elevation, svg};
use crate::report;
use crate::units::{Force, Length, Moment, UnitSystem};
use leptos::prelude::*;

/// Pixels that a drawing has: the page's, less its margins, as wide as the page is beside its drawings.
pub(super) fn drawn_width() -> f64 {
    let page = window().inner_width().ok().and_then(|width| width.as_f64());
    page.map_or(328.0, |width| (width - 32.0).clamp(280.0, 400.0))
}

/// The fold; reckoned only while it is open.
pub fn along() -> Tag {
    let store = use_store();
    let open = RwSignal::new(false);
    let chosen = RwSignal::new(0_usize);
    let cases = Cached::new(move || store.strong().map(|strong| choices(&strong)).unwrap_or_default());
    let html = Cached::new(move || {
        if !open.get() {
            return String::new();
        }
        store
            .strong()
            .map_or_else(String::new, |strong| figures(&strong, cases.get().get(chosen.get()).map(|found| found.1)))
    });
    let turned = move |event: leptos::ev::Event| {
        open.set(event_target::<web_sys::Element>(&event).has_attribute("open"));
    };
    let options = move || {
        let named = cases.get().into_iter().enumerate();
        let now = chosen.get_untracked();
        let one = |(index, (name, _)): (usize, (String, Drawn))| {
            tag("option").attr("value", index.to_string()).attr("selected", index == now).child(name)
        };
        named.map(one).collect::<Vec<_>>()
    };
    let joints = move || store.strong().map(|strong| report::joints(&strong.strength, strong.good.project.units));
    let pick = move |event: leptos::ev::Event| chosen.set(event_target_value(&event).parse().unwrap_or(0));
    fold(
        "Along the beam",
        "bending, shear, pull, movement",
        false,
        || parts()
            .child(tag("label").class("field__label").attr("for", "along-case").child("Combination"))
            .child(
                tag("select")
                    .attr("id", "along-case")
                    .class("field__input field__pick case-pick")
                    .on("change", pick)
                    .live(options),
            )
            .child(word(
                "Bending is plus where the underside is stretched. Heavy upright lines are posts and scarfs, light ones \
                 heads of braces. Dashed: the same of the beam as if it had no scarfs; a scarf belongs where that hardly bends.",
            ))
            .child(tag("p").class("page__word").live(joints))
            .child(tag("div").class("charts").live_html(move || html.get())),
    )
    .on("toggle", turned)
}

/// Everything together, then each case with each model of the braces: those that judge strength, then those of the sag.
fn choices(strong: &Strong) -> Vec<(String, Drawn)> {
    let mut all = vec![("all together, the envelope".to_owned(), Drawn::All)];
    let Some(line) = &strong.strength.line else { return all };
    let mut seen: Vec<(usize, BraceModel)> = Vec::new();
    let sags = [Purpose::LiveMovement, Purpose::TotalMovement].into_iter().flat_map(|purpose| line.purpose(purpose));
    for (solved, case) in line.strength().chain(sags) {
        if !seen.contains(&(solved.case, solved.model)) {
            seen.push((solved.case, solved.model));
            let name = format!("{} ({})", case.name, solved.model.words());
            all.push((name, Drawn::One(solved.case, solved.model)));
        }
    }
    all
}

fn figures(strong: &Strong, drawn_case: Option<Drawn>) -> String {
    let (project, shape) = (&strong.good.project, &strong.good.built.shape);
    let (Some(line), Some(drawn_case)) = (&strong.strength.line, drawn_case) else { return String::new() };
    let metric = project.units == UnitSystem::Metric;
    let curves = Quantity::ALL.map(|quantity| {
        let (caption, factor) = words(quantity, metric);
        let of = |drawn: Drawn| band(project, shape, &strong.strength.loads, line, quantity, drawn);
        let uncut = (quantity == Quantity::Moment && !shape.beam.scarfs.is_empty()).then(|| of(drawn_case.uncut()));
        let lulls = uncut.as_ref().map(|uncut| by_scarfs(&uncut.lulls(), shape)).unwrap_or_default();
        let notes = lulls.into_iter().map(|(x, value)| (measured(x, metric), value * factor)).collect();
        let uncut = uncut.map(|uncut| scaled(uncut, factor, metric));
        (
            caption,
            AlongCurve { band: scaled(of(drawn_case), factor, metric), uncut, notes, marks: marks(strong, metric) },
        )
    });
    let mut drawn = Vec::new();
    if let Drawn::One(case, _) = drawn_case
        && let Some(case) = line.cases.get(case)
    {
        let scene = load_elevation(project, &strong.good.built, case);
        let says =
            format!("What acts on it beside {}D", if case.dead == 1.0 { String::new() } else { case.dead.to_string() });
        drawn.push((says, svg::print(&scene, drawn_width(), &case.name)));
    }
    for (caption, curve) in &curves {
        drawn.push(((*caption).to_owned(), draw_along(curve)));
    }
    let at = |x: Length| measured(x, metric);
    let posts: Vec<(String, f64)> =
        shape.posts.iter().map(|post| (format!("P{}", post.number), at(post.middle()))).collect();
    let scarfs = shape.beam.scarfs.iter().map(|scarf| (format!("scarf {}", scarf.number), at(scarf.place.centre)));
    let places: Vec<(String, f64)> = posts.into_iter().chain(scarfs).collect();
    let columns: Vec<(String, report::Curve)> =
        curves.into_iter().map(|(caption, curve)| (caption.to_owned(), curve.band)).collect();
    report::along_sheet(&drawn, &places, &columns)
}

/// Of the places where the uncut beam hardly bends the nearest to each scarf.
fn by_scarfs(lulls: &[(Length, f64)], shape: &Shape) -> Vec<(Length, f64)> {
    let mut found: Vec<(Length, f64)> = Vec::new();
    for scarf in &shape.beam.scarfs {
        let away = |lull: &(Length, f64)| (lull.0 - scarf.place.centre).abs();
        let near = lulls.iter().copied().reduce(|a, b| if away(&b) < away(&a) { b } else { a });
        found.extend(near.filter(|near| !found.contains(near)));
    }
    found
}

/// Caption with its unit, and what turns pounds and inches into it.
fn words(quantity: Quantity, metric: bool) -> (&'static str, f64) {
    let (moment, force) = (Moment::pound_inches(1.0), Force::pounds(1.0));
    match (quantity, metric) {
        (Quantity::Moment, false) => ("Bending, lb\u{b7}ft", moment.to_pound_feet()),
        (Quantity::Moment, true) => ("Bending, kN\u{b7}m", moment.to_kilonewton_metres()),
        (Quantity::Shear, false) => ("Shear, lb", 1.0),
        (Quantity::Shear, true) => ("Shear, kN", force.to_kilonewtons()),
        (Quantity::Axial, false) => ("Pull along the beam, lb", 1.0),
        (Quantity::Axial, true) => ("Pull along the beam, kN", force.to_kilonewtons()),
        (Quantity::Movement, false) => ("Movement, in", 1.0),
        (Quantity::Movement, true) => ("Movement, mm", Length::inches(1.0).to_millimetres()),
    }
}

fn measured(x: Length, metric: bool) -> f64 {
    if metric { x.to_millimetres() / 1000.0 } else { x.to_feet() }
}

fn scaled(band: crate::analysis::Band, factor: f64, metric: bool) -> Vec<(f64, f64, f64)> {
    let rows = band.places.iter().zip(band.low.iter().zip(&band.high));
    rows.filter(|(_, (low, high))| low.is_finite() && high.is_finite())
        .map(|(x, (low, high))| (measured(*x, metric), low * factor, high * factor))
        .collect()
}

fn marks(strong: &Strong, metric: bool) -> Vec<(f64, Mark)> {
    let shape = &strong.good.built.shape;
    let posts = shape.posts.iter().map(|post| (post.middle(), Mark::Post));
    let scarfs = shape.beam.scarfs.iter().map(|scarf| (scarf.place.centre, Mark::Scarf));
    let line = crate::geometry::BraceLine::of(&strong.good.project.frame);
    let braces = shape.braces.iter().map(|brace| (line.head_x(brace, &shape.posts), Mark::Brace));
    posts.chain(scarfs).chain(braces).map(|(x, mark)| (measured(x, metric), mark)).collect()
}
