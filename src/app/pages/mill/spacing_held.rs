//! What another rafter spacing costs where the roof must carry as it does now.
use super::studied::studied;
use crate::app::charts::{held_chart, spacing_row};
use crate::app::components::{Slices, Work, figures, long_work, word};
use crate::app::dom::{Tag, parts, tag};
use crate::app::use_store;
use crate::study::{HeldPoint, HeldSpacings, Stepper};
use crate::units::{UnitSystem, show_money};
use leptos::prelude::*;

/// The study and what it found by now.
pub fn spacing_held() -> Tag {
    let store = use_store();
    let found = RwSignal::new(Vec::<HeldPoint>::new());
    let begin = move |project| {
        let mut study = HeldSpacings::new(&project)?;
        let step: Slices = Box::new(move || {
            let progress = study.next_step();
            if study.found().len() != found.with_untracked(Vec::len) {
                found.set(study.found().to_vec());
            }
            progress
        });
        Some(step)
    };
    let shown = move || {
        let points = found.get();
        (points.len() > 1).then(|| charts(&points, store.units(), &store.project_untracked().currency))
    };
    parts()
        .child(tag("h3").class("group__title").child("At the same strength"))
        .child(word(
            "Farther apart under the same snow, rafters must be deeper and purlins thicker: at each spacing the least \
             of both that carry are sought. The beam and the ledger are not resized here: see Strength.",
        ))
        .child(long_work(Work {
            start: "Work out what carries",
            about: studied(),
            begin: Box::new(begin),
            forget: Box::new(move || found.set(Vec::new())),
        }))
        .live(shown)
}

fn charts(points: &[HeldPoint], units: UnitSystem, currency: &str) -> Tag {
    let rows = points
        .iter()
        .map(|point| {
            spacing_row(point.spacing, point.is_own, units)
                .child(tag("td").child(point.rafter.ordered.label(units)))
                .child(tag("td").child(point.purlin.ordered.label(units)))
                .child(tag("td").child(show_money(point.order_price, currency).to_string()))
                .child(tag("td").child(format!("{:.0} %", point.share * 100.0)))
        })
        .collect::<Vec<_>>();
    parts().child(held_chart(points, units, currency)).child(figures(
        "Rafter spacing at the same strength, the figures",
        &["Spacing", "Rafter", "Purlin", "Order", "Asked of them"],
        rows,
    ))
}
