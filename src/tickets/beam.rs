//! The beam piece's sheet: zero at its left end, references top and outer.
//!
//! Where the left end is an upper lap, that end is the tip that closes against the other piece's root.
use super::brace::{PocketPlace, pocket_marks};
use super::face::Face;
use super::mark::{Mark, MarkKind, Waste};
use super::post::{chamfers, peg_height, peg_places};
use super::stick::{Role, Stick};
use crate::design::Shape;
use crate::geometry::{
    BeamPiece, Brace, Bulk, Point, Polygon, PostShape, beam_housing, lap_height, reduced_beam_depth,
};
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
        let pocket = super::brace::pocket_bulk(
            project,
            &shape.brace.beam_pocket(&project.joinery, housing(project)),
            housing(project),
        );
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
        to_left: false,
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
    beam_housing(&project.frame, &project.joinery)
}

fn posts_of<'a>(shape: &'a Shape, piece: &'a BeamPiece) -> impl Iterator<Item = &'a PostShape> {
    shape.posts.iter().filter(|post| post.stands_under(piece.start, piece.end))
}

/// Braces whose pocket lies in this piece: in a lap it is the lower one.
fn braces_of<'a>(project: &'a Project, shape: &'a Shape, piece: &'a BeamPiece) -> impl Iterator<Item = &'a Brace> {
    let pocket = shape.brace.beam_pocket(&project.joinery, housing(project));
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

/// Marks of the pieces that hold a pocket of a brace on that side of its post.
pub fn pieces_with_pockets(project: &Project, shape: &Shape, side: Side) -> Vec<String> {
    let holds = |piece: &&BeamPiece| braces_of(project, shape, piece).any(|brace| brace.side == side);
    shape.beam.pieces.iter().filter(holds).map(|piece| format!("B{}", piece.number)).collect()
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
    for brace in braces_of(project, shape, piece) {
        marks.extend(brace_marks(project, shape, piece, brace));
    }
    marks.extend(rafter_marks(project, shape, piece));
    marks.extend(chamfer(project, shape, piece));
    marks
}

fn brace_marks(project: &Project, shape: &Shape, piece: &BeamPiece, brace: &Brace) -> Vec<Mark> {
    let rules = &project.joinery;
    let reduced = reduced_beam_depth(&project.frame, rules);
    let pocket = shape.brace.beam_pocket(rules, housing(project));
    let remark = wood_over(project, shape, brace)
        .map(|wood| format!("; {} of wood left over it in the lap", length(wood, project.units)))
        .unwrap_or_default();
    let place = PocketPlace {
        mate: &brace.mark(),
        face: Face::Underside,
        housing: housing(project),
        corner: brace.corner_x - piece.start,
        sign: if brace.side == Side::Right { 1.0 } else { -1.0 },
        floor: (reduced, Face::Top),
        peg: reduced - rules.peg_from_shoulder,
        remark,
    };
    pocket_marks(project, &pocket, &place)
}

/// Least wood over a brace's mortise where it lies in a lap.
fn wood_over(project: &Project, shape: &Shape, brace: &Brace) -> Option<Length> {
    let pocket = shape.brace.beam_pocket(&project.joinery, housing(project));
    let (near, far) = brace.on_beam(&pocket);
    let scarf = shape.beam.scarfs.iter().find(|scarf| near > scarf.low && far < scarf.high)?;
    let from_root = match scarf.place.lower {
        Side::Left => far - scarf.low,
        Side::Right => scarf.high - near,
    };
    Some(lap_height(&project.frame, &project.joinery, from_root) - housing(project) - pocket.mortise_depth)
}

