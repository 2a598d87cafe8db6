//! The beam piece's sheet: zero at its left end, references top and outer.
//!
//! Where the left end is an upper lap, that end is the tip that closes against the other piece's root.
use super::brace::{PocketPlace, pocket_marks};
use super::dry_fit::moved_words;
use super::mark::{Mark, MarkKind, Waste};
use super::post::chamfers;
use super::stick::{Stick, in_order};
use crate::design::Shape;
use crate::geometry::{
    BeamPiece, Brace, Bulk, Point, PostShape, beam_housing, laid_out, reduced_beam_depth, wood_over,
};
use crate::joinery::{
    ScarfShape, beam_joints, beam_outline, braces_of, chamfer_bulk, chamfer_runs, head_peg_height, head_peg_places,
    posts_of, scarf_end,
};
use crate::materials::Face;
use crate::project::{JoineryRules, Project, Role, Side};
use crate::units::{Fineness, Length, Weight};
use crate::wording::{length, tape};

/// Every beam piece's sheet.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    shape.beam.pieces.iter().map(|piece| stick(project, shape, piece)).collect()
}

/// A piece by what the dry fits found. One that was cut to another layout stays as it is drawn.
fn stick(project: &Project, shape: &Shape, piece: &BeamPiece) -> Stick {
    let found = project.progress.dry_fit_shift(piece.number).filter(|(_, error)| *error != Length::ZERO);
    let Some((scarf, error)) = found else { return sheet_of(project, shape, piece, Length::ZERO) };
    let mut moved = sheet_of(project, shape, piece, error);
    let cut = project.progress.cut.get(&moved.mark);
    if cut.is_some_and(|cut| !moved.is_cut_to(cut)) {
        return sheet_of(project, shape, piece, Length::ZERO);
    }
    moved.zero = format!("{}; {}", moved.zero, moved_words(project, scarf, error));
    moved
}

/// A piece that came to lie farther to the right by that error: its places on the ground lie nearer to its zero.
pub(super) fn sheet_of(project: &Project, shape: &Shape, piece: &BeamPiece, error: Length) -> Stick {
    let timber = project.frame.timbers.beam;
    let (breadth, depth) = (timber.sawn.breadth, timber.sawn.depth);
    let outline = beam_outline(project, shape, piece);
    let bulk = bulk(project, shape, piece, Bulk::plate(&outline, breadth));
    let zero = match piece.left {
        None => "the beam's left end".to_owned(),
        Some((number, true)) => format!("its left end: the tip of the lower lap of scarf {number}"),
        Some((number, false)) => format!("its left end: the tip that closes scarf {number}"),
    };
    // As drawn, a face's upper edge is at the top: measure the outline down from it.
    let profile = outline.map(|point| Point::new(point.x, depth - point.y));
    let on_ground = BeamPiece { start: piece.start + error, ..*piece };
    let mut marks = scarf_ends(project, shape, piece);
    marks.extend(places(project, shape, &on_ground));
    in_order(&mut marks);
    Stick {
        mark: format!("B{}", piece.number),
        role: Role::Beam,
        timber,
        low: Length::ZERO,
        high: if piece.right.is_none() { on_ground.length() } else { piece.length() },
        bulk,
        is_measured: false,
        green_weight: Weight::ZERO,
        zero,
        ask: "Outer face toward you, top up? Left end at your left?".to_owned(),
        references: (Face::Top, Face::Outer),
        faces: vec![(Face::Top, breadth), (Face::Outer, depth), (Face::Underside, breadth), (Face::Wall, depth)],
        profile: (Face::Outer, profile),
        profile_lines: Vec::new(),
        whole_line: Some(piece.start),
        to_left: false,
        marks,
        same_as: None,
    }
}

/// Depth of a joint's housing at a place along the beam, where the real stick was measured.
fn housing_at(project: &Project, rules: &JoineryRules, piece: &BeamPiece, x: Length) -> Length {
    let (sawn, mark) = (project.frame.timbers.beam.sawn, format!("B{}", piece.number));
    let real = project.progress.size_at(&mark, sawn, x - piece.start).depth;
    real - reduced_beam_depth(&project.frame, rules)
}

