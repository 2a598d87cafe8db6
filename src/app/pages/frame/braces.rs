//! Knee braces.
use super::super::drawn::{fact, long, room};
use crate::app::components::{Fact, Facts, Fold, LengthField, Steps, show_length_fine};
use crate::lens;
use crate::wording;
use leptos::prelude::*;

/// Braces.
#[component]
pub fn Braces() -> impl IntoView {
    let summary = long(|project| project.frame.brace_along, "legs ");
    let per_bay = fact(|built, project| {
        let bays = &built.shape.clearances.between_braces;
        let all: Vec<String> = bays.iter().map(|clear| wording::length(*clear, project.units)).collect();
        Some(all.join(", "))
    });
    let shoulders = fact(|built, project| Some(show_length_fine(built.shape.brace.long_edge(), project.units)));
    view! {
        <Fold title="Braces" summary>
            <LengthField
                field=lens!(frame.brace_along) label="Leg along the beam" hint="from the meeting of the housed lines" steps=Steps::of(1.0, 20.0)
            />
            <LengthField
                field=lens!(frame.brace_down) label="Leg down the post" hint="the same as along makes 45°" steps=Steps::of(1.0, 20.0)
            />
            <Facts>
                <Fact name="Shoulder to shoulder, long edge" value=shoulders/>
                <Fact name="With its tenons" value=room(|built| Some(built.shape.brace.ends().1 - built.shape.brace.ends().0))/>
                <Fact name="How many" value=fact(|built, _| Some(built.shape.braces.len().to_string()))/>
                <Fact name="Clear between, bay by bay" value=per_bay/>
            </Facts>
        </Fold>
    }
}
