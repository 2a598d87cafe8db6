//! The beam line seen from outside, facing the wall.
use super::own_joints::ring_own_joints;
use super::scene::{Anchor, Drawn, Layer, Scene, Side, Text};
use crate::design::Built;
use crate::geometry::{Point, Polygon};
use crate::project::Project;
use crate::tickets::Role;
use crate::units::Length;
use crate::wording::length;

/// The elevation of posts, braces, beam and roof.
#[must_use]
pub fn elevation(project: &Project, built: &Built) -> Scene {
    let mut scene = Scene::default();
    ground(&mut scene, project, built);
    roof(&mut scene, project, built);
    rafters(&mut scene, project, built);
    posts(&mut scene, built);
    braces(&mut scene, built);
    beam(&mut scene, project, built);
    ring_own_joints(&mut scene, project, built);
    dimensions(&mut scene, project, built);
    scene
}

fn beam_bottom(project: &Project, built: &Built) -> Length {
    built.shape.line.beam_seat - project.frame.timbers.beam.sawn.depth
}

fn ground(scene: &mut Scene, project: &Project, built: &Built) {
    let (site, beam) = (&project.site, project.frame.beam_length);
    let past = Length::inches(18.0);
    let left = site.ground_at(-past, beam);
    let right = site.ground_at(beam + past, beam);
    let feet = built.shape.posts.iter().map(|post| post.foot - project.frame.stand_off);
    let bottom = feet.fold(left.min(right), Length::min) - Length::inches(20.0);
    scene.add(
        Layer::Ground,
        Drawn::Hatched(Polygon::new(vec![
            Point::new(-past, bottom),
            Point::new(beam + past, bottom),
            Point::new(beam + past, right),
            Point::new(-past, left),
        ])),
    );
    let breadth = project.frame.timbers.post.ordered.breadth / 2.0 + Length::inches(3.0);
    for post in &project.frame.posts {
        scene.rectangle(
            Layer::Pier,
            (post.x - breadth, post.x + breadth),
            (bottom + Length::inches(4.0), post.pier_top),
        );
    }
}

/// The metal as it is seen: foreshortened, from the eave up to the wall, sheet by sheet.
fn roof(scene: &mut Scene, project: &Project, built: &Built) {
    let (line, rafter) = (&built.shape.line, &built.shape.rafter);
    let lift = project.frame.timbers.purlin.sawn.depth + project.roofing.rib;
    let top = line.top_of_metal(project.frame.wall_gap, lift);
    let eave = rafter.place(line, Point::new(rafter.tail.0.x + project.roofing.eave_overhang, Length::ZERO)).y;
    let left = built.sheets.left;
    for sheet in &built.sheets.sheets {
        let x = left + sheet.start;
        scene.rectangle(Layer::Metal, (x, x + sheet.cover), (eave, top));
    }
}

/// Rafter tails, in front of the beam.
fn rafters(scene: &mut Scene, project: &Project, built: &Built) {
    let (line, rafter) = (&built.shape.line, &built.shape.rafter);
    let half = project.frame.timbers.rafter.sawn.breadth / 2.0;
    let top = rafter.place(line, rafter.tail.0).y;
    let bottom = rafter.place(line, rafter.tail.1).y;
    for (index, x) in built.shape.rafters.iter().enumerate() {
        scene.rectangle(Layer::EndGrain, (*x - half, *x + half), (bottom, top)).of_stick(&format!("R{}", index + 1));
    }
}

fn posts(scene: &mut Scene, built: &Built) {
    for post in &built.shape.posts {
        let mark = format!("P{}", post.number);
        scene.rectangle(Layer::Wood, (post.left, post.right), (post.foot, post.shoulder)).of_stick(&mark);
        let middle = (post.foot + post.shoulder) / 2.0;
        // The last post's name stands inside: its height is dimensioned outside.
        let is_last = post.number == built.shape.posts.len();
        scene
            .words(Text {
                at: Point::new(if is_last { post.left } else { post.right }, (post.foot + middle) / 2.0),
                says: mark.clone(),
                anchor: if is_last { Anchor::End } else { Anchor::Start },
                turned: 0.0,
                shift: (if is_last { -5.0 } else { 5.0 }, 4.0),
                room: None,
            })
            .of_stick(&mark);
        scene.line(
            Layer::Hidden,
            Point::new(post.tenon.0, post.shoulder + post.tenon_length),
            Point::new(post.tenon.1, post.shoulder + post.tenon_length),
        );
    }
}

fn braces(scene: &mut Scene, built: &Built) {
    for brace in &built.shape.braces {
        let outline = brace.form.outline().map(|point| brace.place_stick(point));
        scene.area(Layer::Wood, outline).of_stick(&brace.mark());
    }
}

fn beam(scene: &mut Scene, project: &Project, built: &Built) {
    let top = built.shape.line.beam_seat;
    let bottom = beam_bottom(project, built);
    for stick in built.sticks.iter().filter(|stick| stick.role == Role::Beam) {
        let start = stick.whole_line.unwrap_or_default();
        let outline = stick.profile.1.map(|point| Point::new(point.x + start, top - point.y));
        scene.area(Layer::Wood, outline).of_stick(&stick.mark);
    }
    for stick in built.sticks.iter().filter(|stick| stick.role == Role::Beam) {
        let start = stick.whole_line.unwrap_or_default();
        scene
            .words(Text {
                at: Point::new(start + stick.net_length() * 0.45, (top + bottom) / 2.0),
                says: stick.mark.clone(),
                anchor: Anchor::Middle,
                turned: 0.0,
                shift: (0.0, 5.0),
                room: None,
            })
            .of_stick(&stick.mark);
    }
}

fn dimensions(scene: &mut Scene, project: &Project, built: &Built) {
    let frame = &project.frame;
    let say = |value: Length| length(value, project.units);
    let level = |x: Length| Point::new(x, project.site.ground_at(x, frame.beam_length));
    let mut before = Length::ZERO;
    for (index, post) in frame.posts.iter().enumerate() {
        scene
            .dimension(Side::Below, 0, level(before), level(post.x), say(post.x - before))
            .of_field(format!("frame.posts.{index}.x"));
        before = post.x;
    }
    scene.dimension(Side::Below, 0, level(before), level(frame.beam_length), say(frame.beam_length - before));
    scene
        .dimension(
            Side::Below,
            1,
            level(Length::ZERO),
            level(frame.beam_length),
            format!("{} beam", say(frame.beam_length)),
        )
        .of_field("frame.beam_length");
    if let [first, second, .., last] = built.shape.rafters[..] {
        let top = built.shape.line.top_edge(frame.reach + frame.tail);
        scene.dimension(Side::Above, 0, Point::new(first, top), Point::new(second, top), say(second - first));
        let says = format!("{} rafters, {} at most", built.shape.rafters.len(), say(frame.rafters.spacing));
        scene
            .dimension(Side::Above, 1, Point::new(first, top), Point::new(last, top), says)
            .of_field("frame.rafters.spacing");
    }
    if let Some(post) = built.shape.posts.last() {
        let x = frame.beam_length;
        scene.dimension(
            Side::Right,
            0,
            Point::new(x, post.foot),
            Point::new(x, post.shoulder),
            format!("{} P{}", say(post.body()), post.number),
        );
    }
    for scarf in &built.shape.beam.scarfs {
        let z = built.shape.line.beam_seat;
        scene.dimension(
            Side::Above,
            0,
            Point::new(scarf.low, z),
            Point::new(scarf.high, z),
            format!("scarf {}", scarf.number),
        );
    }
}
