//! The purlin's sheet: zero at its left end, rafter centres and butts.
use super::mark::{Mark, MarkKind, Waste};
use super::stick::Stick;
use crate::design::Shape;
use crate::geometry::{Bulk, Point, Polygon, PurlinPiece, PurlinRow};
use crate::joinery::{ButtScrews, butt_screws};
use crate::materials::Face;
use crate::project::{Project, Role};
use crate::units::{Length, Weight};
use crate::wording::length;

/// Every purlin's sheet, from the eave up, left to right.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    let rows = shape.purlins.iter();
    rows.flat_map(|row| row.pieces.iter().enumerate().map(move |(index, piece)| (row, index, piece)))
        .map(|(row, index, piece)| stick(project, shape, row, index, piece))
        .collect()
}

fn stick(project: &Project, shape: &Shape, row: &PurlinRow, index: usize, piece: &PurlinPiece) -> Stick {
    let timber = project.frame.timbers.purlin;
    let screws = butt_screws(project);
    let mut marks = vec![end(project, piece, screws.as_ref(), true), end(project, piece, screws.as_ref(), false)];
    let count = screw_count(screws.as_ref());
    for (number, x) in shape.rafters.iter().enumerate().filter(|(_, x)| **x > piece.start && **x < piece.end) {
        marks.push(
            Mark::line(format!("centre of R{}", number + 1), Face::Top, *x - piece.start, MarkKind::Fixing)
                .note(count.clone())
                .mate(format!("R{}", number + 1)),
        );
    }
    let profile =
        Polygon::rectangle(Point::new(Length::ZERO, Length::ZERO), Point::new(piece.length(), timber.sawn.breadth));
    Stick {
        mark: row.mark(index),
        role: Role::Purlin,
        timber,
        low: Length::ZERO,
        high: piece.length(),
        bulk: Bulk::prism(timber.sawn.area(), Length::ZERO, piece.length()),
        is_measured: false,
        green_weight: Weight::ZERO,
        zero: if piece.left.is_none() { "the left rake".to_owned() } else { "its left butt".to_owned() },
        ask: format!(
            "Row {} from the eave, its lower edge {} up the top edge from the tails?",
            row.number,
            length(row.from_tail, project.units)
        ),
        references: (Face::Top, Face::Underside),
        faces: vec![(Face::Top, timber.sawn.breadth)],
        profile: (Face::Top, profile),
        profile_lines: Vec::new(),
        whole_line: Some(piece.start),
        to_left: false,
        marks,
        same_as: None,
    }
}

/// What the holes at a butt follow from. Their distance from the end is rounded in the user's units: not by itself.
fn holes(screws: &ButtScrews) -> Vec<Length> {
    [&[screws.bearing, screws.room.end_bored], &screws.from_lower_edge[..]].concat()
}

/// How many screws, and how far from a butt's end.
fn from_end(project: &Project, screws: Option<&ButtScrews>) -> String {
    let count = screw_count(screws);
    match screws {
        Some(found) => format!("{count} {} from the end", length(found.from_end, project.units)),
        None => format!("{count} clear of the end"),
    }
}

fn screw_count(screws: Option<&ButtScrews>) -> String {
    match screws.map_or(2, |screws| screws.from_lower_edge.len()) {
        1 => "one screw".to_owned(),
        2 => "two screws".to_owned(),
        count => format!("{count} screws"),
    }
}

fn end(project: &Project, piece: &PurlinPiece, screws: Option<&ButtScrews>, is_left: bool) -> Mark {
    let (butt, near, waste) =
        if is_left { (piece.left, Length::ZERO, Waste::Before) } else { (piece.right, piece.length(), Waste::After) };
    let mark = |what: &'static str| Mark::line(what, Face::Top, near, MarkKind::End).waste(waste);
    match butt {
        Some(butt) => mark("butt")
            .note(format!("on the centre of R{}; {}, bored first", butt.rafter, from_end(project, screws)))
            .told(screws.map_or_else(Vec::new, holes))
            .mate(format!("R{}", butt.rafter)),
        None => mark("rake end").note("leave it long, cut to the string when the row is on"),
    }
}
