//! What fixes it: ledger, rafters, purlins, sheets, scarfs, posts, piers.
use super::ties::{POST_BASE, RAFTER_HEAD, RAFTER_SEAT, SCARF, TieFields};
use crate::app::components::{
    COUNT, Caution, EntryField, FORCE, Fold, Group, LengthField, NOT_KNOWN, Pick, SPRING, Steps, Toggle,
    nothing_is_open,
};
use crate::app::{Lens, use_store};
use crate::fastening::{FastenerKind, fastener_table};
use crate::lens;
use crate::materials::species_table;
use crate::project::Fixings;
use crate::units::Length;
use leptos::prelude::*;

/// What fixes it.
#[component]
pub fn WhatFixesIt() -> impl IntoView {
    let store = use_store();
    let summary = Signal::derive(move || match n_open(&store.project().fixings) {
        0 => "all chosen".to_owned(),
        n => format!("{n} of 7 {NOT_KNOWN}"),
    });
    view! {
        <Fold title="What fixes it" summary>
            <p class="page__word">
                "Nothing is assumed here. Loads are the maker’s allowable ones for one fastener, at a load duration of 1.0."
            </p>
            <Caution text="A ledger that lets go takes the roof with it: never nails alone, never into siding or sheathing alone."/>
            <Ledger/>
            <TieFields tied=RAFTER_HEAD/>
            <TieFields tied=RAFTER_SEAT/>
            <Purlins/>
            <Sheets/>
            <TieFields tied=SCARF/>
            <TieFields tied=POST_BASE/>
            <Piers/>
            <BraceJoints/>
        </Fold>
    }
}

/// How many of the joints have nothing chosen.
fn n_open(fixings: &Fixings) -> usize {
    let keys = [&fixings.ledger.fastener, &fixings.purlin.fastener, &fixings.sheet.screw.fastener];
    let ties = [&fixings.rafter_head, &fixings.rafter_seat, &fixings.scarf, &fixings.post_base];
    keys.iter().filter(|key| key.is_empty()).count() + ties.iter().filter(|tie| tie.count == 0).count()
}

/// Fasteners of those kinds, and none.
fn fasteners(kinds: &[FastenerKind]) -> Vec<(String, String)> {
    let of_kind = fastener_table().iter().filter(|fastener| kinds.contains(&fastener.kind));
    let all = of_kind.map(|fastener| (fastener.key.clone(), fastener.name.clone()));
    [(String::new(), "none chosen yet".to_owned())].into_iter().chain(all).collect()
}

#[component]
fn Size(field: Lens<Length>, label: &'static str, #[prop(optional)] hint: &'static str) -> impl IntoView {
    view! { <LengthField field label hint steps=Steps::of(0.25, 5.0)/> }
}

#[component]
fn Many(field: Lens<usize>, label: &'static str, #[prop(optional)] hint: &'static str) -> impl IntoView {
    view! { <EntryField entry=COUNT.open(&nothing_is_open(&field)) label hint decimal_keys=true/> }
}

#[component]
fn Ledger() -> impl IntoView {
    let store = use_store();
    let is_chosen = store.slice(|project| !project.fixings.ledger.fastener.is_empty());
    let unknown = [(String::new(), NOT_KNOWN.to_owned())];
    let woods = species_table().iter().map(|wood| (wood.key.clone(), wood.name.clone()));
    let woods: Vec<(String, String)> = unknown.into_iter().chain(woods).collect();
    let options = fasteners(&[FastenerKind::Bolt, FastenerKind::LagScrew, FastenerKind::WoodScrew]);
    view! {
        <Group title="Ledger to wall">
            <Pick
                field=lens!(fixings.ledger.fastener) label="Ledger fixing" hint="through the ledger into each post or stud of the wall" options
            />
            <Show when=move || is_chosen.get()>
                <Size field=lens!(fixings.ledger.length) label="Its length" hint="under the head"/>
                <Many field=lens!(fixings.ledger.rows) label="Rows at each wall post" hint="one above the other, one fixing a row"/>
                <Size field=lens!(fixings.ledger.lowest) label="Lowest row" hint="above the ledger’s bottom"/>
                <Size field=lens!(fixings.ledger.row_gap) label="Row to row"/>
                <Pick
                    field=lens!(fixings.ledger.wall_species) label="Wood of the wall’s posts" hint="look behind the siding" options=woods.clone()
                />
                <Size field=lens!(fixings.ledger.wall_depth) label="Depth of the wall’s post" hint="behind its outer face"/>
            </Show>
        </Group>
    }
}

