//! A project out as a file, and in again.
use super::device;
use super::saving::{Saving, use_saving};
use super::store::use_store;
use crate::app::cached::Cached;
use crate::app::dom::{Tag, button, tag};
use crate::project::{Project, file};
use leptos::prelude::*;
use std::time::Duration;
use wasm_bindgen::JsCast;
use wasm_bindgen::prelude::*;
use web_sys::{Blob, BlobPropertyBag, File, HtmlAnchorElement, HtmlInputElement, Url};

/// The name of a project's file: its letters and digits, the rest as dashes.
#[must_use]
pub fn file_name(project: &str, ending: &str) -> String {
    let mut name = String::new();
    for c in project.chars().take(60) {
        if c.is_alphanumeric() {
            name.extend(c.to_lowercase());
        } else if !name.ends_with('-') && !name.is_empty() {
            name.push('-');
        }
    }
    let name = name.trim_end_matches('-');
    if name.is_empty() { format!("lean-to.{ending}") } else { format!("{name}.{ending}") }
}

/// A drawing with its pens inside, so that it looks right without the app's style sheets.
#[must_use]
pub fn with_pens(svg: &str, pens: &str) -> String {
    match svg.find('>') {
        Some(end) => format!("{}<style>{pens}</style>{}", &svg[..=end], &svg[end + 1..]),
        None => svg.to_owned(),
    }
}

fn blob(holds: &JsValue, kind: &str) -> Option<Blob> {
    let bag = BlobPropertyBag::new();
    bag.set_type(kind);
    // A text and an array of bytes both stand in one sequence of parts.
    Blob::new_with_blob_sequence_and_options(&js_sys::Array::of1(holds), &bag).ok()
}

/// Hands a text to the browser as a file to keep.
pub fn download(name: &str, text: &str, kind: &str) {
    hand_out(name, &JsValue::from_str(text), kind);
}

/// Hands bytes to the browser as a file to keep.
pub fn download_bytes(name: &str, bytes: &[u8], kind: &str) {
    hand_out(name, &js_sys::Uint8Array::from(bytes), kind);
}

fn hand_out(name: &str, holds: &JsValue, kind: &str) {
    let Some(blob) = blob(holds, kind) else { return };
    let Ok(url) = Url::create_object_url_with_blob(&blob) else { return };
    if let Ok(link) = document().create_element("a").map(JsCast::dyn_into::<HtmlAnchorElement>)
        && let Ok(link) = link
    {
        link.set_href(&url);
        link.set_download(name);
        link.click();
    }
    // Some browsers read the file only after the click has returned.
    set_timeout(move || drop(Url::revoke_object_url(&url)), Duration::from_secs(4));
}

/// The file for the share sheet: `.json` where it is taken, else `.txt`, which every sheet takes.
fn shareable(project: &Project) -> Option<JsValue> {
    let text = file::write(project);
    [("outshot.json", "application/json"), ("outshot.txt", "text/plain")].into_iter().find_map(|(ending, kind)| {
        let blob = blob(&JsValue::from_str(&text), kind)?;
        let file = device::named_file(&blob, &file_name(&project.name, ending), kind)?;
        device::can_share(&file).then_some(file)
    })
}

/// Saves the open project as a file.
pub fn download_project(project: &Project) {
    download(&file_name(&project.name, "outshot.json"), &file::write(project), "application/json");
}

/// Buttons that hand the open project out.
pub fn file_out() -> Tag {
    let store = use_store();
    let can_share = Cached::new(move || shareable(&store.project()).is_some());
    let save = move |_| download_project(&store.project_untracked());
    let share = move |_| {
        if let Some(file) = shareable(&store.project_untracked()) {
            device::share(&file);
        }
    };
    tag("div")
        .class("actions")
        .child(button("button", save).child("Save as a file"))
        .live(move || can_share.get().then(|| button("button", share).child("Share")))
}

/// A button that opens a project file: always as a new project.
pub fn file_in(label: &'static str) -> Tag {
    let saving = use_saving();
    let refused = RwSignal::new(None::<String>);
    let chosen = move |event: leptos::ev::Event| {
        let input: HtmlInputElement = event_target(&event);
        refused.set(None);
        if let Some(file) = input.files().and_then(|files| files.get(0)) {
            take_in(saving, refused, &file);
        }
        // The same file may be chosen again after it was mended.
        input.set_value("");
    };
    tag("div")
        .class("file-in")
        .child(
            tag("label")
                .class("button file-in__label")
                .child(tag("input").class("file-in__input").attr("type", "file").on("change", chosen))
                .child(label),
        )
        .child(tag("p").class("file-in__refused").attr("role", "alert").live(move || refused.get()))
}

/// Reads a file, its size first.
fn take_in(saving: Saving, refused: RwSignal<Option<String>>, chosen: &File) {
    if chosen.size() > file::LARGEST as f64 {
        refused.set(Some(file::FileError::TooLarge.to_string()));
        return;
    }
    let done = Closure::once_into_js(move |text: JsValue| match file::read(&text.as_string().unwrap_or_default()) {
        Ok(project) => saving.create(project),
        Err(why) => {
            let _ = refused.try_set(Some(why.to_string()));
        }
    });
    let failed = Closure::once_into_js(move |_: JsValue| {
        let _ = refused.try_set(Some("The browser could not read this file. Nothing was changed.".to_owned()));
    });
    let reading = chosen.text();
    if let Ok(then) = js_sys::Reflect::get(&reading, &JsValue::from_str("then"))
        && let Ok(then) = then.dyn_into::<js_sys::Function>()
    {
        let _ = then.call2(&reading, &done, &failed);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_of_files() {
        assert_eq!(file_name("Wool barn lean-to", "outshot.json"), "wool-barn-lean-to.outshot.json");
        assert_eq!(file_name("../<x>.exe", "json"), "x-exe.json");
        assert_eq!(file_name("  ", "json"), "lean-to.json");
    }
}
