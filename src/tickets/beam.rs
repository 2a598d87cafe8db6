//! The beam piece's sheet: zero at its left end, references top and outer.
//!
//! Where the left end is an upper lap, that end is the tip that closes against the other piece's root.
use super::face::Face;
use super::mark::{Mark, MarkKind, Waste};
use super::post::{peg_height, peg_places};
use super::stick::{Role, Stick};
use crate::design::Shape;
use crate::geometry::{BeamPiece, Bulk, Point, Polygon, PostShape, reduced_beam_depth};
use crate::joinery::ScarfShape;
use crate::project::{Project, Side};
use crate::units::{Fineness, Length, Weight};
use crate::wording::{length, tape};

/// Every beam piece's sheet.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    shape.beam.pieces.iter().map(|piece| stick(project, shape, piece)).collect()
}

fn stick(project: &Project, shape: &Shape, piece: &BeamPiece) -> Stick {
    let timber = project.frame.timbers.beam;
    let (breadth, depth) = (timber.sawn.breadth, timber.sawn.depth);
    let outline = outline(project, shape, piece);
    let mut bulk = Bulk::plate(&outline, breadth);
    for post in posts_of(shape, piece) {
        bulk = bulk.without(post_joint_bulk(project, post, piece.start));
    }
    for brace in braces_of(project, shape, piece) {
        let pocket = super::brace::pocket_bulk(project, &shape.brace.beam_pocket(&project.joinery), housing(project));
        let corner = brace.corner_x - piece.start;
        let at = match brace.side {
            Side::Left => corner - pocket.balance(),
            Side::Right => corner + pocket.balance(),
        };
        bulk = bulk.without(Bulk::new(pocket.volume(), at));
    }
    let zero = match piece.left {
        None => "the beam's left end".to_owned(),
        Some((number, true)) => format!("its left end: the tip of the lower lap of scarf {number}"),
        Some((number, false)) => format!("its left end: the tip that closes scarf {number}"),
    };
    // As drawn, a face's upper edge is at the top: measure the outline down from it.
    let profile = outline.map(|point| Point::new(point.x, depth - point.y));
    Stick {
        mark: format!("B{}", piece.number),
        role: Role::Beam,
        timber,
        low: Length::ZERO,
        high: piece.length(),
        bulk,
        green_weight: Weight::ZERO,
        zero,
        ask: "Outer face toward you, top up? Left end at your left?".to_owned(),
        references: (Face::Top, Face::Outer),
        faces: vec![(Face::Top, breadth), (Face::Outer, depth), (Face::Underside, breadth), (Face::Wall, depth)],
        profile: (Face::Outer, profile),
        profile_lines: Vec::new(),
        whole_line: Some(piece.start),
        marks: marks(project, shape, piece),
        same_as: None,
    }
}

/// The outline seen from outside: x from the piece's left end, y up from the underside.
fn outline(project: &Project, shape: &Shape, piece: &BeamPiece) -> Polygon {
    let depth = project.frame.timbers.beam.sawn.depth;
    let square = |x: Length| vec![Point::new(x, Length::ZERO), Point::new(x, depth)];
    let left = match piece.left {
        Some((number, is_lower)) => scarf_end(project, shape, number, is_lower, piece.start),
        None => square(Length::ZERO),
    };
    let right = match piece.right {
        Some((number, is_lower)) => scarf_end(project, shape, number, is_lower, piece.start),
        None => square(piece.length()),
    };
    Polygon::new(left.into_iter().chain(right.into_iter().rev()).collect())
}

fn scarf_end(project: &Project, shape: &Shape, number: usize, is_lower: bool, start: Length) -> Vec<Point> {
    let scarf = &shape.beam.scarfs[number - 1];
    let profile = ScarfShape::new(&project.frame, &project.joinery).profile(is_lower);
    let turn = |point: Point| match scarf.place.lower {
        Side::Left => Point::new(scarf.low + point.x - start, point.y),
        Side::Right => Point::new(scarf.high - point.x - start, point.y),
    };
    profile.into_iter().map(turn).collect()
}

/// Depth of a housing in the underside, from the real face.
fn housing(project: &Project) -> Length {
    project.frame.timbers.beam.sawn.depth - reduced_beam_depth(&project.frame, &project.joinery)
}

