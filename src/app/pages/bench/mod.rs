//! The bench: every stick in a list, or one stick in hand.
mod awake;
mod bad_cut;
mod crown;
mod cut;
mod dry_fit;
mod fit;
mod in_hand;
mod joint_ticks;
mod joints;
mod knots;
mod list;
mod marks;
mod order;
mod sheet;
mod sizes;
mod twins;
mod typed;
mod walk;
mod walk_mark;
mod words;

use crate::app::dom::{Tag, live};
use crate::app::focus::focus_heading;
use crate::app::route::use_router;
use leptos::prelude::*;
use list::list_page;
pub use order::{WHY, bore_words, entries_of, words};
use sheet::stick_page;

/// Bench.
pub fn bench_page() -> Tag {
    let router = use_router();
    let arrive = move |_: &_, _: Option<&_>, _| {
        request_animation_frame(|| {
            window().scroll_to_with_x_and_y(0.0, 0.0);
            focus_heading();
        });
    };
    // From stick to stick the place stays the same, so the shell doesn't bring the reader to the top.
    Effect::watch(move || router.stick(), arrive, false);
    live(move || match router.stick() {
        Some(mark) => stick_page(mark),
        None => list_page(),
    })
}
