//! One page a place.
mod bench;
mod drawn;
mod frame;
mod mill;
mod papers;
mod roof;
mod site;
mod strength;
mod templates;

use super::route::Place;
use crate::app::dom::Tag;

/// The page of a place.
pub fn page_of(place: Place) -> Tag {
    match place {
        Place::Site => site::site_page(),
        Place::Frame => frame::frame_page(),
        Place::Mill => mill::mill_page(),
        Place::Bench => bench::bench_page(),
        Place::Roof => roof::roof_page(),
        Place::Strength => strength::strength_page(),
        Place::Papers => papers::papers_page(),
    }
}
