//! Knots of the stick in hand: where they are, and how to lay the joints so that they are clear.
use super::typed::{picked, read, typed};
use crate::app::cached::text_of;
use crate::app::components::{fold, fractions, word};
use crate::app::dom::{Tag, button, drawing_tag, parts, tag};
use crate::app::{Store, use_store};
use crate::project::Knot;
use crate::tickets::{KnotAnswer, Stick, Zone, clear_zones, knot_answer};
use crate::units::{Length, UnitSystem};
use crate::wording::length;
use leptos::prelude::*;
use std::fmt::Write;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// A tapped place is read to the half inch, as well as a finger hits it.
const TAP: Length = Length::inches(0.5);

/// What is typed or tapped of the next knot.
#[derive(Clone, Copy)]
struct Next {
    face: RwSignal<usize>,
    from_zero: RwSignal<String>,
    across: RwSignal<String>,
    size: RwSignal<String>,
    refused: RwSignal<Option<String>>,
}

/// The part of a stick's page about its knots; nothing for sticks whose sheet shows fewer than four faces.
pub fn knots(stick: &Arc<Stick>) -> Option<Tag> {
    if stick.faces.len() != 4 {
        return None;
    }
    let store = use_store();
    let mark = stick.mark.clone();
    let mark = StoredValue::new(mark);
    let found = move || -> Vec<Knot> {
        mark.with_value(|mark| store.project().progress.knots.get(mark).cloned().unwrap_or_default())
    };
    let text = RwSignal::new;
    let next = Next {
        face: RwSignal::new(0),
        from_zero: text(String::new()),
        across: text(String::new()),
        size: text(String::new()),
        refused: RwSignal::new(None),
    };
    let zones =
        untrack(|| store.good()).map_or_else(Vec::new, |good| clear_zones(&good.project, &good.built.shape, stick));
    let zones = Arc::new(zones);
    let summary = text_of(move || match found().len() {
        0 => "none entered".to_owned(),
        1 => "1 knot".to_owned(),
        n => format!("{n} knots"),
    });
    let (drawn, of_faces) = (stick.clone(), zones.clone());
    let (answered, listed) = (stick.clone(), stick.clone());
    let holds = || {
        parts()
        .child(word(
            "The hatched wood wants no knot and no wane (common practice). Tap a knot where it is on the rough stick as it \
             lies now, or type it.",
        ))
        .live(move || faces(store, next, &drawn, &of_faces, &found()))
        .child(form(store, next, stick))
        .live(move || list(store, &listed, &found()))
        .child(tag("div").class("knots__answer").attr("role", "status").live(move || {
            let found = found();
            let crown = store.project().progress.crowns.get(&answered.mark).copied();
            knot_answer(&answered, &zones, &found, crown).map(|answer| says(&answer, &answered, &found, store.units()))
        }))
    };
    Some(fold("Knots", summary, false, holds))
}

fn says(answer: &KnotAnswer, stick: &Stick, knots: &[Knot], units: UnitSystem) -> Vec<Tag> {
    answer.says(stick, knots, units).iter().map(|line| tag("p").class("knots__says").child(fractions(line))).collect()
}

/// The four faces, stretched to the page's width: zones hatched, knots as spots.
fn faces(store: Store, next: Next, stick: &Arc<Stick>, zones: &[Zone], knots: &[Knot]) -> Vec<Tag> {
    let strip = |(at, (face, width)): (usize, &(crate::materials::Face, Length))| {
        let (low, net) = (stick.low.to_inches(), stick.net_length().to_inches());
        let x = |place: Length| if stick.to_left { net - (place.to_inches() - low) } else { place.to_inches() - low };
        let mut svg = drawing_tag("svg")
            .class("knots__face")
            .attr("viewBox", format!("0 0 {net} {}", width.to_inches()))
            .attr("preserveAspectRatio", "none")
            .attr("aria-hidden", "true");
        for zone in zones.iter().filter(|zone| zone.face == *face) {
            let (from, to) = (x(zone.along.0), x(zone.along.1));
            let (upper, lower) = (zone.across.0.max(Length::ZERO), zone.across.1.min(*width));
            let (left, right) = (from.min(to), from.max(to));
            let (top, bottom) = (upper.to_inches(), lower.max(upper).to_inches());
            svg = svg
                .child(drawing_tag("path").class("knots__zone").attr("d", hatched((left, right), (top, bottom), net)));
        }
        for knot in knots.iter().filter(|knot| knot.face == *face) {
            let half = (knot.size / 2.0).to_inches();
            svg = svg.child(
                drawing_tag("ellipse")
                    .class("knots__knot")
                    .attr("cx", x(knot.from_zero).to_string())
                    .attr("cy", knot.across.to_inches().to_string())
                    .attr("rx", half.to_string())
                    .attr("ry", half.to_string()),
            );
        }
        let (stick, width) = (stick.clone(), *width);
        tag("div")
            .class("knots__strip")
            .child(tag("p").class("knots__name").child(face.name()))
            .child(svg.on("click", move |event| tapped(store, next, &stick, (at, width), &event)))
    };
    stick.faces.iter().enumerate().map(strip).collect()
}

