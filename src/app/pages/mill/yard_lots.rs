//! The sticks of the yard, a size at a time: section, length, how many, a remark.
use crate::app::cached::text_of;
use crate::app::components::{
    Steps, WORDS, choice, count_field, entry_field, followed, length_field, nothing_is_open, path_problems,
};
use crate::app::dom::{Item, Tag, button, tag};
use crate::app::{Lens, use_store};
use crate::design::Built;
use crate::materials::Section;
use crate::ordering::{asked_length, same_section};
use crate::project::{Heart, Lot, Project};
use crate::units::Length;
use leptos::prelude::*;

/// The sizes with their fields, and a button for another.
pub fn lots() -> Tag {
    let store = use_store();
    let n_lots = store.slice(|project| project.yard.len());
    // A size just added stands open, the others show what they are.
    let opened = RwSignal::new(None::<usize>);
    let cards =
        move || (0..n_lots.get()).map(|index| Item::new(index.to_string(), move || lot(index, opened))).collect();
    let add = move |_| {
        let built = store.built();
        opened.set(Some(n_lots.get_untracked()));
        store.edit(|project| {
            let next = next_lot(project, built.as_deref());
            project.yard.push(next);
        });
    };
    let clear = move |_| store.edit(|project| project.yard.clear());
    tag("div").child(path_problems("yard")).child(tag("div").class("lots").each(cards)).child(
        tag("div")
            .class("actions")
            .child(button("button", add).child("Add a size"))
            .shown(move || n_lots.get() > 1, move || button("button", clear).child("Take all away")),
    )
}

/// The first section of the order the yard has none of, in the length the order asks; else one more like the last.
fn next_lot(project: &Project, built: Option<&Built>) -> Lot {
    let is_new = |section: Section| project.yard.iter().all(|lot| !same_section(lot.section, section));
    let line = built.and_then(|built| built.order.lines.iter().find(|line| is_new(line.section)));
    let last = project.yard.last().map(|lot| (lot.section, lot.length));
    let ordered = line.map(|line| (line.section, line.length)).or(last);
    let (section, length) = ordered.unwrap_or((project.frame.timbers.beam.ordered, project.mill.longest()));
    Lot { section, length, count: 1, heart: Heart::Either, remark: String::new() }
}

/// One field of one size.
fn of_lot<T: 'static>(
    index: usize,
    name: &str,
    get: impl Fn(&Lot) -> T + Send + Sync + 'static,
    set: impl Fn(&mut Lot, T) + Send + Sync + 'static,
) -> Lens<T> {
    Lens::maybe(
        format!("yard.{index}.{name}"),
        move |project: &Project| project.yard.get(index).map(&get),
        move |project: &mut Project, value| {
            if let Some(lot) = project.yard.get_mut(index) {
                set(lot, value);
            }
        },
    )
}

fn lot(index: usize, opened: RwSignal<Option<usize>>) -> Tag {
    let store = use_store();
    let number = index + 1;
    let size = |name: &str, of: fn(&Lot) -> Length, set: fn(&mut Lot, Length)| of_lot(index, name, of, set);
    let breadth = size("section.breadth", |lot| lot.section.breadth, |lot, size| lot.section.breadth = size);
    let depth = size("section.depth", |lot| lot.section.depth, |lot, size| lot.section.depth = size);
    let long = size("length", |lot| lot.length, |lot, size| lot.length = size);
    let count = of_lot(index, "count", |lot| lot.count, |lot, count| lot.count = count);
    let heart = of_lot(index, "heart", |lot| lot.heart, |lot, heart| lot.heart = heart);
    let remark = of_lot(index, "remark", |lot| lot.remark.clone(), |lot, remark| lot.remark = remark);
    let words = text_of(move || {
        let project = store.project();
        project.yard.get(index).map_or_else(String::new, |lot| {
            format!(
                "{} of {} × {}",
                lot.count,
                lot.section.label(project.units),
                asked_length(lot.length, project.units)
            )
        })
    });
    let remove = move |_| {
        store.edit(|project| {
            if index < project.yard.len() {
                project.yard.remove(index);
            }
        });
    };
    tag("details")
        .class("order__sticks")
        .attr("open", opened.get_untracked() == Some(index))
        .child(tag("summary").class("order__more").child(tag("span").child(followed(words))))
        .child(length_field(breadth, format!("Size {number}, one side")).steps(Steps::of(1.0, 10.0)))
        .child(length_field(depth, format!("Size {number}, other side")).steps(Steps::of(1.0, 10.0)))
        .child(length_field(long, format!("Size {number}, length")).steps(Steps::of(12.0, 100.0)))
        .child(count_field(count, format!("Size {number}, how many"), 0, 500))
        .child(choice(heart, &format!("Size {number}, the heart"), "", super::known_hearts(), None))
        .child(
            entry_field(WORDS.open(&nothing_is_open(&remark)), format!("Size {number}, remark").into())
                .hint("where it lies, how long it has lain"),
        )
        .child(button("button button--small", remove).child(format!("Take size {number} away")))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::lay_out;
    use crate::project::demo;

    /// Every section of the order is offered once, then more of the last.
    #[test]
    fn added_sizes_follow_the_order() {
        let mut project = demo::wool_barn();
        project.yard.clear();
        let built = lay_out(&project).built.unwrap();
        for _ in 0..10 {
            let next = next_lot(&project, Some(&built));
            project.yard.push(next);
        }
        let sections = |lots: &[Lot]| {
            let mut all: Vec<String> = lots.iter().map(|lot| lot.section.label(project.units)).collect();
            crate::units::sort_with(&mut all, Ord::cmp);
            all.dedup();
            all.len()
        };
        let mut ordered: Vec<String> = built.order.lines.iter().map(|line| line.section.label(project.units)).collect();
        crate::units::sort_with(&mut ordered, Ord::cmp);
        ordered.dedup();
        assert_eq!(sections(&project.yard), ordered.len());
        assert_eq!(project.yard[9], project.yard[8]);
    }
}
