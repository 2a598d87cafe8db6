//! The rafters' seats and both their ends.
use super::super::drawn::room;
use crate::app::components::{Choice, Fact, Facts, Fold, LengthField, Steps};
use crate::lens;
use crate::project::TailCut;
use leptos::prelude::*;

/// Seats, head and tail.
#[component]
pub fn SeatsAndEnds() -> impl IntoView {
    let cuts = vec![(TailCut::Plumb, "plumb".to_owned()), (TailCut::Square, "square".to_owned())];
    let summary = room(|built| Some(built.shape.rafter.length()));
    view! {
        <Fold title="Seats, head and tail" summary>
            <LengthField
                field=lens!(frame.beam_seat_length) label="Seat on the beam" hint="level, in from the heel" steps=Steps::of(0.25, 5.0)
            />
            <LengthField
                field=lens!(frame.ledger_seat_length) label="Seat on the ledger" hint="level, in from the heel" steps=Steps::of(0.25, 5.0)
            />
            <LengthField field=lens!(frame.wall_gap) label="Gap at the wall" hint="wall face to the rafter heads" steps=Steps::of(0.25, 5.0)/>
            <LengthField
                field=lens!(frame.tail) label="Tail" hint="past the beam’s outer face, level" steps=Steps::of(1.0, 20.0)
            />
            <Choice field=lens!(frame.tail_cut) label="The tail is cut" options=cuts/>
            <Facts>
                <Fact name="Rafter, shortest stock" value=room(|built| Some(built.shape.rafter.length()))/>
                <Fact name="Rafter, along the top edge" value=room(|built| Some(built.shape.rafter.top_edge().length()))/>
                <Fact name="Notch on the beam, square depth" value=room(|built| Some(built.shape.rafter.beam.notch_depth))/>
                <Fact name="Heel on the beam, plumb" value=room(|built| Some(built.shape.rafter.beam.heel_height))/>
                <Fact name="Heel on the ledger, plumb" value=room(|built| Some(built.shape.rafter.ledger.heel_height))/>
            </Facts>
        </Fold>
    }
}
