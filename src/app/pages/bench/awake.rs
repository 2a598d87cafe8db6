//! Keeps the screen on while marks are walked, where the browser can.
use crate::app::components::knob;
use crate::app::dom::{Tag, tag};
use js_sys::{Function, Promise, Reflect};
use leptos::ev;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;

/// What the browser gave; it counts until it is given back.
type Held = StoredValue<Option<JsValue>, LocalStorage>;

fn get(target: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(target, &JsValue::from_str(name)).ok().filter(|value| !value.is_undefined() && !value.is_null())
}

fn wake_lock() -> Option<JsValue> {
    get(&get(&js_sys::global(), "navigator")?, "wakeLock")
}

fn call(target: &JsValue, name: &str, argument: &JsValue) -> Option<JsValue> {
    get(target, name)?.dyn_into::<Function>().ok()?.call1(target, argument).ok()
}

fn give_back(sentinel: &JsValue) {
    let _ = call(sentinel, "release", &JsValue::UNDEFINED);
}

/// Asks for the screen to stay on; a refusal, as with a low battery, turns the switch off.
fn ask(held: Held, on: RwSignal<bool>) {
    let Some(answer) = wake_lock().and_then(|lock| call(&lock, "request", &JsValue::from_str("screen"))) else {
        on.set(false);
        return;
    };
    let Ok(promise) = answer.dyn_into::<Promise>() else { return };
    let given = Closure::once_into_js(move |sentinel: JsValue| {
        // The page may be gone, or the switch off again, before the answer comes.
        if on.try_get_untracked() == Some(true) {
            let _ = held.try_set_value(Some(sentinel));
        } else {
            give_back(&sentinel);
        }
    });
    let refused = Closure::once_into_js(move |_: JsValue| {
        let _ = on.try_set(false);
    });
    if let Some(Ok(then)) = get(&promise, "then").map(JsCast::dyn_into::<Function>) {
        let _ = then.call2(&promise, &given, &refused);
    }
}

fn let_sleep(held: Held) {
    if let Some(Some(sentinel)) = held.try_update_value(Option::take) {
        give_back(&sentinel);
    }
}

/// The switch; nothing where the browser cannot do it.
pub fn awake() -> Option<Tag> {
    let on = RwSignal::new(false);
    let held: Held = StoredValue::new_local(None);
    let turn = move |event: ev::Event| {
        on.set(event_target_checked(&event));
        if on.get_untracked() { ask(held, on) } else { let_sleep(held) }
    };
    // The browser takes it back whenever the page is hidden.
    let again = window_event_listener(ev::visibilitychange, move |_| {
        if on.get_untracked() && !document().hidden() {
            ask(held, on);
        }
    });
    on_cleanup(move || {
        again.remove();
        let_sleep(held);
    });
    wake_lock().map(|_| {
        let words =
            tag("span").class("toggle__words").child(tag("span").class("toggle__name").child("Keep the screen on"));
        knob(|input| input.live_prop("checked", move || on.get()).on("change", turn), words)
    })
}
