//! Text onto the clipboard.
use js_sys::{Function, Reflect};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;

fn get(target: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(target, &JsValue::from_str(name)).ok().filter(|value| !value.is_undefined() && !value.is_null())
}

/// Puts text onto the clipboard and says whether it went: an old browser or an insecure page has none.
pub fn copy(text: &str, done: impl FnOnce(bool) + Clone + 'static) {
    if start(text, done.clone()).is_none() {
        done(false);
    }
}

fn start(text: &str, done: impl FnOnce(bool) + Clone + 'static) -> Option<()> {
    let clipboard = get(&get(&js_sys::global(), "navigator")?, "clipboard")?;
    let write = get(&clipboard, "writeText")?.dyn_into::<Function>().ok()?;
    let promise = write.call1(&clipboard, &JsValue::from_str(text)).ok()?;
    let then = get(&promise, "then")?.dyn_into::<Function>().ok()?;
    let failed = done.clone();
    let went = Closure::once_into_js(move |_: JsValue| done(true));
    let refused = Closure::once_into_js(move |_: JsValue| failed(false));
    then.call2(&promise, &went, &refused).ok().map(|_| ())
}
