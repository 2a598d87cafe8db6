//! The ledger piece's sheet: zero at the beam's x = 0, carried to its own left end.
use super::mark::{Mark, MarkKind, Waste};
use super::stick::Stick;
use crate::design::Shape;
use crate::fastening::FastenerKind;
use crate::geometry::{
    Bore, Bulk, FixingPlace, LedgerPiece, Point, Polygon, bores, fixing_places, lead_hole, ledger_hole, wall_posts,
};
use crate::joinery::{LedgerHole, ledger_holes};
use crate::materials::Face;
use crate::project::{Project, Role};
use crate::units::{Fineness, Length, Weight};
use crate::wording::{length, tape};

/// Every ledger piece's sheet.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    shape.ledger.iter().map(|piece| stick(project, shape, piece)).collect()
}

fn stick(project: &Project, shape: &Shape, piece: &LedgerPiece) -> Stick {
    let timber = project.frame.timbers.ledger;
    let (breadth, depth) = (timber.sawn.breadth, timber.sawn.depth);
    let profile = outline(piece, depth, project.frame.ledger_lap);
    let holes = ledger_holes(project, piece, shape.line.ledger_seat);
    let bulk = holes.iter().fold(Bulk::plate(&profile, breadth), |bulk, hole| bulk.without(hole.taken));
    Stick {
        mark: format!("L{}", piece.number),
        role: Role::Ledger,
        timber,
        low: Length::ZERO,
        high: piece.length(),
        bulk,
        is_measured: false,
        green_weight: Weight::ZERO,
        zero: "its left end".to_owned(),
        ask: "Outer face toward you, top up? Left end at your left? WALL written on the back?".to_owned(),
        references: (Face::Top, Face::Outer),
        faces: vec![(Face::Top, breadth), (Face::Outer, depth), (Face::Underside, breadth), (Face::Wall, depth)],
        profile: (Face::Outer, profile),
        profile_lines: Vec::new(),
        whole_line: Some(piece.start),
        to_left: false,
        marks: marks(project, shape, piece, &holes),
        same_as: None,
    }
}

/// A half lap at a splice: the left piece keeps its lower half, the right piece its upper half.
/// Measured down from the top.
fn outline(piece: &LedgerPiece, depth: Length, lap: Length) -> Polygon {
    let (end, half) = (piece.length(), depth / 2.0);
    let mut corners = Vec::new();
    if piece.left_splice {
        corners.extend([Point::new(Length::ZERO, Length::ZERO), Point::new(Length::ZERO, half)]);
        corners.extend([Point::new(lap, half), Point::new(lap, depth)]);
    } else {
        corners.extend([Point::new(Length::ZERO, Length::ZERO), Point::new(Length::ZERO, depth)]);
    }
    if piece.right_splice {
        corners.extend([Point::new(end, depth), Point::new(end, half)]);
        corners.extend([Point::new(end - lap, half), Point::new(end - lap, Length::ZERO)]);
    } else {
        corners.extend([Point::new(end, depth), Point::new(end, Length::ZERO)]);
    }
    Polygon::new(corners)
}

fn marks(project: &Project, shape: &Shape, piece: &LedgerPiece, holes: &[LedgerHole]) -> Vec<Mark> {
    let half_depth = project.frame.timbers.ledger.sawn.depth / 2.0;
    let lap = project.frame.ledger_lap;
    let mut marks = vec![
        Mark::line("left end, square", Face::Top, Length::ZERO, MarkKind::End).waste(Waste::Before),
        Mark::line("right end, square", Face::Top, piece.length(), MarkKind::End).waste(Waste::After),
    ];
    if piece.left_splice {
        marks.push(
            Mark::between("splice: this piece lies ON TOP", Face::Outer, (Length::ZERO, lap), MarkKind::Housing)
                .across((half_depth, half_depth * 2.0), Face::Top)
                .waste(Waste::Between)
                .note("the lower half goes")
                .mate(format!("L{}", piece.number - 1)),
        );
    }
    if piece.right_splice {
        let edges = (piece.length() - lap, piece.length());
        marks.push(
            Mark::between("splice: this piece lies UNDER", Face::Outer, edges, MarkKind::Housing)
                .across((Length::ZERO, half_depth), Face::Top)
                .waste(Waste::Between)
                .note("the upper half goes")
                .mate(format!("L{}", piece.number + 1)),
        );
    }
    marks.extend(rafters(project, shape, piece));
    marks.extend(wall(project, piece, holes));
    marks
}

