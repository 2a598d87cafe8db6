//! The folding rule: the way from place to place.
use crate::app::route::{Place, use_router};
use crate::app::use_store;
use crate::checks::Check;
use leptos::prelude::*;

/// The navigation, drawn as a boxwood rule: each place a length of it, a pencil tick where something is done.
#[component]
pub fn Rule() -> impl IntoView {
    let lengths = Place::ALL.into_iter().map(|place| view! { <RuleLength place/> }).collect_view();
    view! {
        <nav class="rule" aria-label="Places of the job">
            <ul class="rule__lengths">{lengths}</ul>
        </nav>
    }
}

#[component]
fn RuleLength(place: Place) -> impl IntoView {
    let router = use_router();
    let store = use_store();
    let is_here = move || router.place() == place;
    let done = Memo::new(move |_| is_done(store, place));
    view! {
        <li class="rule__length" class:rule__length--here=is_here>
            <a class="rule__link" href=place.href() aria-current=move || is_here().then_some("page")>
                <span class="rule__marks" aria-hidden="true"></span>
                <span class="rule__word">{place.name()}</span>
                {move || {
                    done.get()
                        .then(|| view! { <span class="rule__tick" aria-hidden="true">"✓"</span> <span class="quiet">"done"</span> })
                }}
            </a>
        </li>
    }
}

/// What a tick means at each place; papers are never done.
fn is_done(store: crate::app::Store, place: Place) -> bool {
    let clean = |prefix: &str| {
        let design = store.design();
        design.built.is_some() && design.problems_of(prefix).next().is_none()
    };
    let Some(built) = store.built() else { return false };
    let project = store.project();
    match place {
        Place::Site => ["site", "place", "above", "ground"].into_iter().all(clean),
        Place::Frame => ["frame", "joinery", "wood", "fixings"].into_iter().all(clean),
        Place::Strength => store.strong().is_some_and(|strong| strong.strength.checks.iter().all(Check::passes)),
        Place::Mill => {
            let n_lines: usize = built.order.lines.iter().map(|line| line.count).sum();
            n_lines > 0 && project.progress.received.len() >= n_lines
        }
        Place::Bench => {
            !built.sticks.is_empty() && built.sticks.iter().all(|stick| project.progress.cut.contains_key(&stick.mark))
        }
        Place::Roof => clean("roofing"),
        Place::Papers => false,
    }
}
