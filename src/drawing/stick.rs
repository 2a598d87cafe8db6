//! One stick's faces unrolled: marks with both edges, waste hatched, running measures from zero.
use super::scene::{Anchor, Drawn, Layer, Margins, Scene, Text};
use crate::geometry::{Point, Polygon, ledger_hole};
use crate::project::Project;
use crate::tickets::{Face, Mark, MarkKind, Stick, Waste};
use crate::units::{Length, sort_by_number};
use crate::wording::tape;

/// Rough stock drawn past each end.
const ROUGH: Length = Length::inches(4.0);
/// Pixels an inch of a stick is drawn at: of a long one so many that a 4 in seat has room for its two
/// measures, of a short one no more than make it look like what it is.
const SCALES: (f64, f64) = (4.2, 9.0);
/// Width a stick is drawn at where the scales allow it, px.
const WIDTH: f64 = 560.0;
/// Room for names and measures between two faces, px.
const BETWEEN: f64 = 92.0;

/// The sheet's drawing: the faces in the order they unroll, the first on top.
#[must_use]
pub fn stick_sheet(project: &Project, stick: &Stick) -> Scene {
    let scale = (WIDTH / stick.net_length().to_inches()).clamp(SCALES.0, SCALES.1);
    let between = Length::inches(BETWEEN / scale);
    let mut scene = Scene {
        least_scale: scale,
        most_scale: scale,
        margins: Margins { above: 18.0, below: BETWEEN - 18.0, right: 0.0 },
        ..Scene::default()
    };
    let mut top = Length::ZERO;
    for (face, width) in &stick.faces {
        let has_marks = stick.marks.iter().any(|mark| mark.face == *face);
        if has_marks || stick.profile.0 == *face {
            strip(&mut scene, project, stick, *face, *width, top);
            top = top - *width - between;
        }
    }
    if stick.to_left { turned(scene) } else { scene }
}

fn strip(scene: &mut Scene, project: &Project, stick: &Stick, face: Face, width: Length, top: Length) {
    let (low, high) = (stick.low, stick.high);
    let bottom = top - width;
    for (from, to) in [(low - ROUGH, low), (high, high + ROUGH)] {
        let rough = Polygon::rectangle(Point::new(from, top), Point::new(to, bottom));
        scene.add(Layer::Waste, Drawn::Hatched(rough));
    }
    if stick.profile.0 == face {
        scene.add(Layer::Waste, Drawn::Hatched(Polygon::rectangle(Point::new(low, top), Point::new(high, bottom))));
        let place = |point: Point| Point::new(point.x, top - point.y);
        scene.area(Layer::Wood, stick.profile.1.map(place));
        for (from, to) in &stick.profile_lines {
            scene.line(Layer::Joint, place(*from), place(*to));
        }
    } else {
        scene.rectangle(Layer::Wood, (low, high), (bottom, top));
    }
    name(scene, stick, face, low, top);
    let mut measures: Vec<(Length, String)> = Vec::new();
    for mark in stick.marks.iter().filter(|mark| mark.face == face) {
        draw(scene, project, stick, mark, width, top);
        for edge in [Some(mark.near), mark.far].into_iter().flatten() {
            measures.push((edge, tape(edge, project.units, mark.fineness)));
        }
    }
    running(scene, measures, bottom);
}

fn name(scene: &mut Scene, stick: &Stick, face: Face, low: Length, top: Length) {
    let reference = match face {
        _ if face == stick.references.0 => " ▲ first reference",
        _ if face == stick.references.1 => " △ second reference",
        _ => "",
    };
    scene.words(Text {
        at: Point::new(low, top),
        says: format!("{}{reference}", face.name()),
        anchor: Anchor::Start,
        turned: 0.0,
        shift: (0.0, -8.0),
        room: None,
    });
}

