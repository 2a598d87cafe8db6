//! All sticks of the frame, by what they do.
use super::super::drawn::Elevation;
use super::twins::alike;
use crate::app::components::{Page, fractions};
use crate::app::route::{Place, Route};
use crate::app::{Store, use_store};
use crate::design::Built;
use crate::geometry::Polygon;
use crate::tickets::{Role, Stick};
use crate::units::{Length, UnitSystem};
use crate::wording::{length, weight};
use leptos::prelude::*;
use std::fmt::Write;

/// The list of sticks.
#[component]
pub fn ListPage() -> impl IntoView {
    let store = use_store();
    let only_open = RwSignal::new(false);
    let about = Signal::derive(move || {
        store.built().map_or_else(String::new, |built| {
            format!("{} of {} sticks cut", n_cut(store, &built.sticks), built.sticks.len())
        })
    });
    let groups = move || {
        let built = store.built()?;
        let longest = built.sticks.iter().map(Stick::net_length).fold(Length::ZERO, Length::max);
        Some(Role::ALL.map(|role| group(store, &built, role, longest, only_open.get())).collect_view())
    };
    let all_cut = move || {
        let built = store.built()?;
        let none = only_open.get() && n_cut(store, &built.sticks) == built.sticks.len();
        none.then(|| view! { <p class="page__word">"Every stick is cut."</p> })
    };
    view! {
        <Page place=Place::Bench title="Bench" about lead=|| view! { <Elevation/> }>
            <Filter only_open/>
            {all_cut}
            {groups}
        </Page>
    }
}

#[component]
fn Filter(only_open: RwSignal<bool>) -> impl IntoView {
    let segment = move |value: bool, word: &'static str| {
        view! {
            <label class="segment">
                <input
                    class="segment__input" type="radio" name="bench-shown" prop:checked=move || only_open.get() == value
                    on:change=move |_| only_open.set(value)
                />
                <span class="segment__word">{word}</span>
            </label>
        }
    };
    view! {
        <fieldset class="choice">
            <legend class="choice__label">"Show"</legend>
            <div class="choice__segments">{segment(false, "All sticks")} {segment(true, "Left to cut")}</div>
        </fieldset>
    }
}

fn n_cut(store: Store, sticks: &[Stick]) -> usize {
    store.project().progress.cut.keys().filter(|mark| sticks.iter().any(|stick| stick.mark == **mark)).count()
}

/// The sticks of one role: one row for each layout, the others of that layout beside it.
fn group(store: Store, built: &Built, role: Role, longest: Length, only_open: bool) -> AnyView {
    let project = store.project();
    let is_open = |stick: &Stick| !project.progress.cut.contains_key(&stick.mark);
    let rows: Vec<_> = built
        .sticks
        .iter()
        .filter(|stick| stick.role == role && stick.same_as.is_none())
        .filter_map(|first| {
            let alike = alike(built, first);
            let shown: Vec<Stick> = alike.iter().filter(|stick| !only_open || is_open(stick)).cloned().collect();
            (!shown.is_empty()).then(|| layout_row(store, first, alike.len(), &shown, longest))
        })
        .collect();
    if rows.is_empty() {
        return ().into_any();
    }
    view! {
        <section class="sticks">
            <h2 class="sticks__role">{plural(role)}</h2>
            <ul class="sticks__list">{rows}</ul>
        </section>
    }
    .into_any()
}

fn plural(role: Role) -> String {
    let name = role.name();
    let (first, rest) = name.split_at(1);
    format!("{}{rest}s", first.to_uppercase())
}

fn layout_row(store: Store, first: &Stick, n_alike: usize, shown: &[Stick], longest: Length) -> impl IntoView + use<> {
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
        view! { <span class="sticks__alike">{words}</span> }
    });
    let chips = shown.iter().map(|stick| chip(store, stick, units)).collect_view();
    view! {
        <li class="sticks__layout">
            <p class="sticks__size"><span>{fractions(&text)}</span> {count}</p>
            {silhouette(first, longest)}
            <div class="sticks__marks">{chips}</div>
        </li>
    }
}

/// The way to one stick, with what is done on it.
fn chip(store: Store, stick: &Stick, units: UnitSystem) -> impl IntoView + use<> {
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
    view! {
        <a class=class href=Route::bench(&stick.mark).hash()>
            <span class="stick-link__mark">{stick.mark.clone()}</span>
            <span class="stick-link__state">{state}</span>
            <span class="quiet">{more}</span>
        </a>
    }
}

/// The stick from its side, all at one scale.
fn silhouette(stick: &Stick, longest: Length) -> impl IntoView + use<> {
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
    view! {
        <svg class="silhouette" viewBox=frame aria-hidden="true" focusable="false">
            <path class="silhouette__wood" d=path(outline)></path>
        </svg>
    }
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
