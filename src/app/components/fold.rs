//! Parts of a page: groups that fold, and facts that follow from the fields.
use super::reading::followed;
use crate::app::dom::{Child, Tag, parts, tag};
use leptos::prelude::*;

/// A part of a page that can be folded away.
pub fn fold(title: &str, summary: impl Into<Signal<String>>, open: bool, holds: impl Child) -> Tag {
    let summary = summary.into();
    tag("details")
        .class("fold")
        .attr("open", open)
        .child(
            tag("summary")
                .class("fold__head")
                .child(tag("h2").class("fold__title").child(title))
                .child(tag("span").class("fold__summary").child(followed(summary))),
        )
        .child(tag("div").class("fold__body").child(holds))
}

/// A part that is made only when it is unfolded, and gone when it is folded away.
pub fn late_fold(title: &str, summary: impl Into<Signal<String>>, holds: impl Fn() -> Tag + 'static) -> Tag {
    made_late(title, summary.into(), Box::new(holds))
}

#[inline(never)]
fn made_late(title: &str, summary: Signal<String>, holds: Box<dyn Fn() -> Tag>) -> Tag {
    let is_open = RwSignal::new(false);
    let turned =
        move |event: web_sys::Event| is_open.set(event_target::<web_sys::Element>(&event).has_attribute("open"));
    fold(title, summary, false, parts().shown(move || is_open.get(), holds)).on("toggle", turned)
}

/// Fields that belong together inside a part.
pub fn group(title: &str, holds: impl Child) -> Tag {
    tag("section").class("group").child(tag("h3").class("group__title").child(title)).child(holds)
}

/// A list of computed facts: names and what they come to.
pub fn facts(all: &[(&str, Signal<String>)]) -> Tag {
    let mut list = fact_list(());
    for (name, value) in all {
        list = list.child(fact_line(name, *value));
    }
    list
}

/// A list of facts that are put in by themselves.
pub fn fact_list(holds: impl Child) -> Tag {
    tag("dl").class("facts").child(holds)
}

/// One computed fact; fractions are set as fractions.
pub fn fact_line(name: &str, value: impl Into<Signal<String>>) -> Tag {
    tag("div")
        .class("fact")
        .child(tag("dt").class("fact__name").child(name))
        .child(tag("dd").class("fact__value").child(followed(value)))
}
