//! Knee braces.
use super::super::drawn::{fact, long, room};
use crate::app::components::{Steps, facts, fold, length_field, show_length_fine};
use crate::app::dom::{Tag, parts};
use crate::lens;
use crate::wording;

/// Braces.
pub fn braces() -> Tag {
    let summary = long(|project| project.frame.brace_along, "legs ");
    let per_bay = fact(|built, project| {
        let bays = &built.shape.clearances.between_braces;
        let all: Vec<String> = bays.iter().map(|clear| wording::length(*clear, project.units)).collect();
        Some(all.join(", "))
    });
    let shoulders = fact(|built, project| Some(show_length_fine(built.shape.brace.long_edge(), project.units)));
    fold("Braces", summary, false, || {
        parts()
            .child(
                length_field(lens!(frame.brace_along), "Leg along the beam")
                    .hint("from the meeting of the housed lines")
                    .steps(Steps::of(1.0, 20.0)),
            )
            .child(
                length_field(lens!(frame.brace_down), "Leg down the post")
                    .hint("the same as along makes 45°")
                    .steps(Steps::of(1.0, 20.0)),
            )
            .child(
                length_field(lens!(frame.brace_rise), "Hollow of a curved brace")
                    .hint("how deep its long edge is hollowed at the middle; 0 for a straight one")
                    .steps(Steps::of(0.25, 5.0)),
            )
            .child(facts(&[
                ("Shoulder to shoulder, long edge", shoulders),
                ("With its tenons", room(|built| Some(built.shape.brace.ends().1 - built.shape.brace.ends().0))),
                ("How many", fact(|built, _| Some(built.shape.braces.len().to_string()))),
                ("Clear between, bay by bay", per_bay),
            ]))
    })
}
