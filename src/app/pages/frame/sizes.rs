//! The wood: species, and the size of each kind of stick as ordered and as sawn.
use crate::app::components::{Choice, Fold, Group, LengthField, Pick, Steps, Toggle};
use crate::app::{Lens, use_store};
use crate::lens;
use crate::materials::{Confidence, Timber, species, species_table};
use crate::project::{Blocks, Project, Timbers};
use crate::units::{Length, show_density};
use leptos::prelude::*;

/// One kind of stick: its word, its key in the file, what breadth and depth mean, and its timber.
struct Kind {
    word: &'static str,
    key: &'static str,
    breadth: &'static str,
    depth: &'static str,
    of: fn(&mut Timbers) -> &mut Timber,
}

const KINDS: [Kind; 7] = [
    Kind { word: "Post", key: "post", breadth: "along the beam", depth: "out", of: |all| &mut all.post },
    Kind { word: "Beam", key: "beam", breadth: "across", depth: "up", of: |all| &mut all.beam },
    Kind { word: "Brace", key: "brace", breadth: "out", depth: "in the plane of the frame", of: |all| &mut all.brace },
    Kind {
        word: "Rafter",
        key: "rafter",
        breadth: "along the beam",
        depth: "square to the slope",
        of: |all| &mut all.rafter,
    },
    Kind { word: "Ledger", key: "ledger", breadth: "across", depth: "up", of: |all| &mut all.ledger },
    Kind { word: "Purlin", key: "purlin", breadth: "flat on the rafter", depth: "up", of: |all| &mut all.purlin },
    Kind { word: "Block", key: "block", breadth: "out", depth: "up", of: |all| &mut all.block },
];

/// Sizes.
#[component]
pub fn Sizes() -> impl IntoView {
    let store = use_store();
    let woods = species_table().iter().map(|wood| (wood.key.clone(), wood.name.clone())).collect();
    let blocks = vec![(Blocks::None, "none".to_owned()), (Blocks::OverBeam, "over the beam".to_owned())];
    let summary = Signal::derive(move || {
        let project = store.project();
        let beam = project.frame.timbers.beam.ordered.label(project.units);
        format!("beam {beam}, {}", species(&project.frame.species).map_or("", |wood| wood.name.as_str()))
    });
    let kinds = KINDS.iter().map(|kind| view! { <Size kind/> }).collect_view();
    view! {
        <Fold title="Wood and sizes" summary>
            <Pick field=lens!(frame.species) label="Species" options=woods/>
            <AboutWood/>
            {kinds}
            <Choice field=lens!(frame.blocks) label="Blocks between the rafters" options=blocks/>
        </Fold>
    }
}

/// Where the values of the species come from, and how far they can be trusted.
#[component]
fn AboutWood() -> impl IntoView {
    let store = use_store();
    move || {
        let project = store.project();
        species(&project.frame.species).map(|wood| {
            let trust = match wood.confidence {
                Confidence::High => "Compared with the printed source.",
                Confidence::Medium => "Recalled from the source, not compared: ask the mill for the weight.",
                Confidence::Low => "A placeholder: ask locally before you lean on it.",
            };
            let weight = show_density(wood.green_density, project.units).to_string();
            view! { <p class="source">"Green " {weight} ". " {trust} " " {wood.source.clone()} "."</p> }
        })
    }
}

/// One side of one timber.
fn side(kind: &'static Kind, name: &'static str, pick: fn(&mut Timber) -> &mut Length, follow: bool) -> Lens<Length> {
    Lens::new(
        format!("frame.timbers.{}.{name}", kind.key),
        move |project: &Project| *pick((kind.of)(&mut project.frame.timbers.clone())),
        move |project: &mut Project, size| {
            let timber = (kind.of)(&mut project.frame.timbers);
            let was_full = is_full(timber);
            *pick(timber) = size;
            if follow && was_full {
                timber.sawn = timber.ordered;
            }
        },
    )
}

fn is_full(timber: &Timber) -> bool {
    timber.sawn == timber.ordered
}

#[component]
fn Size(kind: &'static Kind) -> impl IntoView {
    let store = use_store();
    let (word, step) = (kind.word, Steps::of(1.0, 10.0));
    // A choice of the screen, not of the project: the fields for the sawn size may be open while both are still alike.
    let apart = RwSignal::new(!untrack(|| is_full((kind.of)(&mut store.project().frame.timbers.clone()))));
    let full = Lens::new(
        format!("frame.timbers.{}", kind.key),
        move |project: &Project| is_full((kind.of)(&mut project.frame.timbers.clone())) && !apart.get(),
        move |project: &mut Project, full: bool| {
            apart.set(!full);
            if full {
                let timber = (kind.of)(&mut project.frame.timbers);
                timber.sawn = timber.ordered;
            }
        },
    );
    let shown = Memo::new(move |_| apart.get() || !is_full((kind.of)(&mut store.project().frame.timbers.clone())));
    view! {
        <Group title=format!("{word}, {} and {}", kind.breadth, kind.depth)>
            <LengthField
                field=side(kind, "ordered.breadth", |timber| &mut timber.ordered.breadth, true) label=format!("{word} breadth")
                hint=kind.breadth steps=step
            />
            <LengthField
                field=side(kind, "ordered.depth", |timber| &mut timber.ordered.depth, true) label=format!("{word} depth")
                hint=kind.depth steps=step
            />
            <Toggle field=full label="Sawn as ordered"/>
            <Show when=move || shown.get()>
                <SawnSize kind/>
            </Show>
        </Group>
    }
}

#[component]
fn SawnSize(kind: &'static Kind) -> impl IntoView {
    let (word, step) = (kind.word, Steps::of(0.0625, 1.0));
    view! {
        <LengthField
            field=side(kind, "sawn.breadth", |timber| &mut timber.sawn.breadth, false) label=format!("{word} breadth as sawn") steps=step
        />
        <LengthField
            field=side(kind, "sawn.depth", |timber| &mut timber.sawn.depth, false) label=format!("{word} depth as sawn") steps=step
        />
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::materials::Section;
    use crate::project::demo;

    #[test]
    fn an_ordered_size_takes_the_sawn_one_along_while_they_are_alike() {
        for kind in &KINDS {
            let mut project = demo::wool_barn();
            let before = project.clone();
            let breadth = side(kind, "ordered.breadth", |timber| &mut timber.ordered.breadth, true);
            breadth.set(&mut project, Length::inches(11.0));
            let timber = *(kind.of)(&mut project.frame.timbers);
            let depth = timber.ordered.depth;
            assert_eq!(timber, Timber::full(Section::new(Length::inches(11.0), depth)), "{}", kind.word);
            assert_ne!(project, before);
        }
    }
}
