//! Pitch and the two seats: any two are held, the third follows.
use super::super::drawn::fact;
use crate::app::components::{Steps, choice, facts, fold, length_field, slope_field};
use crate::app::dom::{Tag, parts};
use crate::app::{Store, use_store};
use crate::lens;
use crate::project::FixedHeights;
use crate::units::{show_slope, slope_degrees};
use crate::wording;
use leptos::prelude::*;

/// Pitch and heights.
pub fn pitch_and_heights() -> Tag {
    let store = use_store();
    let options = vec![
        (FixedHeights::PitchAndBeam, "pitch and beam".to_owned()),
        (FixedHeights::PitchAndLedger, "pitch and ledger".to_owned()),
        (FixedHeights::LedgerAndBeam, "ledger and beam".to_owned()),
    ];
    let summary = fact(|built, project| Some(show_slope(built.shape.line.pitch, project.units)));
    let choose = Callback::new(move |fixed| hold(store, fixed));
    fold("Pitch and heights", summary, true, || {
        parts()
            .child(choice(lens!(frame.heights.fixed), "You hold two, the third follows", "", options, Some(choose)))
            .child(held())
            .child(facts(&[("Rise from seat to seat", rise()), ("Run from heel to heel", run())]))
    })
}

/// Before another one is set free, all three are what the frame is now: nothing jumps.
fn hold(store: Store, fixed: FixedHeights) {
    let line = untrack(|| store.design().built.as_ref().map(|built| built.shape.line));
    store.edit(|project| {
        let heights = &mut project.frame.heights;
        heights.fixed = fixed;
        if let Some(line) = line {
            heights.pitch = line.pitch;
            heights.ledger_seat = line.ledger_seat;
            heights.beam_seat = line.beam_seat;
        }
    });
}

fn held() -> Tag {
    let store = use_store();
    let fixed = store.slice(|project| project.frame.heights.fixed);
    let is_free = move |free: FixedHeights| fixed.get() == free;
    parts()
        .shown(
            move || !is_free(FixedHeights::LedgerAndBeam),
            move || slope_field(lens!(frame.heights.pitch), "Pitch").hint("of the new roof"),
        )
        .shown(move || is_free(FixedHeights::LedgerAndBeam), || facts(&[("Pitch, follows", pitch())]))
        .shown(
            move || !is_free(FixedHeights::PitchAndBeam),
            move || {
                length_field(lens!(frame.heights.ledger_seat), "Top of the ledger")
                    .hint("where the rafters sit, above the level")
                    .steps(Steps::of(0.5, 10.0))
            },
        )
        .shown(move || is_free(FixedHeights::PitchAndBeam), || facts(&[("Top of the ledger, follows", ledger_seat())]))
        .shown(
            move || !is_free(FixedHeights::PitchAndLedger),
            move || {
                length_field(lens!(frame.heights.beam_seat), "Top of the beam")
                    .hint("where the rafters sit, above the level")
                    .steps(Steps::of(0.5, 10.0))
            },
        )
        .shown(move || is_free(FixedHeights::PitchAndLedger), || facts(&[("Top of the beam, follows", beam_seat())]))
}

fn pitch() -> Signal<String> {
    fact(|built, project| {
        let pitch = built.shape.line.pitch;
        Some(format!("{} · {}", show_slope(pitch, project.units), slope_degrees(pitch)))
    })
}

fn ledger_seat() -> Signal<String> {
    fact(|built, project| Some(wording::length(built.shape.line.ledger_seat, project.units)))
}

fn beam_seat() -> Signal<String> {
    fact(|built, project| Some(wording::length(built.shape.line.beam_seat, project.units)))
}

fn rise() -> Signal<String> {
    fact(|built, project| {
        let line = &built.shape.line;
        Some(wording::length(line.ledger_seat - line.beam_seat, project.units))
    })
}

fn run() -> Signal<String> {
    fact(|built, project| {
        let run = built.shape.line.run.length();
        Some(wording::length(run, project.units))
    })
}
