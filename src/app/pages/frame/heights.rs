//! Pitch and the two seats: any two are held, the third follows.
use super::super::drawn::fact;
use crate::app::components::{Choice, Fact, Facts, Fold, LengthField, SlopeField, Steps};
use crate::app::{Store, use_store};
use crate::lens;
use crate::project::FixedHeights;
use crate::units::{show_slope, slope_degrees};
use crate::wording;
use leptos::prelude::*;

/// Pitch and heights.
#[component]
pub fn PitchAndHeights() -> impl IntoView {
    let store = use_store();
    let options = vec![
        (FixedHeights::PitchAndBeam, "pitch and beam".to_owned()),
        (FixedHeights::PitchAndLedger, "pitch and ledger".to_owned()),
        (FixedHeights::LedgerAndBeam, "ledger and beam".to_owned()),
    ];
    let summary = fact(|built, project| Some(show_slope(built.shape.line.pitch, project.units)));
    let choose = Callback::new(move |fixed| hold(store, fixed));
    view! {
        <Fold title="Pitch and heights" summary open=true>
            <Choice
                field=lens!(frame.heights.fixed) label="You hold two, the third follows" options choose
            />
            <Held/>
            <Facts>
                <Fact name="Rise from seat to seat" value=rise()/>
                <Fact name="Run from heel to heel" value=run()/>
            </Facts>
        </Fold>
    }
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

#[component]
fn Held() -> impl IntoView {
    let store = use_store();
    let fixed = store.slice(|project| project.frame.heights.fixed);
    let is_free = move |free: FixedHeights| fixed.get() == free;
    view! {
        <Show
            when=move || !is_free(FixedHeights::LedgerAndBeam)
            fallback=|| view! { <Facts><Fact name="Pitch, follows" value=pitch()/></Facts> }
        >
            <SlopeField field=lens!(frame.heights.pitch) label="Pitch" hint="of the new roof"/>
        </Show>
        <Show
            when=move || !is_free(FixedHeights::PitchAndBeam)
            fallback=|| view! { <Facts><Fact name="Top of the ledger, follows" value=ledger_seat()/></Facts> }
        >
            <LengthField
                field=lens!(frame.heights.ledger_seat) label="Top of the ledger" hint="where the rafters sit, above the level"
                steps=Steps::of(0.5, 10.0)
            />
        </Show>
        <Show
            when=move || !is_free(FixedHeights::PitchAndLedger)
            fallback=|| view! { <Facts><Fact name="Top of the beam, follows" value=beam_seat()/></Facts> }
        >
            <LengthField
                field=lens!(frame.heights.beam_seat) label="Top of the beam" hint="where the rafters sit, above the level"
                steps=Steps::of(0.5, 10.0)
            />
        </Show>
    }
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
