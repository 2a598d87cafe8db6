//! The wall, its eave and the ground, as the tape says; snow, wind, soil and earthquake, as the authority says.
mod snow;
mod soil;
mod wind;

use super::drawn::{long, room, section};
use crate::app::cached::{Cached, text_of};
use crate::app::components::{
    Steps, caution, choice, facts, fold, group, length_field, number_field, page, signed_length_field, slope_field,
    word,
};
use crate::app::dom::{Tag, parts};
use crate::app::route::Place;
use crate::app::use_store;
use crate::lens;
use crate::project::Soffit;

/// Site.
pub fn site_page() -> Tag {
    page(
        Place::Site,
        "Site",
        "What stands already: wall, eave and ground",
        section(),
        parts()
            .child(word(
                "Pick one level that stays: a slab, a threshold, a laser line on the \
                 wall. Every height here is measured up from it, and down from it with a \
                 minus.",
            ))
            .child(wall_and_eave())
            .child(ground())
            .child(wall_posts())
            .child(passage())
            .child(dryness())
            .child(snow::snow())
            .child(snow::roof_above())
            .child(wind::wind())
            .child(soil::soil_and_frost())
            .child(soil::earthquake())
            .child(caution(
                "The lean-to leans on this wall and its roof can drop snow on the new \
                 one: have both looked at by someone licensed where you build.",
            )),
    )
}

fn wall_and_eave() -> Tag {
    let soffits = vec![(Soffit::Level, "boxed level".to_owned()), (Soffit::Sloped, "follows its roof".to_owned())];
    let store = use_store();
    let sloped = Cached::new(move || store.project().site.soffit == Soffit::Sloped);
    let summary = long(|project| project.site.eave_edge, "edge at ");
    fold("The wall and its eave", summary, true, || {
        parts()
            .child(
                length_field(lens!(site.eave_edge), "Underside of the eave")
                    .hint("at its outer edge, above the level")
                    .steps(Steps::of(0.5, 10.0)),
            )
            .child(
                length_field(lens!(site.eave_projection), "Eave stands out")
                    .hint("from the wall face; 0 where there is none")
                    .steps(Steps::of(0.5, 10.0)),
            )
            .child(choice(lens!(site.soffit), "Underside of the eave is", "", soffits, None))
            .shown(move || sloped.get(), move || slope_field(lens!(site.upper_pitch), "Slope of the roof above"))
            .child(
                length_field(lens!(frame.reach), "Reach")
                    .hint("wall face to the outer face of the beam")
                    .steps(Steps::of(1.0, 20.0)),
            )
            .child(facts(&[
                ("Room between metal and eave", room(|built| built.shape.clearances.under_eave)),
                ("Room over the rafter heads", room(|built| built.shape.clearances.over_rafter_head)),
                ("Top of the metal at the wall", room(|built| Some(built.shape.clearances.top_of_metal_at_wall))),
            ]))
    })
}

fn ground() -> Tag {
    let summary = long(|project| project.site.ground_right - project.site.ground_left, "left to right ");
    fold("The ground", summary, true, || {
        parts()
            .child(
                signed_length_field(lens!(site.ground_at_wall), "Ground at the wall")
                    .hint("above the level; minus is below")
                    .steps(Steps::of(0.5, 10.0)),
            )
            .child(
                signed_length_field(lens!(site.ground_left), "Ground at the left end")
                    .hint("under the beam, facing the wall")
                    .steps(Steps::of(0.5, 10.0)),
            )
            .child(
                signed_length_field(lens!(site.ground_right), "Ground at the right end")
                    .hint("the ground between is taken straight")
                    .steps(Steps::of(0.5, 10.0)),
            )
            .child(facts(&[("Headroom under the beam", room(|built| Some(built.shape.clearances.under_beam)))]))
    })
}

fn wall_posts() -> Tag {
    let summary = long(|project| project.site.wall_post_spacing, "every ");
    fold("The posts of the wall", summary, false, || {
        group(
            "What the ledger is fixed to",
            parts()
                .child(
                    length_field(lens!(site.first_wall_post), "First wall post or stud")
                        .hint("its centre, from the beam’s left end")
                        .steps(Steps::of(1.0, 20.0)),
                )
                .child(
                    length_field(lens!(site.wall_post_spacing), "From one to the next")
                        .hint("centre to centre")
                        .steps(Steps::of(1.0, 20.0)),
                ),
        )
    })
}

fn passage() -> Tag {
    let summary = long(|project| project.site.passage_height, "height ");
    fold("What must pass between the posts", summary, false, || {
        parts()
            .child(
                length_field(lens!(site.passage_height), "Height that must pass")
                    .hint("above the ground: a person, a gate, a tractor")
                    .steps(Steps::of(2.0, 50.0)),
            )
            .child(
                length_field(lens!(site.passage_width), "Width at that height")
                    .hint("between braces; 0 where nothing must pass")
                    .steps(Steps::of(2.0, 50.0)),
            )
    })
}

fn dryness() -> Tag {
    let store = use_store();
    let summary = text_of(move || format!("dries to {} %", store.project().site.service_moisture_percent));
    fold("How dry the wood will get", summary, false, || {
        parts()
            .child(
                number_field(lens!(site.service_moisture_percent), "Moisture it settles at, %", 4.0, 30.0, 1.0)
                    .hint("under a roof outdoors 14 to 18 is common; ask locally"),
            )
            .child(facts(&[
                ("Beam seat sinks by", room(|built| Some(built.shape.clearances.beam_seat_drop))),
                ("Ledger seat sinks by", room(|built| Some(built.shape.clearances.ledger_seat_drop))),
            ]))
    })
}
