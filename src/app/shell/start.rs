//! The first page: no project is open.
use super::projects::{new_project, project_list};
use crate::app::dom::{Tag, tag};
use crate::app::saving::use_saving;
use crate::app::storage;
use crate::app::theme::theme_choice;
use leptos::prelude::*;

/// What this is, and how to begin.
pub fn start() -> Tag {
    let saving = use_saving();
    let choice = move || {
        saving.list.track();
        if storage::index().is_empty() && storage::removed().is_none() { new_project() } else { project_list() }
    };
    tag("article")
        .class("start")
        .child(lean_to())
        .child(tag("h1").class("start__title").attr("tabindex", "-1").child("Outshot"))
        .child(tag("p").class("start__about").child(
            "A timber-framed lean-to, from the tape at the wall to the marks on the \
             last stick. Set what your wall, ground and mill give you; every length, \
             mark, weight and price follows at once.",
        ))
        .child(tag("p").class("start__about").child("It works without a signal, and everything stays on this device."))
        .live(choice)
        .child(theme_choice())
}

/// A lean-to in a few lines, drawn as the drawings are.
fn lean_to() -> Tag {
    tag("svg")
        .class("drawing start__picture")
        .attr("viewBox", "0 0 340 200")
        .attr("aria-hidden", "true")
        .attr("focusable", "false")
        .child(tag("path").class("ground").attr("d", "M2 168 H338 V190 H2 Z"))
        .child(tag("path").class("wall").attr("d", "M26 28 H52 V168 H26 Z"))
        .child(tag("path").class("wall").attr("d", "M4 24 L66 6 L84 26 V36 L52 36 L26 44 V34 L4 40 Z"))
        .child(tag("path").class("pier").attr("d", "M262 160 H290 V184 H262 Z"))
        .child(tag("path").class("wood").attr("d", "M266 94 H286 V160 H266 Z"))
        .child(tag("path").class("seen").attr("d", "M266 100 L276 94 H286 V128 H278 Z"))
        .child(tag("path").class("endgrain").attr("d", "M52 60 H64 V82 H52 Z"))
        .child(tag("path").class("endgrain").attr("d", "M264 76 H288 V102 H264 Z"))
        .child(
            tag("path").class("wood").attr("d", "M54 47 L310 77 L307 92 L288 89.8 V84 H272 L270 81 L64 65 V60 H52.5 Z"),
        )
        .child(tag("path").class("metal line").attr("d", "M54 38 L318 69"))
        .child(
            tag("path")
                .class("dim")
                .attr("d", "M52 179 H288 M47 184 L57 174 M283 184 L293 174 M52 172 V186 M288 172 V186"),
        )
}
