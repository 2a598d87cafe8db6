//! The rafter's sheet: zero at the plumb line of the ledger heel on the top edge, downhill positive.
use super::mark::{Mark, MarkKind, Waste};
use super::stick::{Stick, in_order};
use super::tie_holes::at_seats;
use crate::design::Shape;
use crate::geometry::{BirdsMouth, Bulk, Point};
use crate::materials::Face;
use crate::project::{Project, Role, TailCut};
use crate::units::{Length, Slope, UnitSystem, Weight, show_slope};
use crate::wording::length;

/// Every rafter's sheet.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    let (holes, bored) = at_seats(project, &shape.rafter);
    let all_marks = |notches: &Notches| [marks(project, shape, notches), holes.clone()].concat();
    // Most rafters come as they were ordered: one sheet is written for all of them.
    let usual = [shape.rafter.ledger, shape.rafter.beam];
    let mut usual_marks = all_marks(&usual);
    in_order(&mut usual_marks);
    let of = |number: usize| {
        let notches = usual.map(|notch| measured(project, number, &notch));
        let marks = if notches == usual { usual_marks.clone() } else { all_marks(&notches) };
        stick(project, shape, (number, marks), bored)
    };
    (1..=shape.rafters.len()).map(of).collect()
}

/// Its bird's mouths, on the ledger and on the beam.
type Notches = [BirdsMouth; 2];

fn stick(project: &Project, shape: &Shape, (number, marks): (usize, Vec<Mark>), bored: Bulk) -> Stick {
    let timber = project.frame.timbers.rafter;
    let outline = shape.rafter.outline();
    let (low, high) = outline.bounds();
    Stick {
        mark: format!("R{number}"),
        role: Role::Rafter,
        timber,
        low: low.x,
        high: high.x,
        bulk: Bulk::plate(&outline, timber.sawn.breadth).without(bored),
        is_measured: false,
        green_weight: Weight::ZERO,
        zero: "the plumb line of the ledger heel on the top edge; downhill is positive".to_owned(),
        ask: "Crown up, left side toward you? Wall end at your left?".to_owned(),
        references: (Face::Top, Face::Left),
        faces: vec![
            (Face::Top, timber.sawn.breadth),
            (Face::Left, timber.sawn.depth),
            (Face::Underside, timber.sawn.breadth),
            (Face::Right, timber.sawn.depth),
        ],
        profile: (Face::Left, outline),
        profile_lines: [&shape.rafter.ledger, &shape.rafter.beam]
            .map(|notch| (Point::new(notch.heel_on_top, Length::ZERO), notch.corner))
            .to_vec(),
        whole_line: None,
        to_left: false,
        marks,
        same_as: None,
    }
}

fn marks(project: &Project, shape: &Shape, [on_ledger, on_beam]: &Notches) -> Vec<Mark> {
    let rafter = &shape.rafter;
    let plumb = match project.units {
        UnitSystem::Imperial => format!("plumb: {}", show_slope(rafter.pitch, project.units)),
        // A square is set by rise and run, not by degrees.
        UnitSystem::Metric => format!("plumb: {:.0} in 1000", rafter.pitch.tan() * 1000.0),
    };
    let rise = Length::inches(rafter.pitch.tan() * 12.0);
    let tail = match rafter.tail_cut {
        TailCut::Plumb => plumb.clone(),
        TailCut::Square => "square to the rafter".to_owned(),
    };
    let mut marks = vec![
        Mark::line("wall end", Face::Top, rafter.head.0.x, MarkKind::End)
            .waste(Waste::Before)
            .note(plumb.clone())
            .told([rise]),
        Mark::line("wall end", Face::Underside, rafter.head.1.x, MarkKind::End)
            .waste(Waste::Before)
            .note(plumb.clone())
            .told([rise]),
        Mark::line("tail end", Face::Top, rafter.tail.0.x, MarkKind::End)
            .waste(Waste::After)
            .note(tail.clone())
            .told([rise]),
        Mark::line("tail end", Face::Underside, rafter.tail.1.x, MarkKind::End)
            .waste(Waste::After)
            .note(tail.clone())
            .told([rise]),
    ];
    marks.extend(birds_mouth(project, on_ledger, "ledger"));
    marks.extend(birds_mouth(project, on_beam, "beam"));
    let breadth = project.frame.timbers.purlin.sawn.breadth;
    for row in &shape.purlins {
        let lower_edge = rafter.tail.0.x - row.from_tail;
        marks.push(
            Mark::between(
                format!("purlin row {}", row.number),
                Face::Top,
                (lower_edge - breadth, lower_edge),
                MarkKind::Seat,
            )
            .note("X between the lines"),
        );
    }
    marks
}

/// The notch in the real stick: the height above the seat is held, so its depth there sets how long the seat is,
/// s = (d/cos θ − h)/tan θ.
fn measured(project: &Project, number: usize, notch: &BirdsMouth) -> BirdsMouth {
    let sawn = project.frame.timbers.rafter.sawn;
    let real = project.progress.size_at(&format!("R{number}"), sawn, notch.heel_on_top).depth;
    if real.is_near(sawn.depth, Length::inches(1e-9)) {
        return *notch;
    }
    let pitch = Slope::ratio(notch.heel_height / notch.seat);
    let seat = (real / pitch.cos() - notch.height_above_seat) / pitch.tan();
    BirdsMouth::new(notch.heel_on_top, seat, real, pitch)
}

fn birds_mouth(project: &Project, notch: &BirdsMouth, on: &str) -> Vec<Mark> {
    let say = |value: Length| length(value, project.units);
    let seat_end_on_top = notch.seat_end.x - (notch.heel_below.x - notch.heel_on_top);
    vec![
        Mark::line(format!("{on} heel"), Face::Top, notch.heel_on_top, MarkKind::Line)
            .note(format!("plumb; measure {} down it from the top edge to the seat", say(notch.height_above_seat)))
            .told([notch.height_above_seat])
            .mate(on),
        Mark::line(format!("{on} seat end"), Face::Top, seat_end_on_top, MarkKind::Line)
            .note("plumb; where the seat runs out at the underside")
            .mate(on),
        Mark::between(
            format!("{on} bird's mouth"),
            Face::Underside,
            (notch.seat_end.x, notch.heel_below.x),
            MarkKind::Housing,
        )
        .depth(notch.notch_depth)
        .note(format!(
            "seat {} level, heel {} plumb, {} deep square to the edge; stop the saw at the inner corner",
            say(notch.seat),
            say(notch.heel_height),
            say(notch.notch_depth)
        ))
        .told([notch.seat, notch.heel_height])
        .mate(on),
    ]
}
