//! The one set of rules every joint follows.
use crate::app::Lens;
use crate::app::components::{Fold, Group, LengthField, NumberField, Steps};
use crate::lens;
use crate::units::Length;
use leptos::prelude::*;

/// Joinery rules.
#[component]
pub fn Joinery() -> impl IntoView {
    view! {
        <Fold title="Rules of the joints" summary="tenons, pegs, scarfs, chamfer">
            <p class="page__word">"One set for the whole frame, printed on every sheet. The defaults are common practice."</p>
            <Tenons/>
            <Housings/>
            <Pegs/>
            <ScarfRules/>
            <Chamfer/>
        </Fold>
    }
}

#[component]
fn Rule(field: Lens<Length>, label: &'static str, #[prop(optional)] hint: &'static str) -> impl IntoView {
    view! { <LengthField field label hint steps=Steps::of(0.125, 1.0)/> }
}

#[component]
fn Tenons() -> impl IntoView {
    view! {
        <Group title="Tenons and mortises">
            <Rule field=lens!(joinery.tenon_thickness) label="Tenon thickness"/>
            <Rule field=lens!(joinery.tenon_offset) label="Outer face to the near cheek"/>
            <Rule field=lens!(joinery.post_tenon) label="Tenon on a post’s head" hint="from its shoulder"/>
            <Rule field=lens!(joinery.brace_tenon) label="Tenon of a brace" hint="from the housed line"/>
            <Rule field=lens!(joinery.blind_clearance) label="Mortise deeper than its tenon by"/>
            <Rule field=lens!(joinery.end_shoulder) label="Shoulder on an end post’s end side"/>
            <Rule field=lens!(joinery.least_web) label="Least wood between opposed mortises"/>
        </Group>
    }
}

#[component]
fn Housings() -> impl IntoView {
    view! {
        <Group title="Housings">
            <Rule field=lens!(joinery.housing) label="Depth of a housing" hint="below the face as ordered"/>
            <Rule field=lens!(joinery.pocket_clearance) label="Brace pocket longer by" hint="on the corner side"/>
            <Rule field=lens!(joinery.shrink_clearance) label="Clearance for shrinkage" hint="at a heel or shoulder"/>
        </Group>
    }
}

#[component]
fn Pegs() -> impl IntoView {
    view! {
        <Group title="Pegs">
            <Rule field=lens!(joinery.peg) label="Peg diameter"/>
            <Rule field=lens!(joinery.peg_from_shoulder) label="First peg from the housed line"/>
            <Rule field=lens!(joinery.two_pegs_from) label="Two pegs from this tenon width on"/>
            <Rule field=lens!(joinery.drawbore) label="Drawbore" hint="the tenon’s hole lies nearer the shoulder by this"/>
        </Group>
    }
}

#[component]
fn ScarfRules() -> impl IntoView {
    view! {
        <Group title="Scarfs">
            <NumberField
                field=lens!(joinery.scarf_abutment_share) label="Abutment, share of the beam’s depth" least=0.05 most=0.5 step=0.05
            />
            <Rule field=lens!(joinery.scarf_squint) label="Lean of an under-squinted end"/>
            <Rule field=lens!(joinery.scarf_table) label="Step of the table"/>
            <Rule field=lens!(joinery.scarf_wedge) label="Gap for the folding wedges"/>
            <Rule field=lens!(joinery.scarf_clear) label="Least wood beside a scarf’s tip" hint="to the nearest mortise or rafter"/>
            <Rule field=lens!(joinery.wood_over_pocket) label="Least wood over a brace pocket in a lap"/>
        </Group>
    }
}

#[component]
fn Chamfer() -> impl IntoView {
    view! {
        <Group title="Chamfer">
            <Rule field=lens!(joinery.chamfer) label="Width" hint="0 for none"/>
            <Rule field=lens!(joinery.chamfer_stop) label="Stops short by" hint="of each end and joint"/>
        </Group>
    }
}
