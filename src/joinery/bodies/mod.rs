//! Every stick of the frame as wood in its place, from the same shapes and rules as its sheet.
mod beam;
mod brace;
mod ledger;
mod pocket;
mod post;
mod purlin;
mod rafter;
mod real;

pub use beam::beam_joints;
pub use post::post_joints;

use super::body::StickBody;
use crate::design::Shape;
use crate::geometry::{Point, Polygon};
use crate::project::{JoineryRules, Project};
use crate::solid::{Axis, Convex, Vector, cylinder, prism, wedge};
use crate::units::Length;

/// Every stick as wood, in the order of the sheets: posts, beam pieces, braces, rafters, ledger pieces, purlins, blocks.
///
/// Shoulders are drawn square: the undercut inside the line and the chamfer of a tenon's end are the chisel's. What is
/// driven on the roof, the screws of purlins among it, takes no wood here: only what is bored at the bench does. A stick
/// measured at the bench has its real outside, and a piece of the beam lies where the dry fits found it; joints lie as their
/// sheets say.
#[must_use]
pub fn bodies(project: &Project, shape: &Shape) -> Vec<StickBody> {
    let mut all: Vec<StickBody> = shape.posts.iter().map(|post| post::body(project, shape, post)).collect();
    all.extend(shape.beam.pieces.iter().map(|piece| beam::body(project, shape, piece)));
    all.extend(shape.braces.iter().map(|brace| brace::body(project, brace)));
    all.extend(rafter::bodies(project, shape));
    all.extend(shape.ledger.iter().map(|piece| ledger::body(project, shape, piece)));
    all.extend(purlin::bodies(project, shape));
    all.extend(beam::blocks(project, shape));
    all
}

/// The sticks that were measured at the bench, as wood; none of the others is cut.
#[must_use]
pub fn measured_bodies(project: &Project, shape: &Shape) -> Vec<StickBody> {
    let sizes = &project.progress.sizes;
    let is_measured = |mark: &str| sizes.get(mark).is_some_and(|sizes| !sizes.is_empty());
    let has = |letter: char| sizes.keys().any(|mark| mark.starts_with(letter) && is_measured(mark));
    let mut all = Vec::new();
    let posts = shape.posts.iter().filter(|post| is_measured(&format!("P{}", post.number)));
    all.extend(posts.map(|post| post::body(project, shape, post)));
    let pieces = shape.beam.pieces.iter().filter(|piece| is_measured(&format!("B{}", piece.number)));
    all.extend(pieces.map(|piece| beam::body(project, shape, piece)));
    all.extend(shape.braces.iter().filter(|one| is_measured(&one.mark())).map(|one| brace::body(project, one)));
    let ledger = shape.ledger.iter().filter(|piece| is_measured(&format!("L{}", piece.number)));
    all.extend(ledger.map(|piece| ledger::body(project, shape, piece)));
    if has('R') {
        all.extend(rafter::bodies(project, shape));
    }
    if has('N') {
        all.extend(purlin::bodies(project, shape));
    }
    if has('X') {
        all.extend(beam::blocks(project, shape));
    }
    all.retain(|body| is_measured(&body.mark));
    all
}

const RIGHT: Vector = Vector::inches(1.0, 0.0, 0.0);
const OUT: Vector = Vector::inches(0.0, 1.0, 0.0);
const UP: Vector = Vector::inches(0.0, 0.0, 1.0);

/// Depths of a tenon and its mortise of that thickness, out from the wall: inner and outer cheek.
fn cheeks(project: &Project, rules: &JoineryRules, thickness: Length) -> (Length, Length) {
    let outer = project.frame.reach - rules.tenon_offset;
    (outer - thickness, outer)
}

/// The hole of a joint's peg from the outer face through a stick of that thickness, at a place of the elevation.
fn peg_hole(project: &Project, rules: &JoineryRules, (x, z): (Length, Length), thickness: Length) -> Vec<Convex> {
    let outer = project.frame.reach;
    cylinder(Vector::new(x, outer - thickness, z), Vector::new(x, outer, z), rules.peg)
}

/// The wood of a chamfer along an arris from one place of it to another: a triangle, running out at both ends at 45°.
/// `inward` are the two faces' ways into the wood.
fn chamfer_between(rules: &JoineryRules, (from, to): (Vector, Vector), inward: [Vector; 2]) -> Vec<Convex> {
    let size = rules.chamfer.to_inches();
    let Some(along) = (to - from).unit() else { return Vec::new() };
    if (to - from).norm() <= size * 2.0 || size <= 0.0 {
        return Vec::new();
    }
    let edge = |short: f64, face: Vector| (from + along * short + face, to - along * short + face);
    // On the arris the run is whole; where the chamfer meets the faces it is shorter by its own size.
    let faces = inward.map(|face| edge(size, face * size));
    wedge([edge(0.0, Vector::ZERO), faces[0], faces[1]]).into_iter().collect()
}

/// An outline in elevation drawn out between two depths.
fn in_elevation(corners: Vec<Point>, depths: (Length, Length)) -> Vec<Convex> {
    prism(&Polygon::new(corners), Axis::Y, depths.0, depths.1)
}