fn draw(scene: &mut Scene, project: &Project, stick: &Stick, mark: &Mark, width: Length, top: Length) {
    let (upper, lower) = stick.across(mark, width);
    let (y0, y1) = (top - upper, top - lower);
    match (mark.kind, mark.far) {
        (MarkKind::Fixing, None) if mark.across.is_some() => {
            let diameter = mark.bore.or_else(|| ledger_hole(&project.fixings.ledger)).unwrap_or(project.joinery.peg);
            scene.add(Layer::Joint, Drawn::Hole(Point::new(mark.near, (y0 + y1) / 2.0), diameter));
        }
        (MarkKind::Peg, _) => {
            let diameter = mark.bore.unwrap_or(project.joinery.peg);
            let y = if mark.across.is_some() { (y0 + y1) / 2.0 } else { top - width / 2.0 };
            scene.add(Layer::Joint, Drawn::Hole(Point::new(mark.near, y), diameter));
        }
        (MarkKind::Chamfer, Some(far)) => {
            for y in [top, top - width] {
                scene.line(Layer::Hidden, Point::new(mark.near, y), Point::new(far, y));
            }
        }
        (MarkKind::Tenon, far) if mark.across_from != Some(Face::LongEdge) => {
            tenon(scene, stick, mark, far.unwrap_or(mark.near), (top, y0, y1, top - width));
        }
        (_, Some(far)) => {
            let outline = Polygon::rectangle(Point::new(mark.near, y0), Point::new(far, y1));
            if mark.waste == Waste::Between {
                scene.add(Layer::Waste, Drawn::Hatched(outline));
            } else if mark.kind == MarkKind::Seat {
                scene.line(Layer::Joint, Point::new(mark.near, y0), Point::new(far, y1));
                scene.line(Layer::Joint, Point::new(mark.near, y1), Point::new(far, y0));
            }
            for x in [mark.near, far] {
                scene.line(Layer::Joint, Point::new(x, y0), Point::new(x, y1));
            }
        }
        (_, None) => {
            scene.line(Layer::Joint, Point::new(mark.near, y0), Point::new(mark.near, y1));
        }
    }
}

/// A tenon seen on its cheeks' edge: the wood beside it goes, down to the shoulder. With one edge it is drawn
/// to the stick's nearer end.
fn tenon(
    scene: &mut Scene,
    stick: &Stick,
    mark: &Mark,
    far: Length,
    (top, y0, y1, bottom): (Length, Length, Length, Length),
) {
    let end = if mark.near - stick.low < stick.high - mark.near { stick.low } else { stick.high };
    let (from, to) = if far > mark.near { (mark.near, far) } else { (mark.near.min(end), mark.near.max(end)) };
    for (upper, lower) in [(top, y0), (y1, bottom)] {
        if upper - lower > Length::inches(1e-6) {
            let goes = Polygon::rectangle(Point::new(from, upper), Point::new(to, lower));
            scene.add(Layer::Waste, Drawn::Hatched(goes));
        }
    }
    for y in [y0, y1] {
        scene.line(Layer::Joint, Point::new(from, y), Point::new(to, y));
    }
}

/// The drawing of a stick that lies with its zero at the right.
fn turned(mut scene: Scene) -> Scene {
    let flip = |point: Point| Point::new(-point.x, point.y);
    for part in &mut scene.parts {
        match &mut part.drawn {
            Drawn::Area(outline) | Drawn::Hatched(outline) => *outline = outline.map(flip),
            Drawn::Line(points) => points.iter_mut().for_each(|point| *point = flip(*point)),
            Drawn::Hole(at, _) => *at = flip(*at),
            Drawn::Text(text) => {
                text.at = flip(text.at);
                // Measures stand on end and stay; a face's name now ends where the stick does.
                if text.turned == 0.0 {
                    text.anchor = Anchor::End;
                }
            }
            Drawn::Dimension(dimension) => {
                dimension.from = flip(dimension.from);
                dimension.to = flip(dimension.to);
            }
            Drawn::Span(from, to, _) => (*from, *to) = (flip(*from), flip(*to)),
        }
    }
    scene
}

/// Running measures under the face, read along the stick; each has its leader, and gives way to the one
/// before it where the two would lie on each other.
fn running(scene: &mut Scene, mut measures: Vec<(Length, String)>, bottom: Length) {
    sort_by_number(&mut measures, |measure| measure.0.to_inches());
    measures.dedup_by(|a, b| a.1 == b.1);
    let pixel = Length::inches(1.0 / scene.least_scale);
    let mut free: Option<Length> = None;
    for (x, says) in measures {
        let place = free.map_or(x, |free| x.max(free));
        free = Some(place + pixel * LETTER_ROOM);
        let leader =
            vec![Point::new(x, bottom), Point::new(x, bottom - pixel * 4.0), Point::new(place, bottom - pixel * 10.0)];
        scene.add(Layer::Leader, Drawn::Line(leader));
        scene.words(Text {
            at: Point::new(place, bottom),
            says,
            anchor: Anchor::End,
            turned: 90.0,
            shift: (5.0, 13.0),
            room: None,
        });
    }
}

/// Room a turned line of letters takes along the stick, px.
const LETTER_ROOM: f64 = 14.0;
