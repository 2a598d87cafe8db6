//! Roof plan: the wall at the top, the eave at the bottom, left and right as seen from outside.
use super::scene::{Anchor, Layer, Margins, Scene, Side, Text};
use crate::design::Built;
use crate::geometry::Point;
use crate::project::Project;
use crate::units::Length;
use crate::wording::length;

/// The plan of rafters, purlins and sheets. Distances up the slope are drawn level, as seen from above.
#[must_use]
pub fn plan(project: &Project, built: &Built) -> Scene {
    let mut scene = Scene {
        margins: Margins { right: 88.0, ..Margins::default() },
        least_scale: least_scale(project, built),
        ..Scene::default()
    };
    bearers(&mut scene, project, built);
    purlins(&mut scene, project, built);
    sheets(&mut scene, project, built);
    dimensions(&mut scene, project, built);
    scene
}

/// Each row of purlins has a measure beside it: rows stand at least a line of letters apart.
fn least_scale(project: &Project, built: &Built) -> f64 {
    let rows = built.shape.purlins.windows(2);
    let apart = rows.map(|pair| out_of(project, built, pair[0].from_tail) - out_of(project, built, pair[1].from_tail));
    apart.reduce(Length::min).map_or(0.0, |apart| 12.5 / apart.to_inches().max(1.0))
}

/// A point at `x` along the wall, `out` from it.
fn at(x: Length, out: Length) -> Point {
    Point::new(x, -out)
}

fn bearers(scene: &mut Scene, project: &Project, built: &Built) {
    let frame = &project.frame;
    let wall = Length::inches(8.0);
    let past = Length::inches(18.0);
    scene.add(
        Layer::Wall,
        super::Drawn::Hatched(crate::geometry::Polygon::rectangle(
            at(-past, -wall),
            at(frame.beam_length + past, Length::ZERO),
        )),
    );
    for (piece, mark) in built.shape.ledger.iter().map(|piece| (piece, format!("L{}", piece.number))) {
        scene
            .rectangle(Layer::Seen, (piece.start, piece.end), (-frame.ledger_packing, -built.shape.line.ledger_heel))
            .of_stick(&mark);
    }
    let inner = frame.reach - frame.timbers.beam.sawn.breadth;
    for piece in &built.shape.beam.pieces {
        scene
            .rectangle(Layer::Seen, (piece.start, piece.end), (-inner, -frame.reach))
            .of_stick(&format!("B{}", piece.number));
    }
    let half = frame.timbers.rafter.sawn.breadth / 2.0;
    for (index, x) in built.shape.rafters.iter().enumerate() {
        scene
            .rectangle(Layer::Wood, (*x - half, *x + half), (-frame.wall_gap, -(frame.reach + frame.tail)))
            .of_stick(&format!("R{}", index + 1));
    }
}

/// Distance out from the wall of a place up the rafters' top edge from the tail.
fn out_of(project: &Project, built: &Built, from_tail: Length) -> Length {
    project.frame.reach + project.frame.tail - from_tail * built.shape.line.pitch.cos()
}

fn purlins(scene: &mut Scene, project: &Project, built: &Built) {
    let breadth = project.frame.timbers.purlin.sawn.breadth;
    for row in &built.shape.purlins {
        let (low, high) = (out_of(project, built, row.from_tail), out_of(project, built, row.from_tail + breadth));
        for (index, piece) in row.pieces.iter().enumerate() {
            scene.rectangle(Layer::EndGrain, (piece.start, piece.end), (-low, -high)).of_stick(&row.mark(index));
        }
    }
}

fn sheets(scene: &mut Scene, project: &Project, built: &Built) {
    let left = built.sheets.left;
    let cos = built.shape.line.pitch.cos();
    let eave = project.frame.reach + project.frame.tail + project.roofing.eave_overhang * cos;
    let top = eave - built.sheets.length.length() * cos;
    for (index, sheet) in built.sheets.sheets.iter().enumerate() {
        let x = left + sheet.start;
        scene.rectangle(Layer::Sheet, (x, x + sheet.cover), (-top, -eave));
        scene.words(Text {
            at: at(x + sheet.cover / 2.0, (top + eave) / 2.0),
            says: format!("{}", index + 1),
            anchor: Anchor::Middle,
            turned: 0.0,
            shift: (0.0, 5.0),
            room: Some(sheet.cover),
        });
        scene.dimension(Side::Below, 0, at(x, eave), at(x + sheet.cover, eave), length(sheet.cover, project.units));
    }
    scene.dimension(
        Side::Below,
        1,
        at(left, eave),
        at(left + built.sheets.width, eave),
        format!("{} rake to rake", length(built.sheets.width, project.units)),
    );
}

fn dimensions(scene: &mut Scene, project: &Project, built: &Built) {
    let right = project.frame.beam_length + project.roofing.rake;
    for row in &built.shape.purlins {
        scene
            .words(Text {
                at: at(right, out_of(project, built, row.from_tail)),
                says: format!("N{}: {}", row.number, length(row.from_tail, project.units)),
                anchor: Anchor::Start,
                turned: 0.0,
                shift: (8.0, 4.0),
                room: None,
            })
            .of_field("roofing.purlin_spacing");
    }
}
