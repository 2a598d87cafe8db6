//! Parts of a page: groups that fold, and facts that follow from the fields.
use super::reading::followed;
use crate::app::dom::{Child, Tag, parts, tag, while_awake};
use leptos::prelude::*;

/// A part of a page that can be folded away; what it holds sleeps while it is.
pub fn fold<C: Child>(title: &str, summary: impl Into<Signal<String>>, open: bool, holds: impl FnOnce() -> C) -> Tag {
    let is_open = RwSignal::new(open);
    let holds = while_awake(is_open, || parts().child(holds()));
    // The browser may tell it once the page has been left.
    let turn = move |open: bool| {
        if is_open.try_get_untracked() == Some(!open) {
            is_open.set(open);
        }
    };
    // A click is told before the fold opens: what it shows is written by then.
    folded(title, summary.into(), open, holds)
        .on("click", move |_| turn(true))
        .on("toggle", move |event| turn(stands_open(&event)))
}

/// Whether the part that was opened or folded away is open now.
fn stands_open(event: &web_sys::Event) -> bool {
    event_target::<web_sys::Element>(event).has_attribute("open")
}

#[inline(never)]
fn folded(title: &str, summary: Signal<String>, open: bool, holds: Tag) -> Tag {
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
    let inside = parts().shown(move || is_open.get(), holds);
    folded(title, summary, false, inside).on("toggle", move |event| is_open.set(stands_open(&event)))
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
