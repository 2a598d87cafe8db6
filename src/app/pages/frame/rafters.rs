//! The row of rafters.
use super::super::drawn::fact;
use crate::app::components::{Steps, choice, facts, fold, length_field, signed_length_field};
use crate::app::dom::{Tag, parts};
use crate::lens;
use crate::project::RafterRule;
use crate::wording;
use leptos::prelude::*;

/// Rafters.
pub fn rafters() -> Tag {
    let rules = vec![
        (RafterRule::FromLeft, "from the left".to_owned()),
        (RafterRule::FromRight, "from the right".to_owned()),
        (RafterRule::Equal, "all equal".to_owned()),
    ];
    let count = fact(|built, _| Some(format!("{} of them", built.shape.rafters.len())));
    fold("Rafters", count, true, || {
        parts()
            .child(
                length_field(lens!(frame.rafters.spacing), "Rafter spacing")
                    .hint(last_bay())
                    .steps(Steps::of(1.0, 20.0)),
            )
            .child(choice(lens!(frame.rafters.rule), "Step the spacing", "", rules, None))
            .child(
                signed_length_field(lens!(frame.rafters.inset), "Inset of the outer two")
                    .hint("beam end to their outer face; minus stands past it")
                    .steps(Steps::of(0.5, 10.0)),
            )
            .child(facts(&[
                ("Rafters", fact(|built, _| Some(built.shape.rafters.len().to_string()))),
                ("First and last bay", outer_bays()),
            ]))
    })
}

fn last_bay() -> Signal<String> {
    fact(|built, project| {
        let rafters = &built.shape.rafters;
        let [.., before, last] = rafters.as_slice() else { return None };
        Some(format!("{} rafters, last bay {}", rafters.len(), wording::length(*last - *before, project.units)))
    })
}

fn outer_bays() -> Signal<String> {
    fact(|built, project| {
        let [first, second, .., before, last] = built.shape.rafters.as_slice() else { return None };
        let say = |length| wording::length(length, project.units);
        Some(format!("{} and {}", say(*second - *first), say(*last - *before)))
    })
}
