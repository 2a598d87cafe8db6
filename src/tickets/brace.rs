//! The brace's sheet: zero at the post's shoulder on the long edge; and the pockets it asks of others.
use super::mark::{Mark, MarkKind, Waste};
use super::stick::Stick;
use crate::design::Shape;
use crate::geometry::{Brace, BraceShape, Bulk, Pocket, Point, Polygon};
use crate::joinery::{brace_peg, brace_peg_holds, brace_tenon_thickness};
use crate::materials::Face;
use crate::project::{JoineryRules, Project, Role, Side};
use crate::units::{Fineness, Length, Weight};
use crate::wording::{length, tape};

/// Every brace's sheet.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    shape.braces.iter().map(|brace| stick(project, brace)).collect()
}

fn stick(project: &Project, one: &Brace) -> Stick {
    let timber = project.frame.timbers.brace;
    let brace = &one.form;
    let tenons = [brace.post_tenon(), brace.beam_tenon()];
    let body = brace.corners();
    let profile = outline_with_tenons(brace, &body, &tenons);
    let (low, high) = brace.ends();
    let long_edge_down = |point: Point| Point::new(point.x, timber.sawn.depth - point.y);
    let mut bulk = Bulk::plate(&brace.outline(), timber.sawn.breadth);
    for (tenon, rules) in tenons.iter().zip([&one.foot, &one.head]) {
        bulk = bulk.with(Bulk::plate(tenon, brace_tenon_thickness(project, rules)));
    }
    if let Some(hollow) = brace.hollow() {
        bulk = bulk.without(Bulk::plate(&hollow, timber.sawn.breadth));
    }
    for (at_post, rules) in [(true, &one.foot), (false, &one.head)] {
        let hole = brace_peg(one, at_post);
        bulk = bulk.without(Bulk::hole(rules.peg, brace_tenon_thickness(project, rules), hole.x));
    }
    Stick {
        mark: one.mark(),
        role: Role::Brace,
        timber,
        low,
        high,
        bulk,
        is_measured: false,
        green_weight: Weight::ZERO,
        zero: "the post's shoulder on the long edge".to_owned(),
        ask: ask(one),
        references: (Face::Outer, Face::LongEdge),
        faces: vec![
            (Face::Outer, timber.sawn.depth),
            (Face::LongEdge, timber.sawn.breadth),
            (Face::Wall, timber.sawn.depth),
            (Face::ShortEdge, timber.sawn.breadth),
        ],
        profile: (Face::Outer, profile.map(long_edge_down)),
        profile_lines: vec![
            (long_edge_down(body[5]), long_edge_down(body[4])),
            (long_edge_down(body[2]), long_edge_down(body[3])),
        ],
        whole_line: None,
        to_left: one.side == Side::Left && !is_either_hand(one),
        marks: marks(project, one),
        same_as: None,
    }
}

/// Both ends alike: the brace fits on either side of a post.
pub fn is_either_hand(brace: &Brace) -> bool {
    brace.form.along == brace.form.down && brace.foot == brace.head
}

fn ask(brace: &Brace) -> String {
    let lies = "Outer face toward you, long edge down?";
    match brace.side {
        _ if is_either_hand(brace) => format!("{lies} Post end at your left? Either hand: both ends are alike."),
        Side::Left => format!("{lies} Post end at your RIGHT? A left-hand brace: the mirror of a right-hand one."),
        Side::Right => format!("{lies} Post end at your left? A right-hand brace."),
    }
}

/// The body's outline with both tenons on it: the shoulder lines replaced by the tenons' ends.
fn outline_with_tenons(brace: &BraceShape, body: &[Point; 6], tenons: &[Polygon; 2]) -> Polygon {
    let mut corners = vec![body[0]];
    corners.extend(brace.hollow().into_iter().flat_map(|hollow| hollow.corners));
    corners.push(body[1]);
    // Beam end: nose, its floor corner, then round the tenon and back along the short edge.
    corners.extend(tenons[1].corners.iter().copied());
    corners.extend(tenons[0].corners.iter().rev().copied());
    Polygon::new(corners)
}

