//! A template as a scene in true inches.
use super::scene::{Anchor, Drawn, Layer, Scene, Text};
use crate::geometry::{Point, Polygon};
use crate::tickets::{Stroke, Template, TemplateLine};
use crate::units::Length;

/// A line's words stand this far off it.
const OFF: Length = Length::inches(0.05);
/// Ring around a point to prick through.
const PRICK: Length = Length::inches(0.09);

/// The template as a scene: wood, waste, lines with their words, points to prick, holes.
#[must_use]
pub fn template_scene(template: &Template) -> Scene {
    let mut scene = Scene::default();
    for outline in &template.wood {
        scene.area(Layer::Wood, outline.clone());
    }
    for outline in &template.waste {
        scene.add(Layer::Waste, Drawn::Hatched(outline.clone()));
    }
    for line in &template.lines {
        scene.line(layer(line.stroke), line.from, line.to);
    }
    for at in pricks(&template.lines) {
        scene.add(Layer::Leader, Drawn::Hole(at, PRICK));
    }
    for line in template.lines.iter().filter(|line| !line.says.is_empty()) {
        scene.words(along(line));
    }
    for hole in &template.holes {
        scene.add(Layer::Joint, Drawn::Hole(hole.at, hole.diameter));
        let under = hole.at.moved(Length::ZERO, -(hole.diameter / 2.0) - Length::inches(0.15));
        scene.words(words(under, &hole.says, 0.0));
    }
    for (at, says) in &template.words {
        scene.words(words(*at, says, 0.0));
    }
    scene
}

const fn layer(stroke: Stroke) -> Layer {
    match stroke {
        Stroke::Cut => Layer::Joint,
        Stroke::Reference => Layer::Reference,
        Stroke::Fold => Layer::Fold,
        Stroke::Carried => Layer::Leader,
        Stroke::Hidden => Layer::Hidden,
        Stroke::Edge => Layer::Seen,
        Stroke::RunsOn => Layer::RunsOn,
    }
}

/// Both ends of every line to cut to, each once.
fn pricks(lines: &[TemplateLine]) -> Vec<Point> {
    let mut points: Vec<Point> = Vec::new();
    for end in lines.iter().filter(|line| line.stroke == Stroke::Cut).flat_map(|line| [line.from, line.to]) {
        if points.iter().all(|known| known.distance(end) > Length::inches(1e-6)) {
            points.push(end);
        }
    }
    points
}

/// A line's words along it, never upside down.
fn along(line: &TemplateLine) -> Text {
    let (a, b) =
        if (line.from.x, line.from.y) <= (line.to.x, line.to.y) { (line.from, line.to) } else { (line.to, line.from) };
    let long = a.distance(b).max(Length::inches(1e-9));
    let (cos, sin) = ((b.x - a.x) / long, (b.y - a.y) / long);
    let middle = Point::new((a.x + b.x) / 2.0 - OFF * sin, (a.y + b.y) / 2.0 + OFF * cos);
    words(middle, &line.says, sin.atan2(cos).to_degrees())
}

fn words(at: Point, says: &str, turned: f64) -> Text {
    Text { at, says: says.to_owned(), anchor: Anchor::Middle, turned, shift: (0.0, 0.0), room: None }
}

/// The template a quarter turn counter-clockwise.
pub(super) fn quarter_turned(template: &Template) -> Template {
    template.clone().map(&|point| Point::new(-point.y, point.x))
}

/// The box around what one part draws; a text's is its point.
pub(super) fn bounds_of(drawn: &Drawn) -> (Point, Point) {
    match drawn {
        Drawn::Area(outline) | Drawn::Hatched(outline) => outline.bounds(),
        Drawn::Line(points) => Polygon { corners: points.clone() }.bounds(),
        Drawn::Hole(at, diameter) => {
            let half = *diameter / 2.0;
            (at.moved(-half, -half), at.moved(half, half))
        }
        Drawn::Text(text) => (text.at, text.at),
        Drawn::Span(from, to, _) => Polygon { corners: vec![*from, *to] }.bounds(),
        Drawn::Dimension(dimension) => Polygon { corners: vec![dimension.from, dimension.to] }.bounds(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn line(from: Point, to: Point) -> TemplateLine {
        TemplateLine { stroke: Stroke::Cut, from, to, says: "seat".to_owned() }
    }

    #[test]
    fn words_are_never_upside_down() {
        for (from, to) in
            [((0.0, 0.0), (4.0, 1.0)), ((4.0, 1.0), (0.0, 0.0)), ((0.0, 3.0), (0.0, 0.0)), ((5.0, 0.0), (0.0, 2.0))]
        {
            let text = along(&line(Point::inches(from.0, from.1), Point::inches(to.0, to.1)));
            assert!(text.turned > -90.0 - 1e-9 && text.turned <= 90.0 + 1e-9, "{}", text.turned);
        }
    }

    #[test]
    fn a_corner_is_pricked_once() {
        let (a, b, c) = (Point::inches(0.0, 0.0), Point::inches(4.0, 1.0), Point::inches(4.0, 0.0));
        assert_eq!(pricks(&[line(a, b), line(b, c)]), [a, b, c]);
    }
}
