//! The frame, or one stick, in the round: what is shown, the picture of it, and what a tap on it meets.
//!
//! The picture paints the farthest first, for paper and for screens that cannot draw solids themselves.
use super::eye::Eye;
use super::grain::Grain;
use super::overlap::{Piece, farthest_first};
use super::scene::{Drawn, Layer, Light, Scene};
use crate::geometry::{Point, Polygon};
use crate::joinery::StickBody;
use crate::solid::{Outline, Patch, Plane, Skin, Solid, Surface, Vector};
use crate::units::Length;

/// Farther off an edge than this a place is not on it, in inches.
const NEAR: f64 = 1e-4;

/// Something of wood that is shown by its outside.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// The stick's mark; empty for what is no stick of its own.
    pub mark: String,
    /// Its outside.
    pub surface: Surface,
    /// How its grain runs; nothing for what is drawn without.
    pub grain: Option<Grain>,
}

impl Shown {
    /// A part of a stick.
    #[must_use]
    pub fn part(body: &StickBody, wood: &Solid) -> Self {
        Self { mark: body.mark.clone(), surface: body.outside(wood), grain: Some(Grain::of(body)) }
    }

    /// A part of a stick moved out of its place.
    #[must_use]
    pub fn moved(body: &StickBody, wood: &Solid, by: Vector) -> Self {
        let shown = Self::part(body, &wood.moved(by));
        Self { grain: shown.grain.map(|grain| grain.moved(by)), ..shown }
    }

    /// Something that is no stick.
    #[must_use]
    pub fn thing(wood: &Solid) -> Self {
        Self { mark: String::new(), surface: Surface::of(wood), grain: None }
    }

    /// A stick with everything cut.
    #[must_use]
    pub fn cut(body: &StickBody) -> Self {
        Self::part(body, &body.wood)
    }

    /// A stick as it stands in the frame: the bored holes are filled by what is driven into them.
    #[must_use]
    pub fn standing(body: &StickBody) -> Self {
        Self::part(body, &body.standing())
    }
}

/// The mark of the nearest wood at that place of the picture; nothing where there is none.
#[must_use]
pub fn picked(shown: &[Shown], eye: Eye, at: Point) -> Option<&str> {
    let toward = eye.toward();
    let mut nearest: Option<(f64, &str)> = None;
    for one in shown {
        for patch in one.surface.patches.iter().filter(|patch| patch.normal.dot(toward) > NEAR) {
            let depth = depth_at(patch, eye, at);
            if let Some(depth) = depth.filter(|depth| nearest.is_none_or(|(known, _)| *depth > known)) {
                nearest = Some((depth, &one.mark));
            }
        }
    }
    nearest.map(|(_, mark)| mark)
}

/// The same for a finger that covers a circle of that size: what is right under it, else what it touches first around.
#[must_use]
pub fn picked_near(shown: &[Shown], eye: Eye, at: Point, finger: Length) -> Option<&str> {
    let around = (0..8).map(|eighth| {
        let angle = f64::from(eighth) * std::f64::consts::FRAC_PI_4;
        at.moved(finger * angle.cos(), finger * angle.sin())
    });
    std::iter::once(at).chain(around).find_map(|place| picked(shown, eye, place))
}

/// How far toward the eye the patch lies under a place of the picture; nothing where the place is beside it.
fn depth_at(patch: &Patch, eye: Eye, at: Point) -> Option<f64> {
    let (right, up, toward) = (eye.right(), eye.up(), eye.toward());
    let corners = &patch.corners;
    let flat = |corner: &Vector| (right.dot(*corner) - at.x.to_inches(), up.dot(*corner) - at.y.to_inches());
    let mut sign = 0.0;
    for (index, corner) in corners.iter().enumerate() {
        let (a, b) = (flat(corner), flat(&corners[(index + 1) % corners.len()]));
        let side = a.0 * b.1 - a.1 * b.0;
        if side * sign < 0.0 {
            return None;
        }
        if side.abs() > 1e-12 {
            sign = side;
        }
    }
    let foot = right * at.x.to_inches() + up * at.y.to_inches();
    let first = corners.first()?;
    (sign != 0.0).then(|| patch.normal.dot(*first - foot) / patch.normal.dot(toward))
}

