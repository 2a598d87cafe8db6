//! The mill: what to order, what it weighs and costs, and what has come off the truck.
mod clipboard;
mod cost;
mod given;
mod hand_out;
mod hauling;
mod how_ordered;
mod lengths;
mod limits;
mod long_prices;
mod message;
mod order_list;
mod piece;
mod pieces;
mod prices;
mod spacing;
mod spacing_held;
mod studied;
mod truck;
mod wood;
mod yard;
mod yard_lots;

use super::drawn::{fact, long};
use crate::app::cached::{Cached, text_of};
use crate::app::components::{Steps, caution, drawing_view, facts, fold, length_field, page, weight_field, word};
use crate::app::dom::{Tag, parts, tag};
use crate::app::route::Place;
use crate::app::use_store;
use crate::drawing;
use crate::lens;
use crate::materials::{Confidence, species};
use crate::ordering::Order;
use crate::project::Heart;
use crate::units::{show_density, show_weight};
use cost::cost_fold;
use hand_out::hand_out;
use hauling::hauling_fold;
use how_ordered::how_ordered;
use lengths::lengths;
use leptos::prelude::*;
use limits::limits;
use order_list::order_list;
use pieces::pieces_fold;
use prices::prices;
use spacing::spacing_fold;
use std::sync::Arc;
use truck::truck;
use wood::wood_fold;
use yard::yard_fold;

/// What real wood may be known to have.
fn known_hearts() -> Vec<(Heart, String)> {
    Heart::ALL.into_iter().map(|heart| (heart, heart.known().to_owned())).collect()
}

/// Mill.
pub fn mill_page() -> Tag {
    let about = fact(|built, project| {
        let lengths = project.mill.lengths.len();
        let n_sticks = crate::ordering::n_pieces(&built.order);
        Some(format!("{n_sticks} pieces of stock for {} sticks, out of {lengths} lengths", built.sticks.len()))
    });
    page(
        Place::Mill,
        "Mill",
        about,
        stock(),
        parts()
            .child(order_list())
            .child(hand_out())
            .child(how_ordered())
            .child(hauling_fold())
            .child(truck())
            .child(the_mill())
            .child(prices())
            .child(lifting())
            .child(cost_fold())
            .child(yard_fold())
            .child(pieces_fold())
            .child(spacing_fold())
            .child(wood_fold())
            .child(wood())
            .child(caution(
                "Green timber rolls and slides: chock the load, strap it, keep feet and \
                 fingers out from under.",
            )),
    )
}

/// The order of the last good frame; it tells its readers only when it changes itself.
fn order_memo() -> Cached<Option<Arc<Order>>> {
    let store = use_store();
    Cached::new(move || store.built().map(|built| Arc::new(built.order.clone())))
}

/// The sticks of stock with what comes out of them.
fn stock() -> Tag {
    let store = use_store();
    let title = "The order at one scale: each stick of stock with what comes out of it, \
        waste hatched";
    let draw = move |width: f64| {
        store.drawn().map_or_else(String::new, |good| {
            drawing::svg::print(&drawing::stock(&good.project, &good.built, width), width, title)
        })
    };
    drawing_view(draw, title, None)
}

/// What the mill has and how it is cut.
fn the_mill() -> Tag {
    let store = use_store();
    let summary = text_of(move || format!("{} lengths", store.project().mill.lengths.len()));
    fold("What the mill has", summary, true, || {
        parts()
            .child(lengths())
            .child(limits())
            .child(
                length_field(lens!(mill.trim_each_end), "Docked from each end")
                    .hint("before the first mark; checks and dirt go with it")
                    .steps(Steps::of(0.5, 10.0)),
            )
            .child(
                length_field(lens!(mill.kerf), "Width of the saw’s cut")
                    .hint("counted where short sticks come out of one long one")
                    .steps(Steps::of(0.0625, 1.0)),
            )
    })
}

/// What the crew can lift.
fn lifting() -> Tag {
    let summary = {
        let store = use_store();
        text_of(move || {
            let project = store.project();
            format!("up to {}", show_weight(project.mill.heaviest_pick, project.units))
        })
    };
    let heaviest = fact(|built, project| {
        let stick = built.heaviest()?;
        Some(format!("{}, {}", stick.mark, show_weight(stick.green_weight, project.units)))
    });
    let off_the_truck = fact(|built, project| {
        let each = built.order.lines.iter().map(|line| (line, line.weight / line.count.max(1) as f64));
        let (line, weight) = each.max_by(|a, b| a.1.to_pounds().total_cmp(&b.1.to_pounds()))?;
        Some(format!("{}, {}", line.section.label(project.units), show_weight(weight, project.units)))
    });
    fold("What the crew can lift", summary, false, || {
        parts()
            .child(
                weight_field(lens!(mill.heaviest_pick), "Heaviest piece you can put up")
                    .hint("the beam is parted so that no piece is heavier")
                    .steps(Steps::of(25.0, 10.0)),
            )
            .child(facts(&[("Heaviest stick, cut", heaviest), ("Heaviest stock off the truck", off_the_truck)]))
            .child(caution(
                "These are computed weights of green wood: wetter logs are heavier. Weigh \
                 one before you plan a lift on them.",
            ))
    })
}

/// Where the weights come from.
fn wood() -> Tag {
    let store = use_store();
    let summary =
        text_of(move || species(&store.project().frame.species).map_or_else(String::new, |wood| wood.name.clone()));
    let words = move || {
        let project = store.project();
        let wood = species(&project.frame.species)?;
        let trust = match wood.confidence {
            Confidence::High | Confidence::Given => "compared with a printed source",
            Confidence::Medium => "recalled from a printed source, not compared",
            Confidence::Low => "a placeholder: ask locally",
        };
        let density = show_density(wood.green_density, project.units);
        Some(format!("{} weighs {density} as it comes green from the mill ({trust}). {}.", wood.name, wood.source))
    };
    fold("Where the weights come from", summary, false, || {
        parts().child(tag("p").class("page__word").live(words)).child(word(
            "A board foot is 144 cubic inches: a foot of a plank 12 by 1 in. A cubic \
             metre is 423.776 of them. Weights are section × length × green weight; \
             the order is reckoned at the ordered size.",
        ))
    })
}

/// How much is docked from a stick, in words.
fn docked() -> Signal<String> {
    long(|project| project.mill.trim_each_end, "")
}
