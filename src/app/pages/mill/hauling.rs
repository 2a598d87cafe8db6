//! How the timber comes home: truck and crew, each load as it is laid, and who carries what.
use super::message::message;
use crate::app::cached::{Cached, text_of};
use crate::app::components::{
    Steps, caution, count_field, drawing_view, figures, fractions, group, late_fold, length_field, toggle,
    weight_field, word,
};
use crate::app::dom::{Tag, parts, tag};
use crate::app::use_store;
use crate::drawing;
use crate::lens;
use crate::ordering::asked_length;
use crate::ordering::hauling::{
    Carry, ERGONOMIC_POUNDS, Hauling, NIOSH_POUNDS, haul, hauling_notes, hauling_text, load_words, proof_words, runs,
};
use crate::project::Project;
use crate::units::{Weight, show_weight};
use std::sync::Arc;

/// The loads of the drawn frame, with the project they belong to.
type Hauled = Option<(Arc<Project>, Arc<Hauling>)>;

/// The fold; nothing of it is reckoned before it is opened.
pub fn hauling_fold() -> Tag {
    let store = use_store();
    let summary = text_of(move || {
        let project = store.project();
        let what = if project.truck.is_trailer { "a trailer" } else { "a truck" };
        format!("{what} for {}, {} people", show_weight(project.truck.payload, project.units), project.crew.n_people)
    });
    late_fold("Bringing it home", summary, body)
}

fn body() -> Tag {
    let store = use_store();
    let hauled = Cached::new(move || -> Hauled {
        let good = store.drawn()?;
        let hauling = haul(&good.project, &good.built, &good.built.order.lines);
        Some((good.project, Arc::new(hauling)))
    });
    parts()
        .live(move || hauled.get().map(|(project, hauling)| told(&project, &hauling)))
        .child(message("Copy the loads as text", "The loads as text", move || {
            hauled.get_untracked().map(|(project, hauling)| hauling_text(&project, &hauling))
        }))
        .child(caution(
            "Green timber is heavy and slides: block it against the front, strap it, stop and strap again after the first \
             miles. What may stand out, and what your coupling, tyres and brakes carry, is the law's and their makers' to say.",
        ))
        .child(truck())
        .child(crew())
        .live(move || hauled.get().map(|(project, hauling)| carried(&project, &hauling)))
        .child(caution(
            "Lift with your legs, turn with your feet, one gives the word. Nobody's hand or foot goes under a stick that hangs.",
        ))
}

fn truck() -> Tag {
    let store = use_store();
    let is_trailer = move || store.project().truck.is_trailer;
    group(
        "What brings it",
        parts()
            .child(toggle(lens!(truck.is_trailer), "It is a trailer", "behind another vehicle, on a coupling"))
            .child(
                weight_field(lens!(truck.payload), "Payload")
                    .hint("what may lie on it: its maker's plate, less what lies on it already")
                    .steps(Steps::of(100.0, 50.0)),
            )
            .child(length_field(lens!(truck.bed), "Length of the bed").steps(Steps::of(12.0, 100.0)))
            .child(
                length_field(lens!(truck.bed_width), "Width of the bed")
                    .hint("between the fenders or the sides")
                    .steps(Steps::of(1.0, 50.0)),
            )
            .child(
                length_field(lens!(truck.overhang), "May stand out behind")
                    .hint("by the road's law and the vehicle's maker")
                    .steps(Steps::of(6.0, 100.0)),
            )
            .shown(is_trailer, || {
                parts()
                    .child(
                        length_field(lens!(truck.coupling_to_bed), "Coupling to the front of the bed")
                            .steps(Steps::of(1.0, 50.0)),
                    )
                    .child(
                        length_field(lens!(truck.bed_to_axle), "Front of the bed to the axles")
                            .hint("to the middle between them where there are two")
                            .steps(Steps::of(1.0, 50.0)),
                    )
            }),
    )
}

