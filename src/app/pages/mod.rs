//! One page a place.
mod bench;
mod drawn;
mod frame;
mod mill;
mod papers;
mod roof;
mod site;
mod strength;

use super::route::Place;
use leptos::prelude::*;

/// The page of a place.
#[component]
pub fn PageOf(
    /// The place.
    place: Place,
) -> impl IntoView {
    match place {
        Place::Site => view! { <site::SitePage/> }.into_any(),
        Place::Frame => view! { <frame::FramePage/> }.into_any(),
        Place::Strength => view! { <strength::StrengthPage/> }.into_any(),
        Place::Mill => view! { <mill::MillPage/> }.into_any(),
        Place::Bench => view! { <bench::BenchPage/> }.into_any(),
        Place::Roof => view! { <roof::RoofPage/> }.into_any(),
        Place::Papers => view! { <papers::PapersPage/> }.into_any(),
    }
}