fn posts_of<'a>(shape: &'a Shape, piece: &'a BeamPiece) -> impl Iterator<Item = &'a PostShape> {
    shape.posts.iter().filter(|post| post.left >= piece.start && post.right <= piece.end)
}

/// Braces whose pocket lies in this piece: in a lap it is the lower one.
fn braces_of<'a>(
    project: &'a Project,
    shape: &'a Shape,
    piece: &'a BeamPiece,
) -> impl Iterator<Item = &'a crate::geometry::Brace> {
    let pocket = shape.brace.beam_pocket(&project.joinery);
    shape.braces.iter().filter(move |brace| {
        let (near, far) = brace.on_beam(&pocket);
        let middle = (near + far) / 2.0;
        let in_upper_lap = [piece.left, piece.right].into_iter().flatten().any(|(number, is_lower)| {
            let scarf = &shape.beam.scarfs[number - 1];
            !is_lower && middle > scarf.low && middle < scarf.high
        });
        middle > piece.start && middle < piece.end && !in_upper_lap
    })
}

fn post_joint_bulk(project: &Project, post: &PostShape, start: Length) -> Bulk {
    let rules = &project.joinery;
    let floor =
        housing(project) * project.frame.timbers.post.ordered.depth.min(project.frame.timbers.beam.sawn.breadth);
    let mortise = rules.tenon_thickness * (post.tenon_length + rules.blind_clearance);
    Bulk::prism(floor, post.left - start, post.right - start).with(Bulk::prism(
        mortise,
        post.tenon.0 - start,
        post.tenon.1 - start,
    ))
}

fn marks(project: &Project, shape: &Shape, piece: &BeamPiece) -> Vec<Mark> {
    let mut marks = Vec::new();
    if piece.left.is_none() {
        marks.push(Mark::line("left end, square", Face::Top, Length::ZERO, MarkKind::End).waste(Waste::Before));
    }
    if piece.right.is_none() {
        marks.push(Mark::line("right end, square", Face::Top, piece.length(), MarkKind::End).waste(Waste::After));
    }
    for (end, side) in [(piece.left, Side::Left), (piece.right, Side::Right)] {
        if let Some((number, is_lower)) = end {
            marks.extend(scarf_marks(project, shape, piece, number, is_lower, side));
        }
    }
    for post in posts_of(shape, piece) {
        marks.extend(post_marks(project, post, piece.start));
    }
    let pocket = shape.brace.beam_pocket(&project.joinery);
    for brace in braces_of(project, shape, piece) {
        let sign = if brace.side == Side::Right { 1.0 } else { -1.0 };
        let corner = brace.corner_x - piece.start;
        let depth = housing(project);
        marks.extend(super::brace::pocket_marks(project, &pocket, depth, Face::Underside, corner, sign, &brace.mark()));
    }
    marks.extend(rafter_marks(project, shape, piece));
    marks.extend(chamfer(project, piece));
    marks
}

fn scarf_marks(
    project: &Project,
    shape: &Shape,
    piece: &BeamPiece,
    number: usize,
    is_lower: bool,
    side: Side,
) -> Vec<Mark> {
    let scarf = &shape.beam.scarfs[number - 1];
    let outline = ScarfShape::new(&project.frame, &project.joinery);
    let (low, high) = (scarf.low - piece.start, scarf.high - piece.start);
    let (root, tip, waste) = match side {
        Side::Right => (low, high, Waste::After),
        Side::Left => (high, low, Waste::Before),
    };
    let other = match side {
        Side::Right => format!("B{}", piece.number + 1),
        Side::Left => format!("B{}", piece.number - 1),
    };
    let (name, stays, from) = if is_lower {
        ("LOWER lap", format!("wood stays at the bottom, carries {other}"), Face::Underside)
    } else {
        ("UPPER lap", format!("wood stays at the top, lies on {other}"), Face::Top)
    };
    let say = |value| length(value, project.units);
    let squint = if outline.squint > Length::ZERO {
        format!("; each abutment leans {} over its height, its tip longer at the lap face", say(outline.squint))
    } else {
        String::new()
    };
    let mut marks = vec![
        Mark::line(format!("scarf {number}, tip of the {name}"), Face::Outer, tip, MarkKind::End)
            .across((Length::ZERO, outline.abutment), from)
            .waste(waste)
            .note(format!("{stays}{squint}"))
            .mate(other.clone()),
        Mark::line(format!("scarf {number}, root of the {name}"), Face::Outer, root, MarkKind::Line)
            .across((outline.depth - outline.abutment, outline.depth), from)
            .note(format!("cut down {} from the other side; {}", say(outline.abutment), splay_text(project, &outline)))
            .mate(other.clone()),
    ];
    if let Some((step, gap)) = outline.table {
        let middle = (root + tip) / 2.0;
        marks.push(
            Mark::between(
                format!("scarf {number}, table and wedge gap"),
                Face::Outer,
                (middle - gap / 2.0, middle + gap / 2.0),
                MarkKind::Line,
            )
            .note(format!("step {}; this piece's step is the edge nearer its own tip", say(step)))
            .mate(other),
        );
    }
    marks
}

