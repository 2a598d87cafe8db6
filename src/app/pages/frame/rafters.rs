//! The row of rafters.
use super::super::drawn::fact;
use crate::app::components::{Choice, Fact, Facts, Fold, LengthField, Steps};
use crate::lens;
use crate::project::RafterRule;
use crate::wording;
use leptos::prelude::*;

/// Rafters.
#[component]
pub fn Rafters() -> impl IntoView {
    let rules = vec![
        (RafterRule::FromLeft, "from the left".to_owned()),
        (RafterRule::FromRight, "from the right".to_owned()),
        (RafterRule::Equal, "all equal".to_owned()),
    ];
    let count = fact(|built, _| Some(format!("{} of them", built.shape.rafters.len())));
    view! {
        <Fold title="Rafters" summary=count open=true>
            <LengthField
                field=lens!(frame.rafters.spacing) label="Rafter spacing" hint=last_bay() steps=Steps::of(1.0, 20.0)
            />
            <Choice field=lens!(frame.rafters.rule) label="Step the spacing" options=rules/>
            <LengthField
                field=lens!(frame.rafters.inset) label="Inset of the outer two" hint="beam end to their outer face; minus stands past it"
                signed=true steps=Steps::of(0.5, 10.0)
            />
            <Facts>
                <Fact name="Rafters" value=fact(|built, _| Some(built.shape.rafters.len().to_string()))/>
                <Fact name="First and last bay" value=outer_bays()/>
            </Facts>
        </Fold>
    }
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
