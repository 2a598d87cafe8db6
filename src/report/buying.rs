//! The order's proof, the yard, the loads, the pieces that came and the cost of the whole job, as JSON.
use serde_json::{Value, json};

use super::costs::costs;
use super::json::inches;
use super::{hauled, received};
use crate::checks::Strength;
use crate::design::Built;
use crate::ordering::hauling::haul;
use crate::ordering::{from_yard, ways_out};
use crate::project::{Heart, Project};
use crate::units::UnitSystem;

/// How far the order is from the best, in all and by section; sticks no length holds, and by how much.
pub fn buying(project: &Project, built: &Built, strength: Option<&Strength>) -> Value {
    let order = &built.order;
    let hauling = haul(project, built, &order.lines);
    let sections = order.buying.iter().map(|buying| {
        json!({
            "section": buying.kind.section.label(UnitSystem::Imperial),
            "heart": buying.kind.heart.name(),
            "delivery": buying.kind.delivery,
            "cost": buying.price.to_f64(),
            "bound": buying.bound.to_f64(),
            "least_pieces": buying.least_pieces,
            "proven_optimal": buying.is_proven,
        })
    });
    let longest = project.mill.longest();
    let unplaced = order.unplaced.iter().map(|(mark, needed)| {
        json!({ "mark": mark, "needs_in": inches(*needed), "over_in": inches(*needed - longest),
            "ways_out": ways_out(&built.sticks, mark) })
    });
    let lacking = order.lacking.iter().map(|(mark, needed)| json!({ "mark": mark, "needs_in": inches(*needed) }));
    let deliveries = order.deliveries().into_iter().map(|delivery| {
        json!({ "delivery": delivery.number, "pieces": delivery.n_pieces, "price": delivery.price.to_f64(),
            "green_weight_lb": (delivery.weight.to_pounds() * 1e3).round() / 1e3 })
    });
    let mut root = json!({
        "aim": order.aim.name(),
        "spares": order.n_spare(),
        "deliveries": deliveries.collect::<Vec<Value>>(),
        "lacking": lacking.collect::<Vec<Value>>(),
        "cost": order.price.to_f64(),
        "bound": order.least_price().to_f64(),
        "proven_optimal": order.is_proven(),
        "says": order.proof_words(),
        "sections": sections.collect::<Vec<Value>>(),
        "unplaced": unplaced.collect::<Vec<Value>>(),
        "whole_job": costs(project, built, &hauling),
        "yard": yard(project, built),
        "wood": hauled::wood(project, built),
    });
    for (key, value) in hauled::loads(project, &hauling) {
        root[key] = value;
    }
    if let (Some(found), Some(fields)) = (strength, root.as_object_mut()) {
        received::add(fields, project, built, found);
    }
    root
}

/// What comes out of the sawyer's pile, what is missing, and what is left.
fn yard(project: &Project, built: &Built) -> Value {
    let answer = from_yard(project, &built.order.sticks);
    let lot = |place: usize| project.yard.get(place);
    let section = |place: usize| lot(place).map(|lot| lot.section.label(UnitSystem::Imperial));
    let length = |place: usize| lot(place).map(|lot| inches(lot.length));
    let missing = answer.missing.iter().map(|stick| {
        json!({ "mark": stick.mark, "section": stick.section.label(UnitSystem::Imperial), "needs_in": inches(stick.needed),
            "heart": stick.heart.name(), "longest_in": stick.longest.map(inches),
            "others_have_another_heart": stick.has_other_heart, "rip_from": stick.rip.and_then(section) })
    });
    let plan = answer.bars.iter().map(|bar| {
        json!({ "lot": bar.lot, "section": section(bar.lot), "length_in": length(bar.lot), "sticks": bar.sticks,
            "left_in": inches(bar.left), "look_at_the_heart": bar.look.map(Heart::name) })
    });
    let unused = answer
        .unused
        .iter()
        .map(|(place, n)| json!({ "lot": place, "section": section(*place), "length_in": length(*place), "count": n }));
    json!({
        "comes_out": answer.comes_out(),
        "proven_optimal": answer.is_proven(),
        "at_most_more_in": inches(answer.at_most_more),
        "missing": missing.collect::<Vec<Value>>(),
        "plan": plan.collect::<Vec<Value>>(),
        "unused": unused.collect::<Vec<Value>>(),
    })
}
