//! The post as wood: tenon on its head, pockets of its braces, chamfers.
use super::super::body::{Cut, CutKind, StickBody};
use super::super::chamfer::chamfer_runs;
use super::super::pegs::{head_peg_height, head_peg_places};
use super::{RIGHT, UP, chamfer, cheeks, peg_hole, pocket};
use crate::design::Shape;
use crate::geometry::{Brace, PostShape, beam_housing, laid_out};
use crate::project::{Project, Role};
use crate::solid::{Vector, cuboid};
use crate::units::Length;

/// The post in its place.
pub fn body(project: &Project, shape: &Shape, post: &PostShape) -> StickBody {
    let sawn = project.frame.timbers.post.sawn;
    let outer = project.frame.reach;
    let (wall, right) = (outer - sawn.depth, post.left + sawn.breadth);
    let head = post.shoulder + post.tenon_length;
    let stock = cuboid(Vector::new(post.left, wall, post.foot), Vector::new(right, outer, head));
    let mut cuts = tenon(project, post, (wall, right, head));
    for brace in shape.braces.iter().filter(|brace| brace.post == post.number) {
        let found = brace.post_pocket(&project.frame);
        // Down the post, and out of its face along the beam.
        cuts.extend(pocket::cuts(project, (brace, &brace.foot), &found, sawn.depth, |down, out| {
            brace.place(out, down)
        }));
    }
    cuts.extend(reduced_head(project, post, right));
    cuts.extend(chamfers(project, shape, post, right));
    StickBody::new(
        (format!("P{}", post.number), Role::Post),
        (Vector::new(post.left, outer, post.shoulder), -UP),
        stock,
        cuts,
    )
}

fn tenon(project: &Project, post: &PostShape, (wall, right, head): (Length, Length, Length)) -> Vec<Cut> {
    let outer = project.frame.reach;
    let (inner_cheek, outer_cheek) = cheeks(project, &post.rules, post.rules.tenon_thickness);
    let box_of = |x: (Length, Length), y: (Length, Length)| {
        cuboid(Vector::new(x.0, y.0, post.shoulder), Vector::new(x.1, y.1, head))
    };
    let mut waste = box_of((post.left, right), (wall, inner_cheek));
    waste.extend(box_of((post.left, right), (outer_cheek, outer)));
    waste.extend(box_of((post.left, post.tenon.0), (inner_cheek, outer_cheek)));
    waste.extend(box_of((post.tenon.1, right), (inner_cheek, outer_cheek)));
    let mut cuts = vec![Cut::new("tenon on the head", CutKind::Shaping, waste).mate("beam")];
    for (index, x) in head_peg_places(post).into_iter().enumerate() {
        let z = post.shoulder + head_peg_height(post, index) - post.rules.drawbore;
        let hole = peg_hole(project, &post.rules, (post.left + x, z), outer - wall);
        cuts.push(Cut::new(format!("tenon peg {}", index + 1), CutKind::PegHole, hole).mate("beam"));
    }
    cuts
}

/// Where the post is larger than it is laid out, its head is cut down to that for the beam's housing.
fn reduced_head(project: &Project, post: &PostShape, right: Length) -> Option<Cut> {
    let (rules, timber) = (&project.joinery, &project.frame.timbers.post);
    let outer = project.frame.reach;
    let deep = beam_housing(&project.frame, rules);
    let (wall, inner) = (outer - timber.sawn.depth, outer - laid_out(timber, rules).depth);
    let low = post.shoulder - deep;
    let mut waste = cuboid(Vector::new(post.right, wall, low), Vector::new(right, outer, post.shoulder));
    waste.extend(cuboid(Vector::new(post.left, wall, low), Vector::new(post.right, inner, post.shoulder)));
    let is_larger = right > post.right || wall < inner;
    let is_cut = is_larger && deep > Length::ZERO && !waste.is_empty();
    is_cut.then(|| Cut::new("head cut down", CutKind::Shaping, waste).mate("beam"))
}

/// The outer face's two arrises.
fn chamfers(project: &Project, shape: &Shape, post: &PostShape, right: Length) -> Vec<Cut> {
    let rules = &project.joinery;
    let into = Vector::inches(0.0, -1.0, 0.0);
    let mut cuts = Vec::new();
    for run in chamfer_runs(rules, (Length::ZERO, post.body()), &post_joints(project, shape, post)) {
        for (x, inward) in [(post.left, RIGHT), (right, -RIGHT)] {
            let arris = Vector::new(x, project.frame.reach, post.shoulder);
            let tools = chamfer(rules, arris, (-UP, [into, inward]), run);
            cuts.push(Cut::new("chamfer", CutKind::Chamfer, tools));
        }
    }
    cuts
}

/// The pockets of a post, down from its shoulder.
pub fn post_joints(project: &Project, shape: &Shape, post: &PostShape) -> Vec<(Length, Length)> {
    let run = |brace: &Brace| {
        let (pocket, corner) = (brace.post_pocket(&project.frame), post.shoulder - brace.corner_z);
        (corner + pocket.corner, corner + pocket.nose_on_face)
    };
    shape.braces.iter().filter(|brace| brace.post == post.number).map(run).collect()
}
