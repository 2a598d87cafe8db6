//! One page a place. The frame's is in the program from the start; the others are parts of their own.
mod bench;
mod drawn;
mod frame;
mod mill;
mod papers;
mod roof;
mod site;
mod strength;
mod templates;

use super::part::{Fetched, part};
use super::route::Place;
use crate::app::components::{PartOfPage, late_page};
use crate::app::dom::Tag;

part!(static SITE: PartOfPage = frame.site_part(site::site_page));
part!(static ROOF: PartOfPage = frame.roof_part(roof::roof_page));
part!(static STRENGTH: PartOfPage = strength.strength_part(strength::strength_page));
part!(static MILL: PartOfPage = mill.mill_part(mill::mill_page));
part!(static BENCH: PartOfPage = bench.bench_part(bench::bench_page));
part!(static PAPERS: PartOfPage = papers.papers_part(papers::papers_page));

/// All that is a part of a page, what is needed first before the rest.
pub static PARTS: [&dyn Fetched; 9] =
    [&frame::GRIPS, &frame::LOWER, &SITE, &ROOF, &STRENGTH, &BENCH, &MILL, &PAPERS, &drawn::ROUND];

/// The page of a place.
pub fn page_of(place: Place) -> Tag {
    match place {
        Place::Site => late_page(place, &SITE),
        Place::Frame => frame::frame_page(),
        Place::Strength => late_page(place, &STRENGTH),
        Place::Mill => late_page(place, &MILL),
        Place::Bench => late_page(place, &BENCH),
        Place::Roof => late_page(place, &ROOF),
        Place::Papers => late_page(place, &PAPERS),
    }
}
