//! Lengths of which the mill has only so many.
use crate::app::cached::text_of;
use crate::app::components::{count_field, path_problems};
use crate::app::dom::{Item, Tag, button, tag};
use crate::app::{Lens, Store, use_store};
use crate::materials::Section;
use crate::ordering::asked_length;
use crate::project::{LengthLimit, Project, Role, SAME_LENGTH};
use crate::units::{Length, UnitSystem};
use leptos::prelude::*;

/// Most that are counted.
const MOST: usize = 500;

fn name(section: Section, length: Length, units: UnitSystem) -> String {
    format!("{} × {}", section.label(units), asked_length(length, units))
}

/// Every section of the frame in every length of the mill that is not limited yet.
fn open(project: &Project) -> Vec<(Section, Length)> {
    let mut sections: Vec<Section> = Vec::new();
    for section in Role::ALL.map(|role| project.frame.timbers.of(role).ordered) {
        if !sections.contains(&section) {
            sections.push(section);
        }
    }
    let all =
        sections.into_iter().flat_map(|section| project.mill.lengths.iter().map(move |length| (section, *length)));
    all.filter(|(section, length)| project.mill.limit_of(*section, *length).is_none()).collect()
}

/// The limits, and a list to choose another from.
pub fn limits() -> Tag {
    let store = use_store();
    let kept = store
        .slice(|project| project.mill.limits.iter().map(|limit| (limit.section, limit.length)).collect::<Vec<_>>());
    let rows = move || {
        let row = |(index, (section, length)): (usize, (Section, Length))| {
            let key = format!("{index} {}", name(section, length, UnitSystem::Imperial));
            Item::new(key, move || one(index, section, length))
        };
        kept.get().into_iter().enumerate().map(row).collect()
    };
    tag("div")
        .class("prices")
        .attr("id", "mill.limits")
        .attr("tabindex", "-1")
        .child(tag("h3").class("group__title").child("Only so many of a length"))
        .child(path_problems("mill.limits"))
        .each(rows)
        .child(another(store))
}

fn another(store: Store) -> Tag {
    let choices = store.slice(|project| (open(project), project.units));
    let options = move || {
        let (open, units) = choices.get();
        let option = |(section, length): (Section, Length)| tag("option").child(name(section, length, units));
        open.into_iter().map(option).collect::<Vec<_>>()
    };
    let add = move |event: web_sys::Event| {
        let chosen = event_target_value(&event);
        let (open, units) = choices.get_untracked();
        let found = open.into_iter().find(|(section, length)| name(*section, *length, units) == chosen);
        let Some((section, length)) = found else { return };
        let count = n_ordered(store, section, length);
        store.edit(|project| project.mill.limits.push(LengthLimit { section, length, count }));
    };
    tag("div")
        .class("field")
        .child(
            tag("label")
                .class("field__label")
                .attr("for", "another-limit")
                .child(tag("span").class("field__name").child("The mill has only so many of"))
                .child(tag("span").class("field__hint").child("the order then takes no more of them")),
        )
        .child(
            tag("div").class("field__box").child(
                tag("select")
                    .class("field__input field__pick")
                    .attr("id", "another-limit")
                    .child(tag("option").child("choose a size and length"))
                    .live(options)
                    .on("change", add),
            ),
        )
}

/// What the order takes of them now: nothing changes before another number is said.
fn n_ordered(store: Store, section: Section, length: Length) -> usize {
    let of_it = |built: std::sync::Arc<crate::design::Built>| {
        let lines = built.order.lines.iter();
        let alike = lines.filter(|line| line.section == section && line.length.is_near(length, SAME_LENGTH));
        alike.map(|line| line.count).sum()
    };
    store.built().map_or(0, of_it)
}

fn one(index: usize, section: Section, length: Length) -> Tag {
    let store = use_store();
    let field = Lens::maybe(
        format!("mill.limits.{index}.count"),
        move |project: &Project| project.mill.limits.get(index).map(|limit| limit.count),
        move |project: &mut Project, count| {
            if let Some(limit) = project.mill.limits.get_mut(index) {
                limit.count = count;
            }
        },
    );
    let label = text_of(move || format!("How many {}", name(section, length, store.units())));
    let remove = move |_| {
        store.edit(|project| {
            if index < project.mill.limits.len() {
                project.mill.limits.remove(index);
            }
        });
    };
    tag("div").class("prices__one").child(count_field(field, label, 0, MOST)).child(
        button("button button--small", remove)
            .live(move || format!("As many {} as wanted", name(section, length, store.units()))),
    )
}
