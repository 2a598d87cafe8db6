//! The beam's pieces and scarfs: proposed with their reasons, or placed by hand.
use super::super::drawn::{fact, room};
use super::splices::ledger_splices;
use crate::app::cached::Cached;
use crate::app::components::{
    Steps, choice, count_field, fact_line, fact_list, facts, fold, group, length_field, path_problems, toggle,
};
use crate::app::dom::{Tag, button, live, parts, tag};
use crate::app::{Lens, use_store};
use crate::geometry::ScarfReport;
use crate::lens;
use crate::project::{Project, ScarfKind, ScarfPlace, Side};
use crate::units::UnitSystem;
use crate::wording;
use leptos::prelude::*;

/// Beam and scarfs.
pub fn beam_and_scarfs() -> Tag {
    let kinds = ScarfKind::ALL.into_iter().map(|kind| (kind, kind.name().to_owned())).collect();
    let summary = fact(|built, _| Some(format!("{} pieces", built.shape.beam.pieces.len())));
    fold("Beam and scarfs", summary, false, || {
        parts()
            .child(choice(lens!(frame.scarfs.kind), "Scarf, plain to strong", "", kinds, None))
            .child(
                length_field(lens!(frame.scarfs.lap), "Length of the lap")
                    .hint("every scarf alike")
                    .steps(Steps::of(1.0, 20.0)),
            )
            .child(pieces())
            .child(path_problems("frame.scarfs"))
            .child(path_problems("frame.scarfs.n_pieces"))
            .child(places())
            .child(facts(&[(
                "Longest piece",
                room(|built| built.shape.beam.pieces.iter().map(|piece| piece.length()).reduce(|a, b| a.max(b))),
            )]))
            .child(ledger_splices())
    })
}

/// How many pieces: the program's count, or the user's.
fn pieces() -> Tag {
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
    parts()
        .child(toggle(is_mine, "I say how many pieces", "off: what the mill’s lengths and the crew can lift"))
        .shown(move || by_count.get(), move || count_field(count(), "Pieces of the beam", 1, 20))
}

fn places() -> Tag {
    let store = use_store();
    let by_hand = store.slice(|project| project.frame.scarfs.by_hand.len());
    live(move || match by_hand.get() {
        0 => proposed(),
        n_scarfs => placed_by_hand(n_scarfs),
    })
}

/// Where the program puts the scarfs, and why.
fn proposed() -> Tag {
    let store = use_store();
    let scarfs = Cached::new(move || store.built().map(|built| built.shape.beam.scarfs.clone()).unwrap_or_default());
    let rows = move || {
        let units = store.units();
        let row = |scarf: &ScarfReport| {
            let name = format!("Scarf {}, centre", scarf.number);
            let value = format!("{}: {}", wording::length(scarf.place.centre, units), reasons(scarf, units));
            fact_line(&name, value)
        };
        scarfs.with(|scarfs| scarfs.iter().map(row).collect::<Vec<_>>())
    };
    let keep = move |_| {
        let places: Vec<ScarfPlace> = scarfs.with_untracked(|scarfs| scarfs.iter().map(|scarf| scarf.place).collect());
        store.edit(|project| project.frame.scarfs.by_hand = places);
    };
    let any = move || scarfs.with(|scarfs| !scarfs.is_empty());
    group(
        "Places, proposed",
        parts()
            .child(fact_list(live(rows)))
            .shown(any, move || button("button", keep).child("Keep these and move them by hand"))
            .shown(move || !any(), || tag("p").child("The beam needs no scarf: one stick makes it.")),
    )
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
    text.push_str(&format!("; {}", place.bends.says()));
    text
}

fn placed_by_hand(n_scarfs: usize) -> Tag {
    let store = use_store();
    let rows = (0..n_scarfs).map(one_by_hand).collect::<Vec<_>>();
    let back = move |_| store.edit(|project| project.frame.scarfs.by_hand.clear());
    group("Places, by hand", parts().child(rows).child(button("button", back).child("Back to the proposed places")))
}

fn one_by_hand(index: usize) -> Tag {
    let number = index + 1;
    let sides = vec![(Side::Left, "left piece".to_owned()), (Side::Right, "right piece".to_owned())];
    let centre = of_place(index, "centre", |place| place.centre, |place, centre| place.centre = centre);
    let lower = of_place(index, "lower", |place| place.lower, |place, lower| place.lower = lower);
    let why = fact(move |built, project| Some(reasons(built.shape.beam.scarfs.get(index)?, project.units)));
    parts()
        .child(length_field(centre, format!("Scarf {number}, centre")).hint(why).steps(Steps::of(1.0, 10.0)))
        .child(choice(lower, &format!("Scarf {number}: below lies the"), "", sides, None))
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
