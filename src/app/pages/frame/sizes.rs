//! The wood: species, and the size of each kind of stick as ordered and as sawn.
use crate::app::cached::{Cached, text_of};
use crate::app::components::{Steps, choice, fold, group, length_field, pick, toggle};
use crate::app::dom::{Tag, live, parts, tag};
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
pub fn sizes() -> Tag {
    let store = use_store();
    let woods = species_table().iter().map(|wood| (wood.key.clone(), wood.name.clone())).collect();
    let blocks = vec![(Blocks::None, "none".to_owned()), (Blocks::OverBeam, "over the beam".to_owned())];
    let summary = text_of(move || {
        let project = store.project();
        let beam = project.frame.timbers.beam.ordered.label(project.units);
        format!("beam {beam}, {}", species(&project.frame.species).map_or("", |wood| wood.name.as_str()))
    });
    fold("Wood and sizes", summary, false, || {
        parts()
            .child(pick(lens!(frame.species), "Species", "", woods))
            .child(about_wood())
            .child(KINDS.iter().map(size).collect::<Vec<_>>())
            .child(choice(lens!(frame.blocks), "Blocks between the rafters", "", blocks, None))
    })
}

/// Where the values of the species come from, and how far they can be trusted.
fn about_wood() -> Tag {
    let store = use_store();
    let named = store.slice(|project| project.frame.species.clone());
    live(move || {
        let units = store.units();
        named.with(|name| species(name)).map(|wood| {
            let trust = match wood.confidence {
                Confidence::High | Confidence::Given => "Compared with the printed source.",
                Confidence::Medium => "Recalled from the source, not compared: ask the mill for the weight.",
                Confidence::Low => "A placeholder: ask locally before you lean on it.",
            };
            let weight = show_density(wood.green_density, units).to_string();
            tag("p")
                .class("source")
                .child("Green ")
                .child(weight)
                .child(". ")
                .child(trust)
                .child(" ")
                .child(wood.source.clone())
                .child(".")
        })
    })
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

fn size(kind: &'static Kind) -> Tag {
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
    let shown = Cached::new(move || apart.get() || !is_full((kind.of)(&mut store.project().frame.timbers.clone())));
    group(
        &format!("{word}, {} and {}", kind.breadth, kind.depth),
        parts()
            .child(
                length_field(
                    side(kind, "ordered.breadth", |timber| &mut timber.ordered.breadth, true),
                    format!("{word} breadth"),
                )
                .hint(kind.breadth)
                .steps(step),
            )
            .child(
                length_field(
                    side(kind, "ordered.depth", |timber| &mut timber.ordered.depth, true),
                    format!("{word} depth"),
                )
                .hint(kind.depth)
                .steps(step),
            )
            .child(toggle(full, "Sawn as ordered", ""))
            .shown(move || shown.get(), move || sawn_size(kind)),
    )
}

fn sawn_size(kind: &'static Kind) -> Tag {
    let (word, step) = (kind.word, Steps::of(0.0625, 1.0));
    parts()
        .child(
            length_field(
                side(kind, "sawn.breadth", |timber| &mut timber.sawn.breadth, false),
                format!("{word} breadth as sawn"),
            )
            .steps(step),
        )
        .child(
            length_field(
                side(kind, "sawn.depth", |timber| &mut timber.sawn.depth, false),
                format!("{word} depth as sawn"),
            )
            .steps(step),
        )
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
