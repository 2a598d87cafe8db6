//! The rafter's ends, seen on its left face: top edge up, wall at the left.
use super::{Stroke, Template, chain};
use crate::design::Shape;
use crate::geometry::{BirdsMouth, Point, Polygon, RafterShape};
use crate::project::{Project, TailCut};
use crate::units::{Fineness, Length, UnitSystem, show_slope};
use crate::wording::{length, tape};

/// Whole rafter drawn past the joint, and rough wood past a cut.
const STUB: Length = Length::inches(0.75);
const ROUGH: Length = Length::inches(0.4);
/// A tail farther than this from the beam's heel has a template of its own.
const TOGETHER: Length = Length::inches(13.0);

/// Wall end, beam seat, and the tail with it or by itself.
pub fn templates(project: &Project, shape: &Shape) -> Vec<Template> {
    let rafter = &shape.rafter;
    let serves: Vec<String> = (1..=shape.rafters.len()).map(|number| format!("R{number}")).collect();
    if serves.is_empty() {
        return Vec::new();
    }
    let start = |key: &str, name: &str| {
        Template::new(
            key,
            name,
            serves.clone(),
            "rafter's left face in sight, crown and top edge up, wall at your left",
        )
    };
    let mut all = vec![wall_end(project, rafter, start("rafter-wall-end", "Rafter, wall end"))];
    if rafter.tail.0.x - rafter.beam.heel_on_top <= TOGETHER {
        all.push(beam_end(project, rafter, start("rafter-beam-end", "Rafter, beam seat and tail"), true));
    } else {
        all.push(beam_end(project, rafter, start("rafter-beam-seat", "Rafter, beam seat"), false));
        all.push(tail_alone(project, rafter, start("rafter-tail", "Rafter, tail")));
    }
    all
}

/// A corner of the stick on the paper: down from the top edge is down.
fn on_paper(point: Point) -> Point {
    Point::new(point.x, -point.y)
}

fn wall_end(project: &Project, rafter: &RafterShape, mut template: Template) -> Template {
    let (head, notch, depth) = (rafter.head, &rafter.ledger, rafter.depth);
    let end = notch.heel_below.x.max(head.1.x) + STUB;
    let rough = head.0.x - ROUGH;
    let top = |x: Length| Point::new(x, Length::ZERO);
    let under = |x: Length| Point::new(x, depth);
    template.wood =
        vec![Polygon::new(vec![head.0, top(end), under(end), notch.heel_below, notch.corner, notch.seat_end, head.1])];
    template.waste = vec![Polygon::new(vec![top(rough), head.0, head.1, under(rough)])];
    template.line(Stroke::Cut, head.0, head.1, format!("wall end, {}", bevel(project, rafter)));
    edges(&mut template, rafter, (rough, end), &[(rough, notch.seat_end.x), (notch.heel_below.x, end)]);
    template.line(Stroke::RunsOn, top(end), under(end), "the rafter runs on");
    seat(project, &mut template, notch, "ledger");
    template.note(format!(
        "The heel's plumb line is the rafter's zero; the wall end lies {} up the slope from it on the top edge.",
        tape(notch.heel_on_top - head.0.x, project.units, Fineness::Sixteenth)
    ));
    template.map(&on_paper)
}

fn beam_end(project: &Project, rafter: &RafterShape, mut template: Template, with_tail: bool) -> Template {
    let (tail, notch, depth) = (rafter.tail, &rafter.beam, rafter.depth);
    let start = notch.seat_end.x.min(notch.heel_on_top) - STUB;
    let end = if with_tail { tail.0.x.max(tail.1.x) + ROUGH } else { notch.heel_below.x + STUB };
    let top = |x: Length| Point::new(x, Length::ZERO);
    let under = |x: Length| Point::new(x, depth);
    let far = if with_tail { [tail.0, tail.1] } else { [top(end), under(end)] };
    template.wood = vec![Polygon::new(vec![
        top(start),
        far[0],
        far[1],
        notch.heel_below,
        notch.corner,
        notch.seat_end,
        under(start),
    ])];
    if with_tail {
        tail_cut(project, rafter, &mut template, end);
    } else {
        template.line(Stroke::RunsOn, top(end), under(end), "the tail runs on");
    }
    edges(&mut template, rafter, (start, end), &[(start, notch.seat_end.x), (notch.heel_below.x, end)]);
    template.line(Stroke::RunsOn, top(start), under(start), "the rafter runs on");
    seat(project, &mut template, notch, "beam");
    template.note(format!(
        "Ledger heel to this heel along the top edge: {}. The tape sets it, not the paper.",
        tape(notch.heel_on_top, project.units, Fineness::Sixteenth)
    ));
    template.map(&|point| on_paper(point.moved(-notch.heel_on_top, Length::ZERO)))
}

fn tail_alone(project: &Project, rafter: &RafterShape, mut template: Template) -> Template {
    let (tail, depth) = (rafter.tail, rafter.depth);
    let (start, end) = (tail.0.x.min(tail.1.x) - STUB - STUB, tail.0.x.max(tail.1.x) + ROUGH);
    let top = |x: Length| Point::new(x, Length::ZERO);
    let under = |x: Length| Point::new(x, depth);
    template.wood = vec![Polygon::new(vec![top(start), tail.0, tail.1, under(start)])];
    tail_cut(project, rafter, &mut template, end);
    edges(&mut template, rafter, (start, end), &[(start, end)]);
    template.line(Stroke::RunsOn, top(start), under(start), "the rafter runs on");
    template.note(format!(
        "Beam heel to the tail along the top edge: {}.",
        tape(tail.0.x - rafter.beam.heel_on_top, project.units, Fineness::Sixteenth)
    ));
    template.map(&|point| on_paper(point.moved(-tail.0.x, Length::ZERO)))
}

