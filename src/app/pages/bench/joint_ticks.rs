//! One tick for all marks of a joint.
use super::in_hand::InHand;
use crate::app::cached::Cached;
use crate::app::dom::{Tag, tag};
use crate::app::use_store;
use crate::joinery::departures;
use crate::tickets::Stick;
use leptos::prelude::*;
use std::sync::Arc;

/// The joints of a stick, each with how many of its marks are made; nothing where it has none.
pub fn joints(hand: InHand, stick: &Arc<Stick>) -> Option<Tag> {
    let rows: Vec<Tag> = stick
        .joints()
        .into_iter()
        .map(|(mate, places)| {
            let made = places.iter().find_map(|place| stick.marks[*place].joint(&stick.mark));
            let is_own = made.is_some_and(|joint| !departures(&use_store().project(), joint).is_empty());
            joint(hand, if is_own { format!("{mate}, own") } else { mate }, places)
        })
        .collect();
    (!rows.is_empty()).then(|| {
        tag("section")
            .class("joints")
            .attr("aria-labelledby", "joints-title")
            .child(tag("h3").class("marks__face").attr("id", "joints-title").child("joint by joint"))
            .child(tag("ul").class("twins").child(rows))
    })
}

fn joint(hand: InHand, name: String, places: Vec<usize>) -> Tag {
    let all = places.len();
    let counted = places.clone();
    let n_made =
        Cached::new(move || hand.made.with(|made| counted.iter().filter(|place| made.contains(place)).count()));
    let tick = move |event: leptos::ev::Event| hand.tick(&places, event_target_checked(&event));
    let count = move || format!("{} of {all}", n_made.get());
    tag("li").class("twins__row").child(
        tag("label")
            .class("joint")
            .child(
                tag("input")
                    .class("joint__box")
                    .attr("type", "checkbox")
                    .live_prop("checked", move || n_made.get() == all)
                    .live_prop("indeterminate", move || n_made.get() > 0 && n_made.get() < all)
                    .live_attr("disabled", move || hand.is_cut() || !hand.lies_so.get())
                    .on("change", tick),
            )
            .child(tag("span").class("joint__mate").child(name))
            .child(tag("span").class("joint__count").live_text(count)),
    )
}
