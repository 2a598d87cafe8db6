//! The beam's pieces as wood, and the blocks that stand on them.
use super::super::beam_piece::{braces_of, in_scarf, posts_of};
use super::super::body::{Cut, CutKind, StickBody};
use super::super::chamfer::chamfer_runs;
use super::super::pegs::{head_peg_height, head_peg_places};
use super::super::scarf::ScarfShape;
use super::{RIGHT, UP, chamfer, cheeks, in_elevation, peg_hole, pocket};
use crate::design::Shape;
use crate::geometry::{BeamPiece, Polygon, PostShape, laid_out};
use crate::project::{Blocks, Project, Role};
use crate::solid::{Vector, cuboid};
use crate::units::Length;

/// A piece of the beam in its place.
pub fn body(project: &Project, shape: &Shape, piece: &BeamPiece) -> StickBody {
    let sawn = project.frame.timbers.beam.sawn;
    let outer = project.frame.reach;
    let top = shape.line.beam_seat;
    let under = top - sawn.depth;
    let stock = cuboid(Vector::new(piece.start, outer - sawn.breadth, under), Vector::new(piece.end, outer, top));
    let mut cuts = Vec::new();
    for (number, is_lower) in [piece.left, piece.right].into_iter().flatten() {
        cuts.push(lap(project, shape, piece, (number, is_lower), under));
    }
    for post in posts_of(shape, piece) {
        cuts.extend(post_joint(project, post, under));
    }
    for brace in braces_of(project, shape, piece) {
        let found = brace.beam_pocket(&project.frame);
        // Along the beam, and down out of its underside.
        cuts.extend(pocket::cuts(project, (brace, &brace.head), &found, sawn.breadth, |along, out| {
            brace.place(along, out)
        }));
    }
    cuts.extend(chamfers(project, shape, piece, under));
    StickBody::new(
        (format!("B{}", piece.number), Role::Beam),
        (Vector::new(piece.start, outer, top), RIGHT),
        stock,
        cuts,
    )
}

fn lap(project: &Project, shape: &Shape, piece: &BeamPiece, (number, is_lower): (usize, bool), under: Length) -> Cut {
    let outer = project.frame.reach;
    let depths = (outer - project.frame.timbers.beam.sawn.breadth, outer);
    let waste = ScarfShape::of(project, &shape.beam.scarfs[number - 1]).waste(is_lower);
    let placed = |part: &Polygon| {
        let corners = part.corners.iter().map(|point| in_scarf(shape, number, Length::ZERO, *point));
        in_elevation(corners.map(|point| point.moved(Length::ZERO, under)).collect(), depths)
    };
    let is_right = piece.right.is_some_and(|(at, _)| at == number);
    let other = if is_right { piece.number + 1 } else { piece.number - 1 };
    let name = if is_lower { "lower" } else { "upper" };
    let tools = waste.iter().filter(|part| part.corners.len() >= 3).flat_map(placed).collect();
    Cut::new(format!("scarf {number}, {name} lap"), CutKind::Lap, tools).mate(format!("B{other}"))
}

/// The housing, mortise and peg holes over one post.
fn post_joint(project: &Project, post: &PostShape, under: Length) -> Vec<Cut> {
    let (rules, timbers) = (&post.rules, &project.frame.timbers);
    let outer = project.frame.reach;
    let breadth = timbers.beam.sawn.breadth;
    let mark = format!("P{}", post.number);
    let wide = laid_out(&timbers.post, rules).depth.min(breadth);
    let housing = cuboid(Vector::new(post.left, outer - wide, under), Vector::new(post.right, outer, post.shoulder));
    let (inner_cheek, outer_cheek) = cheeks(project, rules, rules.tenon_thickness);
    let deep = post.shoulder + post.tenon_length + rules.blind_clearance;
    let mortise =
        cuboid(Vector::new(post.tenon.0, inner_cheek, post.shoulder), Vector::new(post.tenon.1, outer_cheek, deep));
    let mut cuts = vec![
        Cut::new(format!("housing of {mark}"), CutKind::Housing, housing).mate(&mark),
        Cut::new(format!("mortise of {mark}"), CutKind::Mortise, mortise).mate(&mark),
    ];
    for (index, x) in head_peg_places(post).into_iter().enumerate() {
        let z = post.shoulder + head_peg_height(post, index);
        let hole = peg_hole(project, rules, (post.left + x, z), breadth);
        cuts.push(Cut::new(format!("peg {} of {mark}", index + 1), CutKind::PegHole, hole).mate(&mark));
    }
    cuts
}

/// The underside's two arrises between posts, pockets and laps.
fn chamfers(project: &Project, shape: &Shape, piece: &BeamPiece, under: Length) -> Vec<Cut> {
    let rules = &project.joinery;
    let outer = project.frame.reach;
    let into = Vector::inches(0.0, 1.0, 0.0);
    let wall = outer - project.frame.timbers.beam.sawn.breadth;
    let mut cuts = Vec::new();
    for run in chamfer_runs(rules, (Length::ZERO, piece.length()), &beam_joints(project, shape, piece)) {
        for (y, inward) in [(outer, -into), (wall, into)] {
            let arris = Vector::new(piece.start, y, under);
            cuts.push(Cut::new("chamfer", CutKind::Chamfer, chamfer(rules, arris, (RIGHT, [UP, inward]), run)));
        }
    }
    cuts
}

/// What the underside of a piece carries, from its left end: posts, pockets and laps.
pub fn beam_joints(project: &Project, shape: &Shape, piece: &BeamPiece) -> Vec<(Length, Length)> {
    let posts = posts_of(shape, piece).map(|post| (post.left, post.right));
    let braces = braces_of(project, shape, piece).map(|brace| brace.on_beam(&brace.beam_pocket(&project.frame)));
    let laps = shape.beam.scarfs.iter().map(|scarf| (scarf.low, scarf.high));
    posts.chain(braces).chain(laps).map(|(from, to)| (from - piece.start, to - piece.start)).collect()
}

/// The blocks between the rafters, flush with the beam's outer face.
pub fn blocks(project: &Project, shape: &Shape) -> Vec<StickBody> {
    if project.frame.blocks == Blocks::None {
        return Vec::new();
    }
    let (timber, half) = (project.frame.timbers.block.sawn, project.frame.timbers.rafter.sawn.breadth / 2.0);
    let (outer, seat) = (project.frame.reach, shape.line.beam_seat);
    let gaps = shape.rafters.windows(2).enumerate().filter(|(_, pair)| pair[1] - pair[0] > half * 2.0);
    gaps.map(|(index, pair)| {
        let low = Vector::new(pair[0] + half, outer - timber.breadth, seat);
        let high = Vector::new(pair[1] - half, outer, seat + timber.depth);
        let zero = Vector::new(pair[0] + half, outer, seat);
        StickBody::new((format!("X{}", index + 1), Role::Block), (zero, RIGHT), cuboid(low, high), Vec::new())
    })
    .collect()
}
