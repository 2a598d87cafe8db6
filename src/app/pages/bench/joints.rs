//! The joints of a stick, or of the frame, drawn apart one at a time.
use super::super::drawn::wood;
use super::super::papers::PENS;
use crate::app::components::{drawing_view, fractions, late_fold, word};
use crate::app::dom::{Tag, button, live, parts, tag};
use crate::app::files::{download, file_name, with_pens};
use crate::app::use_store;
use crate::drawing::{exploded, says, svg};
use crate::joinery::{Joint, StickBody, exception_says, joint_called, joint_named, joint_names};
use leptos::prelude::*;
use std::sync::Arc;

/// Width of a saved drawing, px.
const WIDTH: f64 = 1000.0;

/// The joints of that stick, or all of the frame, folded away until they are asked for.
pub fn joints_apart(of: Option<String>) -> Tag {
    late_fold("Joints, drawn apart", "how they go together".to_owned(), move || {
        let of = of.clone();
        // The one that was asked for stays while the frame changes.
        let asked = RwSignal::new(String::new());
        live(move || {
            let wood = Arc::new(wood().unwrap_or_default());
            let names = joint_names(&wood, of.as_deref());
            let Some(first) = names.first().cloned() else { return word("No joint is cut in it.") };
            if !asked.with_untracked(|asked| names.contains(asked)) {
                asked.set(first);
            }
            parts()
                .child(choose(names, asked))
                .live(move || joint_called(&wood, &asked.get()).map(|it| drawn(wood.clone(), it)))
        })
    })
}

fn choose(names: Vec<String>, asked: RwSignal<String>) -> Tag {
    let options = names.into_iter().map(|name| {
        let is_chosen = asked.with_untracked(|asked| *asked == name);
        let own = exception_of(&name).map(|_| ", not by the rules");
        tag("option").attr("value", name.clone()).attr("selected", is_chosen).child(name).child(own)
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

/// What that joint has of its own.
fn exception_of(name: &str) -> Option<String> {
    exception_says(&use_store().project(), joint_named(name)?)
}

fn drawn(wood: Arc<Vec<StickBody>>, joint: Joint) -> Tag {
    let store = use_store();
    let (sentence, name) = (says(&joint), joint.name.clone());
    let own = exception_of(&name).map(|says| tag("p").class("own-joint").child(fractions(&says)));
    let draw = Arc::new(move |width: f64| svg::print(&exploded(&wood, &joint), width, &joint.name));
    let (saved, saved_as) = (draw.clone(), name.clone());
    let save = move |_| {
        let file = file_name(&format!("{} {saved_as}", store.project_untracked().name), "svg");
        download(&file, &with_pens(&saved(WIDTH), PENS), "image/svg+xml");
    };
    parts()
        .child(tag("p").class("page__word").child(sentence))
        .child(own)
        .child(drawing_view(move |width: f64| draw(width), name, None))
        .child(tag("div").class("actions").child(button("button", save).child("Save this drawing")))
}