fn splay_text(project: &Project, outline: &ScarfShape) -> String {
    let rise = outline.lap * outline.splay();
    format!("the lap falls {} in {}", length(rise, project.units), length(outline.lap, project.units))
}

fn post_marks(project: &Project, post: &PostShape, start: Length) -> Vec<Mark> {
    let rules = &project.joinery;
    let mate = format!("P{}", post.number);
    let width = project.frame.timbers.post.ordered.depth.min(project.frame.timbers.beam.sawn.breadth);
    let cheeks = (rules.tenon_offset, rules.tenon_offset + rules.tenon_thickness);
    let mut marks = vec![
        Mark::between(
            format!("housing of {mate}"),
            Face::Underside,
            (post.left - start, post.right - start),
            MarkKind::Housing,
        )
        .across((Length::ZERO, width), Face::Outer)
        .depth(housing(project))
        .note(format!("leave {} from the top", length(reduced_beam_depth(&project.frame, rules), project.units)))
        .mate(&mate),
        Mark::between(
            format!("mortise of {mate}"),
            Face::Underside,
            (post.tenon.0 - start, post.tenon.1 - start),
            MarkKind::Mortise,
        )
        .across(cheeks, Face::Outer)
        .depth(housing(project) + post.tenon_length + rules.blind_clearance)
        .note("depth from the face")
        .mate(&mate),
    ];
    for (index, x) in peg_places(project, post).into_iter().enumerate() {
        let from_top = reduced_beam_depth(&project.frame, rules) - peg_height(project, index);
        marks.push(
            Mark::line(format!("peg {} of {mate}", index + 1), Face::Outer, post.left + x - start, MarkKind::Peg)
                .across((from_top, from_top), Face::Top)
                .note("bore from the outer face, straight through")
                .mate(&mate),
        );
    }
    marks
}

fn rafter_marks(project: &Project, shape: &Shape, piece: &BeamPiece) -> Vec<Mark> {
    let half = project.frame.timbers.rafter.ordered.breadth / 2.0;
    let scarf = ScarfShape::new(&project.frame, &project.joinery);
    let top_end = |end: Option<(usize, bool)>, otherwise: Length| -> Length {
        // The top abutment is the upper piece's tip and the lower piece's root alike.
        end.map_or(otherwise, |(number, _)| {
            let report = &shape.beam.scarfs[number - 1];
            match report.place.lower {
                Side::Left => report.low + scarf.squint,
                Side::Right => report.high - scarf.squint,
            }
        })
    };
    let (from, to) = (top_end(piece.left, piece.start), top_end(piece.right, piece.end));
    shape
        .rafters
        .iter()
        .enumerate()
        .filter(|(_, x)| **x > from && **x < to)
        .map(|(index, x)| {
            let mate = format!("R{}", index + 1);
            Mark::between(
                format!("rafter {mate}"),
                Face::Top,
                (*x - half - piece.start, *x + half - piece.start),
                MarkKind::Seat,
            )
            .note(format!(
                "X between the lines; on the whole beam {}",
                tape(*x - half, project.units, Fineness::Sixteenth)
            ))
            .mate(mate)
        })
        .collect()
}

fn chamfer(project: &Project, piece: &BeamPiece) -> Option<Mark> {
    let rules = &project.joinery;
    let range = (rules.chamfer_stop, piece.length() - rules.chamfer_stop);
    (rules.chamfer > Length::ZERO && range.1 > range.0).then(|| {
        Mark::between("chamfer, last of all", Face::Underside, range, MarkKind::Chamfer)
            .note(format!("{}; stop short of every joint, seat and scarf", length(rules.chamfer, project.units)))
    })
}
