//! Drawings as files that look right without the app's style sheets.
use super::choose::Kind;
use super::thumbs::scene;
use crate::app::cached::Cached;
use crate::app::components::fold;
use crate::app::dom::{Tag, button, live, parts, tag};
use crate::app::files::{download, download_bytes, file_name, with_pens};
use crate::app::use_store;
use crate::drawing::{glb, stick_sheet, svg};
use crate::joinery::bodies;
use leptos::prelude::*;

/// Pens for a drawing that stands alone: ink on white.
pub const PENS: &str = include_str!("../../../../style/drawing-file.css");
/// Width of the files, px.
const WIDTH: f64 = 1400.0;

/// A file for each drawing.
pub fn drawing_files() -> Tag {
    let store = use_store();
    let stick = RwSignal::new(String::new());
    let save = move |kind: Kind| {
        if let Some(good) = store.good() {
            let drawn = svg::print(&scene(kind, &good), WIDTH, kind.title());
            let name = file_name(&format!("{} {}", good.project.name, kind.title()), "svg");
            download(&name, &with_pens(&drawn, PENS), "image/svg+xml");
        }
    };
    let save_stick = move |_| {
        let (Some(good), mark) = (store.good(), stick.get_untracked()) else { return };
        if let Some(chosen) = good.built.stick(&mark).or(good.built.sticks.first()) {
            let drawn = svg::print(&stick_sheet(&good.project, chosen), WIDTH, &chosen.mark);
            let name = file_name(&format!("{} {}", good.project.name, chosen.mark), "svg");
            download(&name, &with_pens(&drawn, PENS), "image/svg+xml");
        }
    };
    let marks = Cached::new(move || {
        let built = store.built();
        built.map(|built| built.sticks.iter().map(|stick| stick.mark.clone()).collect::<Vec<_>>()).unwrap_or_default()
    });
    let options = move || {
        marks
            .get()
            .into_iter()
            .map(|mark| {
                let is_chosen = stick.with_untracked(|stick| *stick == mark);
                tag("option").attr("value", mark.clone()).attr("selected", is_chosen).child(mark)
            })
            .collect::<Vec<_>>()
    };
    let kinds = [Kind::Order, Kind::Section, Kind::Elevation, Kind::Plan]
        .into_iter()
        .map(|kind| button("button", move |_| save(kind)).child(name_of(kind)))
        .collect::<Vec<_>>();
    let save_solid = move |_| {
        if let Some(good) = store.good() {
            let sticks = bodies(&good.project, &good.built.shape);
            let name = file_name(&good.project.name, "glb");
            download_bytes(&name, &glb(&good.project.name, &sticks), "model/gltf-binary");
        }
    };
    fold("Drawings as files", "SVG, for any drawing program or browser", false, || {
        parts().child(tag("div").class("actions").child(kinds)).child(stick_file(
            live(options),
            move |event| stick.set(event_target_value(&event)),
            button("button", save_stick).child("Save"),
        ))
        .child(
            tag("p")
                .class("page__word")
                .child("The whole frame as solids, every joint cut, as glTF 2.0: for any program that shows or builds on solids."),
        )
        .child(tag("div").class("actions").child(button("button", save_solid).child("Frame as solids")))
    })
}

/// The choice of a stick, and the button that saves its sheet.
fn stick_file(options: Tag, choose: impl FnMut(web_sys::Event) + 'static, save: Tag) -> Tag {
    let label = tag("label").class("field__label").attr("for", "stick-file");
    let select = tag("select").class("field__input field__pick").attr("id", "stick-file");
    tag("div")
        .class("stick-file")
        .child(label.child(tag("span").class("field__name").child("One stick’s sheet")))
        .child(tag("div").class("another__row").child(select.child(options).on("change", choose)).child(save))
}

/// The drawing's name on its button.
fn name_of(kind: Kind) -> &'static str {
    match kind {
        Kind::Order => "Stock",
        other => other.title(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pens_stand_inside_the_drawing() {
        let whole = with_pens("<svg class=\"drawing\"><path/></svg>", PENS);
        assert!(whole.starts_with("<svg class=\"drawing\"><style>"));
        assert!(whole.ends_with("</style><path/></svg>"));
        // What would end the style or break XML stands in none of the pens.
        assert!(!PENS.contains(['<', '&']));
    }
}