/// Depth of a housing in the underside, from the real face.
fn housing(project: &Project) -> Length {
    beam_housing(&project.frame, &project.joinery)
}

/// The piece's outline less its mortises, housings, pegs' holes and chamfers.
fn bulk(project: &Project, shape: &Shape, piece: &BeamPiece, outline: Bulk) -> Bulk {
    let rules = &project.joinery;
    let mut bulk = outline;
    for post in posts_of(shape, piece) {
        bulk = bulk.without(post_joint_bulk(project, post, piece.start));
    }
    for brace in braces_of(project, shape, piece) {
        let found = brace.beam_pocket(&project.frame);
        let pocket = super::brace::pocket_bulk(project, &brace.head, &found, project.frame.timbers.beam.sawn.breadth);
        let corner = brace.corner_x - piece.start;
        let at = match brace.side {
            Side::Left => corner - pocket.balance(),
            Side::Right => corner + pocket.balance(),
        };
        bulk = bulk.without(Bulk::new(pocket.volume(), at));
    }
    let runs = chamfer_runs(rules, (Length::ZERO, piece.length()), &beam_joints(project, shape, piece));
    bulk.without(chamfer_bulk(rules, &runs))
}

/// Marks of the pieces that hold a pocket of one of those braces.
pub fn pieces_with_pockets(project: &Project, shape: &Shape, braces: &[&Brace]) -> Vec<String> {
    let holds = |piece: &&BeamPiece| braces_of(project, shape, piece).any(|brace| braces.contains(&brace));
    shape.beam.pieces.iter().filter(holds).map(|piece| format!("B{}", piece.number)).collect()
}

fn post_joint_bulk(project: &Project, post: &PostShape, start: Length) -> Bulk {
    let rules = &post.rules;
    let breadth = project.frame.timbers.beam.sawn.breadth;
    let floor = housing(project) * laid_out(&project.frame.timbers.post, rules).depth.min(breadth);
    let mortise = rules.tenon_thickness * (post.tenon_length + rules.blind_clearance);
    let mut bulk = Bulk::prism(floor, post.left - start, post.right - start).with(Bulk::prism(
        mortise,
        post.tenon.0 - start,
        post.tenon.1 - start,
    ));
    for x in head_peg_places(post) {
        bulk = bulk.with(Bulk::hole(rules.peg, breadth - rules.tenon_thickness, post.left + x - start));
    }
    bulk
}

/// The ends that are made first: the left end, and both ends of scarfs.
fn scarf_ends(project: &Project, shape: &Shape, piece: &BeamPiece) -> Vec<Mark> {
    let mut marks = Vec::new();
    if piece.left.is_none() {
        marks.push(Mark::line("left end, square", Face::Top, Length::ZERO, MarkKind::End).waste(Waste::Before));
    }
    for (end, side) in [(piece.left, Side::Left), (piece.right, Side::Right)] {
        if let Some((number, is_lower)) = end {
            // A lap face leans: of two places in sixteenths it would be off by more than one.
            let lap = scarf_marks(project, shape, piece, number, is_lower, side);
            marks.extend(lap.into_iter().map(Mark::thirty_seconds));
        }
    }
    marks
}

/// What has its place on the ground: the free right end, posts, braces, rafters, and the chamfers between them.
fn places(project: &Project, shape: &Shape, piece: &BeamPiece) -> Vec<Mark> {
    let mut marks = Vec::new();
    if piece.right.is_none() {
        marks.push(Mark::line("right end, square", Face::Top, piece.length(), MarkKind::End).waste(Waste::After));
    }
    for post in posts_of(shape, piece) {
        marks.extend(post_marks(project, post, piece));
    }
    for brace in braces_of(project, shape, piece) {
        marks.extend(brace_marks(project, shape, piece, brace));
    }
    marks.extend(rafter_marks(project, shape, piece));
    marks.extend(chamfer(project, shape, piece));
    marks
}

