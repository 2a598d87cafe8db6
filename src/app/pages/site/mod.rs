//! The wall, its eave and the ground, as the tape says; snow, wind, soil and earthquake, as the authority says.
mod snow;
mod soil;
mod wind;

use super::drawn::{Section, long, room};
use crate::app::components::{
    Caution, Choice, Fact, Facts, Fold, Group, LengthField, NumberField, Page, SlopeField, Steps,
};
use crate::app::route::Place;
use crate::app::use_store;
use crate::lens;
use crate::project::Soffit;
use leptos::prelude::*;

/// Site.
#[component]
pub fn SitePage() -> impl IntoView {
    view! {
        <Page place=Place::Site title="Site" about="What stands already: wall, eave and ground" lead=|| view! { <Section/> }>
            <p class="page__word">
                "Pick one level that stays: a slab, a threshold, a laser line on the wall. Every height here is measured up from it,
                and down from it with a minus."
            </p>
            <WallAndEave/>
            <Ground/>
            <WallPosts/>
            <Passage/>
            <Dryness/>
            <snow::Snow/>
            <snow::RoofAbove/>
            <wind::Wind/>
            <soil::SoilAndFrost/>
            <soil::Earthquake/>
            <Caution text="The lean-to leans on this wall and its roof can drop snow on the new one: have both looked at by someone licensed where you build."/>
        </Page>
    }
}

#[component]
fn WallAndEave() -> impl IntoView {
    let soffits = vec![(Soffit::Level, "boxed level".to_owned()), (Soffit::Sloped, "follows its roof".to_owned())];
    let store = use_store();
    let sloped = Memo::new(move |_| store.project().site.soffit == Soffit::Sloped);
    let summary = long(|project| project.site.eave_edge, "edge at ");
    view! {
        <Fold title="The wall and its eave" summary open=true>
            <LengthField
                field=lens!(site.eave_edge) label="Underside of the eave" hint="at its outer edge, above the level" steps=Steps::of(0.5, 10.0)
            />
            <LengthField
                field=lens!(site.eave_projection) label="Eave stands out" hint="from the wall face; 0 where there is none" steps=Steps::of(0.5, 10.0)
            />
            <Choice field=lens!(site.soffit) label="Underside of the eave is" options=soffits/>
            <Show when=move || sloped.get()>
                <SlopeField field=lens!(site.upper_pitch) label="Slope of the roof above"/>
            </Show>
            <LengthField
                field=lens!(frame.reach) label="Reach" hint="wall face to the outer face of the beam" steps=Steps::of(1.0, 20.0)
            />
            <Facts>
                <Fact name="Room between metal and eave" value=room(|built| built.shape.clearances.under_eave)/>
                <Fact name="Room over the rafter heads" value=room(|built| built.shape.clearances.over_rafter_head)/>
                <Fact name="Top of the metal at the wall" value=room(|built| Some(built.shape.clearances.top_of_metal_at_wall))/>
            </Facts>
        </Fold>
    }
}

#[component]
fn Ground() -> impl IntoView {
    let summary = long(|project| project.site.ground_right - project.site.ground_left, "left to right ");
    view! {
        <Fold title="The ground" summary open=true>
            <LengthField
                field=lens!(site.ground_at_wall) label="Ground at the wall" hint="above the level; minus is below" signed=true steps=Steps::of(0.5, 10.0)
            />
            <LengthField
                field=lens!(site.ground_left) label="Ground at the left end" hint="under the beam, facing the wall" signed=true
                steps=Steps::of(0.5, 10.0)
            />
            <LengthField
                field=lens!(site.ground_right) label="Ground at the right end" hint="the ground between is taken straight" signed=true
                steps=Steps::of(0.5, 10.0)
            />
            <Facts>
                <Fact name="Headroom under the beam" value=room(|built| Some(built.shape.clearances.under_beam))/>
            </Facts>
        </Fold>
    }
}

#[component]
fn WallPosts() -> impl IntoView {
    let summary = long(|project| project.site.wall_post_spacing, "every ");
    view! {
        <Fold title="The posts of the wall" summary>
            <Group title="What the ledger is fixed to">
                <LengthField
                    field=lens!(site.first_wall_post) label="First wall post or stud" hint="its centre, from the beam’s left end"
                    steps=Steps::of(1.0, 20.0)
                />
                <LengthField
                    field=lens!(site.wall_post_spacing) label="From one to the next" hint="centre to centre" steps=Steps::of(1.0, 20.0)
                />
            </Group>
        </Fold>
    }
}

#[component]
fn Passage() -> impl IntoView {
    let summary = long(|project| project.site.passage_height, "height ");
    view! {
        <Fold title="What must pass between the posts" summary>
            <LengthField
                field=lens!(site.passage_height) label="Height that must pass" hint="above the ground: a person, a gate, a tractor"
                steps=Steps::of(2.0, 50.0)
            />
            <LengthField
                field=lens!(site.passage_width) label="Width at that height" hint="between braces; 0 where nothing must pass"
                steps=Steps::of(2.0, 50.0)
            />
        </Fold>
    }
}

#[component]
fn Dryness() -> impl IntoView {
    let store = use_store();
    let summary = Signal::derive(move || format!("dries to {} %", store.project().site.service_moisture_percent));
    view! {
        <Fold title="How dry the wood will get" summary>
            <NumberField
                field=lens!(site.service_moisture_percent) label="Moisture it settles at, %"
                hint="under a roof outdoors 14 to 18 is common; ask locally" least=4.0 most=30.0 step=1.0
            />
            <Facts>
                <Fact name="Beam seat sinks by" value=room(|built| Some(built.shape.clearances.beam_seat_drop))/>
                <Fact name="Ledger seat sinks by" value=room(|built| Some(built.shape.clearances.ledger_seat_drop))/>
            </Facts>
        </Fold>
    }
}