fn marks(project: &Project, one: &Brace) -> Vec<Mark> {
    let (brace, post) = (&one.form, one.post);
    let angle = |rise: Length, run: Length| {
        let text = |value| tape(value, project.units, Fineness::Sixteenth);
        format!("bevel {} : {}", text(rise), text(run))
    };
    let outline = brace.corners();
    let nose = |on_shoulder: Point| {
        let deep = tape(on_shoulder.y, project.units, Fineness::ThirtySecond);
        format!("it meets the shoulder {deep} in from the long edge")
    };
    let post_mate = format!("P{post}");
    let mut marks = vec![
        Mark::line("shoulder at the post, on the long edge", Face::LongEdge, Length::ZERO, MarkKind::Line)
            .note(format!("{}; the theoretical toe", angle(brace.along, brace.down)))
            .told([brace.along, brace.down])
            .mate(post_mate.clone()),
        Mark::line("shoulder at the beam, on the long edge", Face::LongEdge, brace.long_edge(), MarkKind::Line)
            .note(format!("{}; the theoretical toe", angle(brace.down, brace.along)))
            .told([brace.down, brace.along])
            .mate("beam"),
        Mark::line("nose at the post, square to the long edge", Face::LongEdge, outline[0].x, MarkKind::End)
            .waste(Waste::Before)
            .note(nose(outline[5]))
            .told([outline[5].y])
            .mate(post_mate.clone()),
        Mark::line("nose at the beam, square to the long edge", Face::LongEdge, outline[1].x, MarkKind::End)
            .waste(Waste::After)
            .note(nose(outline[2]))
            .told([outline[2].y])
            .mate("beam"),
        Mark::line("shoulder at the beam, on the short edge", Face::ShortEdge, outline[3].x, MarkKind::Line),
        Mark::line("shoulder at the post, on the short edge", Face::ShortEdge, outline[4].x, MarkKind::Line),
    ];
    for (tenon, end) in [(brace.post_tenon(), "post"), (brace.beam_tenon(), "beam")] {
        let (mate, rules) = if end == "post" { (post_mate.as_str(), &one.foot) } else { ("beam", &one.head) };
        marks.extend(tenon_marks((project, rules), &tenon, end, mate));
        marks.push(peg(project, one, end == "post", mate));
    }
    marks.extend(hollow_marks(project, brace));
    marks.into_iter().map(Mark::thirty_seconds).collect()
}

/// The hollow of a curved brace: its ends, and its depth at the quarters and the middle, where a thin batten is bent through.
fn hollow_marks(project: &Project, brace: &BraceShape) -> Vec<Mark> {
    if brace.hollow().is_none() {
        return Vec::new();
    }
    let (low, high) = brace.hollow_ends();
    let say = |value| tape(value, project.units, Fineness::ThirtySecond);
    let arc = format!(
        "an arc of radius {}: bend a thin batten through the marks on the outer face, and on the wall face",
        say(brace.hollow_radius())
    );
    let hollow = Mark::between("hollow of the long edge", Face::LongEdge, (low, high), MarkKind::Chamfer);
    let mut marks = vec![hollow.note(arc).told([brace.hollow_radius()])];
    for quarters in 1..4 {
        let x = low + (high - low) * (f64::from(quarters) / 4.0);
        let depth = brace.hollow_at(x);
        marks.push(
            Mark::line(
                format!("depth of the hollow, {quarters} quarter{} along", if quarters == 1 { "" } else { "s" }),
                Face::Outer,
                x,
                MarkKind::Chamfer,
            )
            .across((Length::ZERO, depth), Face::LongEdge)
            .note(format!("{} in from the long edge", say(depth))),
        );
    }
    marks
}

/// The tenon's cheeks from the nose, its tip inside the wood's width, and its end on the short edge.
fn tenon_marks((project, rules): (&Project, &JoineryRules), tenon: &Polygon, end: &str, mate: &str) -> Vec<Mark> {
    let cheeks = (rules.tenon_offset, rules.tenon_offset + brace_tenon_thickness(project, rules));
    let is_bare = cheeks.1 >= project.frame.timbers.brace.sawn.breadth;
    let bare = if is_bare { "; bare-faced: no wood behind it" } else { "" };
    let [nose, tip, end_corner, _] = tenon.corners[..] else { return Vec::new() };
    vec![
        Mark::line(format!("tenon at the {end}, tip"), Face::Outer, tip.x, MarkKind::Tenon)
            .across((tip.y, tip.y), Face::LongEdge)
            .note(format!("{} square to the shoulder", length(rules.brace_tenon, project.units)))
            .told([rules.brace_tenon])
            .mate(mate),
        Mark::line(format!("tenon at the {end}, cheeks from the nose"), Face::LongEdge, nose.x, MarkKind::Tenon)
            .across(cheeks, Face::Outer)
            .note(format!("keep the wood between them{bare}"))
            .mate(mate),
        Mark::line(
            format!("tenon at the {end}, end on the short edge"),
            Face::ShortEdge,
            end_corner.x,
            MarkKind::Tenon,
        )
        .across(cheeks, Face::Outer)
        .note(format!("keep the wood between the cheeks{bare}"))
        .mate(mate),
    ]
}

