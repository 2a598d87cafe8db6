//! What would help a check that fails, looked for a change at a time while its sheet is open.
use crate::app::cached::Cached;
use crate::app::components::{Slices, Work, fractions, work_at_once};
use crate::app::dom::{Item, Tag, button, tag};
use crate::app::{Good, Store, Strong, use_store};
use crate::checks::Check;
use crate::project::Project;
use crate::study::{Helps, Remedy, Stepper, price};
use crate::units::{Money, show_money};
use leptos::prelude::*;
use std::sync::Arc;

/// The search of one sheet.
pub struct Help {
    /// What it shows.
    pub tag: Tag,
    /// Everything was looked at.
    pub is_done: RwSignal<bool>,
}

/// Looks for what would help; it ends with the owner, or with any edit.
pub fn help(strong: &Strong, check: &Check) -> Help {
    let store = use_store();
    let (found, is_done) = (RwSignal::new(Vec::<Remedy>::new()), RwSignal::new(false));
    let about = Cached::new(move || store.good().map(|good| Project::clone(&good.project)));
    let (good, strength, check) = (strong.good.clone(), Arc::clone(&strong.strength), check.clone());
    let begin = move |project: Project| {
        // The checks of an edited project are on their way, and this sheet goes with those of the old one.
        let mut helps = (project == *good.project).then(|| Helps::new(&project, &strength, &check))?;
        let step: Slices = Box::new(move || {
            let progress = helps.next_step();
            let now = helps.found();
            if found.with_untracked(|known| *known != now) {
                found.set(now);
            }
            is_done.set(progress.is_done());
            progress
        });
        Some(step)
    };
    let good = strong.good.clone();
    let now = price(&good.project, &good.built).to_f64();
    let items = move || found.with(|all| all.iter().map(|remedy| item(store, &good, remedy, now)).collect());
    let none = move || is_done.get() && found.with(Vec::is_empty);
    let work = Work {
        start: "Look for what would help",
        about,
        begin: Box::new(begin),
        forget: Box::new(move || {
            found.set(Vec::new());
            is_done.set(false);
        }),
    };
    let tag = tag("section")
        .class("help")
        .child(tag("h3").class("help__title").child("What would help"))
        .each(items)
        .shown(none, || {
            tag("p").child(
                "No single change that was tried makes it hold: larger sticks, longer braces, closer spacing, another \
                 post, other fixings.",
            )
        })
        .child(work_at_once(work, "Looking for what would help"));
    Help { tag, is_done }
}

/// One button, which says what the change costs and what is worst then.
fn item(store: Store, good: &Good, remedy: &Remedy, now: f64) -> Item {
    let more = remedy.price.to_f64() - now;
    let said = show_money(Money::of(more.abs()), &good.project.currency).to_string();
    let cost = match more {
        more if more.abs() < 0.5 => String::new(),
        more if more > 0.0 => format!(", {said} more"),
        _ => format!(", {said} less"),
    };
    let worst = remedy.worst.as_ref();
    let worst =
        worst.map_or_else(String::new, |(member, ratio)| format!("; worst then {member}, {:.0} %", ratio * 100.0));
    let says = format!("{}: {:.0} %{cost}{worst}", remedy.says, remedy.ratio * 100.0);
    let (units, project) = (good.project.units, remedy.project.clone());
    Item::new(says.clone(), move || {
        let apply = move |_| store.edit(|own| *own = Project { units, ..project.clone() });
        button("button help__way", apply).child(tag("span").child(fractions(&says)))
    })
}
