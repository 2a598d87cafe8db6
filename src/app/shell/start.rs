//! The first page: no project is open.
use super::projects::{NewProject, ProjectList};
use crate::app::saving::use_saving;
use crate::app::storage;
use crate::app::theme::ThemeChoice;
use leptos::prelude::*;

/// What this is, and how to begin.
#[component]
pub fn Start() -> impl IntoView {
    let saving = use_saving();
    let choice = move || {
        saving.list.track();
        if storage::index().is_empty() && storage::removed().is_none() {
            view! { <NewProject/> }.into_any()
        } else {
            view! { <ProjectList/> }.into_any()
        }
    };
    view! {
        <article class="start">
            <LeanTo/>
            <h1 class="start__title" tabindex="-1">"Outshot"</h1>
            <p class="start__about">
                "A timber-framed lean-to, from the tape at the wall to the marks on the last stick. Set what your wall, ground and mill
                give you; every length, mark, weight and price follows at once."
            </p>
            <p class="start__about">"It works without a signal, and everything stays on this device."</p>
            {choice}
            <ThemeChoice/>
        </article>
    }
}

/// A lean-to in a few lines, drawn as the drawings are.
#[component]
fn LeanTo() -> impl IntoView {
    view! {
        <svg class="drawing start__picture" viewBox="0 0 340 200" aria-hidden="true" focusable="false">
            <path class="ground" d="M2 168 H338 V190 H2 Z"/>
            <path class="wall" d="M26 28 H52 V168 H26 Z"/>
            <path class="wall" d="M4 24 L66 6 L84 26 V36 L52 36 L26 44 V34 L4 40 Z"/>
            <path class="pier" d="M262 160 H290 V184 H262 Z"/>
            <path class="wood" d="M266 94 H286 V160 H266 Z"/>
            <path class="seen" d="M266 100 L276 94 H286 V128 H278 Z"/>
            <path class="endgrain" d="M52 60 H64 V82 H52 Z"/>
            <path class="endgrain" d="M264 76 H288 V102 H264 Z"/>
            <path class="wood" d="M54 47 L310 77 L307 92 L288 89.8 V84 H272 L270 81 L64 65 V60 H52.5 Z"/>
            <path class="metal line" d="M54 38 L318 69"/>
            <path class="dim" d="M52 179 H288 M47 184 L57 174 M283 184 L293 174 M52 172 V186 M288 172 V186"/>
        </svg>
    }
}
