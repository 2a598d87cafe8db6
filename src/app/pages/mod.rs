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

use super::LAYOUT;
use super::part::{Fetched, ProgramPart, part};
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

/// The page of a place: all of them show a project laid out.
pub fn page_of(place: Place) -> Tag {
    let own = part_of(place);
    // Both are on their way at once.
    if let Some(own) = own {
        own.ask();
    }
    late_page(place, &LAYOUT, move |_| match own {
        Some(own) => late_page(place, own, |page| page()),
        None => frame::frame_page(),
    })
}

/// The part of the program that a page is; the frame's is in the program from the start.
fn part_of(place: Place) -> Option<&'static ProgramPart<PartOfPage>> {
    match place {
        Place::Site => Some(&SITE),
        Place::Frame => None,
        Place::Strength => Some(&STRENGTH),
        Place::Mill => Some(&MILL),
        Place::Bench => Some(&BENCH),
        Place::Roof => Some(&ROOF),
        Place::Papers => Some(&PAPERS),
    }
}
