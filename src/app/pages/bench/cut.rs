//! The cut of a stick: its tick, what to mind, and the sticks laid out like it.
use super::in_hand::{InHand, note_cut};
use super::twins::Twins;
use crate::app::components::Caution;
use crate::app::use_store;
use crate::tickets::Stick;
use leptos::prelude::*;
use std::sync::Arc;

/// What to mind with a saw in hand.
pub const TOOLS: &str = "Support both sides of a cut so that it cannot pinch the blade; clamp what you chisel, hands behind the edge; eyes and ears covered.";

/// The part of a sheet about its cut.
#[component]
pub fn CutPart(
    /// The stick in hand.
    hand: InHand,
    /// The stick.
    stick: Arc<Stick>,
) -> impl IntoView {
    let n_marks = stick.marks.len();
    let open = move || n_marks.saturating_sub(hand.made.with(|made| made.len()));
    let words = move || match (hand.is_cut(), open()) {
        (true, _) => String::new(),
        (false, 0) => "All marks made: second pair of eyes, then cut.".to_owned(),
        (false, 1) => "One mark is not ticked yet.".to_owned(),
        (false, open) => format!("{open} marks are not ticked yet."),
    };
    view! {
        <section class="cut" aria-labelledby="cut-title">
            <h2 class="cut__title" id="cut-title">"The cut"</h2>
            <p class="cut__word">{words}</p>
            <Caution text=TOOLS/>
            <CutTick hand stick=stick.clone()/>
            <Twins stick/>
        </section>
    }
}

/// The tick that freezes a stick.
#[component]
pub fn CutTick(
    /// The stick in hand.
    hand: InHand,
    /// The stick.
    stick: Arc<Stick>,
) -> impl IntoView {
    let store = use_store();
    let label = format!("{} is cut", stick.mark);
    let tick = move |event: leptos::ev::Event| note_cut(store, &stick, event_target_checked(&event));
    view! {
        <label class="cut-tick">
            <input class="mark__box" type="checkbox" prop:checked=move || hand.is_cut() on:change=tick/>
            <span>{label}</span>
        </label>
    }
}
