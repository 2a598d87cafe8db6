//! The brace's sheet: zero at the post's shoulder on the long edge; and the pockets it asks of others.
use super::face::Face;
use super::mark::{Mark, MarkKind, Waste};
use super::stick::{Role, Stick};
use crate::design::Shape;
use crate::geometry::{Bulk, Pocket, Point, Polygon};
use crate::project::{Project, Side};
use crate::units::{Fineness, Length, Weight};
use crate::wording::{length, tape};

/// Every brace's sheet.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    shape.braces.iter().map(|brace| stick(project, shape, &brace.mark(), brace.post, brace.side)).collect()
}

fn stick(project: &Project, shape: &Shape, mark: &str, post: usize, side: Side) -> Stick {
    let timber = project.frame.timbers.brace;
    let brace = &shape.brace;
    let tenons = [brace.post_tenon(), brace.beam_tenon()];
    let body = brace.corners();
    let profile = outline_with_tenons(&body, &tenons);
    let (low, high) = brace.ends();
    let long_edge_down = |point: Point| Point::new(point.x, timber.sawn.depth - point.y);
    let mut bulk = Bulk::plate(&brace.outline(), timber.sawn.breadth);
    for tenon in &tenons {
        bulk = bulk.with(Bulk::plate(tenon, tenon_thickness(project)));
    }
    Stick {
        mark: mark.to_owned(),
        role: Role::Brace,
        timber,
        low,
        high,
        bulk,
        green_weight: Weight::ZERO,
        zero: "the post's shoulder on the long edge".to_owned(),
        ask: match side {
            Side::Left => "Outer face toward you, long edge down? Post end at your right?".to_owned(),
            Side::Right => "Outer face toward you, long edge down? Post end at your left?".to_owned(),
        },
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
        marks: marks(project, shape, post),
        same_as: None,
    }
}

/// Tenon and mortise share a thickness; a brace no thicker than offset and tenon is bare-faced.
fn tenon_thickness(project: &Project) -> Length {
    let breadth = project.frame.timbers.brace.sawn.breadth;
    project.joinery.tenon_thickness.min(breadth - project.joinery.tenon_offset)
}

/// The body's outline with both tenons on it: the shoulder lines replaced by the tenons' ends.
fn outline_with_tenons(body: &[Point; 6], tenons: &[Polygon; 2]) -> Polygon {
    let mut corners = vec![body[0], body[1]];
    // Beam end: nose, its floor corner, then round the tenon and back along the short edge.
    corners.extend(tenons[1].corners.iter().copied());
    corners.extend(tenons[0].corners.iter().rev().copied());
    Polygon::new(corners)
}

fn marks(project: &Project, shape: &Shape, post: usize) -> Vec<Mark> {
    let brace = &shape.brace;
    let angle = |rise: Length, run: Length| {
        let text = |value| tape(value, project.units, Fineness::Sixteenth);
        format!("bevel {} : {}", text(rise), text(run))
    };
    let outline = brace.corners();
    let post_mate = format!("P{post}");
    let mut marks = vec![
        Mark::line("shoulder at the post, on the long edge", Face::LongEdge, Length::ZERO, MarkKind::Line)
            .note(format!("{}; the theoretical toe", angle(brace.along, brace.down)))
            .mate(post_mate.clone()),
        Mark::line("shoulder at the beam, on the long edge", Face::LongEdge, brace.long_edge(), MarkKind::Line)
            .note(format!("{}; the theoretical toe", angle(brace.down, brace.along)))
            .mate("beam"),
        Mark::line("nose at the post, square to the long edge", Face::LongEdge, outline[0].x, MarkKind::End)
            .waste(Waste::Before)
            .mate(post_mate.clone()),
        Mark::line("nose at the beam, square to the long edge", Face::LongEdge, outline[1].x, MarkKind::End)
            .waste(Waste::After)
            .mate("beam"),
        Mark::line("shoulder at the beam, on the short edge", Face::ShortEdge, outline[3].x, MarkKind::Line),
        Mark::line("shoulder at the post, on the short edge", Face::ShortEdge, outline[4].x, MarkKind::Line),
    ];
    for (tenon, end) in [(brace.post_tenon(), "post"), (brace.beam_tenon(), "beam")] {
        marks.push(tenon_mark(project, &tenon, end));
        marks.push(peg(project, shape, end == "post", post));
    }
    marks.into_iter().map(Mark::thirty_seconds).collect()
}

