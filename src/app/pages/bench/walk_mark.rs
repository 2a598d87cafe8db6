//! The one mark that is walked to: its number, the tape around it, the wood that goes.
use super::words;
use crate::app::components::fractions;
use crate::app::dom::{Tag, live, parts, tag};
use crate::app::use_store;
use crate::drawing::Tape;
use crate::joinery::exception_says;
use crate::tickets::{Mark, Stick};
use crate::units::UnitSystem;
use std::sync::Arc;

/// One mark, large.
pub fn walk_mark(stick: Arc<Stick>, index: usize) -> Tag {
    let store = use_store();
    live(move || {
        let units = store.units();
        stick.marks.get(index).map(|mark| {
            let own = mark.joint(&stick.mark).and_then(|joint| exception_says(&store.project(), joint));
            let own = own.map(|says| tag("p").class("own-joint").child(fractions(&says)));
            shown(&stick, mark, units).child(own)
        })
    })
}

fn shown(stick: &Stick, mark: &Mark, units: UnitSystem) -> Tag {
    let what = format!("{}, {}", mark.what, mark.face.name());
    let (first, second) = words::figures(mark, units);
    let side = words::side_of_zero(mark);
    let from = format!("from {}", stick.zero);
    let details = [words::across(mark, units), words::depth(mark, units)];
    let details = details.into_iter().flatten().collect::<Vec<_>>().join(" · ");
    let other = words::from_other_end(stick, mark, units);
    let note = mark.note.clone();
    parts()
        .child(tag("h2").class("walk__what").child(fractions(&what)))
        .child(
            tag("p").class("walk__figures").child(large(&first)).child(
                second.map(|second| parts().child(tag("span").class("walk__to").child("to")).child(large(&second))),
            ),
        )
        .child(side.map(|side| tag("p").class("walk__side").child(side)))
        .child(tag("p").class("walk__from").child(from))
        .child(picture(stick, mark, units))
        .child(waste(mark))
        .child((!details.is_empty()).then(|| tag("p").class("walk__detail").child(fractions(&details))))
        .child((!note.is_empty()).then(|| tag("p").class("walk__note").child(fractions(&note))))
        .child(tag("p").class("walk__other").child(fractions(&other)))
}

/// A number as large as it goes, its unit smaller behind it.
fn large(figure: &str) -> Tag {
    let number = figure.strip_suffix(" mm");
    let unit = number.map(|_| tag("span").class("walk__unit").child(" mm"));
    tag("span").class("walk__figure").child(fractions(number.unwrap_or(figure))).child(unit)
}

fn picture(stick: &Stick, mark: &Mark, units: UnitSystem) -> Tag {
    let title = format!("The tape at {}", words::edges(mark, units));
    let html = Tape::of(stick, mark, units).print(&title);
    parts().child(tag("div").class("walk__tape").html(&html)).child(
        tag("p")
            .class("walk__ends")
            .attr("aria-hidden", "true")
            .child(tag("span").child("◀ left end"))
            .child(tag("span").child("right end ▶")),
    )
}

fn waste(mark: &Mark) -> Option<Tag> {
    words::waste(mark).map(|(before, which, after)| {
        tag("p")
            .class("walk__waste")
            .child(before)
            .child(tag("strong").child(which))
            .child(after)
            .child(": X there before you look away.")
    })
}
