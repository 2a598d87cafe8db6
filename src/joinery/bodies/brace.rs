//! The knee brace as wood: its body between the shoulders and a tenon at each end.
use super::super::body::{Cut, CutKind, StickBody};
use super::super::pegs::{brace_peg, brace_tenon_thickness};
use super::{cheeks, in_elevation, peg_hole};
use crate::geometry::{Brace, Point, Polygon};
use crate::project::{Project, Role};
use crate::solid::{Axis, Vector};
use crate::units::Length;

/// A brace in its place.
pub fn body(project: &Project, brace: &Brace) -> StickBody {
    let form = &brace.form;
    let outer = project.frame.reach;
    let breadth = project.frame.timbers.brace.sawn.breadth;
    let placed = |outline: &Polygon| outline.corners.iter().map(|point| brace.place_stick(*point)).collect();
    let mut stock = in_elevation(placed(&form.outline()), (outer - breadth, outer));
    for (tenon, rules) in [(form.post_tenon(), &brace.foot), (form.beam_tenon(), &brace.head)] {
        let depths = cheeks(project, rules, brace_tenon_thickness(project, rules));
        stock.extend(in_elevation(placed(&tenon), depths));
    }
    let mut cuts = Vec::new();
    for (at_post, end, mate) in [(true, "post", format!("P{}", brace.post)), (false, "beam", "beam".to_owned())] {
        let place = brace.place_stick(brace_peg(brace, at_post));
        let rules = if at_post { &brace.foot } else { &brace.head };
        let hole = peg_hole(project, rules, (place.x, place.y), breadth);
        cuts.push(Cut::new(format!("peg at the {end}"), CutKind::PegHole, hole).mate(mate));
    }
    if let Some(hollow) = form.hollow() {
        cuts.push(Cut::new(
            "hollow of the long edge",
            CutKind::Shaping,
            in_elevation(placed(&hollow), (outer - breadth, outer)),
        ));
    }
    let at = |x: Length| Axis::Y.place(brace.place_stick(Point::new(x, Length::ZERO)), outer);
    let (zero, end) = (at(Length::ZERO), at(form.long_edge()));
    let along = (end - zero).unit().unwrap_or(Vector::inches(0.0, 0.0, 1.0));
    StickBody::new((brace.mark(), Role::Brace), (zero, along), stock, cuts)
}
