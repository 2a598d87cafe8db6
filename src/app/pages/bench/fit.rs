//! What the solids show of the stick in hand: joints in each other's way, the wood left, and how it gets in.
use super::in_hand::InHand;
use crate::app::components::{caution, fractions};
use crate::app::dom::{Tag, parts, tag};
use crate::app::{Fitted, use_store};
use crate::joinery::{Clash, Entry};
use crate::wording::length;

/// The part of a sheet about the wood at its joints.
pub fn fit_part(hand: InHand) -> Tag {
    let store = use_store();
    let mark = hand.mark();
    let shown = move || match store.fitted() {
        Some(fitted) => found(&fitted, &mark),
        None => parts().child(tag("p").class("fit__word").child("Cutting it in thought …")),
    };
    tag("section")
        .class("fit")
        .attr("aria-labelledby", "fit-title")
        .child(tag("h2").class("cut__title").attr("id", "fit-title").child("The wood at its joints"))
        .live(shown)
}

fn found(fitted: &Fitted, mark: &str) -> Tag {
    let (fit, units) = (&fitted.fit, fitted.good.project.units);
    let own = |clash: &&Clash| clash.is_of(mark);
    let troubles: Vec<Tag> = fit.clashes.iter().filter(own).map(trouble).collect();
    let near = fit.near.iter().filter(|near| near.stick == mark);
    let rows: Vec<Tag> = near
        .map(|near| {
            let mut says = near.says(units);
            if let Some(least) = near.least {
                says.push_str(&format!("; {} is the least", length(least, units)));
            }
            tag("li").class("fit__row").class_if("fit__row--thin", near.is_thin()).child(fractions(&says))
        })
        .collect();
    let thinnest = (!rows.is_empty()).then(|| {
        parts()
            .child(tag("h3").class("fit__title").child("Thinnest wood"))
            .child(tag("ul").class("fit__list").child(rows))
    });
    let entry = fit.entries.iter().find(|entry| entry.stick == mark);
    let carried = fit.entries.iter().find(|entry| entry.with.iter().any(|with| with == mark));
    parts().child(troubles).child(thinnest).child(entry.map(way)).child(
        entry.is_none().then(|| carried.map(|entry| tag("p").class("fit__word").child(carried_words(entry)))).flatten(),
    )
}

fn carried_words(entry: &Entry) -> String {
    format!("It stands before {}, which comes down on it.", entry.stick)
}

/// One thing in the way.
pub fn trouble(clash: &Clash) -> Tag {
    tag("div").class("problem").child(
        tag("p")
            .class("problem__says")
            .child(tag("strong").class("problem__word").child("In the way").child(": "))
            .child(fractions(&clash.says)),
    )
}

fn way(entry: &Entry) -> Tag {
    let verdict = match &entry.stopped {
        None => "The way is free of all that stands before it.".to_owned(),
        Some(stopped) => format!("It cannot get in like that: {} is in its way.", stopped.by),
    };
    parts()
        .child(tag("h3").class("fit__title").child("How it goes in"))
        .child(tag("p").class("fit__word").child(fractions(&format!("{}.", sentence(&entry.way)))))
        .child(tag("p").class("fit__word").class_if("fit__word--stopped", entry.stopped.is_some()).child(verdict))
        .child(caution(Entry::CAUTION))
}

/// With a capital at its head.
fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}