fn brace_marks(project: &Project, shape: &Shape, piece: &BeamPiece, brace: &Brace) -> Vec<Mark> {
    let rules = &brace.head;
    let reduced = reduced_beam_depth(&project.frame, rules);
    let leg = brace.form.along * 0.75 * if brace.side == Side::Right { 1.0 } else { -1.0 };
    let housing = housing_at(project, rules, piece, brace.corner_x + leg);
    let pocket = brace.form.beam_pocket(rules, housing);
    let remark = wood_left(project, shape, brace)
        .map(|wood| format!("; {} of wood left over it in the lap", length(wood, project.units)))
        .unwrap_or_default();
    let place = PocketPlace {
        mate: &brace.mark(),
        rules,
        face: Face::Underside,
        housing,
        corner: brace.corner_x - piece.start,
        sign: if brace.side == Side::Right { 1.0 } else { -1.0 },
        floor: (reduced, Face::Top),
        peg: reduced - rules.peg_from_shoulder,
        remark,
    };
    pocket_marks(project, &pocket, &place)
}

/// Least wood over a brace's mortise where it lies in a lap.
fn wood_left(project: &Project, shape: &Shape, brace: &Brace) -> Option<Length> {
    let pocket = brace.beam_pocket(&project.frame);
    let (near, far) = brace.on_beam(&pocket);
    let scarf = shape.beam.scarfs.iter().find(|scarf| near > scarf.low && far < scarf.high)?;
    let root = if scarf.place.lower == Side::Left { scarf.low } else { scarf.high };
    let from_root = |along: Length| (brace.place(along, Length::ZERO).x - root).abs();
    let mortise = (from_root(pocket.mortise.0), from_root(pocket.mortise.1));
    Some(wood_over(&project.frame, (&project.joinery, scarf.kind), mortise, pocket.housing + pocket.mortise_depth))
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
    let say = |value| tape(value, project.units, Fineness::ThirtySecond);
    let waste = if side == Side::Right { Waste::After } else { Waste::Before };
    let arris = |lap_face: Length, outside: Length, face: Face| {
        if lap_face == outside {
            "square across".to_owned()
        } else {
            format!("{} at the lap face, {} at the {}", say(lap_face), say(outside), face.name())
        }
    };
    if outline.blade > Length::ZERO {
        return lap.bladed_marks(project, (name, &stays, from), waste);
    }
    let mut marks = vec![
        Mark::line(format!("scarf {number}, tip of the {name}"), Face::Outer, lap.tip.0, MarkKind::End)
            .across((Length::ZERO, outline.abutment), from)
            .waste(waste)
            .note(format!("{}; {stays}", arris(lap.tip.0, lap.tip.1, from)))
            .told([outline.squint])
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
            .told([outline.squint, outline.abutment, outline.lap, outline.lap * outline.splay()])
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
        let outline = ScarfShape::of(project, &shape.beam.scarfs[number - 1]);
        let other = match side {
            Side::Right => format!("B{}", piece.number + 1),
            Side::Left => format!("B{}", piece.number - 1),
        };
        let ends = scarf_end(project, shape, number, is_lower, piece.start);
        // From the underside up: outside and lap face of the abutment below, those of the one above.
        let (below, above) = ((ends[1].x, ends[0].x), (ends[ends.len() - 2].x, ends[ends.len() - 1].x));
        let (tip, root) = if is_lower { (below, above) } else { (above, below) };
        let from_face = |y: Length| if is_lower { y } else { outline.depth - y };
        let step = outline.table.is_some().then(|| {
            let (tip_side, root_side) = if is_lower { (ends[2], ends[3]) } else { (ends[3], ends[2]) };
            (tip_side.x, from_face(root_side.y), from_face(tip_side.y))
        });
        Self { number, outline, other, tip, root, step }
    }

    /// Shoulder and tongue at the tip, slot and shoulder at the root.
    fn bladed_marks(&self, project: &Project, (name, stays, from): (&str, &str, Face), waste: Waste) -> Vec<Mark> {
        let (number, depth) = (self.number, self.outline.depth);
        let (half, quarter) = (depth / 2.0, depth / 4.0);
        let way = if self.tip.0 > self.root.0 { self.outline.blade } else { -self.outline.blade };
        let (tongue, slot) = (self.tip.0 + way, self.root.0 - way);
        let say = |value| tape(value, project.units, Fineness::ThirtySecond);
        let line = |what: &str, at: Length, kind: MarkKind, across: (Length, Length)| {
            Mark::line(format!("scarf {number}, {what}"), Face::Outer, at, kind)
                .across(across, from)
                .mate(self.other.clone())
        };
        vec![
            line(&format!("end of the tongue of the {name}"), tongue, MarkKind::End, (quarter, half))
                .waste(waste)
                .note(format!("square across; {stays}")),
            line(&format!("shoulder at the tip of the {name}"), self.tip.0, MarkKind::Line, (Length::ZERO, quarter))
                .note(format!("the tongue runs on {} past it", say(self.outline.blade)))
                .told([self.outline.blade]),
            line(&format!("root of the {name}"), self.root.0, MarkKind::Line, (half + quarter, depth))
                .note(format!("square across, {} in from the far face; the lap lies at {}", say(quarter), say(half)))
                .told([quarter, half]),
            line("floor of the slot for the other tongue", slot, MarkKind::Line, (half, half + quarter))
                .note(format!("the slot is {} deep past the root and as wide as the beam", say(self.outline.blade)))
                .told([self.outline.blade]),
        ]
    }

    fn table_mark(&self, project: &Project, from: Face) -> Option<Mark> {
        let (x, root_side, tip_side) = self.step?;
        let say = |value| tape(value, project.units, Fineness::ThirtySecond);
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
                .told([gap])
                .mate(self.other.clone()),
        )
    }
}

