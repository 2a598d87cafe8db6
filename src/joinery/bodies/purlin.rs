//! The purlins as wood, lying on the rafters.
use super::super::body::StickBody;
use super::RIGHT;
use super::real::{Arris, Real};
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
            let mark = row.mark(index);
            // It lies on the rafters: its underside stays.
            let at = |x: f64, y: f64| {
                let (x, y) = (lower + Length::inches(x), Length::inches(y));
                Axis::X.place(place(x, y), piece.start)
            };
            let foot = at(0.0, 0.0);
            let arris = Arris { zero: foot, along: RIGHT, wide: at(-1.0, 0.0) - foot, deep: at(0.0, -1.0) - foot };
            let stock = Real::new(project, &mark, Role::Purlin)
                .stock(&arris, (Length::ZERO, piece.end - piece.start))
                .unwrap_or_else(|| prism(&outline, Axis::X, piece.start, piece.end));
            StickBody::new((mark, Role::Purlin), (zero, RIGHT), stock, Vec::new())
        })
        .collect()
}