fn tenon_mark(project: &Project, tenon: &Polygon, end: &str) -> Mark {
    let rules = &project.joinery;
    let (low, high) = tenon.bounds();
    let bare = rules.tenon_offset + tenon_thickness(project) >= project.frame.timbers.brace.sawn.breadth;
    Mark::between(format!("tenon at the {end}"), Face::LongEdge, (low.x, high.x), MarkKind::Tenon)
        .across((rules.tenon_offset, rules.tenon_offset + tenon_thickness(project)), Face::Outer)
        .note(format!(
            "{} long, square to the shoulder{}",
            length(rules.brace_tenon, project.units),
            if bare { "; bare-faced: no wood behind it" } else { "" }
        ))
}

/// The tenon's hole: a peg's distance from the shoulder, midway along the mortise; the tenon's own hole
/// is drawn toward the shoulder and toward the nose, so that the peg pulls the nose into its bearing.
fn peg(project: &Project, shape: &Shape, at_post: bool, post: usize) -> Mark {
    let rules = &project.joinery;
    let brace = &shape.brace;
    let pocket = if at_post { brace.post_pocket(rules) } else { brace.beam_pocket(rules) };
    let length_of = brace.long_edge();
    let (sin, cos) = (brace.along / length_of, brace.down / length_of);
    let (sin, cos) = if at_post { (sin, cos) } else { (cos, sin) };
    let leg = if at_post { brace.down } else { brace.along };
    let slant = rules.drawbore / 2.0_f64.sqrt();
    // From the housed line, and from C along it.
    let deep = rules.peg_from_shoulder - slant;
    let along = (pocket.mortise.0 + pocket.nose_on_floor) / 2.0 - slant;
    let (x, z) = (-deep, leg - along);
    let place = Point::new(x * sin + z * cos, z * sin - x * cos);
    let near = if at_post { place.x } else { length_of - place.x };
    let (end, mate) = if at_post { ("post", format!("P{post}")) } else { ("beam", "beam".to_owned()) };
    Mark::line(format!("peg at the {end}"), Face::Outer, near, MarkKind::Peg)
        .across((place.y, place.y), Face::LongEdge)
        .note(format!(
            "mortise hole {}, tenon hole {} from the shoulder, drawn toward shoulder and nose",
            length(rules.peg_from_shoulder, project.units),
            tape(deep, project.units, Fineness::ThirtySecond)
        ))
        .mate(mate)
}

/// The marks of a pocket in a post's face or the beam's underside. `corner` is where C lies on the
/// stick's own axis and `sign` which way the brace goes from there.
pub fn pocket_marks(
    project: &Project,
    pocket: &Pocket,
    housing: Length,
    face: Face,
    corner: Length,
    sign: f64,
    mate: &str,
) -> Vec<Mark> {
    let rules = &project.joinery;
    let at = |from_corner: Length| corner + from_corner * sign;
    let breadth = project.frame.timbers.brace.sawn.breadth;
    let cheeks = (rules.tenon_offset, rules.tenon_offset + tenon_thickness(project));
    let nose_side = if sign > 0.0 { "far" } else { "near" };
    vec![
        Mark::between(
            format!("housing of {mate}"),
            face,
            (at(pocket.corner), at(pocket.nose_on_face)),
            MarkKind::Housing,
        )
        .across((Length::ZERO, breadth), Face::Outer)
        .depth(housing)
        .note(format!(
            "the {nose_side} edge is the nose: from it the end slopes in to {} on the floor",
            tape(at(pocket.nose_on_floor), project.units, Fineness::Sixteenth)
        ))
        .mate(mate),
        Mark::between(
            format!("mortise of {mate}"),
            face,
            (at(pocket.mortise.0), at(pocket.mortise.1)),
            MarkKind::Mortise,
        )
        .across(cheeks, Face::Outer)
        .depth(housing + pocket.mortise_depth)
        .note("depth from the face")
        .mate(mate),
        Mark::line(
            format!("peg of {mate}"),
            Face::Outer,
            at((pocket.mortise.0 + pocket.nose_on_floor) / 2.0),
            MarkKind::Peg,
        )
        .note(format!(
            "{} in from the floor of the housing; bore from the outer face",
            length(rules.peg_from_shoulder, project.units)
        ))
        .mate(mate),
    ]
}

/// The wood a pocket takes: housing and mortise as upright prisms.
pub fn pocket_bulk(project: &Project, pocket: &Pocket, housing: Length) -> Bulk {
    let breadth = project.frame.timbers.brace.sawn.breadth;
    let floor = Bulk::prism(breadth * housing, pocket.corner, (pocket.nose_on_face + pocket.nose_on_floor) / 2.0);
    let mortise = Bulk::prism(tenon_thickness(project) * pocket.mortise_depth, pocket.mortise.0, pocket.mortise.1);
    floor.with(mortise)
}