/// A line in the picture that belongs to no wood, like the way a tenon goes.
#[derive(Clone, Debug, PartialEq)]
pub struct Thread {
    /// Its ends.
    pub ends: (Vector, Vector),
    /// What it is.
    pub layer: Layer,
}

/// The picture of all that is shown, with its grain.
#[must_use]
pub fn painted(shown: &[Shown], threads: &[Thread], eye: Eye) -> Scene {
    picture(shown, threads, eye, true)
}

/// The picture without grain, for where wood is small in it.
#[must_use]
pub fn painted_plain(shown: &[Shown], threads: &[Thread], eye: Eye) -> Scene {
    picture(shown, threads, eye, false)
}

fn picture(shown: &[Shown], threads: &[Thread], eye: Eye, has_grain: bool) -> Scene {
    let toward = eye.toward();
    let mut pieces = Vec::new();
    for (index, one) in shown.iter().enumerate() {
        let seen = |normal: Vector| normal.dot(toward) > NEAR;
        let edges: Vec<&Outline> = one.surface.edges.iter().filter(|edge| seen(edge.normal)).collect();
        for patch in one.surface.patches.iter().filter(|patch| seen(patch.normal)) {
            pieces.push(Piece {
                corners: patch.corners.clone(),
                plane: patch.corners.first().map(|first| Plane::through(*first, patch.normal)),
                lines: lines_of(patch, &edges),
                grain: one.grain.as_ref().filter(|_| has_grain).map_or_else(Vec::new, |grain| grain.on(patch)),
                of: (index, face_layer(patch)),
            });
        }
    }
    let ways = threads.iter().map(|thread| Piece {
        corners: vec![thread.ends.0, thread.ends.1],
        plane: None,
        lines: Vec::new(),
        grain: Vec::new(),
        of: (usize::MAX, thread.layer),
    });
    pieces.extend(ways);
    let mut scene = Scene::default();
    for piece in farthest_first(pieces, toward) {
        put(&mut scene, shown, &piece, eye);
    }
    scene
}

fn put(scene: &mut Scene, shown: &[Shown], piece: &Piece<(usize, Layer)>, eye: Eye) {
    let (index, layer) = piece.of;
    let mark = shown.get(index).map(|one| one.mark.as_str()).filter(|mark| !mark.is_empty());
    let corners: Vec<Point> = piece.corners.iter().map(|corner| eye.place(*corner)).collect();
    if piece.plane.is_none() {
        scene.add(layer, Drawn::Line(corners));
        return;
    }
    let part = scene.area(layer, Polygon { corners });
    if let Some(mark) = mark {
        part.of_stick(mark);
    }
    for (layer, lines) in [(Layer::Grain, &piece.grain), (Layer::Arris, &piece.lines)] {
        for line in joined(lines) {
            scene.add(layer, Drawn::Line(line.iter().map(|place| eye.place(*place)).collect()));
        }
    }
}

/// Lines that go on where another ends, as one.
fn joined(lines: &[(Vector, Vector)]) -> Vec<Vec<Vector>> {
    let mut ways: Vec<Vec<Vector>> = Vec::new();
    for (from, to) in lines {
        match ways.last_mut() {
            Some(way) if way.last().is_some_and(|last| (*last - *from).norm() < NEAR) => way.push(*to),
            _ => ways.push(vec![*from, *to]),
        }
    }
    ways
}

/// The parts of a patch's sides that the drawing shows.
fn lines_of(patch: &Patch, edges: &[&Outline]) -> Vec<(Vector, Vector)> {
    let count = patch.corners.len();
    let mut lines = Vec::new();
    for index in 0..count {
        let (from, to) = (patch.corners[index], patch.corners[(index + 1) % count]);
        let Some(along) = (to - from).unit() else { continue };
        let length = (to - from).norm();
        for edge in edges.iter().filter(|edge| (edge.normal - patch.normal).norm() < NEAR) {
            let (start, end) = (edge.ends.0 - from, edge.ends.1 - from);
            let off = |place: Vector| (place - along * place.dot(along)).norm();
            if off(start) > NEAR || off(end) > NEAR || (end - start).dot(along) < 0.0 {
                continue;
            }
            let (low, high) = (start.dot(along).max(0.0), end.dot(along).min(length));
            if high - low > NEAR {
                lines.push((from + along * low, from + along * high));
            }
        }
    }
    lines
}

