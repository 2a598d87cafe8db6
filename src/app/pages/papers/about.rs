//! What the tool does, and what it does not.
use crate::app::components::{Caution, Fold};
use crate::materials::species_table;
use leptos::prelude::*;

/// About and cautions.
#[component]
pub fn About() -> impl IntoView {
    view! {
        <Fold title="About and cautions" summary=Signal::derive(|| "what it works out, and what it does not".to_owned())>
            <Caution text="The strength is checked by formulas, many of them from memory and marked so; what the wall itself carries is not judged. Have your local code and a licensed engineer say yes before you buy, cut or lift."/>
            <h3 class="group__title">"What it works out"</h3>
            <p class="page__word">
                "From what you measured and chose: heights and pitch, every stick’s length and marks, where scarfs and joints clear each other, the
                order out of the mill’s lengths with its green weight and price, purlin rows and metal sheets; snow, wind and weight on it, and whether
                every stick, joint and fixing carries them. All of it from one project, at once."
            </p>
            <h3 class="group__title">"What it does not know"</h3>
            <p class="page__word">
                "What the wall carries already, the lift itself, splitting at pegs, and your wood: knots, wane, twist and moisture are yours to
                see. Wood moves; measure the stick in hand before you cut. Packing short sticks into stock follows plain good sense and is
                not proven to be the cheapest."
            </p>
            <h3 class="group__title">"Where its values come from"</h3>
            <p class="page__word">
                "Rules of joints and clearances are common practice and yours to change. An inch is 25.4 mm exactly; a board foot 144 cubic
                inches. Each check names document and clause, and whether it was compared with the print or recalled from memory. The wood’s values:"
            </p>
            <Sources/>
            <h3 class="group__title">"Examples"</h3>
            <p class="page__word">"The wool barn and the log store are invented: no real farm, mill or price stands behind them."</p>
            <h3 class="group__title">"Your data"</h3>
            <p class="page__word">"Everything stays on this device. Clearing the browser’s data clears it too: keep a file of what matters."</p>
        </Fold>
    }
}

/// Every species with its source.
#[component]
fn Sources() -> impl IntoView {
    let rows = species_table()
        .iter()
        .map(|wood| view! { <li class="sources__row"><strong>{wood.name.clone()}</strong> ": " {wood.source.clone()}</li> })
        .collect_view();
    view! { <ul class="sources">{rows}</ul> }
}
