//! Section through wall, roof and post, with the existing building: wall at the left, outside at the right.
use super::scene::{Anchor, Layer, Scene, Side, Text};
use crate::design::Built;
use crate::geometry::{Point, Polygon};
use crate::project::{Blocks, FixedHeights, Project};
use crate::units::{Length, show_slope};
use crate::wording::length;

/// Thickness of the existing wall and roof as drawn; nothing is known of them.
pub(super) const WALL: Length = Length::inches(8.0);
const OLD_ROOF: Length = Length::inches(6.0);

/// The section at the first post.
#[must_use]
pub fn section(project: &Project, built: &Built) -> Scene {
    let mut scene = Scene::default();
    ground(&mut scene, project, built);
    building(&mut scene, project, built);
    supports(&mut scene, project, built);
    roof(&mut scene, project, built);
    dimensions(&mut scene, project, built);
    scene
}

pub(super) fn lowest(built: &Built) -> Length {
    built.shape.posts.first().map_or(Length::ZERO, |post| post.foot) - Length::inches(18.0)
}

fn ground(scene: &mut Scene, project: &Project, built: &Built) {
    let outside = project.frame.reach + project.frame.tail + Length::inches(20.0);
    let (inside, at_post) = (project.site.ground_at_wall, project.site.ground_left);
    let bottom = lowest(built).min(inside.min(at_post) - Length::inches(12.0));
    let slope = (at_post - inside) / project.frame.reach;
    let far = inside + outside * slope;
    scene.add(
        Layer::Ground,
        super::Drawn::Hatched(Polygon::new(vec![
            Point::new(-WALL, bottom),
            Point::new(outside, bottom),
            Point::new(outside, far),
            Point::new(Length::ZERO, inside),
            Point::new(-WALL, inside),
        ])),
    );
}

fn building(scene: &mut Scene, project: &Project, built: &Built) {
    let site = &project.site;
    let rise = site.upper_pitch.tan();
    let eave_at = |y: Length| site.eave_edge + (site.eave_projection - y) * rise;
    let above_metal = built.shape.clearances.top_of_metal_at_wall + Length::inches(10.0);
    let wall_top = site.eave_underside(Length::ZERO).map_or(above_metal, |underside| underside.max(above_metal));
    scene.add(
        Layer::Wall,
        super::Drawn::Hatched(Polygon::rectangle(
            Point::new(-WALL, site.ground_at_wall),
            Point::new(Length::ZERO, wall_top),
        )),
    );
    if site.eave_projection > Length::ZERO {
        let underside = site.eave_underside(Length::ZERO).unwrap_or(site.eave_edge);
        scene
            .area(
                Layer::Wall,
                Polygon::new(vec![
                    Point::new(-WALL, wall_top),
                    Point::new(Length::ZERO, underside),
                    Point::new(site.eave_projection, site.eave_edge),
                    Point::new(site.eave_projection, site.eave_edge + OLD_ROOF),
                    Point::new(-WALL, eave_at(-WALL) + OLD_ROOF),
                ]),
            )
            .of_field("site.eave_edge");
    }
}

fn supports(scene: &mut Scene, project: &Project, built: &Built) {
    let (frame, line) = (&project.frame, &built.shape.line);
    let timbers = &frame.timbers;
    let ledger = timbers.ledger.sawn;
    scene
        .rectangle(
            Layer::EndGrain,
            (frame.ledger_packing, line.ledger_heel),
            (line.ledger_seat - ledger.depth, line.ledger_seat),
        )
        .of_stick("L1");
    let Some(post) = built.shape.posts.first() else { return };
    let inner = frame.reach - timbers.post.sawn.depth;
    let pier = Length::inches(3.0);
    scene.rectangle(Layer::Pier, (inner - pier, frame.reach + pier), (lowest(built), post.foot - frame.stand_off));
    scene.rectangle(Layer::Wood, (inner, frame.reach), (post.foot, post.shoulder)).of_stick("P1");
    if let Some(brace) = built.shape.braces.first() {
        let face = frame.reach - timbers.brace.sawn.breadth;
        let foot = brace.corner_z - frame.brace_down;
        scene.rectangle(Layer::Seen, (face, frame.reach), (foot, brace.corner_z)).of_stick(&brace.mark());
    }
    let beam = timbers.beam.sawn;
    scene
        .rectangle(
            Layer::EndGrain,
            (frame.reach - beam.breadth, frame.reach),
            (line.beam_seat - beam.depth, line.beam_seat),
        )
        .of_stick("B1");
}

