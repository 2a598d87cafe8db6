//! A drawing to scale that can be enlarged, pushed about with one thumb, and tapped.
use crate::app::cached::Cached;
use crate::app::dom::{Tag, button, tag};
use crate::app::focus::focus_field;
use crate::app::route::{Route, use_router};
use leptos::ev;
use leptos::prelude::*;
use send_wrapper::SendWrapper;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// How much the drawing can be enlarged: class and factor.
const ZOOMS: [(&str, f64); 4] = [("1", 1.0), ("2", 1.6), ("3", 2.6), ("4", 4.0)];
/// A tap beside everything means the dimension that is no farther than this, in CSS pixels: half a finger.
const AT_HAND: f64 = 24.0;
/// Width drawn for before the screen is known, in CSS pixels.
const FIRST_WIDTH: f64 = 340.0;

/// A drawing made for the width it is shown in.
///
/// A tapped dimension focuses its field. A tapped stick goes to the bench, unless something else is to be done with it.
pub fn drawing_view(
    draw: impl Into<Draw>,
    label: impl Into<Signal<String>>,
    on_stick: Option<Callback<String>>,
) -> Tag {
    let label = label.into();
    made(draw.into(), label, label, on_stick, None)
}

/// A drawing with something over it that can be taken hold of; it is told the width drawn for. The caption is the label,
/// or what is to be said of what is held.
pub fn drawing_view_under(
    draw: impl Into<Draw>,
    label: &'static str,
    caption: Signal<String>,
    over: impl FnOnce(Cached<f64>) -> Tag + 'static,
) -> Tag {
    made(draw.into(), label.into(), caption, None, Some(Box::new(over)))
}

/// Makes what lies over a drawing of that width.
type Over = Box<dyn FnOnce(Cached<f64>) -> Tag>;

fn made(
    draw: Draw,
    label: Signal<String>,
    caption: Signal<String>,
    on_stick: Option<Callback<String>>,
    over: Option<Over>,
) -> Tag {
    let frame = tag("div").class("drawing-view__frame");
    let zoom = RwSignal::new(0_usize);
    let width = follow_width(&frame);
    let drawn_width = Cached::new(move || width.get() * ZOOMS[zoom.get()].1);
    let html = Cached::new(move || draw.run(drawn_width.get()));
    let router = use_router();
    let tap = move |event: web_sys::Event| match tapped(&event) {
        Some(Tapped::Field(path)) => focus_field(&path),
        Some(Tapped::Stick(mark)) => match on_stick {
            Some(on_stick) => on_stick.run(mark),
            None => router.go(&Route::bench(&mark)),
        },
        None => (),
    };
    tag("figure")
        .class("drawing-view")
        .child(
            frame.attr("tabindex", "0").attr("role", "group").attr("aria-label", label).child(
                tag("div")
                    .live_attr("class", move || {
                        format!("drawing-view__sheet drawing-view__sheet--{}", ZOOMS[zoom.get()].0)
                    })
                    .child(tag("div").live_drawing(move || html.get()).on("click", tap))
                    .child(over.map(|over| over(drawn_width))),
            ),
        )
        .child(
            tag("figcaption")
                .class("drawing-view__foot")
                .child(tag("span").class("drawing-view__caption").child(caption))
                .child(zoom_buttons(zoom)),
        )
}

fn zoom_buttons(zoom: RwSignal<usize>) -> Tag {
    let at_whole = move || zoom.get() == 0;
    let at_most = move || zoom.get() + 1 >= ZOOMS.len();
    let less = move |_| zoom.update(|zoom| *zoom = zoom.saturating_sub(1));
    let more = move |_| zoom.update(|zoom| *zoom = (*zoom + 1).min(ZOOMS.len() - 1));
    tag("div")
        .class("drawing-view__zoom")
        .child(button("zoom", move |_| zoom.set(0)).live_attr("disabled", at_whole).child("Whole"))
        .child(
            button("zoom zoom--sign", less)
                .attr("aria-label", "Draw smaller")
                .live_attr("disabled", at_whole)
                .child("−"),
        )
        .child(
            button("zoom zoom--sign", more).attr("aria-label", "Draw larger").live_attr("disabled", at_most).child("+"),
        )
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
fn follow_width(frame: &Tag) -> Cached<f64> {
    let width = RwSignal::new(FIRST_WIDTH);
    let frame = SendWrapper::new(frame.element().clone());
    let measure = move || {
        let inner = f64::from(frame.client_width());
        if inner > 0.0 {
            // The page may be gone before the next picture is painted.
            let _ = width.try_set((inner / 4.0).floor() * 4.0);
        }
    };
    request_animation_frame(measure.clone());
    let handle = window_event_listener(ev::resize, move |_| measure());
    on_cleanup(move || handle.remove());
    Cached::new(move || width.get())
}

enum Tapped {
    Field(String),
    Stick(String),
}

/// What lies under the finger: a dimension before the stick it belongs to; beside everything, the dimension at hand.
fn tapped(event: &web_sys::Event) -> Option<Tapped> {
    let target = event.target()?.dyn_into::<web_sys::Element>().ok()?;
    let Some(hit) = target.closest("[data-field], [data-stick]").ok()? else {
        let click = event.dyn_ref::<web_sys::MouseEvent>()?;
        let at = (f64::from(click.client_x()), f64::from(click.client_y()));
        return at_hand(&target.closest(".drawing").ok()??, at).map(Tapped::Field);
    };
    hit.get_attribute("data-field").map(Tapped::Field).or_else(|| hit.get_attribute("data-stick").map(Tapped::Stick))
}

/// The field of the nearest dimension's words: they are narrower than a finger.
fn at_hand(drawing: &web_sys::Element, (x, y): (f64, f64)) -> Option<String> {
    let away = |at: f64, low: f64, high: f64| (low - at).max(at - high).max(0.0);
    let mut nearest = (AT_HAND, None);
    let mut next = drawing.first_element_child();
    while let Some(part) = next {
        if let Some(field) = part.get_attribute("data-field").filter(|_| part.tag_name() == "text") {
            let room = part.get_bounding_client_rect();
            let off = away(x, room.left(), room.right()).hypot(away(y, room.top(), room.bottom()));
            if off < nearest.0 {
                nearest = (off, Some(field));
            }
        }
        next = part.next_element_sibling();
    }
    nearest.1
}