fn crew() -> Tag {
    group(
        "Who carries",
        parts().child(count_field(lens!(crew.n_people), "People", 1, 50)).child(
            weight_field(lens!(crew.each_lifts), "What each lifts of a stick")
                .hint("carried together over a short way")
                .steps(Steps::of(5.0, 5.0)),
        ),
    )
}

/// The loads, and what goes with none.
fn told(project: &Arc<Project>, hauling: &Arc<Hauling>) -> Tag {
    let stays = hauling.left_behind.iter().map(|one| {
        tag("div").class("problem").child(
            tag("p")
                .class("problem__says")
                .child(tag("strong").class("problem__word").child("Look at this: "))
                .child(fractions(&one.says)),
        )
    });
    let n_loads = hauling.loads.len();
    parts()
        .child(tag("p").class("page__word").attr("role", "status").child(format!("{}.", proof_words(hauling))))
        .child(stays.collect::<Vec<_>>())
        .child((0..n_loads).map(|at| one_load(project, hauling, at)).collect::<Vec<_>>())
        .child((n_loads > 0).then(|| lines("ul", hauling_notes(project, hauling))))
}

fn one_load(project: &Arc<Project>, hauling: &Arc<Hauling>, at: usize) -> Tag {
    let load = &hauling.loads[at];
    let say = |weight: Weight| show_weight(weight, project.units).to_string();
    let delivery = if load.delivery > 1 { ", second delivery" } else { "" };
    let (weight, payload) = (say(load.weight), say(project.truck.payload));
    let title = format!("Load {} of {}{delivery}: {weight} of {payload}", load.number, hauling.loads.len());
    let label = format!("Load {} from the side, to scale, its front at the left", load.number);
    let (drawn, held) = (label.clone(), hauling.clone());
    let whose = project.clone();
    let draw = move |width: f64| {
        held.loads
            .get(at)
            .map_or_else(String::new, |load| drawing::svg::print(&drawing::hauled(&whose, load), width, &drawn))
    };
    group(
        &title,
        parts()
            .child(drawing_view(draw, label, None))
            .child(
                tag("p")
                    .class("field__hint")
                    .child("Load in this order, the first on the bed; the last comes off first."),
            )
            .child(lines("ol", runs(project, load)))
            .child(lines("ul", load_words(project, load))),
    )
}

/// Sentences as a list.
fn lines(name: &str, all: Vec<String>) -> Tag {
    let items = all.into_iter().map(|says| tag("li").child(fractions(&says)));
    tag(name).class("says").child(items.collect::<Vec<_>>())
}

/// Who carries what.
fn carried(project: &Project, hauling: &Hauling) -> Tag {
    let units = project.units;
    let row = |carry: &Carry| {
        let size = format!("{} of {} × {}", carry.count, carry.section.label(units), asked_length(carry.length, units));
        let cells = [show_weight(carry.weight, units).to_string(), carry.words(), carry.ergonomic.to_string()];
        tag("tr")
            .child(tag("th").attr("scope", "row").child(fractions(&size)))
            .child(cells.map(|cell| tag("td").child(cell)))
    };
    let pounds = |pounds: f64| show_weight(Weight::pounds(pounds), units);
    parts()
        .child(figures(
            "Who carries what, by weight",
            &["Sticks", "Each", "This crew", "People by the ergonomic figure"],
            hauling.carries.iter().map(row).collect::<Vec<_>>(),
        ))
        .child(word(format!(
            "This crew: weight over what each lifts; past two in pairs with carriers; a machine where there are not the hands or a \
             stick is heavier than you can put up. The ergonomic figure is {} each, for planning a carry: the NIOSH revised \
             lifting equation allows one person {} where all is ideal and less for every reach, twist and step (derived from \
             memory; the equation was not made for teams). Crews commonly carry a beam of 320 lb (145 kg) with four to six \
             (common practice).",
            pounds(ERGONOMIC_POUNDS),
            pounds(NIOSH_POUNDS)
        )))
}