/// The tail's cut and the rough wood past it.
fn tail_cut(project: &Project, rafter: &RafterShape, template: &mut Template, end: Length) {
    let tail = rafter.tail;
    let says = match rafter.tail_cut {
        TailCut::Plumb => format!("tail, {}", bevel(project, rafter)),
        TailCut::Square => "tail, square to the rafter".to_owned(),
    };
    template.waste.push(Polygon::new(vec![
        tail.0,
        Point::new(end, Length::ZERO),
        Point::new(end, rafter.depth),
        tail.1,
    ]));
    template.line(Stroke::Cut, tail.0, tail.1, says);
}

/// The top edge as reference, the underside as an edge, in the runs the notches leave.
fn edges(template: &mut Template, rafter: &RafterShape, whole: (Length, Length), below: &[(Length, Length)]) {
    let top = |x: Length| Point::new(x, Length::ZERO);
    template.line(Stroke::Reference, top(whole.0), top(whole.1), "▲ top edge: lay this line to the rafter's top edge");
    for (from, to) in below {
        template.line(Stroke::Edge, Point::new(*from, rafter.depth), Point::new(*to, rafter.depth), "");
    }
}

/// Seat, heel and what they are measured by.
fn seat(project: &Project, template: &mut Template, notch: &BirdsMouth, on: &str) {
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    template.waste.push(Polygon::new(vec![notch.seat_end, notch.corner, notch.heel_below]));
    let (seat, heel) = (format!("{on} seat {} level", say(notch.seat)), format!("heel {}", say(notch.heel_height)));
    chain(template, Stroke::Cut, &[notch.seat_end, notch.corner, notch.heel_below], &[&seat, &heel]);
    let down = format!("heel plumb: {} from the top edge to the seat", say(notch.height_above_seat));
    template.line(Stroke::Carried, Point::new(notch.heel_on_top, Length::ZERO), notch.corner, down);
    template.note(format!(
        "Stop the saw at the inner corner. The notch is {} deep square to the edge.",
        length(notch.notch_depth, project.units)
    ));
}

/// How a plumb line leans on the stick.
fn bevel(project: &Project, rafter: &RafterShape) -> String {
    match project.units {
        UnitSystem::Imperial => format!("plumb: {}", show_slope(rafter.pitch, project.units)),
        UnitSystem::Metric => format!("plumb: {:.0} in 1000", rafter.pitch.tan() * 1000.0),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    fn of_barn(key: &str) -> Template {
        let project = demo::wool_barn();
        let all = templates(&project, &evaluate(&project).built.unwrap().shape);
        all.into_iter().find(|template| template.key == key).unwrap()
    }

    fn cut(template: &Template, starts: &str) -> (Point, Point) {
        let line = template.lines.iter().find(|line| line.stroke == Stroke::Cut && line.says.starts_with(starts));
        line.map(|line| (line.from, line.to)).unwrap()
    }

    fn check(found: Length, expected: f64) {
        assert!((found.to_inches() - expected).abs() < 1e-3, "{found:?} is not {expected}");
    }

    /// By hand at 3:12 (sin 0.242536, cos 0.970143, tan 0.25), rafter 8 deep, seat 4 on the beam: heel 4·0.25 = 1,
    /// notch 4·0.242536 = 0.9701 square to the edge, so the corner lies 7.0299 under the top edge; the heel's plumb
    /// line is 8/0.970143 − 1 = 7.2462 long and runs 7.2462·0.242536 = 1.7575 down the slope; on the underside the
    /// heel comes out 8·0.25 = 2 past the plumb line on top and the seat 4/0.970143 = 4.1231 back from there.
    #[test]
    fn the_beam_seat_by_hand() {
        let template = of_barn("rafter-beam-end");
        let (seat_end, corner) = cut(&template, "beam seat");
        let (_, heel_below) = cut(&template, "heel");
        check(seat_end.distance(corner), 4.0);
        check(corner.distance(heel_below), 1.0);
        check(corner.x, 1.7575);
        check(-corner.y, 7.0299);
        check(heel_below.x, 2.0);
        check(seat_end.x, 2.0 - 4.1231);
        check(-heel_below.y, 8.0);
        // Tail: 8 in level past the heel, 8/0.970143 = 8.2462 on the top edge; a plumb cut is 8.2462 long.
        let (above, below) = cut(&template, "tail");
        check(above.x, 8.2462);
        check(above.distance(below), 8.2462);
    }

    /// By hand: the heads stand ½ in off the wall, the ledger heel 4 in: 3.5/0.970143 = 3.6077 on the top edge.
    #[test]
    fn the_wall_end_by_hand() {
        let template = of_barn("rafter-wall-end");
        let (above, below) = cut(&template, "wall end");
        check(above.x, -3.6077);
        check(below.x, -3.6077 + 2.0);
        check(above.distance(below), 8.2462);
        let (seat_end, corner) = cut(&template, "ledger seat");
        check(seat_end.distance(corner), 3.0);
    }

    #[test]
    fn a_long_tail_has_its_own_paper() {
        let mut project = demo::wool_barn();
        project.frame.tail = Length::inches(20.0);
        let keys: Vec<String> = templates(&project, &evaluate(&project).built.unwrap().shape)
            .into_iter()
            .map(|template| template.key)
            .collect();
        assert_eq!(keys, ["rafter-wall-end", "rafter-beam-seat", "rafter-tail"]);
    }
}
