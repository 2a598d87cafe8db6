//! What the studies of the mill's page share: what they are about, and how a found change is told and made.
use crate::app::cached::Cached;
use crate::app::components::fractions;
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::{Store, use_store};
use crate::project::{Progress, Project};
use crate::study::Moves;
use crate::units::{Money, UnitSystem, show_money};

/// The last good project without what no study depends on: a name or a tick is no reason to work again.
pub fn studied() -> Cached<Option<Project>> {
    let store = use_store();
    Cached::new(move || {
        let good = store.good()?;
        let cut = good.project.progress.cut.clone();
        Some(Project {
            name: String::new(),
            note: String::new(),
            progress: Progress { cut, ..Progress::default() },
            ..Project::clone(&good.project)
        })
    })
}

/// A price against another, in words.
pub fn against(price: Money, own: Money, currency: &str) -> String {
    let more = price.to_f64() - own.to_f64();
    let says = show_money(Money::of(more.abs()), currency).to_string();
    match more {
        // The cents of each line are rounded.
        more if more.abs() < 0.05 => "the same price".to_owned(),
        more if more > 0.0 => format!("{says} more"),
        _ => format!("{says} less"),
    }
}

/// What moves, folded away behind how much it is.
pub fn what_moves(moves: &Moves, units: UnitSystem) -> Option<Tag> {
    let says = moves.joints.iter().map(|joint| joint.says(units)).chain(moves.also.iter().cloned());
    let lines: Vec<Tag> = says.map(|says| tag("li").class("order__missing").child(fractions(&says))).collect();
    let head = match lines.len() {
        0 => None,
        1 => Some("What it moves".to_owned()),
        n => Some(format!("What it moves: {n} things")),
    };
    let list = head.map(|head| {
        tag("details")
            .class("order__sticks")
            .child(tag("summary").class("order__more").child(head))
            .child(tag("ul").class("order__list").child(lines))
    });
    let stuck = moves.no_way_in.join("; ");
    let stuck = (!stuck.is_empty()).then(|| {
        let word = tag("strong").class("problem__word").child("Not to be built like that: ");
        tag("div").class("problem").child(tag("p").class("problem__says").child(word).child(format!("{stuck}.")))
    });
    (list.is_some() || stuck.is_some()).then(|| parts().child(list).child(stuck))
}

/// A button that makes a change of the frame and of the mill's list.
pub fn make_so(store: Store, word: &'static str, found: Project) -> Tag {
    let make = move |_| {
        store.edit(|project| {
            project.frame.clone_from(&found.frame);
            project.mill.clone_from(&found.mill);
        });
    };
    button("button button--small", make).child(word)
}

/// One found thing: its heading, its figures, what it moves, what can be done with it.
pub fn card(head: &str, figures: &str, then: impl crate::app::dom::Child) -> Tag {
    tag("li")
        .class("order__line study")
        .child(tag("h3").class("study__head").child(fractions(head)))
        .child(tag("p").class("order__figures").child(fractions(figures)))
        .child(then)
}