/// A box and upright strokes in it, as close as they look well on a face that is stretched to the page.
fn hatched((left, right): (f64, f64), (top, bottom): (f64, f64), net: f64) -> String {
    let mut path = format!("M{left:.2} {top:.2}H{right:.2}V{bottom:.2}H{left:.2}Z");
    let step = net / 60.0;
    let mut x = left + step / 2.0;
    while x < right {
        let _ = write!(path, "M{x:.2} {top:.2}L{:.2} {bottom:.2}", (x + step).min(right));
        x += step;
    }
    path
}

/// Puts the tapped place into the form.
fn tapped(store: Store, next: Next, stick: &Stick, (at, width): (usize, Length), event: &web_sys::Event) {
    let Some((right, down)) = shares(event) else { return };
    let units = store.project_untracked().units;
    let along = if stick.to_left { 1.0 - right } else { right };
    next.face.set(at);
    next.from_zero.set(length((stick.low + stick.net_length() * along).round_to(TAP), units));
    next.across.set(length((width * down).round_to(TAP), units));
    if next.size.with_untracked(String::is_empty) {
        next.size.set(length(Length::inches(1.5), units));
    }
    next.refused.set(None);
}

/// Where in the element the finger is, as shares of its width and height.
fn shares(event: &web_sys::Event) -> Option<(f64, f64)> {
    let finger = event.dyn_ref::<web_sys::MouseEvent>()?;
    let room = event.current_target()?.dyn_into::<web_sys::Element>().ok()?.get_bounding_client_rect();
    let share = |at: i32, from: f64, size: f64| (size > 0.0).then(|| ((f64::from(at) - from) / size).clamp(0.0, 1.0));
    Some((share(finger.client_x(), room.left(), room.width())?, share(finger.client_y(), room.top(), room.height())?))
}

fn form(store: Store, next: Next, stick: &Arc<Stick>) -> Tag {
    let names = stick.faces.iter().map(|(face, _)| face.name().to_owned()).collect();
    let stick = stick.clone();
    tag("div")
        .class("bench-form")
        .child(picked("knot-face", "Face", names, next.face))
        .child(typed("knot-from-zero", "From zero", "its middle, as the stick lies now", next.from_zero))
        .child(typed("knot-across", "Across", "from the edge drawn uppermost", next.across))
        .child(typed("knot-size", "Size", "how wide it is", next.size))
        .child(button("button", move |_| add(store, next, &stick)).child("Add the knot"))
        .child(
            tag("p")
                .class("field__refused")
                .attr("role", "status")
                .live_text(move || next.refused.get().map_or_else(String::new, |why| format!("Not taken: {why}"))),
        )
}

fn add(store: Store, next: Next, stick: &Stick) {
    let units = store.project_untracked().units;
    let knot = || -> Result<Knot, String> {
        let (face, width) = stick.faces.get(next.face.get_untracked()).copied().ok_or("no such face")?;
        let (from_zero, across) = (read(next.from_zero, units)?, read(next.across, units)?);
        let size = read(next.size, units)?;
        if size <= Length::ZERO || across.is_negative() || across > width {
            return Err(format!("it lies on the face, 0 to {} across, and is wider than 0.", length(width, units)));
        }
        Ok(Knot { face, from_zero, across, size })
    };
    match knot() {
        Err(why) => next.refused.set(Some(why)),
        Ok(knot) => {
            next.refused.set(None);
            store.tick(|progress| progress.knots.entry(stick.mark.clone()).or_default().push(knot));
        }
    }
}

fn list(store: Store, stick: &Arc<Stick>, knots: &[Knot]) -> Tag {
    let units = store.units();
    let row = |(at, knot): (usize, &Knot)| {
        let says = format!(
            "{}: {}, {} from zero, {} across, {} wide",
            at + 1,
            knot.face.name(),
            length(knot.from_zero, units),
            length(knot.across, units),
            length(knot.size, units)
        );
        let mark = stick.mark.clone();
        let remove = move |_| store.tick(|progress| take_away(&mut progress.knots, &mark, at));
        tag("li").class("knots__row").child(tag("span").child(fractions(&says))).child(
            button("button button--plain", remove)
                .attr("aria-label", format!("Remove knot {}", at + 1))
                .child("Remove"),
        )
    };
    tag("ol").class("knots__list").child(knots.iter().enumerate().map(row).collect::<Vec<_>>())
}

fn take_away(all: &mut std::collections::BTreeMap<String, Vec<Knot>>, mark: &str, at: usize) {
    let Some(knots) = all.get_mut(mark) else { return };
    if at < knots.len() {
        knots.remove(at);
    }
    if knots.is_empty() {
        all.remove(mark);
    }
}
