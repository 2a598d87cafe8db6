//! What must be said at once: not saved, another window, a newer version.
use crate::app::device;
use crate::app::files::FileOut;
use crate::app::saving::{SaveState, use_saving};
use leptos::prelude::*;
use std::time::Duration;

/// All notices, worst first.
#[component]
pub fn Notices() -> impl IntoView {
    view! {
        <div class="notices">
            <NotSaved/>
            <Said/>
            <Update/>
        </div>
    }
}

#[component]
fn NotSaved() -> impl IntoView {
    let saving = use_saving();
    move || {
        match saving.state.get() {
        SaveState::NotSaved(why) => view! {
            <div class="notice notice--bad" role="alert">
                <p class="notice__says"><strong>"Not saved: "</strong> {why} ". You can go on; save a copy as a file now."</p>
                <FileOut/>
                <button type="button" class="button" on:click=move |_| saving.save_now()>"Try again"</button>
            </div>
        }
        .into_any(),
        SaveState::Conflict => view! {
            <div class="notice notice--bad" role="alert">
                <p class="notice__says">
                    <strong>"Open in two windows: "</strong>
                    "another window saved a later state of this project. Nothing is overwritten."
                </p>
                <div class="actions">
                    <button type="button" class="button" on:click=move |_| saving.load_theirs()>"Load the later state"</button>
                    <button type="button" class="button" on:click=move |_| saving.keep_mine()>"Keep this one as a copy"</button>
                </div>
            </div>
        }
        .into_any(),
        SaveState::Saved | SaveState::Waiting => ().into_any(),
    }
    }
}

#[component]
fn Said() -> impl IntoView {
    let saving = use_saving();
    move || {
        saving.notice.get().map(|text| {
            view! {
                <div class="notice" role="status">
                    <p class="notice__says">{text}</p>
                    <button type="button" class="button" on:click=move |_| saving.notice.set(None)>"Understood"</button>
                </div>
            }
        })
    }
}

/// A newer version waits until it is asked for.
#[component]
fn Update() -> impl IntoView {
    let saving = use_saving();
    let message = RwSignal::new(device::waiting_update());
    let handle = window_event_listener_untyped("outshot-update", move |_| message.set(device::waiting_update()));
    on_cleanup(move || handle.remove());
    let apply = move |_| {
        saving.save_waiting();
        device::apply_update();
        // The page reloads; should it not, the button must not stay behind.
        set_timeout(move || drop(message.try_set(None)), Duration::from_secs(4));
    };
    move || {
        message.get().map(|text| {
            view! {
                <div class="notice" role="status">
                    <p class="notice__says">{text} "."</p>
                    <div class="actions">
                        <button type="button" class="button button--main" on:click=apply>"Use it now"</button>
                        <button type="button" class="button" on:click=move |_| message.set(None)>"Later"</button>
                    </div>
                </div>
            }
        })
    }
}
