//! The beam's pieces and scarfs: proposed with their reasons, or placed by hand.
use super::super::drawn::{fact, room};
use crate::app::components::{Choice, CountField, Fact, Facts, Fold, Group, LengthField, PathProblems, Steps, Toggle};
use crate::app::{Lens, use_store};
use crate::geometry::ScarfReport;
use crate::lens;
use crate::project::{Project, ScarfKind, ScarfPlace, Side};
use crate::units::UnitSystem;
use crate::wording;
use leptos::prelude::*;

/// Beam and scarfs.
#[component]
pub fn BeamAndScarfs() -> impl IntoView {
    let kinds = ScarfKind::ALL.into_iter().map(|kind| (kind, kind.name().to_owned())).collect();
    let pieces = fact(|built, _| Some(format!("{} pieces", built.shape.beam.pieces.len())));
    view! {
        <Fold title="Beam and scarfs" summary=pieces>
            <Choice field=lens!(frame.scarfs.kind) label="Scarf, plain to strong" options=kinds/>
            <LengthField field=lens!(frame.scarfs.lap) label="Length of the lap" hint="every scarf alike" steps=Steps::of(1.0, 20.0)/>
            <LengthField field=lens!(frame.ledger_lap) label="Lap of a ledger splice" steps=Steps::of(1.0, 20.0)/>
            <Pieces/>
            <PathProblems path="frame.scarfs"/>
            <PathProblems path="frame.scarfs.n_pieces"/>
            <Places/>
            <Facts>
                <Fact name="Longest piece" value=room(|built| {
                    built.shape.beam.pieces.iter().map(|piece| piece.length()).reduce(|a, b| a.max(b))
                })/>
            </Facts>
        </Fold>
    }
}

/// How many pieces: the program's count, or the user's.
#[component]
fn Pieces() -> impl IntoView {
    let store = use_store();
    let by_count = store.slice(|project| project.frame.scarfs.n_pieces.is_some());
    let is_mine = Lens::new(
        "frame.scarfs.count_is_mine",
        |project: &Project| project.frame.scarfs.n_pieces.is_some(),
        move |project: &mut Project, mine: bool| {
            let found = untrack(|| store.built().map_or(2, |built| built.shape.beam.pieces.len()));
            project.frame.scarfs.n_pieces = mine.then_some(found);
        },
    );
    let count = || {
        Lens::maybe(
            "frame.scarfs.n_pieces.count",
            |project: &Project| project.frame.scarfs.n_pieces,
            |project: &mut Project, count: usize| project.frame.scarfs.n_pieces = Some(count),
        )
    };
    view! {
        <Toggle field=is_mine label="I say how many pieces" hint="off: what the mill’s lengths and the crew can lift"/>
        <Show when=move || by_count.get()>
            <CountField field=count() label="Pieces of the beam" least=1 most=20/>
        </Show>
    }
}

#[component]
fn Places() -> impl IntoView {
    let store = use_store();
    let by_hand = store.slice(|project| project.frame.scarfs.by_hand.len());
    move || match by_hand.get() {
        0 => view! { <Proposed/> }.into_any(),
        n_scarfs => view! { <ByHand n_scarfs/> }.into_any(),
    }
}

/// Where the program puts the scarfs, and why.
#[component]
fn Proposed() -> impl IntoView {
    let store = use_store();
    let scarfs = move || store.built().map(|built| built.shape.beam.scarfs.clone()).unwrap_or_default();
    let rows = move || {
        let units = store.units();
        scarfs()
            .into_iter()
            .map(|scarf| {
                let name = format!("Scarf {}, centre", scarf.number);
                let value = format!("{}: {}", wording::length(scarf.place.centre, units), reasons(&scarf, units));
                view! { <Fact name value/> }
            })
            .collect_view()
    };
    let keep = move |_| {
        let places: Vec<ScarfPlace> = untrack(|| scarfs().iter().map(|scarf| scarf.place).collect());
        store.edit(|project| project.frame.scarfs.by_hand = places);
    };
    let any = move || !scarfs().is_empty();
    view! {
        <Group title="Places, proposed">
            <Facts>{rows}</Facts>
            <Show when=any fallback=|| view! { <p>"The beam needs no scarf: one stick makes it."</p> }>
                <button type="button" class="button" on:click=keep>"Keep these and move them by hand"</button>
            </Show>
        </Group>
    }
}

/// What speaks for a place, in words.
fn reasons(scarf: &ScarfReport, units: UnitSystem) -> String {
    let Some(place) = &scarf.judged else { return "not where it should be".to_owned() };
    let say = |length| wording::length(length, units);
    let lower = if scarf.place.lower == Side::Left { "left" } else { "right" };
    let mut text = format!(
        "in bay {}, the {lower} piece below, root {} past the nearer post, tips {} from a rafter",
        place.bay + 1,
        say(place.root_from_post),
        say(place.rafter_clear)
    );
    if let Some(wood) = place.wood_over_pocket {
        text.push_str(&format!(", {} of wood over a brace pocket", say(wood)));
    }
    if place.outside_window.to_inches() > 0.01 {
        text.push_str(&format!(", {} outside the stretch that bends least", say(place.outside_window)));
    } else {
        text.push_str(", within the stretch that bends least");
    }
    text
}

#[component]
fn ByHand(n_scarfs: usize) -> impl IntoView {
    let store = use_store();
    let rows = (0..n_scarfs).map(|index| view! { <OneByHand index/> }).collect_view();
    let back = move |_| store.edit(|project| project.frame.scarfs.by_hand.clear());
    view! {
        <Group title="Places, by hand">
            {rows}
            <button type="button" class="button" on:click=back>"Back to the proposed places"</button>
        </Group>
    }
}

#[component]
fn OneByHand(index: usize) -> impl IntoView {
    let number = index + 1;
    let sides = vec![(Side::Left, "left piece".to_owned()), (Side::Right, "right piece".to_owned())];
    let centre = of_place(index, "centre", |place| place.centre, |place, centre| place.centre = centre);
    let lower = of_place(index, "lower", |place| place.lower, |place, lower| place.lower = lower);
    let why = fact(move |built, project| Some(reasons(built.shape.beam.scarfs.get(index)?, project.units)));
    view! {
        <LengthField field=centre label=format!("Scarf {number}, centre") hint=why steps=Steps::of(1.0, 10.0)/>
        <Choice field=lower label=format!("Scarf {number}: below lies the") options=sides/>
    }
}

/// One field of one scarf placed by hand.
fn of_place<T: 'static>(
    index: usize,
    name: &str,
    get: impl Fn(&ScarfPlace) -> T + Send + Sync + 'static,
    set: impl Fn(&mut ScarfPlace, T) + Send + Sync + 'static,
) -> Lens<T> {
    Lens::maybe(
        format!("frame.scarfs.by_hand.{index}.{name}"),
        move |project: &Project| project.frame.scarfs.by_hand.get(index).map(&get),
        move |project: &mut Project, value| {
            if let Some(place) = project.frame.scarfs.by_hand.get_mut(index) {
                set(place, value);
            }
        },
    )
}