fn splay_text(project: &Project, outline: &ScarfShape) -> String {
    let say = |value| tape(value, project.units, Fineness::ThirtySecond);
    if outline.table.is_some() {
        return "the lap face runs straight from here to the step of the table, and from there to the tip".to_owned();
    }
    format!("the lap face falls {} in {}", say(outline.lap * outline.splay()), say(outline.lap))
}

fn post_marks(project: &Project, post: &PostShape, piece: &BeamPiece) -> Vec<Mark> {
    let rules = &post.rules;
    let mate = format!("P{}", post.number);
    let width = laid_out(&project.frame.timbers.post, rules).depth.min(project.frame.timbers.beam.sawn.breadth);
    let housing = housing_at(project, rules, piece, post.middle());
    let reduced = reduced_beam_depth(&project.frame, rules);
    let start = piece.start;
    let cheeks = (rules.tenon_offset, rules.tenon_offset + rules.tenon_thickness);
    let mut marks = vec![
        Mark::between(
            format!("housing of {mate}"),
            Face::Underside,
            (post.left - start, post.right - start),
            MarkKind::Housing,
        )
        .across((Length::ZERO, width), Face::Outer)
        .depth(housing)
        .note(format!("leave {} from the top", length(reduced, project.units)))
        .told([reduced])
        .mate(&mate),
        Mark::between(
            format!("mortise of {mate}"),
            Face::Underside,
            (post.tenon.0 - start, post.tenon.1 - start),
            MarkKind::Mortise,
        )
        .across(cheeks, Face::Outer)
        .depth(housing + post.tenon_length + rules.blind_clearance)
        .note("depth from the face")
        .mate(&mate),
    ];
    for (index, x) in head_peg_places(post).into_iter().enumerate() {
        let from_top = reduced - head_peg_height(post, index);
        marks.push(
            Mark::line(format!("peg {} of {mate}", index + 1), Face::Outer, post.left + x - start, MarkKind::Peg)
                .across((from_top, from_top), Face::Top)
                .bored(rules.peg, project.joinery.peg)
                .note(format!("{} hole; bore from the outer face, straight through", length(rules.peg, project.units)))
                .told([rules.peg])
                .mate(&mate),
        );
    }
    marks
}

fn rafter_marks(project: &Project, shape: &Shape, piece: &BeamPiece) -> Vec<Mark> {
    let half = project.frame.timbers.rafter.ordered.breadth / 2.0;
    let top_end = |end: Option<(usize, bool)>, otherwise: Length| -> Length {
        // The top abutment is the upper piece's tip and the lower piece's root alike.
        end.map_or(otherwise, |(number, _)| {
            let report = &shape.beam.scarfs[number - 1];
            let squint = ScarfShape::of(project, report).squint;
            match report.place.lower {
                Side::Left => report.low + squint,
                Side::Right => report.high - squint,
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
    let joints = beam_joints(project, shape, piece);
    chamfers(project, (Length::ZERO, piece.length()), &joints, Face::Underside)
}
