//! One line of caution where the work can hurt someone.
use crate::app::dom::{Tag, tag};
use leptos::prelude::*;

/// A caution: one line.
pub fn caution(text: impl Into<Signal<String>>) -> Tag {
    tag("p")
        .class("caution")
        .child(tag("span").class("caution__mark").attr("aria-hidden", "true").child("!"))
        .child(tag("span").child(tag("strong").child("Caution: ")).child(text.into()))
}
