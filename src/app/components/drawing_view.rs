//! A drawing to scale that can be enlarged, pushed about with one thumb, and tapped.
use crate::app::focus::focus_field;
use crate::app::route::{Route, use_router};
use leptos::ev;
use leptos::html::Div;
use leptos::prelude::*;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// How much the drawing can be enlarged: class and factor.
const ZOOMS: [(&str, f64); 4] = [("1", 1.0), ("2", 1.6), ("3", 2.6), ("4", 4.0)];
/// Width drawn for before the screen is known, in CSS pixels.
const FIRST_WIDTH: f64 = 340.0;

/// A drawing made for the width it is shown in.
#[component]
pub fn DrawingView(
    /// Draws for a width in CSS pixels: a whole `<svg>` made by this program, never text from outside. Follows the signals it reads.
    #[prop(into)]
    draw: Draw,
    /// What it shows, for those who can't see it.
    #[prop(into)]
    label: Signal<String>,
    /// A stick was tapped; without it the stick goes to the bench.
    #[prop(optional)]
    on_stick: Option<Callback<String>>,
    /// A dimension the user sets was tapped; without it its field is focused.
    #[prop(optional)]
    on_field: Option<Callback<String>>,
) -> impl IntoView {
    let frame = NodeRef::<Div>::new();
    let zoom = RwSignal::new(0_usize);
    let width = follow_width(frame);
    let html = Memo::new(move |_| draw.run(width.get() * ZOOMS[zoom.get()].1));
    let router = use_router();
    let tap = move |event: ev::MouseEvent| match tapped(&event) {
        Some(Tapped::Field(path)) => match on_field {
            Some(on_field) => on_field.run(path),
            None => focus_field(&path),
        },
        Some(Tapped::Stick(mark)) => match on_stick {
            Some(on_stick) => on_stick.run(mark),
            None => router.go(&Route::bench(&mark)),
        },
        None => (),
    };
    view! {
        <figure class="drawing-view">
            <div class="drawing-view__frame" node_ref=frame tabindex="0" role="group" aria-label=label>
                <div
                    class=move || format!("drawing-view__sheet drawing-view__sheet--{}", ZOOMS[zoom.get()].0)
                    inner_html=html
                    on:click=tap
                ></div>
            </div>
            <figcaption class="drawing-view__foot">
                <span class="drawing-view__caption">{label}</span>
                <ZoomButtons zoom/>
            </figcaption>
        </figure>
    }
}

#[component]
fn ZoomButtons(zoom: RwSignal<usize>) -> impl IntoView {
    let at_whole = move || zoom.get() == 0;
    let at_most = move || zoom.get() + 1 >= ZOOMS.len();
    let less = move |_| zoom.update(|zoom| *zoom = zoom.saturating_sub(1));
    let more = move |_| zoom.update(|zoom| *zoom = (*zoom + 1).min(ZOOMS.len() - 1));
    view! {
        <div class="drawing-view__zoom">
            <button type="button" class="zoom" disabled=at_whole on:click=move |_| zoom.set(0)>"Whole"</button>
            <button type="button" class="zoom zoom--sign" aria-label="Draw smaller" disabled=at_whole on:click=less>"−"</button>
            <button type="button" class="zoom zoom--sign" aria-label="Draw larger" disabled=at_most on:click=more>"+"</button>
        </div>
    }
}

/// A closure that draws.
#[derive(Clone)]
pub struct Draw(Arc<dyn Fn(f64) -> String + Send + Sync>);

impl Draw {
    fn run(&self, width: f64) -> String {
        (self.0)(width)
    }
}

impl<F: Fn(f64) -> String + Send + Sync + 'static> From<F> for Draw {
    fn from(draw: F) -> Self {
        Self(Arc::new(draw))
    }
}

/// The inner width of the frame in CSS pixels, in steps of 4: a pixel more is no reason to draw again.
fn follow_width(frame: NodeRef<Div>) -> Memo<f64> {
    let width = RwSignal::new(FIRST_WIDTH);
    let measure = move || {
        if let Some(frame) = frame.get_untracked() {
            let inner = f64::from(frame.client_width());
            if inner > 0.0 {
                width.set((inner / 4.0).floor() * 4.0);
            }
        }
    };
    Effect::new(move |_| {
        if frame.get().is_some() {
            request_animation_frame(measure);
        }
    });
    let handle = window_event_listener(ev::resize, move |_| measure());
    on_cleanup(move || handle.remove());
    Memo::new(move |_| width.get())
}

enum Tapped {
    Field(String),
    Stick(String),
}

/// What lies under the finger: a dimension before the stick it belongs to.
fn tapped(event: &ev::MouseEvent) -> Option<Tapped> {
    let target = event.target()?.dyn_into::<web_sys::Element>().ok()?;
    let hit = target.closest("[data-field], [data-stick]").ok()??;
    hit.get_attribute("data-field").map(Tapped::Field).or_else(|| hit.get_attribute("data-stick").map(Tapped::Stick))
}
