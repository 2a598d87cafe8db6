//! The order of work: first to last, what is raised first cut last.
use super::list::chip;
use crate::app::components::word;
use crate::app::dom::{Tag, parts, tag};
use crate::app::{Fitted, Store, use_store};
use crate::tickets::{Stick, Turn, work_order};
use leptos::prelude::*;

/// What the order is for.
pub const WHY: &str = "Green timber moves: what is raised first is cut last. The beam’s pieces are cut together, for their scarfs are \
                       closed dry first. Of sticks alike the first is the pattern: try it before you cut the others.";

/// The turns at the bench, numbered.
pub fn order_of_work(only_open: RwSignal<bool>) -> Tag {
    let store = use_store();
    parts().child(word(WHY)).live(move || match store.fitted() {
        None => word("Working out how it goes up …"),
        Some(fitted) => turns(store, &fitted, only_open.get()),
    })
}

fn turns(store: Store, fitted: &Fitted, only_open: bool) -> Tag {
    let sticks = &fitted.good.built.sticks;
    let work = work_order(sticks, &fitted.fit.entries);
    let project = store.project();
    let is_open = |mark: &String| !only_open || !project.progress.cut.contains_key(mark);
    let turn = |(at, turn): (usize, &Turn)| {
        let named = turn.sticks.iter().filter(|mark| is_open(mark));
        let of = |mark: &String| sticks.iter().find(|stick| stick.mark == *mark);
        let shown: Vec<&Stick> = named.filter_map(of).collect();
        let chips: Vec<Tag> = shown.into_iter().map(|stick| chip(store, stick, project.units)).collect();
        (!chips.is_empty()).then(|| {
            tag("li")
                .class("turns__turn")
                .attr("value", (at + 1).to_string())
                .child(tag("p").class("turns__words").child(words(sticks, turn)))
                .child(tag("div").class("sticks__marks").child(chips))
        })
    };
    let rows: Vec<Option<Tag>> = work.turns.iter().enumerate().map(turn).collect();
    tag("ol")
        .class("turns")
        .child(rows)
        .child(tag("li").class("turns__turn").child(tag("p").class("turns__words").child(bore_words(&work.bore))))
}

/// What a turn is, in a line.
pub fn words(sticks: &[Stick], turn: &Turn) -> String {
    let role = turn.sticks.first().and_then(|mark| sticks.iter().find(|stick| stick.mark == *mark));
    let role = role.map_or("", |stick| stick.role.name());
    let many = match turn.sticks.len() {
        1 => role.to_owned(),
        n => format!("{n} {role}s like {}, the pattern", turn.sticks[0]),
    };
    let mirror = turn.mirror.as_ref().map_or_else(String::new, |words| format!(", {words}"));
    format!("{many}{mirror}; goes up as no. {}", turn.raised)
}

/// The last thing of all.
pub fn bore_words(bore: &[String]) -> String {
    format!("Last of all, just before raising, bore the tenons’ holes: {}.", bore.join(", "))
}