fn roof(scene: &mut Scene, project: &Project, built: &Built) {
    let (frame, shape) = (&project.frame, &built.shape);
    let (line, rafter) = (&shape.line, &shape.rafter);
    if frame.blocks == Blocks::OverBeam {
        let block = frame.timbers.block.sawn;
        scene
            .rectangle(
                Layer::Hidden,
                (frame.reach - block.breadth, frame.reach),
                (line.beam_seat, line.beam_seat + block.depth),
            )
            .of_stick("X1");
    }
    scene.area(Layer::Wood, rafter.outline().map(|point| rafter.place(line, point))).of_stick("R1");
    let purlin = frame.timbers.purlin.sawn;
    let above = |x: Length, up: Length| rafter.place(line, Point::new(x, -up));
    for row in &shape.purlins {
        let low = rafter.tail.0.x - row.from_tail;
        let high = low - purlin.breadth;
        scene
            .area(
                Layer::EndGrain,
                Polygon::new(vec![
                    above(low, Length::ZERO),
                    above(low, purlin.depth),
                    above(high, purlin.depth),
                    above(high, Length::ZERO),
                ]),
            )
            .of_stick(&format!("N{}a", row.number));
    }
    let (top, eave) = (rafter.head.0.x + project.roofing.top_gap, rafter.tail.0.x + project.roofing.eave_overhang);
    let rib = purlin.depth + project.roofing.rib;
    scene.area(
        Layer::Metal,
        Polygon::new(vec![above(top, purlin.depth), above(eave, purlin.depth), above(eave, rib), above(top, rib)]),
    );
}

fn dimensions(scene: &mut Scene, project: &Project, built: &Built) {
    let (frame, line) = (&project.frame, &built.shape.line);
    let say = |value: Length| length(value, project.units);
    let at = |y: Length, z: Length| Point::new(y, z);
    let ground = project.site.ground_at_wall;
    scene
        .dimension(
            Side::Below,
            1,
            at(Length::ZERO, ground),
            at(frame.reach, ground),
            format!("{} reach", say(frame.reach)),
        )
        .of_field("frame.reach");
    scene.dimension(
        Side::Below,
        0,
        at(line.ledger_heel, ground),
        at(line.beam_heel, ground),
        format!("{} run", say(line.run.length())),
    );
    let tail_end = line.beam_heel + frame.tail;
    scene
        .dimension(Side::Below, 0, at(line.beam_heel, ground), at(tail_end, ground), say(frame.tail))
        .of_field("frame.tail");
    heights(scene, project, built);
    let middle = (line.ledger_heel + line.beam_heel) / 2.0;
    let pitch = scene.words(Text {
        at: at(middle, line.top_edge(middle) - frame.timbers.rafter.sawn.depth / line.pitch.cos()),
        says: show_slope(line.pitch, project.units),
        anchor: Anchor::Middle,
        turned: -line.pitch.to_degrees(),
        shift: (0.0, 18.0),
        room: None,
    });
    if frame.heights.fixed != FixedHeights::LedgerAndBeam {
        pitch.of_field("frame.heights.pitch");
    }
}

fn heights(scene: &mut Scene, project: &Project, built: &Built) {
    let (frame, line) = (&project.frame, &built.shape.line);
    let say = |value: Length| length(value, project.units);
    let datum = Length::ZERO;
    let at = |y: Length, z: Length| Point::new(y, z);
    let beam = scene.dimension(
        Side::Right,
        0,
        at(line.beam_heel, datum),
        at(line.beam_heel, line.beam_seat),
        format!("{} beam seat", say(line.beam_seat)),
    );
    if frame.heights.fixed != FixedHeights::PitchAndLedger {
        beam.of_field("frame.heights.beam_seat");
    }
    let ledger = scene.dimension(
        Side::Left,
        0,
        at(Length::ZERO, datum),
        at(Length::ZERO, line.ledger_seat),
        format!("{} ledger seat", say(line.ledger_seat)),
    );
    if frame.heights.fixed != FixedHeights::PitchAndBeam {
        ledger.of_field("frame.heights.ledger_seat");
    }
    let underside = line.beam_seat - frame.timbers.beam.sawn.depth;
    let inside = frame.reach - frame.timbers.beam.sawn.breadth;
    scene.words(Text {
        at: at((line.ledger_heel + inside) / 2.0, underside),
        says: format!("{} clear under the beam", say(built.shape.clearances.under_beam)),
        anchor: Anchor::Middle,
        turned: 0.0,
        shift: (0.0, -6.0),
        room: None,
    });
    scene.line(Layer::Room, at(line.ledger_heel + Length::inches(6.0), underside), at(inside, underside));
    if let Some(room) = built.shape.clearances.under_eave {
        let y = project.site.eave_projection;
        scene.words(Text {
            at: at(y, project.site.eave_edge),
            says: format!("{} clear under the eave", say(room)),
            anchor: Anchor::Start,
            turned: 0.0,
            shift: (8.0, 4.0),
            room: None,
        });
    }
}
