//! Wood in the round: turned with a finger, the mouse or the arrow keys, and tapped.
//!
//! Painted by WebGL 2; where there is none, or where it is lost, the library's own picture stands in its place.
mod hands;
mod paint;
mod tones;

use crate::app::cached::text_of;
use crate::app::dom::{Tag, button, follow, live, tag};
use crate::app::theme::Theming;
use crate::drawing::{Eye, Framing, Look, Shown, painted, painted_plain, svg};
use hands::Hands;
use leptos::prelude::*;
use paint::Painter;
use send_wrapper::SendWrapper;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::sync::Arc;
use tones::Tones;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

/// What is shown; nothing while there is no frame.
pub type Wood = RwSignal<Option<Arc<Vec<Shown>>>>;

/// The four straight looks and their words.
const LOOKS: [(&str, Eye); 4] =
    [("Front", Eye::FRONT), ("Side", Eye::SIDE), ("Top", Eye::TOP), ("Corner", Eye::CORNER)];
/// Closer at one press of a key or button.
const CLOSER: f64 = 1.3;

/// The state of one view.
#[derive(Clone, Copy)]
struct Stage {
    wood: Wood,
    /// As the hands have it.
    look: RwSignal<Look>,
    /// As it is painted: follows with the next picture of the screen.
    painted: RwSignal<Look>,
    width: RwSignal<f64>,
    height: RwSignal<f64>,
}

impl Stage {
    fn framing(self, shown: &[Shown], look: &Look) -> Framing {
        Framing::new(shown, look, self.size())
    }

    fn size(self) -> (f64, f64) {
        (self.width.get(), self.height.get())
    }
}

/// Wood that can be turned. A tapped stick is handed out by its mark.
pub fn round_view(wood: Wood, label: impl Into<Signal<String>>, on_stick: Option<Callback<String>>) -> Tag {
    made(wood, label.into(), on_stick)
}

fn made(wood: Wood, label: Signal<String>, on_stick: Option<Callback<String>>) -> Tag {
    let first = Look::whole(Eye::CORNER);
    let (width, height) = (RwSignal::new(0.0), RwSignal::new(0.0));
    let stage = Stage { wood, look: RwSignal::new(first), painted: RwSignal::new(first), width, height };
    follow_look(stage);
    let says = text_of(move || format!("{}, seen {}", label.get(), stage.painted.get().eye.says()));
    let is_lost = RwSignal::new(false);
    let frame = tag("div").class("round__frame").attr("tabindex", "0").attr("role", "group").attr(
        "aria-label",
        text_of(move || format!("{}: the arrow keys turn it, + and − come closer and go back", label.get())),
    );
    follow_size(&frame, stage);
    let frame = Hands::put_on(frame, stage, on_stick);
    let picture = move || if is_lost.get() { flat(stage, says) } else { solid(stage, says, is_lost) };
    tag("figure").class("round").child(frame.child(live(picture))).child(
        tag("figcaption")
            .class("drawing-view__foot")
            .child(tag("span").class("drawing-view__caption").attr("aria-live", "polite").child(says))
            .child(looks(stage)),
    )
}

fn looks(stage: Stage) -> Tag {
    let mut row = tag("div").class("drawing-view__zoom");
    for (word, eye) in LOOKS {
        row = row.child(button("zoom", move |_| stage.look.set(Look::whole(eye))).child(word));
    }
    let closer = move |factor: f64| move |_| stage.look.update(|look| *look = look.closer(factor, (0.0, 0.0)));
    row.child(button("zoom zoom--sign", closer(1.0 / CLOSER)).attr("aria-label", "Go back").child("−"))
        .child(button("zoom zoom--sign", closer(CLOSER)).attr("aria-label", "Come closer").child("+"))
}

/// However fast the hands are, one picture of the screen is painted once.
fn follow_look(stage: Stage) {
    let is_due = Rc::new(Cell::new(false));
    follow(Box::new(move || {
        stage.look.track();
        if !is_due.replace(true) {
            let is_due = is_due.clone();
            request_animation_frame(move || {
                is_due.set(false);
                // The page may be gone before the next picture is painted.
                if let Some(look) = stage.look.try_get_untracked() {
                    let _ = stage.painted.try_set(look);
                }
            });
        }
    }));
}

fn follow_size(frame: &Tag, stage: Stage) {
    let element = frame.element().clone();
    let measure = move || {
        for (known, inner) in [(stage.width, element.client_width()), (stage.height, element.client_height())] {
            let inner = f64::from(inner);
            if known.try_get_untracked().is_some_and(|known| known != inner) {
                let _ = known.try_set(inner);
            }
        }
    };
    let measure = Closure::<dyn FnMut()>::new(measure);
    if let Ok(observer) = web_sys::ResizeObserver::new(measure.as_ref().unchecked_ref()) {
        observer.observe(frame.element());
        let kept = SendWrapper::new((observer, measure));
        on_cleanup(move || kept.0.disconnect());
    }
}

/// The picture painted by the graphics chip; the flat one where there is none.
fn solid(stage: Stage, says: Signal<String>, is_lost: RwSignal<bool>) -> Tag {
    let lost = move |event: web_sys::Event| {
        event.prevent_default();
        let _ = is_lost.try_set(true);
    };
    let canvas = tag("canvas").class("round__picture").attr("role", "img").attr("aria-label", says);
    let Some(element) = canvas.element().dyn_ref::<HtmlCanvasElement>().cloned() else { return flat(stage, says) };
    let Some(painter) = Painter::on(&element) else { return flat(stage, says) };
    let painter = Rc::new(RefCell::new(painter));
    let theming = expect_context::<Theming>();
    let kept = painter.clone();
    let load = move || {
        if let Some(wood) = stage.wood.get() {
            kept.borrow_mut().load(&wood);
        }
    };
    follow(Box::new(load));
    let kept = SendWrapper::new(painter.clone());
    on_cleanup(move || kept.borrow().end());
    // After the effect that loads, and after the style sheet has taken up a new light.
    let paint = move || {
        theming.track();
        let (look, size, wood) = (stage.painted.get(), stage.size(), stage.wood.get());
        let (painter, element) = (painter.clone(), element.clone());
        request_animation_frame(move || {
            let Some(wood) = wood.filter(|_| size.0 > 0.0) else { return };
            let ratio = window().device_pixel_ratio();
            let (wide, tall) = ((size.0 * ratio).round() as u32, (size.1 * ratio).round() as u32);
            if (element.width(), element.height()) != (wide, tall) {
                element.set_width(wide);
                element.set_height(tall);
            }
            let framing = Framing::new(&wood, &look, size);
            painter.borrow().paint(look.eye, &framing, &Tones::now(), ratio);
        });
    };
    follow(Box::new(paint));
    canvas.on("webglcontextlost", lost)
}

/// The library's picture.
fn flat(stage: Stage, says: Signal<String>) -> Tag {
    let draw = move || {
        let (look, Some(wood)) = (stage.painted.get(), stage.wood.get()) else { return String::new() };
        let framing = stage.framing(&wood, &look);
        let picture = if framing.shows_grain() { painted } else { painted_plain };
        svg::print_framed(&picture(&wood, &[], look.eye), &framing, &says.get())
    };
    tag("div").class("round__picture").live_html(draw)
}
