//! The rafters as wood: one shape, moved along the wall; those that were measured have their own.
use super::super::body::{Cut, CutKind, StickBody};
use super::super::tie_holes::{rafter_holes, rafter_shaping};
use super::RIGHT;
use super::real::{Arris, Real};
use crate::design::Shape;
use crate::geometry::{BirdsMouth, Point, Polygon, RafterShape};
use crate::project::{Project, Role};
use crate::solid::{Axis, Vector, prism};
use crate::units::Length;

/// Every rafter in its place.
pub fn bodies(project: &Project, shape: &Shape) -> Vec<StickBody> {
    let Some(first) = shape.rafters.first() else { return Vec::new() };
    let as_sawn = Real::new(project, "", Role::Rafter);
    let model = body(project, shape, ("R1".to_owned(), *first), &as_sawn);
    let one = |(index, x): (usize, &Length)| {
        let mark = format!("R{}", index + 1);
        let real = Real::new(project, &mark, Role::Rafter);
        if real.is_measured() {
            return body(project, shape, (mark.clone(), *x), &real);
        }
        model.again(mark, Vector::new(*x - *first, Length::ZERO, Length::ZERO))
    };
    shape.rafters.iter().enumerate().map(one).collect()
}

/// The shape in a stick of that depth: its top edge and the heights above its seats are held, its cuts run on as far as it is
/// deep.
fn as_deep(rafter: &RafterShape, depth: Length) -> RafterShape {
    let on = |cut: (Point, Point)| {
        let share = depth / rafter.depth;
        (cut.0, Point::new(cut.0.x + (cut.1.x - cut.0.x) * share, depth))
    };
    let notch = |notch: &BirdsMouth| {
        let seat = (depth / rafter.pitch.cos() - notch.height_above_seat) / rafter.pitch.tan();
        BirdsMouth::new(notch.heel_on_top, seat, depth, rafter.pitch)
    };
    let (head, tail) = (on(rafter.head), on(rafter.tail));
    RafterShape { depth, head, tail, ledger: notch(&rafter.ledger), beam: notch(&rafter.beam), ..rafter.clone() }
}

fn body(project: &Project, shape: &Shape, (mark, centre): (String, Length), real: &Real) -> StickBody {
    let (room, sawn) = (real.room(), project.frame.timbers.rafter.sawn);
    let deeper = (room.depth > sawn.depth).then(|| as_deep(&shape.rafter, room.depth));
    let rafter = deeper.as_ref().unwrap_or(&shape.rafter);
    let left = centre - sawn.breadth / 2.0;
    let (low, high) = rafter.outline().bounds();
    let out = |corners: Vec<Point>| {
        let placed = corners.into_iter().map(|point| rafter.place(&shape.line, point)).collect();
        prism(&Polygon::new(placed), Axis::X, left, left + room.breadth)
    };
    let top = |x: Length| Point::new(x, Length::ZERO);
    let bottom = |x: Length| Point::new(x, rafter.depth);
    let at = |point: Point| Axis::X.place(rafter.place(&shape.line, point), left);
    let zero = at(top(Length::ZERO));
    let along = (at(top(high.x)) - at(top(low.x))).unit().unwrap_or(Vector::inches(0.0, 1.0, 0.0));
    let deep = (at(Point::inches(0.0, 1.0)) - zero).unit().unwrap_or(Vector::inches(0.0, 0.0, -1.0));
    let stock = real
        .stock(&Arris { zero, along, wide: RIGHT, deep }, (low.x, high.x))
        .unwrap_or_else(|| out(vec![top(low.x), top(high.x), bottom(high.x), bottom(low.x)]));
    let mut cuts = Vec::new();
    for (what, mate, corners) in rafter_shaping(rafter) {
        let kind = if mate.is_some() { CutKind::BirdsMouth } else { CutKind::Shaping };
        cuts.push(Cut { mate: mate.map(str::to_owned), ..Cut::new(what, kind, out(corners)) });
    }
    for hole in rafter_holes(project, &shape.rafter) {
        let tool = hole.tool(zero, [along, RIGHT, deep], room.depth);
        cuts.push(Cut::new(hole.what, CutKind::Bored, tool).mate(hole.mate));
    }
    StickBody::new((mark, Role::Rafter), (zero, along), stock, cuts)
}
