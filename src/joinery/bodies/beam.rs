//! The beam's pieces as wood, and the blocks that stand on them.
use super::super::beam_piece::{braces_of, in_scarf, posts_of};
use super::super::body::{Cut, CutKind, StickBody};
use super::super::chamfer::chamfer_runs;
use super::super::pegs::{head_peg_height, head_peg_places};
use super::super::scarf::ScarfShape;
use super::super::tie_holes::{TieJoint, scarf_holes};
use super::real::{Arris, Real};
use super::{OUT, RIGHT, UP, chamfer_between, cheeks, in_elevation, peg_hole, pocket};
use crate::design::Shape;
use crate::geometry::{BeamPiece, Point, Polygon, PostShape, beam_housing, laid_out};
use crate::project::{Blocks, Project, Role};
use crate::solid::{Vector, cuboid};
use crate::units::Length;

/// A piece of the beam in its place.
pub fn body(project: &Project, shape: &Shape, piece: &BeamPiece) -> StickBody {
    let sawn = project.frame.timbers.beam.sawn;
    let (outer, top) = (project.frame.reach, shape.line.beam_seat);
    let mark = format!("B{}", piece.number);
    let real = Real::new(project, &mark, Role::Beam);
    let room = real.room();
    let (under, wall) = (top - room.depth, outer - room.breadth);
    let (start, end) = ends(project, piece);
    let zero = Vector::new(start, outer, top);
    let arris = Arris { zero, along: RIGHT, wide: -OUT, deep: -UP };
    let stock = real.stock(&arris, (Length::ZERO, end - start)).unwrap_or_else(|| {
        cuboid(Vector::new(start, outer - sawn.breadth, top - sawn.depth), Vector::new(end, outer, top))
    });
    let mut cuts = Vec::new();
    for (number, is_lower) in [piece.left, piece.right].into_iter().flatten() {
        cuts.push(lap(project, shape, piece, (number, is_lower), (under, wall)));
    }
    for post in posts_of(shape, piece) {
        cuts.extend(post_joint(project, post, under, wall));
    }
    for brace in braces_of(project, shape, piece) {
        let housing = beam_housing(&project.frame, &brace.head) + room.depth - sawn.depth;
        let found = brace.form.beam_pocket(&brace.head, housing);
        // Along the beam, and down out of its underside.
        cuts.extend(pocket::cuts(project, (brace, &brace.head), &found, room.breadth, |along, out| {
            brace.place(along, out)
        }));
    }
    for hole in scarf_holes(project, shape, piece) {
        let by = if let TieJoint::Scarf(number) = hole.joint { shift(project, number) } else { Length::ZERO };
        let drawn = Vector::new(piece.start + by, outer, top);
        let cut = Cut::new(&hole.what, CutKind::Bored, hole.tool(drawn, [RIGHT, -OUT, -UP], room.depth));
        cuts.push(cut.mate(&hole.mate));
    }
    cuts.extend(chamfers(project, shape, piece, (&real, start)));
    StickBody::new((mark, Role::Beam), (zero, RIGHT), stock, cuts)
}

/// How much farther from the beam's left end than drawn the closed scarf lies, and the piece at its right.
fn shift(project: &Project, scarf: usize) -> Length {
    project.progress.dry_fit_shift(scarf + 1).map_or(Length::ZERO, |(_, error)| error)
}

/// Both ends of a piece as its dry fits found it. A scarf's error lies in the piece at its left: its own end is where the
/// closed scarf was measured.
fn ends(project: &Project, piece: &BeamPiece) -> (Length, Length) {
    let at = |end: Option<(usize, bool)>| end.map_or(Length::ZERO, |(number, _)| shift(project, number));
    (piece.start + at(piece.left), piece.end + at(piece.right))
}

fn lap(
    project: &Project,
    shape: &Shape,
    piece: &BeamPiece,
    (number, is_lower): (usize, bool),
    (lowest, wall): (Length, Length),
) -> Cut {
    let sawn_under = shape.line.beam_seat - project.frame.timbers.beam.sawn.depth;
    let form = ScarfShape::of(project, &shape.beam.scarfs[number - 1]);
    let mut waste = form.waste(is_lower).to_vec();
    waste.extend(under_lap(&form, is_lower, sawn_under - lowest));
    let by = shift(project, number);
    let placed = |part: &Polygon| {
        let corners = part.corners.iter().map(|point| in_scarf(shape, number, -by, *point));
        in_elevation(corners.map(|point| point.moved(Length::ZERO, sawn_under)).collect(), (wall, project.frame.reach))
    };
    let is_right = piece.right.is_some_and(|(at, _)| at == number);
    let other = if is_right { piece.number + 1 } else { piece.number - 1 };
    let name = if is_lower { "lower" } else { "upper" };
    let tools = waste.iter().filter(|part| part.corners.len() >= 3).flat_map(placed).collect();
    Cut::new(format!("scarf {number}, {name} lap"), CutKind::Lap, tools).mate(format!("B{other}"))
}

/// What a piece deeper than sawn has below its end, in lap coordinates: it goes with the waste over it.
fn under_lap(form: &ScarfShape, is_lower: bool, deeper: Length) -> Option<Polygon> {
    let foot = form.profile(is_lower)[0].x;
    let (from, to) = if is_lower { (foot, form.lap) } else { (Length::ZERO, foot) };
    let is_seen = deeper > Length::inches(1e-6) && to - from > Length::inches(1e-6);
    is_seen.then(|| Polygon::rectangle(Point::new(from, -deeper), Point::new(to, Length::ZERO)))
}

/// The housing, mortise and peg holes over one post, out of the underside as low as it is anywhere.
fn post_joint(project: &Project, post: &PostShape, under: Length, wall: Length) -> Vec<Cut> {
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
        let hole = peg_hole(project, rules, (post.left + x, z), outer - wall);
        cuts.push(Cut::new(format!("peg {} of {mark}", index + 1), CutKind::PegHole, hole).mate(&mark));
    }
    cuts
}

/// The underside's two arrises between posts, pockets and laps.
fn chamfers(project: &Project, shape: &Shape, piece: &BeamPiece, (real, zero): (&Real, Length)) -> Vec<Cut> {
    let rules = &project.joinery;
    let (outer, top) = (project.frame.reach, shape.line.beam_seat);
    let mut cuts = Vec::new();
    for run in chamfer_runs(rules, (Length::ZERO, piece.length()), &beam_joints(project, shape, piece)) {
        for (is_outer, inward) in [(true, -OUT), (false, OUT)] {
            let arris = |along: Length| {
                let size = real.at(piece.start + along - zero);
                let y = if is_outer { outer } else { outer - size.breadth };
                Vector::new(piece.start + along, y, top - size.depth)
            };
            let tools = chamfer_between(rules, (arris(run.0), arris(run.1)), [UP, inward]);
            cuts.push(Cut::new("chamfer", CutKind::Chamfer, tools));
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
        let mark = format!("X{}", index + 1);
        let stock = Real::new(project, &mark, Role::Block)
            .stock(&Arris { zero, along: RIGHT, wide: -OUT, deep: UP }, (Length::ZERO, pair[1] - pair[0] - half * 2.0))
            .unwrap_or_else(|| cuboid(low, high));
        StickBody::new((mark, Role::Block), (zero, RIGHT), stock, Vec::new())
    })
    .collect()
}
