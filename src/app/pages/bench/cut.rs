//! The cut of a stick: its tick, what to mind, and the sticks laid out like it.
use super::in_hand::{InHand, note_cut};
use super::twins::twins;
use crate::app::components::caution;
use crate::app::dom::{Tag, tag};
use crate::app::use_store;
use crate::tickets::Stick;
use leptos::prelude::*;
use std::sync::Arc;

/// What to mind with a saw in hand.
pub const TOOLS: &str = "Support both sides of a cut so that it cannot pinch the blade; clamp what you chisel, hands behind the edge; eyes and ears covered.";

/// The part of a sheet about its cut.
pub fn cut_part(hand: InHand, stick: Arc<Stick>) -> Tag {
    let n_marks = stick.marks.len();
    let open = move || n_marks.saturating_sub(hand.made.with(|made| made.len()));
    let words = move || match (hand.is_cut(), open()) {
        (true, _) => String::new(),
        (false, 0) => "All marks made: second pair of eyes, then cut.".to_owned(),
        (false, 1) => "One mark is not ticked yet.".to_owned(),
        (false, open) => format!("{open} marks are not ticked yet."),
    };
    tag("section")
        .class("cut")
        .attr("aria-labelledby", "cut-title")
        .child(tag("h2").class("cut__title").attr("id", "cut-title").child("The cut"))
        .child(tag("p").class("cut__word").live(words))
        .child(caution(TOOLS))
        .child(cut_tick(hand, stick.clone()))
        .child(twins(stick))
}

/// The tick that freezes a stick.
pub fn cut_tick(hand: InHand, stick: Arc<Stick>) -> Tag {
    let store = use_store();
    let label = format!("{} is cut", stick.mark);
    let tick = move |event: leptos::ev::Event| note_cut(store, &stick, event_target_checked(&event));
    tag("label")
        .class("cut-tick")
        .child(
            tag("input")
                .class("mark__box")
                .attr("type", "checkbox")
                .live_prop("checked", move || hand.is_cut())
                .on("change", tick),
        )
        .child(tag("span").child(label))
}
