//! The real sizes of the stick in hand, measured along it.
use super::in_hand::InHand;
use crate::app::components::{Steps, length_field, path_problems, word};
use crate::app::dom::{Item, Tag, button, parts, tag};
use crate::app::{Lens, use_store};
use crate::project::{MeasuredSize, Project};
use crate::units::Length;

/// The part of a sheet where a rule and a square are read.
pub fn sizes_part(hand: InHand) -> Tag {
    let store = use_store();
    let mark = hand.mark();
    let of = mark.clone();
    let count = store.slice(move |project| project.progress.sizes.get(&of).map_or(0, Vec::len));
    let rows = {
        let mark = mark.clone();
        move || {
            let mark = mark.clone();
            (0..count.get())
                .map(move |index| {
                    let mark = mark.clone();
                    Item::new(index.to_string(), move || row(&mark, index))
                })
                .collect()
        }
    };
    let path = format!("progress.sizes.{mark}");
    let add = move |_| {
        let found = hand.stick.with_untracked(|stick| stick.as_ref().map(|stick| (stick.timber.sawn, stick.high)));
        let Some((sawn, high)) = found else { return };
        store.tick(|progress| {
            let sizes = progress.sizes.entry(mark.clone()).or_default();
            let from_zero = sizes.last().map_or(Length::ZERO, |last| (last.from_zero + Length::feet(4.0)).min(high));
            sizes.push(MeasuredSize { from_zero, breadth: sawn.breadth, depth: sawn.depth });
        });
    };
    tag("section")
        .class("fit")
        .attr("aria-labelledby", "sizes-title")
        .child(tag("h2").class("cut__title").attr("id", "sizes-title").child("Real sizes"))
        .child(word("Measure at every joint: its housing and its seat follow on this sheet, and a mate that would change is named."))
        .child(path_problems(path))
        .child(tag("div").each(rows))
        .child(button("button button--small", add).child("Add a measured place"))
}

fn row(mark: &str, index: usize) -> Tag {
    let store = use_store();
    let field = |name: &str, get: fn(&MeasuredSize) -> Length, set: fn(&mut MeasuredSize, Length)| {
        let (of, at) = (mark.to_owned(), mark.to_owned());
        Lens::maybe(
            format!("progress.sizes.{mark}.{index}.{name}"),
            move |project: &Project| project.progress.sizes.get(&of)?.get(index).map(get),
            move |project: &mut Project, value| {
                if let Some(size) = project.progress.sizes.get_mut(&at).and_then(|sizes| sizes.get_mut(index)) {
                    set(size, value);
                }
            },
        )
    };
    let steps = || Steps::of(0.0625, 1.0);
    let of = mark.to_owned();
    let remove = move |_| {
        store.tick(|progress| {
            if let Some(sizes) = progress.sizes.get_mut(&of).filter(|sizes| index < sizes.len()) {
                sizes.remove(index);
            }
            progress.sizes.retain(|_, sizes| !sizes.is_empty());
        });
    };
    let number = index + 1;
    parts()
        .child(
            length_field(field("from_zero", |size| size.from_zero, |size, at| size.from_zero = at), "Place, from zero")
                .steps(Steps::of(1.0, 20.0)),
        )
        .child(
            length_field(field("breadth", |size| size.breadth, |size, wide| size.breadth = wide), "Breadth there")
                .steps(steps()),
        )
        .child(
            length_field(field("depth", |size| size.depth, |size, deep| size.depth = deep), "Depth there")
                .steps(steps()),
        )
        .child(button("button button--small", remove).child(format!("Remove place {number}")))
}