fn rafters(project: &Project, shape: &Shape, piece: &LedgerPiece) -> Vec<Mark> {
    let half = project.frame.timbers.rafter.ordered.breadth / 2.0;
    // On top, the left piece of a splice ends where the right one lies over it.
    let end_on_top = if piece.right_splice { piece.end - project.frame.ledger_lap } else { piece.end };
    let on_piece = |x: &Length| *x > piece.start && *x < end_on_top;
    let numbered = shape.rafters.iter().enumerate().filter(|(_, x)| on_piece(x));
    numbered
        .map(|(index, x)| {
            let mate = format!("R{}", index + 1);
            let edges = (*x - half - piece.start, *x + half - piece.start);
            Mark::between(format!("rafter {mate}"), Face::Top, edges, MarkKind::Seat)
                .note(format!(
                    "X between the lines; on the whole ledger {}",
                    tape(*x - half, project.units, Fineness::Sixteenth)
                ))
                .mate(mate)
        })
        .collect()
}

/// Each fixing by itself; the posts alone, where none is chosen yet.
fn wall(project: &Project, piece: &LedgerPiece, holes: &[LedgerHole]) -> Vec<Mark> {
    let fixings = &project.fixings.ledger;
    if fixings.chosen().is_none() || fixings.rows == 0 || fixings.columns == 0 {
        return wall_marks(project, piece);
    }
    // A hole whose centre lies past its end only nicks a piece.
    let is_here = |place: &FixingPlace| {
        let is_on = place.x >= piece.start && place.x <= piece.end;
        is_on && (fixings.is_makers() || holes.iter().any(|hole| hole.place == *place))
    };
    let depth = project.frame.timbers.ledger.sawn.depth;
    let bores = bores(project);
    let note = fixing_note(project, &bores);
    let told: Vec<Length> = bores.iter().flat_map(|bore| [bore.diameter, bore.to]).collect();
    let places = fixing_places(project).into_iter().filter(is_here);
    places
        .map(|place| {
            let down = depth - place.up;
            let what = format!("fixing to the {}", place.name(fixings));
            let mark = Mark::line(what, Face::Outer, place.x - piece.start, MarkKind::Fixing);
            mark.across((down, down), Face::Top).note(note.clone()).told(told.clone())
        })
        .collect()
}

/// What is bored for a fixing: in the ledger from its outer face, and in the wall's post.
fn fixing_note(project: &Project, bores: &[Bore]) -> String {
    let fixings = &project.fixings.ledger;
    let say = |value: Length| length(value, project.units);
    let mut parts = Vec::new();
    match bores {
        [] => parts.push("its maker says what is bored".to_owned()),
        [one] => parts.push(format!("bore {} through", say(one.diameter))),
        [shank, thread, ..] => {
            parts.push(format!(
                "bore {} to a depth of {}, then {} through",
                say(shank.diameter),
                say(shank.to),
                say(thread.diameter)
            ));
        }
    }
    let is_lag = fixings.chosen().is_some_and(|one| one.kind == FastenerKind::LagScrew);
    let through = project.frame.timbers.ledger.sawn.breadth + project.frame.ledger_packing;
    if is_lag {
        let thread = lead_hole(project, &fixings.wall_species);
        let deep = fixings.length - through;
        parts.extend(thread.map(|thread| format!("in the wall’s post {}, {} deep", say(thread), say(deep))));
    } else if !bores.is_empty() {
        let hole = ledger_hole(fixings).unwrap_or_default();
        parts.push(format!("the wall’s post {} through", say(hole)));
    }
    parts.push(format!("check the post is there before you bore; packing {}", say(project.frame.ledger_packing)));
    parts.join("; ")
}

fn wall_marks(project: &Project, piece: &LedgerPiece) -> Vec<Mark> {
    let on_piece = |x: &Length| *x >= piece.start && *x <= piece.end;
    wall_posts(&project.site, project.frame.beam_length)
        .into_iter()
        .filter(on_piece)
        .map(|x| {
            Mark::line("fixings to the wall's post", Face::Outer, x - piece.start, MarkKind::Fixing).note(format!(
                "check the post is there before you bore; packing {}",
                length(project.frame.ledger_packing, project.units)
            ))
        })
        .collect()
}
