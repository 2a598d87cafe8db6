//! The loads on paper, for whoever loads: what lies on what and in which order, and how far behind the headboard.
use super::pack::ROOM;
use crate::app::Good;
use crate::app::components::{fractions, table};
use crate::app::dom::{Tag, parts, tag};
use crate::drawing::{hauled, svg};
use crate::ordering::asked_length;
use crate::ordering::hauling::{Laid, Load, about, haul, hauling_notes, load_words, proof_words};
use crate::project::Project;
use crate::units::show_weight;

/// Every load with its drawing, then what goes with none.
pub fn loads_sheet(good: Good) -> Tag {
    let (project, built) = (good.project, good.built);
    let hauling = haul(&project, &built, &built.order.lines);
    let n_loads = hauling.loads.len();
    let loads = hauling.loads.iter().map(|load| one(&project, load, n_loads)).collect::<Vec<_>>();
    let stays = hauling.left_behind.iter().map(|one| says(&one.says)).collect::<Vec<_>>();
    parts()
        .child(tag("p").class("paper__total").child(format!("{}.", proof_words(&hauling))))
        .child(stays)
        .child(loads)
        .child((n_loads > 0).then(|| list(hauling_notes(&project, &hauling))))
        .child(tag("p").class("paper__caution").child(
            "Green timber is heavy and slides: block it against the front, strap it, stop and strap again after the first miles. \
             Never stand where a load can roll.",
        ))
}

fn says(words: &str) -> Tag {
    tag("p").class("paper__word").child(fractions(words))
}

fn list(all: Vec<String>) -> Tag {
    tag("ul").class("says").child(all.iter().map(|says| tag("li").child(fractions(says))).collect::<Vec<_>>())
}

fn one(project: &Project, load: &Load, n_loads: usize) -> Tag {
    let units = project.units;
    let delivery = if load.delivery > 1 { ", second delivery" } else { "" };
    let title = format!("Load {} of {n_loads}{delivery}: {} green", load.number, show_weight(load.weight, units));
    let scene = hauled(project, load);
    let html = svg::print(&scene, ROOM.0, &title);
    // Sticks of one kind that follow each other in a layer stand in one row; the first row lies on the bed.
    let mut kinds: Vec<Vec<&Laid>> = Vec::new();
    for piece in &load.pieces {
        let kind = |of: &Laid| (of.layer, of.cargo.section, of.cargo.length, of.cargo.stage);
        match kinds.last_mut() {
            Some(last) if kind(last[0]) == kind(piece) => last.push(piece),
            _ => kinds.push(vec![piece]),
        }
    }
    let row = |of: &Vec<&Laid>| {
        let first = of[0];
        let size = format!("{} × {}", first.cargo.section.label(units), asked_length(first.cargo.length, units));
        let marks: Vec<String> = of.iter().map(|one| one.cargo.of()).collect();
        tag("tr")
            .child(tag("td").class("paper__boxes").child("☐".repeat(of.len())))
            .child(tag("td").child(first.layer + 1))
            .child(tag("th").attr("scope", "row").child(of.len()).child(" of ").child(fractions(&size)))
            .child(tag("td").child(marks.join(", ")))
            .child(tag("td").child(fractions(&about(project, first.behind))))
            .child(tag("td").child(first.cargo.stage.words()))
    };
    let rows = kinds.iter().map(row).collect::<Vec<_>>();
    tag("section")
        .class("paper__load")
        .child(tag("h3").class("paper__word").child(title))
        .child(tag("div").class("paper__drawing paper__drawing--fitted").html(&html))
        .child(table("paper__table", &["On", "Layer", "Sticks", "For", "Behind the headboard", "Needed for"], rows))
        .child(list(load_words(project, load)))
}
