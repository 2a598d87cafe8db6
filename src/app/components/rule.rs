//! The folding rule: the way from place to place.
use crate::app::cached::Cached;
use crate::app::dom::{Tag, parts, tag};
use crate::app::route::{Place, use_router};
use crate::app::use_store;

/// The navigation, drawn as a boxwood rule: each place a length of it, a pencil tick where something is done.
pub fn rule() -> Tag {
    let lengths = Place::ALL.into_iter().map(rule_length).collect::<Vec<_>>();
    tag("nav")
        .class("rule")
        .attr("aria-label", "Places of the job")
        .child(tag("ul").class("rule__lengths").child(lengths))
}

fn rule_length(place: Place) -> Tag {
    let router = use_router();
    let store = use_store();
    let is_here = move || router.place() == place;
    let done = Cached::new(move || is_done(store, place));
    tag("li").class("rule__length").live_class("rule__length--here", is_here).child(
        tag("a")
            .class("rule__link")
            .attr("href", place.href())
            .live_attr("aria-current", move || is_here().then_some("page"))
            .child(tag("span").class("rule__marks").attr("aria-hidden", "true"))
            .child(tag("span").class("rule__word").child(place.name()))
            .live(move || {
                done.get().then(|| {
                    parts()
                        .child(tag("span").class("rule__tick").attr("aria-hidden", "true").child("✓"))
                        .child(tag("span").class("quiet").child("done"))
                })
            }),
    )
}

/// What a tick means at each place; papers are never done.
fn is_done(store: crate::app::Store, place: Place) -> bool {
    let clean = |prefix: &str| !store.is_stale() && store.problems_of(prefix).is_empty();
    let Some(built) = store.built() else { return false };
    let project = store.project();
    match place {
        Place::Site => ["site", "place", "above", "ground"].into_iter().all(clean),
        Place::Frame => ["frame", "joinery", "exceptions", "wood", "fixings"].into_iter().all(clean),
        Place::Strength => store
            .strong()
            .is_some_and(|strong| strong.strength.checks.iter().all(|check| check.passes() || check.is_for_others)),
        Place::Mill => {
            let n_lines: usize = built.order.lines.iter().map(|line| line.count).sum();
            n_lines > 0 && project.progress.pieces.values().filter(|piece| piece.is_kept()).count() >= n_lines
        }
        Place::Bench => {
            !built.sticks.is_empty() && built.sticks.iter().all(|stick| project.progress.cut.contains_key(&stick.mark))
        }
        Place::Roof => clean("roofing"),
        Place::Papers => false,
    }
}
