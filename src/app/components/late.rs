//! What shows only once its part of the program is fetched.
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::focus::focus_heading;
use crate::app::part::{Coming, Fetched, ProgramPart};
use crate::app::route::Place;
use leptos::prelude::*;

/// Makes what is shown.
pub type PartOfPage = fn() -> Tag;

/// A page that needs a part of the program, and what makes it of what the part holds: its name stands there until it comes.
pub fn late_page<T: Copy + Send + Sync>(
    place: Place,
    part: &'static ProgramPart<T>,
    make: impl Fn(T) -> Tag + 'static,
) -> Tag {
    let around = move |waits| {
        tag("article").class("page").child(
            tag("header")
                .class("page__head")
                .child(tag("h1").class("page__title").attr("tabindex", "-1").child(place.name()))
                .child(waits),
        )
    };
    late(part, around, make)
}

/// Something on a page that is a part of the program.
pub fn late_part(part: &'static ProgramPart<PartOfPage>) -> Tag {
    late(part, |waits| waits, |make| make())
}

/// What is made of the part, at once where it is here; until then what stands around the word about it.
fn late<T: Copy + Send + Sync>(
    part: &'static ProgramPart<T>,
    around: impl Fn(Tag) -> Tag + 'static,
    make: impl Fn(T) -> Tag + 'static,
) -> Tag {
    // What could not be fetched before may be had now.
    part.ask();
    parts().live(move || match (part.coming(), part.held()) {
        (Coming::Here, Some(held)) => {
            keep_focus();
            make(held)
        }
        (Coming::Missing, _) => around(missing("Not here yet: ", part)),
        _ => around(tag("p").class("page__about").attr("role", "status").child("One moment…")),
    })
}

/// A heading that has the focus goes with what stood there: the new one gets it.
fn keep_focus() {
    let heading = document().active_element().filter(|element| element.matches("main h1").unwrap_or(false));
    if heading.is_some() {
        request_animation_frame(focus_heading);
    }
}

/// That a part could not be fetched, after what that means, and the way to try again.
pub fn missing(means: &'static str, part: &'static dyn Fetched) -> Tag {
    tag("div")
        .class("notice notice--bad")
        .attr("role", "alert")
        .child(tag("p").class("notice__says").child(tag("strong").child(means)).child(
            "a part of the program could not be fetched. What you have entered is kept. \
                 Try again where there is a signal, or reload the page.",
        ))
        .child(button("button", move |_| part.ask()).child("Try again"))
}
