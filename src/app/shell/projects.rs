//! The projects on this device.
use crate::app::clock;
use crate::app::components::TextField;
use crate::app::files::FileIn;
use crate::app::saving::{Saving, use_saving};
use crate::app::{storage, use_store};
use crate::lens;
use crate::project::demo;
use crate::units::UnitSystem;
use leptos::prelude::*;

/// The list, with all that can be done to it.
#[component]
pub fn ProjectList() -> impl IntoView {
    let store = use_store();
    let saving = use_saving();
    let rename = move || store.id().map(|_| view! { <TextField field=lens!(name) label="Name of this project"/> });
    let rows = move || {
        saving.list.track();
        let entries = storage::index();
        if entries.is_empty() {
            return view! { <p class="quietly">"No project is kept on this device yet."</p> }.into_any();
        }
        let rows = entries.into_iter().map(|entry| view! { <Row entry/> }).collect_view();
        view! { <ul class="list">{rows}</ul> }.into_any()
    };
    view! {
        <section class="projects">
            {rename}
            <h2 class="projects__title">"Projects on this device"</h2>
            {rows}
            <BringBack/>
            <NewProject/>
        </section>
    }
}

#[component]
fn Row(entry: storage::Entry) -> impl IntoView {
    let store = use_store();
    let saving = use_saving();
    let storage::Entry { id, name, saved } = entry;
    let (open_id, copy_id, remove_id, here_id) = (id.clone(), id.clone(), id.clone(), id);
    let is_here = move || store.id().as_deref() == Some(here_id.as_str());
    let (copy_name, remove_name) = (format!("Copy {name}"), format!("Delete {name}"));
    view! {
        <li class="list__row">
            <button type="button" class="list__open" on:click=move |_| saving.open(&open_id)>
                <span class="list__name">{name} {move || is_here().then_some(" (open)")}</span>
                <span class="list__when">"saved " {clock::show(saved)}</span>
            </button>
            <button type="button" class="button button--small" aria-label=copy_name on:click=move |_| saving.copy(&copy_id)>
                "Copy"
            </button>
            <button type="button" class="button button--small" aria-label=remove_name on:click=move |_| saving.remove(&remove_id)>
                "Delete"
            </button>
        </li>
    }
}

/// The way back for what was deleted last.
#[component]
fn BringBack() -> impl IntoView {
    let saving = use_saving();
    move || {
        saving.list.track();
        storage::removed().map(|removed| {
            view! {
                <p class="projects__gone" role="status">
                    <span>"“" {removed.entry.name} "” was deleted."</span>
                    <button type="button" class="button" on:click=move |_| saving.bring_back()>"Bring it back"</button>
                </p>
            }
        })
    }
}

/// Ways to begin.
#[component]
pub fn NewProject() -> impl IntoView {
    let saving = use_saving();
    view! {
        <div class="begin">
            <button type="button" class="button button--main" on:click=move |_| saving.create_empty(UnitSystem::Imperial)>
                "New, in feet and inches"
            </button>
            <button type="button" class="button button--main" on:click=move |_| saving.create_empty(UnitSystem::Metric)>
                "New, in millimetres"
            </button>
            <FileIn/>
            <Examples saving/>
        </div>
    }
}

#[component]
fn Examples(saving: Saving) -> impl IntoView {
    view! {
        <div class="begin__examples">
            <p class="begin__about">"Look at an example (invented):"</p>
            <button type="button" class="button" on:click=move |_| saving.create(demo::wool_barn())>
                "Wool barn lean-to, feet and inches"
            </button>
            <button type="button" class="button" on:click=move |_| saving.create(demo::log_store())>
                "Larch log store, millimetres"
            </button>
        </div>
    }
}
