//! The rafters as wood: one shape, moved along the wall.
use super::super::body::{Cut, CutKind, StickBody};
use crate::design::Shape;
use crate::geometry::{Point, Polygon};
use crate::project::{Project, Role, TailCut};
use crate::solid::{Axis, Vector, prism};
use crate::units::Length;

/// Every rafter in its place.
pub fn bodies(project: &Project, shape: &Shape) -> Vec<StickBody> {
    let Some(first) = shape.rafters.first() else { return Vec::new() };
    let model = body(project, shape, *first);
    let by = |x: &Length| Vector::new(*x - *first, Length::ZERO, Length::ZERO);
    shape.rafters.iter().enumerate().map(|(index, x)| model.again(format!("R{}", index + 1), by(x))).collect()
}

fn body(project: &Project, shape: &Shape, centre: Length) -> StickBody {
    let rafter = &shape.rafter;
    let half = project.frame.timbers.rafter.sawn.breadth / 2.0;
    let (low, high) = rafter.outline().bounds();
    let out = |corners: Vec<Point>| {
        let placed = corners.into_iter().map(|point| rafter.place(&shape.line, point)).collect();
        prism(&Polygon::new(placed), Axis::X, centre - half, centre + half)
    };
    let top = |x: Length| Point::new(x, Length::ZERO);
    let bottom = |x: Length| Point::new(x, rafter.depth);
    let stock = out(vec![top(low.x), top(high.x), bottom(high.x), bottom(low.x)]);
    let mut cuts = vec![Cut::new("wall end", CutKind::Shaping, out(vec![rafter.head.0, rafter.head.1, bottom(low.x)]))];
    if rafter.tail_cut == TailCut::Plumb {
        cuts.push(Cut::new("tail end", CutKind::Shaping, out(vec![rafter.tail.0, rafter.tail.1, top(high.x)])));
    }
    for (notch, on) in [(&rafter.ledger, "ledger"), (&rafter.beam, "beam")] {
        let tools = out(vec![notch.seat_end, notch.corner, notch.heel_below]);
        cuts.push(Cut::new(format!("{on} bird's mouth"), CutKind::BirdsMouth, tools).mate(on));
    }
    let at = |x: Length| Axis::X.place(rafter.place(&shape.line, top(x)), centre - half);
    let zero = at(Length::ZERO);
    let along = (at(high.x) - at(low.x)).unit().unwrap_or(Vector::inches(0.0, 1.0, 0.0));
    StickBody::new(("R1".to_owned(), Role::Rafter), (zero, along), stock, cuts)
}
