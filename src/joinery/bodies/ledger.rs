//! The ledger's pieces as wood, with their half laps and the holes of their fixings.
use super::super::body::{Cut, CutKind, StickBody};
use super::super::ledger_holes::{ledger_drill, ledger_holes};
use super::real::{Arris, Real};
use super::{OUT, RIGHT, UP};
use crate::design::Shape;
use crate::geometry::LedgerPiece;
use crate::project::{Project, Role};
use crate::solid::{Vector, cuboid};
use crate::units::Length;

/// A piece of the ledger in its place. At a splice the left piece keeps its lower half, the right one its upper half.
pub fn body(project: &Project, shape: &Shape, piece: &LedgerPiece) -> StickBody {
    let (sawn, lap) = (project.frame.timbers.ledger.sawn, project.frame.ledger_lap);
    let back = project.frame.ledger_packing;
    let (front, top) = (back + sawn.breadth, shape.line.ledger_seat);
    let mark = format!("L{}", piece.number);
    let real = Real::new(project, &mark, Role::Ledger);
    let room = real.room();
    let (middle, under, back) = (top - sawn.depth / 2.0, top - room.depth, front - room.breadth);
    let between =
        |x: (Length, Length), z: (Length, Length)| cuboid(Vector::new(x.0, back, z.0), Vector::new(x.1, front, z.1));
    let mut cuts = Vec::new();
    if piece.left_splice {
        let half = between((piece.start, piece.start + lap), (under, middle));
        cuts.push(Cut::new("splice, on top", CutKind::Lap, half).mate(format!("L{}", piece.number - 1)));
    }
    if piece.right_splice {
        let half = between((piece.end - lap, piece.end), (middle, top));
        cuts.push(Cut::new("splice, under", CutKind::Lap, half).mate(format!("L{}", piece.number + 1)));
    }
    for hole in ledger_holes(project, piece, top) {
        let what = format!("hole at the {}", hole.place.name(&project.fixings.ledger));
        cuts.push(Cut::new(what, CutKind::Bored, ledger_drill(project, &hole.place, top)));
    }
    let zero = Vector::new(piece.start, front, top);
    let arris = Arris { zero, along: RIGHT, wide: -OUT, deep: -UP };
    let stock = real.stock(&arris, (Length::ZERO, piece.end - piece.start));
    let stock = stock.unwrap_or_else(|| between((piece.start, piece.end), (under, top)));
    StickBody::new((mark, Role::Ledger), (zero, RIGHT), stock, cuts)
}
