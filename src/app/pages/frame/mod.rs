//! The frame: its shape, its sizes and the rules of its joints.
mod beam;
mod braces;
mod fixings;
mod heights;
mod joinery;
mod posts;
mod rafters;
mod roof_edges;
mod sizes;
mod ties;
mod wood;

use super::drawn::{Elevation, Section, long, room};
use crate::app::components::{Caution, Fact, Facts, Fold, LengthField, Page, Steps};
use crate::app::route::Place;
use crate::lens;
use leptos::prelude::*;

/// Frame.
#[component]
pub fn FramePage() -> impl IntoView {
    let lead = || view! { <Elevation/> <Section/> };
    view! {
        <Page place=Place::Frame title="Frame" about="What you build: shape, sizes and joints" lead>
            <Room/>
            <Reach/>
            <heights::PitchAndHeights/>
            <roof_edges::SeatsAndEnds/>
            <posts::Posts/>
            <braces::Braces/>
            <rafters::Rafters/>
            <beam::BeamAndScarfs/>
            <sizes::Sizes/>
            <wood::WoodAndGrade/>
            <joinery::Joinery/>
            <fixings::WhatFixesIt/>
            <Caution text="This shows geometry, not strength: have sizes, joints and fixings checked to local code by a licensed engineer before you order."/>
        </Page>
    }
}

/// What the fields below come to.
#[component]
fn Room() -> impl IntoView {
    view! {
        <Facts>
            <Fact name="Headroom under the beam" value=room(|built| Some(built.shape.clearances.under_beam))/>
            <Fact name="Clear depth under the roof" value=room(|built| Some(built.shape.clearances.clear_depth))/>
            <Fact name="Clear under the eave" value=room(|built| built.shape.clearances.under_eave)/>
            <Fact name="Top of the metal at the wall" value=room(|built| Some(built.shape.clearances.top_of_metal_at_wall))/>
        </Facts>
    }
}

#[component]
fn Reach() -> impl IntoView {
    let summary = long(|project| project.frame.reach, "out ");
    view! {
        <Fold title="Reach and length" summary open=true>
            <LengthField
                field=lens!(frame.reach) label="Reach" hint="wall face to the outer face of the beam" steps=Steps::of(1.0, 20.0)
            />
            <LengthField
                field=lens!(frame.beam_length) label="Length of the beam" hint="and of the ledger" steps=Steps::of(6.0, 100.0)
            />
            <LengthField
                field=lens!(frame.ledger_packing) label="Packing behind the ledger" hint="wall face to its back: ribs of siding, shims"
                steps=Steps::of(0.25, 5.0)
            />
        </Fold>
    }
}
