//! One mark at a time, large enough to read at arm's length.
use super::awake::awake;
use super::cut::cut_tick;
use super::in_hand::InHand;
use super::twins::twins;
use super::walk_mark::walk_mark;
use crate::app::cached::Cached;
use crate::app::components::caution;
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::focus::focus_heading;
use crate::app::use_store;
use crate::wording::length;
use leptos::ev;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The walk along the marks of the stick in hand.
pub fn walk(hand: InHand) -> Tag {
    follow_keys(hand);
    Effect::new(move |_| request_animation_frame(focus_heading));
    let at = move || hand.step.get().unwrap_or(0);
    let step = Cached::new(at);
    // The next number must not wait below a screen that was scrolled for the last note.
    let to_top = move |_: &_, _: Option<&_>, _| window().scroll_to_with_x_and_y(0.0, 0.0);
    Effect::watch(move || step.get(), to_top, false);
    let body = move || {
        let Some(stick) = hand.stick.get() else { return parts() };
        let index = step.get();
        if index < stick.marks.len() { walk_mark(stick, index) } else { all_made(hand) }
    };
    tag("article")
        .class("walk")
        .attr("data-place", "bench")
        .child(head(hand, step))
        .child(boxes(hand, step))
        .child(tag("div").class("walk__body").live(body))
        .child(
            tag("div")
                .class("walk__more")
                .child(awake())
                .child(button("button button--plain", move |_| hand.step.set(None)).child("Back to the whole sheet")),
        )
        .child(buttons(hand, step))
}

fn head(hand: InHand, step: Cached<usize>) -> Tag {
    let store = use_store();
    let about = move || {
        let units = store.units();
        hand.stick.get().map(|stick| {
            let text = format!("{} · {}", stick.timber.sawn.label(units), length(stick.net_length(), units));
            crate::app::components::fractions(&text)
        })
    };
    let count = move || {
        let n_marks = hand.n_marks();
        if step.get() < n_marks {
            format!("mark {} of {n_marks}", step.get() + 1)
        } else {
            format!("all {n_marks} marks")
        }
    };
    tag("header")
        .class("walk__head")
        .child(tag("h1").class("walk__stick").attr("tabindex", "-1").child(hand.mark()))
        .child(tag("p").class("walk__about").live(about))
        .child(tag("p").class("walk__count").attr("role", "status").live(count))
}

/// A box for each mark: filled when made, blue where one is.
fn boxes(hand: InHand, step: Cached<usize>) -> Tag {
    let label = move || format!("{} of {} marks made", hand.made.with(|made| made.len()), hand.n_marks());
    let boxes = move || {
        let at = step.get();
        let class = |index: usize, made: bool| match (index == at, made) {
            (true, _) => "boxes__one boxes__one--here",
            (false, true) => "boxes__one boxes__one--made",
            (false, false) => "boxes__one",
        };
        (0..hand.n_marks())
            .map(|index| tag("span").class(class(index, hand.made.with(|made| made.contains(&index)))))
            .collect::<Vec<_>>()
    };
    tag("div").class("boxes").attr("role", "img").live_attr("aria-label", label).live(boxes)
}

fn buttons(hand: InHand, step: Cached<usize>) -> Tag {
    let is_first = move || step.get() == 0;
    let is_past = move || step.get() >= hand.n_marks();
    let is_made = move || hand.made.with(|made| made.contains(&step.get()));
    tag("div")
        .class("walk__buttons")
        .child(button("button walk__back", move |_| back(hand)).live_attr("disabled", is_first).child("Back"))
        .shown(
            move || !is_past(),
            move || {
                button("button button--main walk__marked", move |_| marked(hand))
                    .live(move || if is_made() { "Marked ✓ next" } else { "Marked" })
            },
        )
}

fn back(hand: InHand) {
    hand.step.update(|step| *step = step.map(|step| step.saturating_sub(1)));
}

fn forward(hand: InHand) {
    let n_marks = hand.stick.with_untracked(|stick| stick.as_ref().map_or(0, |stick| stick.marks.len()));
    hand.step.update(|step| *step = step.map(|step| (step + 1).min(n_marks)));
}

/// The mark is made: on to the next that is not.
fn marked(hand: InHand) {
    let Some(index) = hand.step.get_untracked() else { return };
    let n_marks = hand.stick.with_untracked(|stick| stick.as_ref().map_or(0, |stick| stick.marks.len()));
    if index >= n_marks {
        return;
    }
    if hand.made.with_untracked(|made| made.contains(&index)) {
        forward(hand);
        return;
    }
    hand.tick(&[index], true);
    hand.step.set(Some(hand.next_open(index + 1)));
}

/// Arrow keys turn the marks over, Enter makes one.
fn follow_keys(hand: InHand) {
    let listener = window_event_listener(ev::keydown, move |event| {
        let has_own_use =
            |target: web_sys::Element| target.closest("button, a, input, select, summary").ok().flatten().is_some();
        let on_control = event.target().and_then(|target| target.dyn_into().ok()).is_some_and(has_own_use);
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return;
        }
        match event.key().as_str() {
            "ArrowLeft" => back(hand),
            "ArrowRight" => forward(hand),
            "Enter" if !on_control => marked(hand),
            _ => (),
        }
    });
    on_cleanup(move || listener.remove());
}

/// After the last mark.
fn all_made(hand: InHand) -> Tag {
    let left = move || hand.n_marks().saturating_sub(hand.made.with(|made| made.len()));
    let words = move || match left() {
        0 => "All marks made: second pair of eyes, then cut.".to_owned(),
        1 => "One mark is still open.".to_owned(),
        left => format!("{left} marks are still open."),
    };
    let tick = move || hand.stick.get().map(|stick| parts().child(cut_tick(hand, stick.clone())).child(twins(stick)));
    tag("div")
        .class("walk__done")
        .child(tag("p").class("walk__eyes").live(words))
        .shown(move || left() > 0, move || button("button", move |_| hand.walk()).child("To the open mark"))
        .shown(
            move || left() == 0,
            move || {
                tag("p").child("Let someone else read every number back to you off the wood, from the other end too.")
            },
        )
        .child(caution(super::cut::TOOLS))
        .live(tick)
}