/// What a patch is drawn as: its kind of face, and how the light falls on it.
#[must_use]
pub fn face_layer(patch: &Patch) -> Layer {
    let light = Light::on(patch.normal);
    match patch.skin {
        Skin::Sawn => Layer::Planed(light),
        Skin::End => Layer::Across(light),
        Skin::Cut | Skin::Round => Layer::Chiselled(light),
    }
}

/// The upright box of the picture around all that is shown.
#[must_use]
pub fn reach(shown: &[Shown], eye: Eye) -> (Point, Point) {
    let patches = shown.iter().flat_map(|one| &one.surface.patches);
    let corners = patches.flat_map(|patch| patch.corners.iter().map(|corner| eye.place(*corner)));
    Polygon { corners: corners.collect() }.bounds()
}

/// A ball around all that is shown: its middle, and how far from there the farthest wood is. Whichever way it is
/// turned, it fits in a circle of that size.
#[must_use]
pub fn ball(shown: &[Shown]) -> (Vector, Length) {
    let corners = || shown.iter().flat_map(|one| &one.surface.patches).flat_map(|patch| &patch.corners);
    let within = corners().fold(crate::solid::Within::NOTHING, |within, corner| within.and(*corner));
    if corners().next().is_none() {
        return (Vector::ZERO, Length::inches(1.0));
    }
    let middle = (within.low + within.high) * 0.5;
    let far = corners().map(|corner| (*corner - middle).norm()).fold(1.0, f64::max);
    (middle, Length::inches(far))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::solid::cuboid;
    use crate::units::Angle;

    fn block(mark: &str, low: (f64, f64, f64), high: (f64, f64, f64)) -> Shown {
        let (low, high) = (Vector::inches(low.0, low.1, low.2), Vector::inches(high.0, high.1, high.2));
        Shown { mark: mark.to_owned(), ..Shown::thing(&Solid::new(cuboid(low, high))) }
    }

    fn two() -> Vec<Shown> {
        vec![block("A", (0.0, 0.0, 0.0), (10.0, 2.0, 10.0)), block("B", (4.0, 6.0, 2.0), (14.0, 8.0, 6.0))]
    }

    #[test]
    fn a_tap_meets_the_nearest_wood() {
        let shown = two();
        let check = |eye: Eye, at: (f64, f64), expected: Option<&str>| {
            assert_eq!(picked(&shown, eye, Point::inches(at.0, at.1)), expected, "{at:?}");
        };
        check(Eye::FRONT, (5.0, 4.0), Some("B"));
        check(Eye::FRONT, (5.0, 8.0), Some("A"));
        check(Eye::FRONT, (13.0, 8.0), None);
        check(Eye::SIDE, (-1.0, 9.0), Some("A"));
        let finger = Length::inches(1.0);
        assert_eq!(picked_near(&shown, Eye::FRONT, Point::inches(14.5, 4.0), finger), Some("B"));
        assert_eq!(picked_near(&shown, Eye::FRONT, Point::inches(15.5, 4.0), finger), None);
        check(Eye::FRONT.turned(Angle::degrees(180.0), Angle::ZERO), (-5.0, 4.0), Some("A"));
    }

    /// From a corner three faces of a block are seen, each with its four edges.
    #[test]
    fn a_block_shows_three_faces() {
        let scene = painted(&two()[..1], &[], Eye::CORNER);
        let areas = scene.parts.iter().filter(|part| matches!(part.drawn, Drawn::Area(_))).count();
        let sides: usize = scene
            .parts
            .iter()
            .map(|part| match &part.drawn {
                Drawn::Line(points) => points.len() - 1,
                _ => 0,
            })
            .sum();
        assert_eq!((areas, sides), (3, 12));
    }

    #[test]
    fn the_ball_holds_every_picture() {
        let shown = two();
        let (middle, far) = ball(&shown);
        for turn in 0..12 {
            let eye = Eye::CORNER.turned(Angle::degrees(f64::from(turn) * 30.0), Angle::ZERO);
            let (low, high) = reach(&shown, eye);
            let centre = eye.place(middle);
            for side in [centre.x - low.x, high.x - centre.x, centre.y - low.y, high.y - centre.y] {
                assert!(side <= far + Length::inches(1e-9));
            }
        }
    }
}
