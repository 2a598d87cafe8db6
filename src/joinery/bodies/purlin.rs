//! The purlins as wood, lying on the rafters.
use super::super::body::StickBody;
use super::RIGHT;
use crate::design::Shape;
use crate::geometry::{Point, Polygon, PurlinRow};
use crate::project::{Project, Role};
use crate::solid::{Axis, prism};
use crate::units::Length;

/// Every piece of every row, from the eave up, left to right.
pub fn bodies(project: &Project, shape: &Shape) -> Vec<StickBody> {
    shape.purlins.iter().flat_map(|row| row_bodies(project, shape, row)).collect()
}

fn row_bodies(project: &Project, shape: &Shape, row: &PurlinRow) -> Vec<StickBody> {
    let sawn = project.frame.timbers.purlin.sawn;
    let rafter = &shape.rafter;
    let lower = rafter.tail.0.x - row.from_tail;
    let place = |x: Length, y: Length| rafter.place(&shape.line, Point::new(x, y));
    let upper = lower - sawn.breadth;
    let outline = Polygon::new(vec![
        place(upper, Length::ZERO),
        place(lower, Length::ZERO),
        place(lower, -sawn.depth),
        place(upper, -sawn.depth),
    ]);
    let pieces = row.pieces.iter().enumerate();
    pieces
        .map(|(index, piece)| {
            let zero = Axis::X.place(place(lower, -sawn.depth), piece.start);
            let stock = prism(&outline, Axis::X, piece.start, piece.end);
            StickBody::new((row.mark(index), Role::Purlin), (zero, RIGHT), stock, Vec::new())
        })
        .collect()
}
