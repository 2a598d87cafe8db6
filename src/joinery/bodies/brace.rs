//! The knee brace as wood: its body between the shoulders and a tenon at each end.
use super::super::body::{Cut, CutKind, StickBody};
use super::super::pegs::{brace_peg, brace_tenon_thickness};
use super::real::Real;
use super::{cheeks, in_elevation, peg_hole};
use crate::geometry::{Brace, BraceShape, Point, Polygon};
use crate::project::{Project, Role};
use crate::solid::{Axis, Vector};
use crate::units::Length;

/// A brace in its place. Where it was measured it is all along as large as anywhere; its tenons are as their pockets.
pub fn body(project: &Project, brace: &Brace) -> StickBody {
    let form = &brace.form;
    let outer = project.frame.reach;
    let mark = brace.mark();
    let size = Real::new(project, &mark, Role::Brace).most();
    let breadth = size.breadth;
    let whole = BraceShape { width: size.depth, ..*form };
    let tenoned = BraceShape { width: size.depth.min(form.width), ..*form };
    let placed = |outline: &Polygon| outline.corners.iter().map(|point| brace.place_stick(*point)).collect();
    let mut stock = in_elevation(placed(&whole.outline()), (outer - breadth, outer));
    for (tenon, rules) in [(tenoned.post_tenon(), &brace.foot), (tenoned.beam_tenon(), &brace.head)] {
        let (inner_cheek, outer_cheek) = cheeks(project, rules, brace_tenon_thickness(project, rules));
        let depths = (inner_cheek.max(outer - breadth), outer_cheek);
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
    StickBody::new((mark, Role::Brace), (zero, along), stock, cuts)
}
