//! The crown of the stick in hand: which face it is toward, and how to lay the stick so that it is up.
use super::in_hand::InHand;
use crate::app::cached::Cached;
use crate::app::components::{Segment, fractions, segments};
use crate::app::dom::{Tag, live, parts, tag};
use crate::app::use_store;
use crate::materials::Face;
use crate::tickets::{CrownAnswer, clear_zones, crown_answer, crown_faces};

/// The question, on the sheets of sticks that carry across.
pub fn crown_part(hand: InHand) -> Tag {
    let store = use_store();
    let faces = Cached::new(move || hand.stick.with(|stick| stick.as_ref().map(|stick| crown_faces(stick))));
    let mark = hand.mark();
    let now = store.slice(move |project| project.progress.crowns.get(&mark).copied());
    let put = move |face: Option<Face>| {
        let mark = hand.mark();
        store.tick(|progress| match face {
            Some(face) => drop(progress.crowns.insert(mark, face)),
            None => drop(progress.crowns.remove(&mark)),
        });
    };
    live(move || {
        let faces = faces.get().filter(|faces| !faces.is_empty())?;
        let mut all = vec![Segment::new("not looked at", move || now.get().is_none(), move || put(None))];
        for face in faces {
            all.push(Segment::new(face.name(), move || now.get() == Some(face), move || put(Some(face))));
        }
        let hint = tag("p")
            .class("field__hint")
            .child("Sight along it: the face it bows toward as it lies now. It goes up: once turned, tap top.");
        Some(
            tag("section")
                .class("fit")
                .attr("aria-labelledby", "crown-title")
                .child(tag("h2").class("cut__title").attr("id", "crown-title").child("Crown"))
                .child(segments("crown", "Its crown is toward the", hint, all))
                .child(tag("div").attr("role", "status").live(move || said(hand))),
        )
    })
}

fn said(hand: InHand) -> Option<Tag> {
    let CrownAnswer { is_up, says } = answer(hand)?;
    Some(tag("p").class("fit__word").class_if("fit__word--stopped", !is_up).child(fractions(&says)))
}

/// The same before the first mark, where the crown is not up.
pub fn crown_down(hand: InHand) -> Tag {
    live(move || {
        let answer = answer(hand).filter(|answer| !answer.is_up)?;
        let word = tag("strong").class("problem__word").child("Crown: ");
        let says = tag("p").class("problem__says").child(word).child(fractions(&answer.says));
        Some(parts().child(tag("div").class("problem").child(says)))
    })
}

fn answer(hand: InHand) -> Option<CrownAnswer> {
    let store = use_store();
    let (good, stick) = (store.good()?, hand.stick.get()?);
    let project = store.project();
    let crown = *project.progress.crowns.get(&stick.mark)?;
    let knots = project.progress.knots.get(&stick.mark).cloned().unwrap_or_default();
    let zones = clear_zones(&good.project, &good.built.shape, &stick);
    Some(crown_answer(&stick, (&zones, &knots), crown, (store.units(), hand.is_cut())))
}
