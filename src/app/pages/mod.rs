//! One page a place.
mod bench;
mod drawn;
mod frame;
mod mill;
mod papers;
mod roof;
mod site;

use super::route::Place;
use crate::app::dom::{Tag, parts};
use leptos::prelude::*;

/// The page of a place.
pub fn page_of(place: Place) -> Tag {
    match place {
        Place::Site => parts().child(view! { <site::SitePage/> }.into_any()),
        Place::Frame => frame::frame_page(),
        Place::Mill => mill::mill_page(),
        Place::Bench => bench::bench_page(),
        Place::Roof => roof::roof_page(),
        Place::Papers => papers::papers_page(),
    }
}
