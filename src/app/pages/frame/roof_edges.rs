//! The rafters' seats and both their ends.
use super::super::drawn::room;
use crate::app::components::{Steps, choice, facts, fold, length_field};
use crate::app::dom::{Tag, parts};
use crate::lens;
use crate::project::TailCut;

/// Seats, head and tail.
pub fn seats_and_ends() -> Tag {
    let cuts = vec![(TailCut::Plumb, "plumb".to_owned()), (TailCut::Square, "square".to_owned())];
    let summary = room(|built| Some(built.shape.rafter.length()));
    fold("Seats, head and tail", summary, false, || {
        parts()
            .child(
                length_field(lens!(frame.beam_seat_length), "Seat on the beam")
                    .hint("level, in from the heel")
                    .steps(Steps::of(0.25, 5.0)),
            )
            .child(
                length_field(lens!(frame.ledger_seat_length), "Seat on the ledger")
                    .hint("level, in from the heel")
                    .steps(Steps::of(0.25, 5.0)),
            )
            .child(
                length_field(lens!(frame.wall_gap), "Gap at the wall")
                    .hint("wall face to the rafter heads")
                    .steps(Steps::of(0.25, 5.0)),
            )
            .child(
                length_field(lens!(frame.tail), "Tail")
                    .hint("past the beam’s outer face, level")
                    .steps(Steps::of(1.0, 20.0)),
            )
            .child(choice(lens!(frame.tail_cut), "The tail is cut", "", cuts, None))
            .child(facts(&[
                ("Rafter, shortest stock", room(|built| Some(built.shape.rafter.length()))),
                ("Rafter, along the top edge", room(|built| Some(built.shape.rafter.top_edge().length()))),
                ("Notch on the beam, square depth", room(|built| Some(built.shape.rafter.beam.notch_depth))),
                ("Heel on the beam, plumb", room(|built| Some(built.shape.rafter.beam.heel_height))),
                ("Heel on the ledger, plumb", room(|built| Some(built.shape.rafter.ledger.heel_height))),
            ]))
    })
}
