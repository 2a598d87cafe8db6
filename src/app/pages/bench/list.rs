//! All sticks of the frame, by what they do.
use super::super::drawn::elevation;
use super::super::templates::templates_fold;
use super::joints::joints_apart;
use super::order::order_of_work;
use super::twins::alike;
use crate::app::cached::text_of;
use crate::app::components::{Segment, fractions, page, problems_under, segments, word};
use crate::app::dom::{Tag, drawing_tag, parts, tag};
use crate::app::route::{Place, Route};
use crate::app::{Store, use_store};
use crate::design::Built;
use crate::geometry::Polygon;
use crate::tickets::{Role, Stick, mirror_words};
use crate::units::{Length, UnitSystem};
use crate::wording::{length, weight};
use leptos::prelude::*;
use std::fmt::Write;

/// The list of sticks.
pub fn list_page() -> Tag {
    let store = use_store();
    let (only_open, by_turns) = (RwSignal::new(false), RwSignal::new(false));
    let about = text_of(move || {
        store.built().map_or_else(String::new, |built| {
            format!("{} of {} sticks cut", n_cut(store, &built.sticks), built.sticks.len())
        })
    });
    let groups = move || {
        let built = store.built().filter(|_| !by_turns.get())?;
        let longest = built.sticks.iter().map(Stick::net_length).fold(Length::ZERO, Length::max);
        Some(Role::ALL.map(|role| group(store, &built, role, longest, only_open.get())))
    };
    let all_cut = move || {
        let built = store.built()?;
        let none = only_open.get() && n_cut(store, &built.sticks) == built.sticks.len();
        none.then(|| word("Every stick is cut."))
    };
    let holds = parts()
        .child(problems_under("progress"))
        .child(filter(only_open))
        .child(sorting(by_turns))
        .live(all_cut)
        .live(groups)
        .shown(move || by_turns.get(), move || order_of_work(only_open))
        .child(joints_apart(None))
        .child(templates_fold());
    page(Place::Bench, "Bench", about, elevation(), holds)
}

fn filter(only_open: RwSignal<bool>) -> Tag {
    let segment = move |value: bool, word: &str| {
        Segment::new(word, move || only_open.get() == value, move || only_open.set(value))
    };
    segments("bench-shown", "Show", (), vec![segment(false, "All sticks"), segment(true, "Left to cut")])
}

fn sorting(by_turns: RwSignal<bool>) -> Tag {
    let segment =
        move |value: bool, word: &str| Segment::new(word, move || by_turns.get() == value, move || by_turns.set(value));
    segments("bench-sorted", "Sort", (), vec![segment(false, "By kind"), segment(true, "Order of work")])
}

fn n_cut(store: Store, sticks: &[Stick]) -> usize {
    store.project().progress.cut.keys().filter(|mark| sticks.iter().any(|stick| stick.mark == **mark)).count()
}

/// The sticks of one role: one row for each layout, the others of that layout beside it.
fn group(store: Store, built: &Built, role: Role, longest: Length, only_open: bool) -> Option<Tag> {
    let project = store.project();
    let is_open = |stick: &Stick| !project.progress.cut.contains_key(&stick.mark);
    let rows: Vec<_> = built
        .sticks
        .iter()
        .filter(|stick| stick.role == role && stick.same_as.is_none())
        .filter_map(|first| {
            let alike = alike(built, first);
            let shown: Vec<Stick> = alike.iter().filter(|stick| !only_open || is_open(stick)).cloned().collect();
            let mirror = mirror_words(&built.sticks, first);
            (!shown.is_empty()).then(|| layout_row(store, (first, mirror), alike.len(), &shown, longest))
        })
        .collect();
    if rows.is_empty() {
        return None;
    }
    let role = tag("h2").class("sticks__role").child(heading(role));
    Some(tag("section").class("sticks").child(role).child(tag("ul").class("sticks__list").child(rows)))
}

fn heading(role: Role) -> String {
    let (first, rest) = role.plural().split_at(1);
    format!("{}{rest}", first.to_uppercase())
}

fn layout_row(
    store: Store,
    (first, mirror): (&Stick, Option<String>),
    n_alike: usize,
    shown: &[Stick],
    longest: Length,
) -> Tag {
    let units = store.units();
    let text = format!(
        "{} · {} · {}",
        first.timber.sawn.label(units),
        length(first.net_length(), units),
        weight(first.green_weight, units)
    );
    let count = (n_alike > 1).then(|| {
        let words = if n_alike == shown.len() {
            format!("{n_alike} alike")
        } else {
            format!("{} of {n_alike} alike", shown.len())
        };
        tag("span").class("sticks__alike").child(words)
    });
    let mirror = mirror.map(|words| tag("span").class("sticks__alike").child(words));
    let chips = shown.iter().map(|stick| chip(store, stick, units)).collect::<Vec<_>>();
    tag("li")
        .class("sticks__layout")
        .child(tag("p").class("sticks__size").child(tag("span").child(fractions(&text))).child(count).child(mirror))
        .child(silhouette(first, longest))
        .child(tag("div").class("sticks__marks").child(chips))
}

/// The way to one stick, with what is done on it.
pub fn chip(store: Store, stick: &Stick, units: UnitSystem) -> Tag {
    let project = store.project();
    let n_marks = stick.marks.len();
    let made = project.progress.marked.get(&stick.mark).map_or(0, |keys| stick.made(keys).len());
    let is_cut = project.progress.cut.contains_key(&stick.mark);
    let (class, state) = match (is_cut, made) {
        (true, _) => ("stick-link stick-link--cut", "✓ cut".to_owned()),
        (false, made) => ("stick-link", format!("{made} of {n_marks}")),
    };
    let words = if is_cut { ", " } else { " marks made, " };
    let same = stick.same_as.as_ref().map(|first| format!(", same as {first}")).unwrap_or_default();
    let more = format!("{words}{} {}{same}", stick.timber.sawn.label(units), length(stick.net_length(), units));
    tag("a")
        .class(class)
        .attr("href", Route::bench(&stick.mark).hash())
        .child(tag("span").class("stick-link__mark").child(stick.mark.clone()))
        .child(tag("span").class("stick-link__state").child(state))
        .child(tag("span").class("quiet").child(more))
}

/// The stick from its side, all at one scale.
fn silhouette(stick: &Stick, longest: Length) -> Tag {
    let outline = &stick.profile.1;
    let (low, high) = outline.bounds();
    let room = 0.6;
    let frame = format!(
        "{} {} {} {}",
        low.x.to_inches() - room,
        low.y.to_inches() - room,
        longest.to_inches() + room * 2.0,
        (high.y - low.y).to_inches() + room * 2.0
    );
    drawing_tag("svg")
        .class("silhouette")
        .attr("viewBox", frame)
        .attr("aria-hidden", "true")
        .attr("focusable", "false")
        .child(drawing_tag("path").class("silhouette__wood").attr("d", path(outline)))
}

fn path(outline: &Polygon) -> String {
    let mut text = String::new();
    for (index, corner) in outline.corners.iter().enumerate() {
        let letter = if index == 0 { 'M' } else { 'L' };
        let _ = write!(text, "{letter}{:.2} {:.2}", corner.x.to_inches(), corner.y.to_inches());
    }
    text.push('Z');
    text
}
