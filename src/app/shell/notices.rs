//! What must be said at once: not saved, another window, a newer version.
use crate::app::components::missing;
use crate::app::device;
use crate::app::dom::{Tag, button, live, parts, tag};
use crate::app::files::file_out;
use crate::app::part::{Coming, Fetched};
use crate::app::saving::{SaveState, use_saving};
use crate::app::{CHECKS, use_store};
use leptos::prelude::*;
use std::time::Duration;

/// All notices, worst first.
pub fn notices() -> Tag {
    tag("div").class("notices").child(not_saved()).child(not_judged()).child(said()).child(update())
}

fn not_saved() -> Tag {
    let saving = use_saving();
    live(move || match saving.state.get() {
        SaveState::NotSaved(why) => tag("div")
            .class("notice notice--bad")
            .attr("role", "alert")
            .child(
                tag("p")
                    .class("notice__says")
                    .child(tag("strong").child("Not saved: "))
                    .child(why)
                    .child(". You can go on; save a copy as a file now."),
            )
            .child(file_out())
            .child(button("button", move |_| saving.save_now()).child("Try again")),
        SaveState::Conflict => tag("div")
            .class("notice notice--bad")
            .attr("role", "alert")
            .child(
                tag("p")
                    .class("notice__says")
                    .child(tag("strong").child("Open in two windows: "))
                    .child("another window saved a later state of this project. Nothing is overwritten."),
            )
            .child(
                tag("div")
                    .class("actions")
                    .child(button("button", move |_| saving.load_theirs()).child("Load the later state"))
                    .child(button("button", move |_| saving.keep_mine()).child("Keep this one as a copy")),
            ),
        SaveState::Saved | SaveState::Waiting => parts(),
    })
}

/// The part of the program that judges the frame is missing.
fn not_judged() -> Tag {
    let store = use_store();
    live(move || {
        let is_missing = CHECKS.coming() == Coming::Missing && store.id().is_some();
        is_missing.then(|| missing("Whether the frame carries is not judged yet: ", &CHECKS))
    })
}

fn said() -> Tag {
    let saving = use_saving();
    live(move || {
        saving.notice.get().map(|text| {
            tag("div")
                .class("notice")
                .attr("role", "status")
                .child(tag("p").class("notice__says").child(text))
                .child(button("button", move |_| saving.notice.set(None)).child("Understood"))
        })
    })
}

/// A newer version waits until it is asked for.
fn update() -> Tag {
    let saving = use_saving();
    let message = RwSignal::new(device::waiting_update());
    let handle = window_event_listener_untyped("outshot-update", move |_| message.set(device::waiting_update()));
    on_cleanup(move || handle.remove());
    let apply = move |_| {
        saving.save_waiting();
        device::apply_update();
        // The page reloads; should it not, the button must not stay behind.
        set_timeout(move || drop(message.try_set(None)), Duration::from_secs(4));
    };
    live(move || {
        message.get().map(|text| {
            tag("div")
                .class("notice")
                .attr("role", "status")
                .child(tag("p").class("notice__says").child(text).child("."))
                .child(
                    tag("div")
                        .class("actions")
                        .child(button("button button--main", apply).child("Use it now"))
                        .child(button("button", move |_| message.set(None)).child("Later")),
                )
        })
    })
}
