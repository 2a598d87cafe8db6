//! Joints held by screws, straps or an anchor, by their maker's allowable loads.
use crate::app::components::{COUNT, EntryField, FORCE, Group, WORDS, nothing_is_open};
use crate::app::{Lens, use_store};
use crate::project::{Fixings, Project, Tie};
use leptos::prelude::*;

/// One kind of joint that is tied.
#[derive(Clone, Copy)]
pub struct Tied {
    /// Its key in the file.
    key: &'static str,
    title: &'static str,
    /// What one of its fasteners is.
    one: &'static str,
    pull: &'static str,
    sideways: &'static str,
    of: fn(&mut Fixings) -> &mut Tie,
    see: fn(&Fixings) -> &Tie,
}

pub const RAFTER_HEAD: Tied = Tied {
    key: "rafter_head",
    title: "Rafter to ledger",
    one: "screws or straps at each rafter’s head",
    pull: "up, off the ledger",
    sideways: "along the wall and out from it",
    of: |fixings| &mut fixings.rafter_head,
    see: |fixings| &fixings.rafter_head,
};

pub const RAFTER_SEAT: Tied = Tied {
    key: "rafter_seat",
    title: "Rafter to beam",
    one: "screws or straps at each rafter’s seat",
    pull: "up, off the beam",
    sideways: "along the beam and out from it",
    of: |fixings| &mut fixings.rafter_seat,
    see: |fixings| &fixings.rafter_seat,
};

pub const SCARF: Tied = Tied {
    key: "scarf",
    title: "Scarfs",
    one: "screws or bolts across each root of a scarf, lap to lap",
    pull: "lap off lap",
    sideways: "lap along lap",
    of: |fixings| &mut fixings.scarf,
    see: |fixings| &fixings.scarf,
};

pub const POST_BASE: Tied = Tied {
    key: "post_base",
    title: "Post to pier",
    one: "anchors at each post’s foot",
    pull: "up, off the pier",
    sideways: "level, any way",
    of: |fixings| &mut fixings.post_base,
    see: |fixings| &fixings.post_base,
};

impl Tied {
    /// One field of the tie, open while it is nothing.
    fn open<T: Clone + Default + PartialEq + 'static>(
        self,
        name: &'static str,
        get: fn(&Tie) -> T,
        set: fn(&mut Tie, T),
    ) -> Lens<Option<T>> {
        let Self { key, of, see, .. } = self;
        nothing_is_open(&Lens::new(
            format!("fixings.{key}.{name}"),
            move |project: &Project| get(see(&project.fixings)),
            move |project: &mut Project, value| set(of(&mut project.fixings), value),
        ))
    }
}

/// How many, what one of them carries, and who says so.
#[component]
pub fn TieFields(
    /// Which joint.
    tied: Tied,
) -> impl IntoView {
    let store = use_store();
    let Tied { title, one, pull, sideways, see, .. } = tied;
    let is_chosen = store.slice(move |project| see(&project.fixings).count > 0);
    let count = tied.open("count", |tie| tie.count, |tie, count| tie.count = count);
    let pull_field = move || tied.open("pull", |tie| tie.pull, |tie, pull| tie.pull = pull);
    let push_field = move || tied.open("sideways", |tie| tie.sideways, |tie, force| tie.sideways = force);
    let source = move || tied.open("source", |tie| tie.source.clone(), |tie, source| tie.source = source);
    view! {
        <Group title=title>
            <EntryField entry=COUNT.open(&count) label=format!("{title}: how many") hint=one decimal_keys=true/>
            <Show when=move || is_chosen.get()>
                <EntryField entry=FORCE.open(&pull_field()) label="One holds, pulled" hint=pull decimal_keys=true/>
                <EntryField entry=FORCE.open(&push_field()) label="One holds, pushed sideways" hint=sideways decimal_keys=true/>
                <EntryField entry=WORDS.open(&source()) label="Source of these values" hint="the maker’s sheet or report"/>
            </Show>
        </Group>
    }
}
