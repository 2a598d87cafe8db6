//! A problem: one sentence, one way out.
use super::entry::Change;
use super::reading::fractions;
use crate::app::cached::Cached;
use crate::app::dom::{Tag, button, parts, tag};
use crate::app::use_store;
use crate::project::{Nearest, Problem};
use crate::units::{UnitSystem, show_slope};
use std::sync::Arc;

type Take = Arc<dyn Fn(Nearest) -> Option<Change> + Send + Sync>;

/// The nearest value in words.
fn nearest_name(nearest: Nearest, units: UnitSystem) -> String {
    match nearest {
        Nearest::Length(length) => super::show_length_fine(length, units),
        Nearest::Slope(slope) => show_slope(slope, units),
        Nearest::Count(count) => count.to_string(),
    }
}

/// One problem, with a button that puts in the nearest value that works where the field can take it.
pub fn problem_note(problem: Problem, take: Option<Take>) -> Tag {
    let store = use_store();
    let stops = problem.stops();
    let word = if stops { "Stops the frame" } else { "Look at this" };
    let way_out = problem.nearest.and_then(|nearest| {
        let take = take?;
        let _ = take(nearest)?;
        let path = problem.field.clone();
        let use_it = move |_| {
            if let Some(change) = take(nearest) {
                store.edit(|project| change(project));
                crate::app::focus::focus_field(&path);
            }
        };
        let name = move || fractions(&nearest_name(nearest, store.units()));
        Some(button("problem__use", use_it).child("Use ").live(name))
    });
    tag("div")
        .class("problem")
        .class_if("problem--stop", stops)
        .child(
            tag("p")
                .class("problem__says")
                .child(tag("strong").class("problem__word").child(word).child(": "))
                .child(fractions(&problem.says)),
        )
        .child(way_out)
}

/// The problems of exactly that path: for groups and lists that are no single field.
pub fn path_problems(path: impl Into<String>) -> Tag {
    problems_of(path.into())
}

/// The problems of that path and of all under it.
pub fn problems_under(path: &'static str) -> Tag {
    let store = use_store();
    let notes = Cached::new(move || store.problems_of(path));
    parts().live(move || notes.get().into_iter().map(|problem| problem_note(problem, None)).collect::<Vec<_>>())
}

fn problems_of(path: String) -> Tag {
    let store = use_store();
    let notes = Cached::new(move || -> Vec<Problem> {
        store.problems_of(&path).into_iter().filter(|problem| problem.field == path).collect()
    });
    parts().live(move || notes.get().into_iter().map(|problem| problem_note(problem, None)).collect::<Vec<_>>())
}