fn scarf_marks(
    project: &Project,
    shape: &Shape,
    piece: &BeamPiece,
    number: usize,
    is_lower: bool,
    side: Side,
) -> Vec<Mark> {
    let lap = LapEnd::new(project, shape, piece, number, is_lower, side);
    let outline = &lap.outline;
    let (name, stays, from) = if is_lower {
        ("LOWER lap", format!("wood stays at the bottom, carries {}", lap.other), Face::Underside)
    } else {
        ("UPPER lap", format!("wood stays at the top, lies on {}", lap.other), Face::Top)
    };
    let far_face = if is_lower { Face::Top } else { Face::Underside };
    let say = |value| tape(value, project.units, Fineness::Sixteenth);
    let waste = if side == Side::Right { Waste::After } else { Waste::Before };
    let arris = |lap_face: Length, outside: Length, face: Face| {
        if lap_face == outside {
            "square across".to_owned()
        } else {
            format!("{} at the lap face, {} at the {}", say(lap_face), say(outside), face.name())
        }
    };
    let mut marks = vec![
        Mark::line(format!("scarf {number}, tip of the {name}"), Face::Outer, lap.tip.0, MarkKind::End)
            .across((Length::ZERO, outline.abutment), from)
            .waste(waste)
            .note(format!("{}; {stays}", arris(lap.tip.0, lap.tip.1, from)))
            .mate(lap.other.clone()),
        Mark::line(format!("scarf {number}, root of the {name}"), Face::Outer, lap.root.0, MarkKind::Line)
            .across((outline.depth - outline.abutment, outline.depth), from)
            .note(format!(
                "{}; cut {} in from the {}; {}",
                arris(lap.root.0, lap.root.1, far_face),
                say(outline.abutment),
                far_face.name(),
                splay_text(project, outline)
            ))
            .mate(lap.other.clone()),
    ];
    marks.extend(lap.table_mark(project, from));
    marks
}

/// One end of a piece in its scarf, on the piece's own axis.
struct LapEnd {
    number: usize,
    outline: ScarfShape,
    /// The piece that it meets.
    other: String,
    /// The tip at the lap face, and at the outside.
    tip: (Length, Length),
    /// The root at the lap face, and at the outside.
    root: (Length, Length),
    /// This piece's step of the table, and its heights from the face that stays: root side, tip side.
    step: Option<(Length, Length, Length)>,
}

impl LapEnd {
    fn new(project: &Project, shape: &Shape, piece: &BeamPiece, number: usize, is_lower: bool, side: Side) -> Self {
        let outline = ScarfShape::new(&project.frame, &project.joinery);
        let other = match side {
            Side::Right => format!("B{}", piece.number + 1),
            Side::Left => format!("B{}", piece.number - 1),
        };
        let ends = scarf_end(project, shape, number, is_lower, piece.start);
        // From the underside up: outside and lap face of the abutment below, those of the one above.
        let (below, above) = ((ends[1].x, ends[0].x), (ends[ends.len() - 2].x, ends[ends.len() - 1].x));
        let (tip, root) = if is_lower { (below, above) } else { (above, below) };
        let from_face = |y: Length| if is_lower { y } else { outline.depth - y };
        let step = (ends.len() == 6).then(|| {
            let (tip_side, root_side) = if is_lower { (ends[2], ends[3]) } else { (ends[3], ends[2]) };
            (tip_side.x, from_face(root_side.y), from_face(tip_side.y))
        });
        Self { number, outline, other, tip, root, step }
    }

    fn table_mark(&self, project: &Project, from: Face) -> Option<Mark> {
        let (x, root_side, tip_side) = self.step?;
        let say = |value| tape(value, project.units, Fineness::Sixteenth);
        let gap = self.outline.table.map_or(Length::ZERO, |(_, gap)| gap);
        Some(
            Mark::line(format!("scarf {}, step of the table", self.number), Face::Outer, x, MarkKind::Line)
                .across((root_side, tip_side), from)
                .note(format!(
                    "from the {}: {} on the root's side, {} on the tip's; the wedges' gap of {} is the other piece's",
                    from.name(),
                    say(root_side),
                    say(tip_side),
                    say(gap)
                ))
                .mate(self.other.clone()),
        )
    }
}

fn splay_text(project: &Project, outline: &ScarfShape) -> String {
    let say = |value| tape(value, project.units, Fineness::Sixteenth);
    if outline.table.is_some() {
        return "the lap face runs straight from here to the step of the table, and from there to the tip".to_owned();
    }
    format!("the lap face falls {} in {}", say(outline.lap * outline.splay()), say(outline.lap))
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
                .note(format!("{} hole; bore from the outer face, straight through", length(rules.peg, project.units)))
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

/// The underside's arrises between posts, pockets and laps.
fn chamfer(project: &Project, shape: &Shape, piece: &BeamPiece) -> Vec<Mark> {
    let pocket = shape.brace.beam_pocket(&project.joinery, housing(project));
    let posts = posts_of(shape, piece).map(|post| (post.left, post.right));
    let braces = braces_of(project, shape, piece).map(|brace| brace.on_beam(&pocket));
    let laps = shape.beam.scarfs.iter().map(|scarf| (scarf.low, scarf.high));
    let joints: Vec<(Length, Length)> =
        posts.chain(braces).chain(laps).map(|(from, to)| (from - piece.start, to - piece.start)).collect();
    chamfers(project, (Length::ZERO, piece.length()), &joints, Face::Underside)
}
