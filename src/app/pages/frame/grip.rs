//! Grips over the beam line: dragged with finger or mouse, or moved with the arrow keys.
use super::held::Held;
use crate::app::cached::Cached;
use crate::app::dom::{Tag, tag};
use crate::app::{Store, use_store};
use crate::design::Built;
use crate::drawing::{self, svg::Sheet};
use crate::project::Project;
use crate::units::{Length, UnitSystem};
use leptos::prelude::*;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::sync::Arc;
use wasm_bindgen::JsCast;
use web_sys::{Event, HtmlElement, KeyboardEvent, PointerEvent};

/// A finger that trembles less than this means to tap, in CSS pixels.
const TREMBLE: f64 = 4.0;
/// Widths of a grip in CSS pixels: of two side by side each gets its half.
const NARROWEST: f64 = 24.0;
const WIDEST: f64 = 48.0;
/// So many steps the page keys go.
const LEAP: f64 = 10.0;

/// One way across the drawing, from taking hold to letting go.
#[derive(Clone, Copy)]
struct Drag {
    pointer: i32,
    began: f64,
    start: Length,
    /// From the middle of what is held to the finger, px.
    off: f64,
    has_moved: bool,
}

/// One grip, and what it shows: only what changes is written to the page.
struct Grip {
    tag: Tag,
    shown: Vec<String>,
}

/// All grips of a drawing, and the hand on one of them.
struct Hand {
    store: Store,
    layer: Tag,
    grips: RefCell<Vec<Grip>>,
    /// The number of the grip that is held or has the focus, from 1.
    number: RwSignal<usize>,
    /// Where the frame lies on the drawing: worked out with it, while the grips follow the hand at once.
    sheet: Cached<Option<Sheet>>,
    drag: Cell<Option<Drag>>,
}

/// The grips over a drawing of that width.
pub fn grips(number: RwSignal<usize>, width: Cached<f64>) -> Tag {
    let layer = tag("div").class("grips");
    let store = use_store();
    let hand = Rc::new(Hand {
        store,
        layer: layer.clone(),
        grips: RefCell::default(),
        number,
        sheet: Cached::new(move || {
            let good = store.drawn()?;
            Some(Sheet::of(&drawing::elevation(&good.project, &good.built), width.get()))
        }),
        drag: Cell::new(None),
    });
    let follower = hand.clone();
    let mut layer = layer.follow(move || follower.place_grips());
    for name in
        ["pointerdown", "pointermove", "pointerup", "pointercancel", "keydown", "focusin", "focusout", "contextmenu"]
    {
        let hand = hand.clone();
        layer = layer.on(name, move |event| hand.act(name, &event));
    }
    // A drawing that goes lets go of everything.
    on_cleanup(move || store.let_go());
    layer
}

impl Hand {
    /// Puts a grip on each thing that can be moved, and says where it is.
    fn place_grips(&self) {
        let (Some(sheet), Some(drawn)) = (self.sheet.get(), self.store.drawn()) else { return };
        // A grip in the hand keeps up with it; no other needs to be ahead of the drawing.
        let held = if self.number.get() > 0 { self.store.built() } else { None };
        let (project, built) = match held {
            Some(built) => (self.store.project(), built),
            None => (drawn.project, drawn.built),
        };
        let all = Held::all(&built);
        let mut grips = self.grips.borrow_mut();
        while grips.len() < all.len() {
            let tag = tag("div").attr("role", "slider").attr("tabindex", "0");
            let _ = self.layer.node().append_child(tag.node());
            grips.push(Grip { tag, shown: Vec::new() });
        }
        for gone in grips.drain(all.len()..) {
            gone.tag.element().remove();
        }
        if self.number.get_untracked() > all.len() {
            self.let_go();
        }
        for (grip, held) in grips.iter_mut().zip(all) {
            place_grip(grip, held, &sheet, &project, &built);
        }
    }

    fn built(&self) -> Option<Arc<Built>> {
        untrack(|| self.store.built())
    }

    /// What an event is about.
    fn held(&self, built: &Built) -> Option<Held> {
        Held::of(built, self.number.get_untracked())
    }

    fn act(&self, name: &str, event: &Event) {
        match name {
            "pointerdown" => {
                let _ = self.take_hold(event.unchecked_ref());
            }
            "pointermove" => {
                let _ = self.draw_along(event.unchecked_ref());
            }
            "pointerup" | "pointercancel" => self.let_go(),
            "keydown" => {
                let _ = self.key(event.unchecked_ref());
            }
            "focusin" => self.number.set(self.number_of(event).unwrap_or(0)),
            "focusout" => {
                self.let_go();
                self.number.set(0);
            }
            _ => event.prevent_default(),
        }
    }

    /// The number of the grip an event is on.
    fn number_of(&self, event: &Event) -> Option<usize> {
        let target = event.target()?;
        let grips = self.grips.borrow();
        Some(grips.iter().position(|grip| target == **grip.tag.node())? + 1)
    }

    /// How far right of the sheet's left edge the pointer is, px; the drawing may have been pushed about meanwhile.
    fn on_sheet(&self, event: &PointerEvent) -> f64 {
        f64::from(event.client_x()) - self.layer.element().get_bounding_client_rect().left()
    }

