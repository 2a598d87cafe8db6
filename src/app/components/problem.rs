//! A problem: one sentence, one way out.
use super::entry::Change;
use super::reading::fractions;
use crate::app::use_store;
use crate::project::{Nearest, Problem};
use crate::units::{UnitSystem, show_slope};
use leptos::prelude::*;
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
#[component]
pub fn ProblemNote(
    /// The problem.
    problem: Problem,
    /// What the nearest value does to the project.
    #[prop(optional)]
    take: Option<Take>,
) -> impl IntoView {
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
        Some(view! { <button type="button" class="problem__use" on:click=use_it>"Use " {name}</button> })
    });
    view! {
        <div class="problem" class:problem--stop=stops>
            <p class="problem__says">
                <strong class="problem__word">{word}": "</strong>
                {fractions(&problem.says)}
            </p>
            {way_out}
        </div>
    }
}

/// The problems of exactly that path: for groups and lists that are no single field.
#[component]
pub fn PathProblems(
    /// The path, as in the project file.
    #[prop(into)]
    path: String,
) -> impl IntoView {
    let store = use_store();
    let notes = Memo::new(move |_| -> Vec<Problem> {
        store.design().problems.iter().filter(|problem| problem.field == path).cloned().collect()
    });
    move || notes.get().into_iter().map(|problem| view! { <ProblemNote problem/> }).collect_view()
}
