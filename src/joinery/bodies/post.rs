//! The post as wood: tenon on its head, pockets of its braces, chamfers.
use super::super::beam_piece::housing_over;
use super::super::body::{Cut, CutKind, StickBody};
use super::super::chamfer::chamfer_runs;
use super::super::pegs::{head_peg_height, head_peg_places};
use super::super::tie_holes::post_holes;
use super::real::{Arris, Real};
use super::{OUT, RIGHT, UP, chamfer_between, cheeks, peg_hole, pocket};
use crate::design::Shape;
use crate::geometry::{Brace, PostShape, housing_in, laid_out};
use crate::materials::Face;
use crate::project::{Project, Role};
use crate::solid::{Vector, cuboid};
use crate::units::Length;

/// The post in its place.
pub fn body(project: &Project, shape: &Shape, post: &PostShape) -> StickBody {
    let sawn = project.frame.timbers.post.sawn;
    let outer = project.frame.reach;
    let mark = format!("P{}", post.number);
    let real = Real::new(project, &mark, Role::Post);
    let room = real.room();
    let (wall, right) = (outer - room.depth, post.left + room.breadth);
    let head = post.shoulder + post.tenon_length;
    let zero = Vector::new(post.left, outer, post.shoulder);
    let arris = Arris { zero, along: -UP, wide: RIGHT, deep: -OUT };
    let stock = real.stock(&arris, (-post.tenon_length, post.body())).unwrap_or_else(|| {
        let inner = Vector::new(post.left, outer - sawn.depth, post.foot);
        cuboid(inner, Vector::new(post.left + sawn.breadth, outer, head))
    });
    let mut cuts = tenon(project, post, (wall, right, head));
    for brace in shape.braces.iter().filter(|brace| brace.post == post.number) {
        let laid = laid_out(&project.frame.timbers.post, &brace.foot).breadth;
        let housing = housing_in(brace.side, room.breadth, laid, &brace.foot);
        let found = brace.form.post_pocket(&brace.foot, housing);
        // Down the post, and out of its face along the beam.
        cuts.extend(pocket::cuts(project, (brace, &brace.foot), &found, room.depth, |down, out| {
            brace.place(out, down)
        }));
    }
    for hole in post_holes(project, post) {
        let axes = if hole.from == Face::Outer { [-UP, -OUT, RIGHT] } else { [-UP, RIGHT, -OUT] };
        let through = if hole.from == Face::Outer { room.breadth } else { room.depth };
        let tool = hole.tool(zero, axes, through);
        cuts.push(Cut::new(hole.what, CutKind::Bored, tool));
    }
    cuts.extend(reduced_head(project, shape, post, &real));
    cuts.extend(chamfers(project, shape, post, &real));
    StickBody::new((mark, Role::Post), (zero, -UP), stock, cuts)
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
fn reduced_head(project: &Project, shape: &Shape, post: &PostShape, real: &Real) -> Option<Cut> {
    let (rules, timber) = (&project.joinery, &project.frame.timbers.post);
    let outer = project.frame.reach;
    let deep = housing_over(project, shape, post);
    let size = real.most_between(Length::ZERO, deep);
    let (wall, right) = (outer - size.depth, post.left + size.breadth);
    let inner = outer - laid_out(timber, rules).depth;
    let low = post.shoulder - deep;
    let mut waste = cuboid(Vector::new(post.right, wall, low), Vector::new(right, outer, post.shoulder));
    waste.extend(cuboid(Vector::new(post.left, wall, low), Vector::new(post.right, inner, post.shoulder)));
    let is_larger = right > post.right || wall < inner;
    let is_cut = is_larger && deep > Length::ZERO && !waste.is_empty();
    is_cut.then(|| Cut::new("head cut down", CutKind::Shaping, waste).mate("beam"))
}

/// The outer face's two arrises.
fn chamfers(project: &Project, shape: &Shape, post: &PostShape, real: &Real) -> Vec<Cut> {
    let rules = &project.joinery;
    let mut cuts = Vec::new();
    for run in chamfer_runs(rules, (Length::ZERO, post.body()), &post_joints(project, shape, post)) {
        for (is_left, inward) in [(true, RIGHT), (false, -RIGHT)] {
            let arris = |down: Length| {
                let x = if is_left { post.left } else { post.left + real.at(down).breadth };
                Vector::new(x, project.frame.reach, post.shoulder - down)
            };
            let tools = chamfer_between(rules, (arris(run.0), arris(run.1)), [-OUT, inward]);
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
