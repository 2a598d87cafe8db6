//! The post's sheet: zero at the top shoulder, down is positive.
use super::face::Face;
use super::mark::{Mark, MarkKind, Waste};
use super::stick::{Role, Stick};
use crate::design::Shape;
use crate::geometry::{Bulk, Point, Polygon, PostShape};
use crate::project::{Project, Side};
use crate::units::{Length, Weight};
use crate::wording::length;

/// Every post's sheet.
pub fn sticks(project: &Project, shape: &Shape) -> Vec<Stick> {
    shape.posts.iter().map(|post| stick(project, shape, post)).collect()
}

fn stick(project: &Project, shape: &Shape, post: &PostShape) -> Stick {
    let timber = project.frame.timbers.post;
    let (breadth, depth) = (timber.sawn.breadth, timber.sawn.depth);
    let (tenon_left, tenon_right) = (post.tenon.0 - post.left, post.tenon.1 - post.left);
    let mut marks = ends(project, post);
    marks.extend(tenon(project, post));
    marks.extend(pockets(project, shape, post));
    marks.extend(chamfer(project, post));
    let rules = &project.joinery;
    let tenon_area = rules.tenon_thickness * (tenon_right - tenon_left);
    let mut bulk = Bulk::prism(timber.sawn.area(), Length::ZERO, post.body()).with(Bulk::prism(
        tenon_area,
        -post.tenon_length,
        Length::ZERO,
    ));
    for brace in shape.braces.iter().filter(|brace| brace.post == post.number) {
        bulk = bulk.without(super::brace::pocket_bulk(
            project,
            &shape.brace.post_pocket(rules),
            housing_depth(project, brace.side),
        ));
    }
    let profile = Polygon::new(vec![
        Point::new(-post.tenon_length, tenon_left),
        Point::new(-post.tenon_length, tenon_right),
        Point::new(Length::ZERO, tenon_right),
        Point::new(Length::ZERO, breadth),
        Point::new(post.body(), breadth),
        Point::new(post.body(), Length::ZERO),
        Point::new(Length::ZERO, Length::ZERO),
        Point::new(Length::ZERO, tenon_left),
    ]);
    Stick {
        mark: format!("P{}", post.number),
        role: Role::Post,
        timber,
        low: -post.tenon_length,
        high: post.body(),
        bulk,
        green_weight: Weight::ZERO,
        zero: "the top shoulder; measure down to the foot, up to the tenon's end".to_owned(),
        ask: "Outer face toward you? Head at your left?".to_owned(),
        references: (Face::Outer, Face::Left),
        faces: vec![(Face::Outer, breadth), (Face::Right, depth), (Face::Wall, breadth), (Face::Left, depth)],
        profile: (Face::Outer, profile),
        profile_lines: Vec::new(),
        whole_line: Some(post.left),
        marks,
        same_as: None,
    }
}

/// Depth of a brace's housing from the real face: the reference face keeps the rule's depth, the other
/// takes what the stick is over size.
fn housing_depth(project: &Project, side: Side) -> Length {
    let timber = project.frame.timbers.post;
    match side {
        Side::Left => project.joinery.housing,
        Side::Right => timber.sawn.breadth - (timber.ordered.breadth - project.joinery.housing),
    }
}

fn ends(project: &Project, post: &PostShape) -> Vec<Mark> {
    let foot = if post.pier_measured {
        format!("pier P{} was measured", post.number)
    } else {
        format!("planned: measure pier P{} before you cut", post.number)
    };
    let clearance = length(project.joinery.shrink_clearance, project.units);
    vec![
        Mark::line("foot, square all round", Face::Outer, post.body(), MarkKind::End).waste(Waste::After).note(foot),
        Mark::line("top shoulder, square all round", Face::Outer, Length::ZERO, MarkKind::Line)
            .note(format!("undercut {clearance} inside the line"))
            .mate("beam"),
    ]
}