#[component]
fn Purlins() -> impl IntoView {
    let store = use_store();
    let is_chosen = store.slice(|project| !project.fixings.purlin.fastener.is_empty());
    let options = fasteners(&[FastenerKind::WoodScrew, FastenerKind::LagScrew, FastenerKind::Nail]);
    view! {
        <Group title="Purlin to rafter">
            <Pick field=lens!(fixings.purlin.fastener) label="Purlin screw" hint="down through the purlin" options/>
            <Show when=move || is_chosen.get()>
                <Size field=lens!(fixings.purlin.length) label="Length of the purlin screw" hint="under the head"/>
                <Many field=lens!(fixings.purlin.count) label="Purlin screws at a crossing"/>
            </Show>
        </Group>
    }
}

#[component]
fn Sheets() -> impl IntoView {
    let store = use_store();
    let is_chosen = store.slice(|project| !project.fixings.sheet.screw.fastener.is_empty());
    let pull_over = || nothing_is_open(&lens!(fixings.sheet.pull_over));
    view! {
        <Group title="Sheet to purlin">
            <Pick
                field=lens!(fixings.sheet.screw.fastener) label="Sheet screw" hint="with its washer" options=fasteners(&[FastenerKind::WoodScrew])
            />
            <Show when=move || is_chosen.get()>
                <Size field=lens!(fixings.sheet.screw.length) label="Length of the sheet screw" hint="under the head"/>
                <Many field=lens!(fixings.sheet.screw.count) label="Sheet screws in one place" hint="beside the same rib"/>
                <Size field=lens!(fixings.sheet.spacing) label="One place from the next" hint="along the purlin"/>
                <EntryField
                    entry=FORCE.open(&pull_over()) label="Sheet holds at one washer" decimal_keys=true
                    hint="allowable pull before it tears over the washer: the sheet’s maker says"
                />
            </Show>
        </Group>
    }
}

#[component]
fn Piers() -> impl IntoView {
    view! {
        <Group title="Pier and footing">
            <Toggle field=lens!(fixings.pier.is_round) label="Round, not square"/>
            <Size field=lens!(fixings.pier.footing_width) label="Across the footing"/>
            <Size field=lens!(fixings.pier.footing_thickness) label="Thickness of the footing"/>
            <Size field=lens!(fixings.pier.pier_width) label="Across the pier"/>
            <Size field=lens!(fixings.pier.depth) label="Depth of the footing" hint="its underside below the ground; under the frost"/>
        </Group>
    }
}

#[component]
fn BraceJoints() -> impl IntoView {
    view! {
        <Group title="How far a brace’s joint gives">
            <p class="page__word">"Few tests exist: these are guesses after tests of pegged braces. Leave them unless you know better."</p>
            <EntryField entry=SPRING.entry(&lens!(fixings.brace_joint.pushed)) label="Stiffness, pushed" hint="its shoulder closed on the post"/>
            <EntryField entry=SPRING.entry(&lens!(fixings.brace_joint.pulled)) label="Stiffness, pulled" hint="on the pegs alone"/>
        </Group>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::demo;
    use crate::units::UnitSystem;

    #[test]
    fn a_new_job_has_chosen_nothing() {
        assert_eq!(n_open(&demo::empty(UnitSystem::Metric).fixings), 7);
        assert_eq!(n_open(&demo::wool_barn().fixings), 0);
    }
}