/// The tenon's hole.
pub fn peg(project: &Project, brace: &Brace, at_post: bool, mate: &str) -> Mark {
    let rules = if at_post { &brace.foot } else { &brace.head };
    let place = brace_peg(brace, at_post);
    let end = if at_post { "post" } else { "beam" };
    let says = if brace_peg_holds(project, brace, at_post) { "" } else { "; locating, no tension" };
    Mark::line(format!("peg at the {end}"), Face::Outer, place.x, MarkKind::Peg)
        .across((place.y, place.y), Face::LongEdge)
        .bored(rules.peg, project.joinery.peg)
        .note(format!(
            "{} hole, {} from the mortise's hole, along the brace away from the nose{says}",
            length(rules.peg, project.units),
            tape(rules.drawbore, project.units, Fineness::ThirtySecond)
        ))
        .told([rules.peg, rules.drawbore])
        .mate(mate)
}

/// Where a pocket lies in the stick that takes it.
pub struct PocketPlace<'a> {
    /// The brace that enters it.
    pub mate: &'a str,
    /// The rules of that joint.
    pub rules: &'a JoineryRules,
    /// The face it is cut in.
    pub face: Face,
    /// Depth of its housing below the real face.
    pub housing: Length,
    /// The corner C on the stick's own axis.
    pub corner: Length,
    /// Which way the brace goes from there: 1 or −1.
    pub sign: f64,
    /// The floor of the housing, measured from a reference face.
    pub floor: (Length, Face),
    /// The peg's hole, measured from the same face.
    pub peg: Length,
    /// What else to know of it.
    pub remark: String,
}

/// The marks of a pocket in a post's face or the beam's underside.
pub fn pocket_marks(project: &Project, pocket: &Pocket, place: &PocketPlace) -> Vec<Mark> {
    let PocketPlace { mate, rules, face, housing, floor, .. } = place;
    let at = |from_corner: Length| place.corner + from_corner * place.sign;
    let breadth = project.frame.timbers.brace.sawn.breadth;
    let cheeks = (rules.tenon_offset, rules.tenon_offset + brace_tenon_thickness(project, rules));
    let nose_side = if place.sign > 0.0 { "far" } else { "near" };
    let say = |value| tape(value, project.units, Fineness::Sixteenth);
    let edges = |from: Length, to: Length| (at(from), at(to));
    let square_from = pocket.square_from().unwrap_or_default();
    let square = pocket
        .square_from()
        .map_or_else(String::new, |above| format!("goes square in to {} above the floor, then ", say(above)));
    vec![
        Mark::between(
            format!("housing of {mate}"),
            *face,
            edges(pocket.corner, pocket.nose_on_face),
            MarkKind::Housing,
        )
        .across((Length::ZERO, breadth), Face::Outer)
        .depth(*housing)
        .note(format!(
            "floor {} from the {}; the {nose_side} edge is the nose: from it the end {square}slopes in to {} on the \
             floor, from the other edge to {}{}",
            say(floor.0),
            floor.1.name(),
            say(at(pocket.nose_on_floor)),
            say(at(pocket.mortise.0)),
            place.remark
        ))
        .told([pocket.nose_on_face - pocket.nose_on_floor, pocket.mortise.0 - pocket.corner, square_from])
        .mate(*mate),
        Mark::between(
            format!("mortise of {mate}"),
            *face,
            edges(pocket.mortise.0, pocket.mortise.1),
            MarkKind::Mortise,
        )
        .across(cheeks, Face::Outer)
        .depth(*housing + pocket.mortise_depth)
        .note(format!("depth from the face; {} below the floor of the housing", say(pocket.mortise_depth)))
        .told([pocket.mortise_depth])
        .mate(*mate),
        Mark::line(format!("peg of {mate}"), Face::Outer, at(pocket.peg()), MarkKind::Peg)
            .across((place.peg, place.peg), floor.1)
            .bored(rules.peg, project.joinery.peg)
            .note(format!("{} hole; bore from the outer face", length(rules.peg, project.units)))
            .told([rules.peg])
            .mate(*mate),
    ]
}

/// The wood a pocket takes from a stick of that thickness, measured from the corner: housing, mortise, and the peg's hole
/// on both sides of the mortise.
pub fn pocket_bulk(project: &Project, rules: &JoineryRules, pocket: &Pocket, thickness: Length) -> Bulk {
    let breadth = project.frame.timbers.brace.sawn.breadth;
    let across = brace_tenon_thickness(project, rules);
    let housing = Polygon::new(pocket.housing_outline());
    Bulk::plate(&housing, breadth)
        .with(Bulk::prism(across * pocket.mortise_depth, pocket.mortise.0, pocket.mortise.1))
        .with(Bulk::hole(rules.peg, thickness - across, pocket.peg()))
}