    fn take_hold(&self, event: &PointerEvent) -> Option<()> {
        let number = self.number_of(event).filter(|_| event.is_primary() && event.button() == 0)?;
        let (built, sheet, project) = (self.built()?, self.sheet.get_untracked()?, self.store.project_untracked());
        let held = Held::of(&built, number)?;
        let (start, at) = (held.place(&project, &built)?, held.grip_at(&project, &built)?);
        let grip: HtmlElement = event.target()?.dyn_into().ok()?;
        let _ = grip.focus();
        let _ = grip.set_pointer_capture(event.pointer_id());
        let off = self.on_sheet(event) - sheet.place(at).0;
        let (pointer, began) = (event.pointer_id(), f64::from(event.client_x()));
        self.drag.set(Some(Drag { pointer, began, start, off, has_moved: false }));
        self.number.set(number);
        self.store.hold();
        Some(())
    }

    fn draw_along(&self, event: &PointerEvent) -> Option<()> {
        let mut drag = self.drag.get().filter(|drag| drag.pointer == event.pointer_id())?;
        drag.has_moved |= (f64::from(event.client_x()) - drag.began).abs() >= TREMBLE;
        self.drag.set(Some(drag));
        let x = self.sheet.get_untracked()?.x_at(self.on_sheet(event) - drag.off).filter(|_| drag.has_moved)?;
        let (built, project) = (self.built()?, self.store.project_untracked());
        let held = self.held(&built)?;
        // Where it began may lie between two steps, and can be found again.
        let is_back = (x - drag.start).abs() < held.of_steps(0.25, project.units)?;
        let x = if is_back { drag.start } else { held.snapped(&project, &built, x)? };
        self.put(held, &built, x);
        Some(())
    }

    fn put(&self, held: Held, built: &Built, x: Length) {
        if held.place(&self.store.project_untracked(), built) != Some(x) {
            self.store.edit_field(&held.path(), |project| held.put(project, built, x));
        }
    }

    /// Lets go, if it was held.
    fn let_go(&self) {
        if self.drag.take().is_some() {
            self.store.let_go();
        }
    }

    fn key(&self, event: &KeyboardEvent) -> Option<()> {
        if event.ctrl_key() || event.alt_key() || event.meta_key() {
            return None;
        }
        let (built, project) = (self.built()?, self.store.project_untracked());
        let held = self.held(&built)?;
        let key = event.key();
        let steps = match key.as_str() {
            "ArrowLeft" | "ArrowDown" => -1.0,
            "ArrowRight" | "ArrowUp" => 1.0,
            "PageDown" => -LEAP,
            "PageUp" => LEAP,
            "Home" => f64::NEG_INFINITY,
            "End" => f64::INFINITY,
            "Escape" => 0.0,
            _ => return None,
        };
        event.prevent_default();
        let x = match self.drag.get().filter(|_| steps == 0.0) {
            Some(drag) => drag.start,
            None => held.stepped(&project, &built, steps)?,
        };
        self.put(held, &built, x);
        if steps == 0.0 {
            self.let_go();
        }
        Some(())
    }
}

/// Puts a grip where that thing is, and says so to those who cannot see it.
fn place_grip(grip: &mut Grip, held: Held, sheet: &Sheet, project: &Project, built: &Built) {
    let (Some(x), Some(at)) = (held.place(project, built), held.grip_at(project, built)) else { return };
    let room = held.room(project, built).unwrap_or((x, x));
    let number = |value: Length| {
        let shown = match project.units {
            UnitSystem::Imperial => value.to_inches(),
            UnitSystem::Metric => value.to_millimetres(),
        };
        ((shown * 100.0).round() / 100.0).to_string()
    };
    let classes = match (held, held.is_mine(project)) {
        (Held::Post(_), _) => "grip grip--mine",
        (_, true) => "grip grip--over grip--mine",
        _ => "grip grip--over",
    };
    let (left, top) = sheet.place(at);
    let wide = (held.gap(project, built).to_inches() * sheet.scale()).clamp(NARROWEST, WIDEST);
    let pixels = |px: f64| format!("{px:.1}px");
    let shown = [
        ("class", classes.to_owned()),
        ("data-grip", held.path()),
        ("aria-label", format!("{} along the beam", held.mark())),
        ("aria-valuemin", number(room.0)),
        ("aria-valuemax", number(room.1)),
        ("aria-valuenow", number(x)),
        ("aria-valuetext", held.says(project, built)),
        ("--x", pixels(left)),
        ("--y", pixels(top)),
        ("--wide", pixels(wide)),
    ];
    let element = grip.tag.element();
    let style = element.unchecked_ref::<HtmlElement>().style();
    for (place, (name, value)) in shown.iter().enumerate() {
        if grip.shown.get(place) != Some(value) {
            let _ = if name.starts_with("--") {
                style.set_property(name, value)
            } else {
                element.set_attribute(name, value)
            };
        }
    }
    grip.shown = shown.map(|(_, value)| value).into();
}
