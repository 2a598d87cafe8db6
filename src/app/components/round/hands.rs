//! Fingers, mouse and keys on a view in the round.
use super::{CLOSER, Stage};
use crate::app::dom::Tag;
use crate::drawing::picked_near;
use crate::units::{Angle, Length};
use leptos::prelude::*;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, KeyboardEvent, PointerEvent, WheelEvent};

/// Turned by a finger's way on the screen, degrees a pixel.
const DRAGGED: f64 = 0.4;
/// Turned by one press of an arrow key, degrees.
const PRESSED: f64 = 15.0;
/// A finger that moves less is a tap, px.
const TAP: f64 = 8.0;
/// Half a finger's width, px.
const FINGER: f64 = 11.0;

type Pixel = (f64, f64);

/// What lies on the view.
pub struct Hands {
    stage: Stage,
    frame: Element,
    on_stick: Option<Callback<String>>,
    /// Fingers by their number, and where they are.
    fingers: Vec<(i32, Pixel)>,
    /// How far the one finger has gone; nothing once there were two.
    way: Option<f64>,
}

impl Hands {
    /// Lets hands work on the view's frame.
    pub fn put_on(frame: Tag, stage: Stage, on_stick: Option<Callback<String>>) -> Tag {
        let hands = Self { stage, frame: frame.element().clone(), on_stick, fingers: Vec::new(), way: None };
        let hands = Rc::new(RefCell::new(hands));
        let act = |does: fn(&mut Self, &PointerEvent)| {
            let hands = hands.clone();
            move |event: Event| {
                if let Some(event) = event.dyn_ref::<PointerEvent>() {
                    does(&mut hands.borrow_mut(), event);
                }
            }
        };
        let (wheeled, pressed) = (hands.clone(), hands.clone());
        frame
            .on("pointerdown", act(Self::down))
            .on("pointermove", act(Self::moved))
            .on("pointerup", act(Self::up))
            .on("pointercancel", act(Self::lost))
            .on("wheel", move |event| wheeled.borrow().wheel(&event))
            .on("keydown", move |event| pressed.borrow().key(&event))
    }

    fn down(&mut self, event: &PointerEvent) {
        let _ = self.frame.set_pointer_capture(event.pointer_id());
        self.fingers.push((event.pointer_id(), self.pixel(event)));
        self.way = (self.fingers.len() == 1).then_some(0.0);
    }

    fn moved(&mut self, event: &PointerEvent) {
        let to = self.pixel(event);
        let Some(index) = self.fingers.iter().position(|(id, _)| *id == event.pointer_id()) else { return };
        let from = std::mem::replace(&mut self.fingers[index].1, to);
        let (right, down) = (to.0 - from.0, to.1 - from.1);
        let other = self.fingers.iter().enumerate().find(|(known, _)| *known != index).map(|(_, (_, at))| *at);
        match other {
            Some(other) => self.pinch(other, from, to),
            None => {
                self.way = self.way.map(|way| way + right.hypot(down));
                // The mouse pushes with the shift key or any other button.
                if event.shift_key() || event.buttons() & 6 != 0 {
                    self.stage.look.update(|look| *look = look.pushed(right, down));
                } else if self.way.is_none_or(|way| way >= TAP) {
                    self.turn(-right * DRAGGED, down * DRAGGED);
                }
            }
        }
    }

    /// One of two fingers moves: what lies under both stays under both.
    fn pinch(&self, still: Pixel, from: Pixel, to: Pixel) {
        let apart = |at: Pixel| (at.0 - still.0).hypot(at.1 - still.1).max(1.0);
        let between = |at: Pixel| ((at.0 + still.0) / 2.0, (at.1 + still.1) / 2.0);
        let (before, after) = (between(from), between(to));
        let about = self.off_middle(before);
        self.stage.look.update(|look| {
            *look = look.closer(apart(to) / apart(from), about).pushed(after.0 - before.0, after.1 - before.1);
        });
    }

    fn up(&mut self, event: &PointerEvent) {
        let is_tap = self.way.is_some_and(|way| way < TAP) && event.button() == 0;
        self.lost(event);
        if is_tap {
            self.tap(self.pixel(event));
        }
    }

    fn lost(&mut self, event: &PointerEvent) {
        self.fingers.retain(|(id, _)| *id != event.pointer_id());
        self.way = None;
    }

    fn tap(&self, at: Pixel) {
        let (Some(on_stick), Some(wood)) = (self.on_stick, self.stage.wood.get_untracked()) else { return };
        let look = self.stage.look.get_untracked();
        let framing = untrack(|| self.stage.framing(&wood, &look));
        let finger = Length::inches(FINGER / framing.scale);
        if let Some(mark) = picked_near(&wood, look.eye, framing.place(at), finger).filter(|mark| !mark.is_empty()) {
            on_stick.run(mark.to_owned());
        }
    }

    /// The wheel belongs to the page until the view is in use.
    fn wheel(&self, event: &Event) {
        let Some(wheel) = event.dyn_ref::<WheelEvent>() else { return };
        if !wheel.ctrl_key() && document().active_element().as_ref() != Some(&self.frame) {
            return;
        }
        event.prevent_default();
        let about = self.off_middle(self.pixel(wheel));
        let factor = (-wheel.delta_y().clamp(-200.0, 200.0) * 0.002).exp();
        self.stage.look.update(|look| *look = look.closer(factor, about));
    }

    fn key(&self, event: &Event) {
        let Some(key) = event.dyn_ref::<KeyboardEvent>().filter(|key| !key.ctrl_key() && !key.alt_key()) else {
            return;
        };
        let closer = |factor: f64| self.stage.look.update(|look| *look = look.closer(factor, (0.0, 0.0)));
        match key.key().as_str() {
            "ArrowLeft" => self.turn(-PRESSED, 0.0),
            "ArrowRight" => self.turn(PRESSED, 0.0),
            "ArrowUp" => self.turn(0.0, PRESSED),
            "ArrowDown" => self.turn(0.0, -PRESSED),
            "+" | "=" => closer(CLOSER),
            "-" | "−" => closer(1.0 / CLOSER),
            _ => return,
        }
        event.prevent_default();
    }

    fn turn(&self, round: f64, up: f64) {
        let (round, up) = (Angle::degrees(round), Angle::degrees(up));
        self.stage.look.update(|look| look.eye = look.eye.turned(round, up));
    }

    fn pixel(&self, event: &web_sys::MouseEvent) -> Pixel {
        let frame = self.frame.get_bounding_client_rect();
        (f64::from(event.client_x()) - frame.left(), f64::from(event.client_y()) - frame.top())
    }

    fn off_middle(&self, at: Pixel) -> Pixel {
        let size = untrack(|| self.stage.size());
        (at.0 - size.0 / 2.0, at.1 - size.1 / 2.0)
    }
}
