//! The projects on this device.
use crate::app::clock;
use crate::app::components::text_field;
use crate::app::dom::{Tag, button, live, tag};
use crate::app::files::file_in;
use crate::app::saving::{Saving, use_saving};
use crate::app::{storage, use_store};
use crate::lens;
use crate::project::examples;
use crate::units::UnitSystem;
use leptos::prelude::*;

/// The list, with all that can be done to it.
pub fn project_list() -> Tag {
    let store = use_store();
    let saving = use_saving();
    let rename = move || store.id().map(|_| text_field(lens!(name), "Name of this project", 80));
    let rows = move || {
        saving.list.track();
        let entries = storage::index();
        if entries.is_empty() {
            return tag("p").class("quietly").child("No project is kept on this device yet.");
        }
        let rows = entries.into_iter().map(row).collect::<Vec<_>>();
        tag("ul").class("list").child(rows)
    };
    tag("section")
        .class("projects")
        .live(rename)
        .child(tag("h2").class("projects__title").child("Projects on this device"))
        .live(rows)
        .child(bring_back())
        .child(new_project())
}

fn row(entry: storage::Entry) -> Tag {
    let store = use_store();
    let saving = use_saving();
    let storage::Entry { id, name, saved } = entry;
    let (open_id, copy_id, remove_id, here_id) = (id.clone(), id.clone(), id.clone(), id);
    let is_here = move || store.id().as_deref() == Some(here_id.as_str());
    let (copy_name, remove_name) = (format!("Copy {name}"), format!("Delete {name}"));
    tag("li")
        .class("list__row")
        .child(
            button("list__open", move |_| saving.open(&open_id))
                .child(tag("span").class("list__name").child(name).live(move || is_here().then_some(" (open)")))
                .child(tag("span").class("list__when").child("saved ").child(clock::show(saved))),
        )
        .child(
            button("button button--small", move |_| saving.copy(&copy_id)).attr("aria-label", copy_name).child("Copy"),
        )
        .child(
            button("button button--small", move |_| saving.remove(&remove_id))
                .attr("aria-label", remove_name)
                .child("Delete"),
        )
}

/// The way back for what was deleted last.
fn bring_back() -> Tag {
    let saving = use_saving();
    live(move || {
        saving.list.track();
        storage::removed().map(|removed| {
            tag("p")
                .class("projects__gone")
                .attr("role", "status")
                .child(tag("span").child("“").child(removed.entry.name).child("” was deleted."))
                .child(button("button", move |_| saving.bring_back()).child("Bring it back"))
        })
    })
}

/// Ways to begin.
pub fn new_project() -> Tag {
    let saving = use_saving();
    tag("div")
        .class("begin")
        .child(
            button("button button--main", move |_| saving.create_empty(UnitSystem::Imperial))
                .child("New, in feet and inches"),
        )
        .child(
            button("button button--main", move |_| saving.create_empty(UnitSystem::Metric))
                .child("New, in millimetres"),
        )
        .child(file_in("Open a file"))
        .child(examples(saving))
}

fn examples(saving: Saving) -> Tag {
    tag("div")
        .class("begin__examples")
        .child(tag("p").class("begin__about").child("Look at an example (invented):"))
        .child(
            button("button", move |_| saving.create(examples::wool_barn())).child("Wool barn lean-to, feet and inches"),
        )
        .child(button("button", move |_| saving.create(examples::log_store())).child("Larch log store, millimetres"))
}
