//! The frame: its shape, its sizes and the rules of its joints.
mod beam;
mod braces;
mod fixings;
mod grip;
mod heights;
mod held;
mod in_the_way;
mod joinery;
mod moved;
mod own_joints;
mod posts;
mod rafters;
mod roof_edges;
mod sizes;
mod splices;
mod ties;
mod wood;

use super::drawn::{ROUND, long, room, section};
use crate::app::components::{
    PartOfPage, Segment, Steps, caution, facts, fold, late_part, length_field, page, problems_under, segments,
};
use crate::app::dom::{Tag, live, parts, tag};
use crate::app::part::part;
use crate::app::route::Place;
use crate::lens;
use leptos::prelude::*;

pub use moved::GRIPS;

/// Frame.
pub fn frame_page() -> Tag {
    page(
        Place::Frame,
        "Frame",
        "What you build: shape, sizes and joints",
        lead(),
        parts()
            .child(what_it_comes_to())
            .child(in_the_way::in_the_way())
            .child(problems_under("progress"))
            .child(reach())
            .child(heights::pitch_and_heights())
            .child(roof_edges::seats_and_ends())
            .child(posts::posts())
            .child(braces::braces())
            .child(rafters::rafters())
            .child(late_part(&LOWER))
            .child(caution(
                "This shows geometry, not strength: have sizes, joints and fixings \
                 checked to local code by a licensed engineer before you order.",
            )),
    )
}

part!(
    /// What stands below the first screen.
    pub static LOWER: PartOfPage = frame.lower_part(lower)
);

fn lower() -> Tag {
    parts()
        .child(beam::beam_and_scarfs())
        .child(sizes::sizes())
        .child(wood::wood_and_grade())
        .child(joinery::joinery())
        .child(fixings::what_fixes_it())
}

/// The two flat drawings, or the frame in the round.
fn lead() -> Tag {
    let is_round = RwSignal::new(false);
    let shows = vec![
        Segment::new("Flat".to_owned(), move || !is_round.get(), move || is_round.set(false)),
        Segment::new("In the round".to_owned(), move || is_round.get(), move || is_round.set(true)),
    ];
    let drawn =
        move || if is_round.get() { late_part(&ROUND) } else { parts().child(moved::elevation()).child(section()) };
    tag("div").class("shown-as").child(segments("shown-as", "The frame", (), shows)).child(live(drawn))
}

/// What the fields below come to.
fn what_it_comes_to() -> Tag {
    facts(&[
        ("Headroom under the beam", room(|built| Some(built.shape.clearances.under_beam))),
        ("Clear depth under the roof", room(|built| Some(built.shape.clearances.clear_depth))),
        ("Clear under the eave", room(|built| built.shape.clearances.under_eave)),
        ("Top of the metal at the wall", room(|built| Some(built.shape.clearances.top_of_metal_at_wall))),
    ])
}

fn reach() -> Tag {
    let summary = long(|project| project.frame.reach, "out ");
    fold("Reach and length", summary, true, || {
        parts()
            .child(
                length_field(lens!(frame.reach), "Reach")
                    .hint("wall face to the outer face of the beam")
                    .steps(Steps::of(1.0, 20.0)),
            )
            .child(
                length_field(lens!(frame.beam_length), "Length of the beam")
                    .hint("and of the ledger")
                    .steps(Steps::of(6.0, 100.0)),
            )
            .child(
                length_field(lens!(frame.ledger_packing), "Packing behind the ledger")
                    .hint("wall face to its back: ribs of siding, shims")
                    .steps(Steps::of(0.25, 5.0)),
            )
    })
}