fn tenon(project: &Project, post: &PostShape) -> Vec<Mark> {
    let rules = &project.joinery;
    let cheeks = (rules.tenon_offset, rules.tenon_offset + rules.tenon_thickness);
    let edges = (post.tenon.0 - post.left, post.tenon.1 - post.left);
    let up = (-post.tenon_length, Length::ZERO);
    let mut marks = vec![
        Mark::between("tenon cheeks", Face::Left, up, MarkKind::Tenon)
            .across(cheeks, Face::Outer)
            .note("keep the wood between the cheeks; saw the rest down to the shoulder"),
        Mark::between("tenon width", Face::Outer, up, MarkKind::Tenon)
            .across(edges, Face::Left)
            .note("chamfer its end for entry"),
    ];
    for (index, x) in peg_places(project, post).into_iter().enumerate() {
        marks.push(peg(project, post, index, x));
    }
    marks
}

/// Centres of the head's pegs from the post's left face, one or two.
pub fn peg_places(project: &Project, post: &PostShape) -> Vec<Length> {
    let (low, high) = (post.tenon.0 - post.left, post.tenon.1 - post.left);
    if high - low >= project.joinery.two_pegs_from {
        let quarter = (high - low) / 4.0;
        vec![low + quarter, high - quarter]
    } else {
        vec![(low + high) / 2.0]
    }
}

/// Height of a head peg above the shoulder: the second is half a peg higher, off the first one's grain.
pub fn peg_height(project: &Project, index: usize) -> Length {
    project.joinery.peg_from_shoulder + project.joinery.peg * (0.5 * index as f64)
}

fn peg(project: &Project, post: &PostShape, index: usize, x: Length) -> Mark {
    let rules = &project.joinery;
    let hole = peg_height(project, index);
    let relish = post.tenon_length - hole;
    let holds = if relish >= rules.peg * 4.0 { "" } else { "; locating, no tension: " };
    let says = if holds.is_empty() {
        String::new()
    } else {
        format!("{holds}{} of wood beyond it", length(relish, project.units))
    };
    Mark::line(format!("tenon peg {}", index + 1), Face::Outer, -(hole - rules.drawbore), MarkKind::Peg)
        .across((x, x), Face::Left)
        .note(format!(
            "beam hole {}, tenon hole {} from the shoulder{says}",
            length(hole, project.units),
            length(hole - rules.drawbore, project.units)
        ))
        .mate("beam")
}

fn pockets(project: &Project, shape: &Shape, post: &PostShape) -> Vec<Mark> {
    let rules = &project.joinery;
    let pocket = shape.brace.post_pocket(rules);
    let both = shape.braces.iter().filter(|brace| brace.post == post.number).count() == 2;
    let mut marks = Vec::new();
    for brace in shape.braces.iter().filter(|brace| brace.post == post.number) {
        let face = match brace.side {
            Side::Left => Face::Left,
            Side::Right => Face::Right,
        };
        let housing = housing_depth(project, brace.side);
        marks.extend(super::brace::pocket_marks(project, &pocket, housing, face, Length::ZERO, 1.0, &brace.mark()));
        if both && brace.side == Side::Left {
            let web = project.frame.timbers.post.ordered.breadth - (rules.housing + pocket.mortise_depth) * 2.0;
            if let Some(last) = marks.last_mut() {
                last.note = format!("{}; web left to the other brace {}", last.note, length(web, project.units));
            }
        }
    }
    marks
}

fn chamfer(project: &Project, post: &PostShape) -> Option<Mark> {
    let rules = &project.joinery;
    let range = (rules.chamfer_stop, post.body() - rules.chamfer_stop);
    (rules.chamfer > Length::ZERO && range.1 > range.0).then(|| {
        Mark::between("chamfer, last of all", Face::Outer, range, MarkKind::Chamfer).note(format!(
            "{}; stop {} short of every joint",
            length(rules.chamfer, project.units),
            length(rules.chamfer_stop / 4.0, project.units)
        ))
    })
}
