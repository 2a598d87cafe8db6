//! The time of day, for "saved" and for the age of a copy.
use wasm_bindgen::JsValue;

/// Milliseconds since 1970.
#[must_use]
pub fn now() -> f64 {
    js_sys::Date::now()
}

/// A day and time as the user's language writes it.
#[must_use]
pub fn show(milliseconds: f64) -> String {
    let date = js_sys::Date::new(&JsValue::from_f64(milliseconds));
    String::from(date.to_locale_string("default", &JsValue::UNDEFINED))
}
