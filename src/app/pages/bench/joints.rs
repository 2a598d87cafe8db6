//! The joints of a stick, or of the frame, drawn apart one at a time.
use super::super::drawn::wood;
use super::super::papers::PENS;
use crate::app::components::{drawing_view, late_fold, word};
use crate::app::dom::{Tag, button, live, parts, tag};
use crate::app::files::{download, file_name, with_pens};
use crate::app::use_store;
use crate::drawing::{exploded, says, svg};
use crate::joinery::{Joint, StickBody, joint_called, joint_names};
use leptos::prelude::*;
use std::sync::Arc;

/// Width of a saved drawing, px.
const WIDTH: f64 = 1000.0;

type Wood = Memo<Option<Arc<Vec<StickBody>>>>;

/// The joints of that stick, or all of the frame, folded away until they are asked for.
pub fn joints_apart(of: Option<String>) -> Tag {
    late_fold("Joints, drawn apart", "how they go together".to_owned(), move || {
        let (wood, of) = (wood(), of.clone());
        let names = move || wood.get().map(|wood| joint_names(&wood, of.as_deref())).unwrap_or_default();
        let names = Memo::new(move |_| names());
        let asked = RwSignal::new(String::new());
        // A joint that is no longer there makes room for the first one.
        let chosen = Memo::new(move |_| {
            let (names, asked) = (names.get(), asked.get());
            if names.contains(&asked) { asked } else { names.into_iter().next().unwrap_or_default() }
        });
        live(move || {
            if names.with(Vec::is_empty) {
                return word("No joint is cut in it.");
            }
            parts().child(choose(names, chosen, asked)).child(drawn(wood, chosen))
        })
    })
}

fn choose(names: Memo<Vec<String>>, chosen: Memo<String>, asked: RwSignal<String>) -> Tag {
    let options = names.get_untracked().into_iter().map(|name| {
        let is_chosen = chosen.with_untracked(|chosen| *chosen == name);
        tag("option").attr("value", name.clone()).attr("selected", is_chosen).child(name)
    });
    let select = tag("select").class("field__input field__pick").attr("id", "joint");
    tag("div")
        .class("field")
        .child(
            tag("label")
                .class("field__label")
                .attr("for", "joint")
                .child(tag("span").class("field__name").child("Joint")),
        )
        .child(tag("div").class("field__box").child(
            select.child(options.collect::<Vec<_>>()).on("change", move |event| asked.set(event_target_value(&event))),
        ))
}

fn drawn(wood: Wood, chosen: Memo<String>) -> Tag {
    let store = use_store();
    let found = move || {
        let wood = wood.get()?;
        let joint = joint_called(&wood, &chosen.get())?;
        Some((wood, joint))
    };
    let found: Memo<Option<(Arc<Vec<StickBody>>, Joint)>> = Memo::new_with_compare(move |_| found(), |_, _| true);
    let draw = move |width: f64| {
        found.with(|found| {
            let drawn = found.as_ref().map(|(wood, joint)| svg::print(&exploded(wood, joint), width, &joint.name));
            drawn.unwrap_or_default()
        })
    };
    let save = move |_| {
        let Some((wood, joint)) = found.get_untracked() else { return };
        let name = file_name(&format!("{} {}", store.project_untracked().name, joint.name), "svg");
        download(&name, &with_pens(&svg::print(&exploded(&wood, &joint), WIDTH, &joint.name), PENS), "image/svg+xml");
    };
    let sentence = move || found.with(|found| found.as_ref().map(|(_, joint)| says(joint)).unwrap_or_default());
    parts()
        .child(tag("p").class("page__word").live_text(sentence))
        .child(drawing_view(draw, Signal::derive(move || chosen.get()), None))
        .child(tag("div").class("actions").child(button("button", save).child("Save this drawing")))
}
