//! What the browser around the app can do and has seen.
use js_sys::{Array, Function, Object, Promise, Reflect};
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;

/// The mark left in the session when the app stopped.
const STOPPED: &str = "outshot-stopped";

fn get(target: &JsValue, name: &str) -> Option<JsValue> {
    Reflect::get(target, &JsValue::from_str(name)).ok().filter(|value| !value.is_undefined() && !value.is_null())
}

fn navigator() -> Option<JsValue> {
    get(&js_sys::global(), "navigator")
}

/// Lets a promise run; what it answers changes nothing here.
fn let_run(answer: Result<JsValue, JsValue>) {
    if let Ok(Ok(promise)) = answer.map(JsCast::dyn_into::<Promise>) {
        let ignore = Closure::once_into_js(|_: JsValue| ());
        let _ = promise.catch2(ignore);
    }
}

trait Catch {
    fn catch2(&self, ignore: JsValue) -> Option<JsValue>;
}

impl Catch for Promise {
    /// `catch` with a function that frees itself.
    fn catch2(&self, ignore: JsValue) -> Option<JsValue> {
        let catch = get(self, "catch")?.dyn_into::<Function>().ok()?;
        catch.call1(self, &ignore).ok()
    }
}

/// Asks the browser not to clear the app's data when room runs short.
pub fn ask_to_persist() {
    let Some(storage) = navigator().and_then(|navigator| get(&navigator, "storage")) else { return };
    if let Some(Ok(persist)) = get(&storage, "persist").map(JsCast::dyn_into::<Function>) {
        let_run(persist.call0(&storage));
    }
}

/// Whether the app stopped the last time it ran in this tab; asking clears the mark.
#[must_use]
pub fn stopped_last_time() -> bool {
    let Some(Ok(Some(session))) = web_sys::window().map(|window| window.session_storage()) else { return false };
    let stopped = session.get_item(STOPPED).ok().flatten().is_some();
    let _ = session.remove_item(STOPPED);
    stopped
}

/// Puts a plain notice over the page when the app stops.
pub fn report_panics() {
    std::panic::set_hook(Box::new(|info| {
        let message = JsValue::from_str(&info.to_string());
        if let Some(Ok(report)) = get(&js_sys::global(), "outshotCrash").map(JsCast::dyn_into::<Function>) {
            let _ = report.call1(&JsValue::NULL, &message);
        }
    }));
}

/// A newer version waits: its message.
#[must_use]
pub fn waiting_update() -> Option<String> {
    get(&get(&js_sys::global(), "outshotUpdate")?, "message")?.as_string()
}

/// Lets the newer version take over.
pub fn apply_update() {
    let Some(update) = get(&js_sys::global(), "outshotUpdate") else { return };
    if let Some(Ok(apply)) = get(&update, "apply").map(JsCast::dyn_into::<Function>) {
        let _ = apply.call0(&update);
    }
}

/// A file with a name and a kind; the browser's own constructor is older than some of its options.
#[must_use]
pub fn named_file(blob: &JsValue, name: &str, kind: &str) -> Option<JsValue> {
    let constructor = get(&js_sys::global(), "File")?.dyn_into::<Function>().ok()?;
    let options = Object::new();
    Reflect::set(&options, &JsValue::from_str("type"), &JsValue::from_str(kind)).ok()?;
    let arguments = Array::of3(&Array::of1(blob), &JsValue::from_str(name), &options);
    Reflect::construct(&constructor, &arguments).ok()
}

/// What the share sheet is given: the files alone, for a text beside them is sent as a second file by some.
fn share_data(file: &JsValue) -> Object {
    let data = Object::new();
    let _ = Reflect::set(&data, &JsValue::from_str("files"), &Array::of1(file));
    data
}

/// Whether the browser's share sheet takes that file.
#[must_use]
pub fn can_share(file: &JsValue) -> bool {
    let Some(navigator) = navigator() else { return false };
    let Some(Ok(can)) = get(&navigator, "canShare").map(JsCast::dyn_into::<Function>) else { return false };
    can.call1(&navigator, &share_data(file)).is_ok_and(|answer| answer.is_truthy())
}

/// Opens the share sheet with a file; closing it again is no trouble.
pub fn share(file: &JsValue) {
    let Some(navigator) = navigator() else { return };
    if let Some(Ok(share)) = get(&navigator, "share").map(JsCast::dyn_into::<Function>) {
        let_run(share.call1(&navigator, &share_data(file)));
    }
}
