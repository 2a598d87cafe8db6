//! Writes a scene at its true size: one unit of the SVG is one inch, or one millimetre, of wood.
//!
//! A pen has a size on paper, so strokes carry their width here, in the same units; colours are the style sheet's.
//! Letters are set at 13 px and brought to the units by a scale, because browsers may enlarge very small type.
use std::fmt::Write;

use super::hatch::hatch;
use super::scene::{Anchor, Drawn, Layer, Part, Scene, Text};
use super::svg::escape;
use super::template::bounds_of;
use super::tiles::overlaps;
use crate::geometry::{Point, Polygon};
use crate::units::{Length, UnitSystem};

/// Pixels to an inch of paper (CSS Values and Units, "1in = 96px").
const PAPER: f64 = 96.0;
/// Size of the letters, px.
pub const LETTER: f64 = 13.0;
/// A pen: its width, and dashes and gaps in turn, inches.
#[derive(Clone, Copy)]
pub struct Pen(f64, &'static [f64]);

/// For what is only looked at.
pub const FINE: Pen = Pen(0.006, &[]);
/// For what paper is laid by.
pub const MEDIUM: Pen = Pen(0.011, &[]);
/// For the strip two sheets share.
pub const STRIP: Pen = Pen(0.006, &[0.06, 0.05]);
const HEAVY: Pen = Pen(0.018, &[]);
const FOLD: Pen = Pen(0.011, &[0.18, 0.05]);
const CARRIED: Pen = Pen(0.008, &[0.14, 0.04, 0.03, 0.04]);
const HIDDEN: Pen = Pen(0.008, &[0.07, 0.05]);
const RUNS_ON: Pen = Pen(0.006, &[0.02, 0.06]);
/// Spacing of hatch lines, inches.
const HATCH: f64 = 0.14;
/// A hole at least this wide gets a cross at its centre, inches.
const CENTRED: f64 = 0.2;

/// Both ends of a straight stroke, inches from the sheet's upper left corner.
pub type Ends = ((f64, f64), (f64, f64));

/// A sheet being written.
pub struct TrueSize {
    out: String,
    units: UnitSystem,
}

impl TrueSize {
    /// A sheet `width` by `height`, its zero at the upper left corner.
    #[must_use]
    pub fn new(units: UnitSystem, (width, height): (Length, Length), title: &str) -> Self {
        let mut sheet = Self { out: String::new(), units };
        let (w, h) = (sheet.number(width.to_inches()), sheet.number(height.to_inches()));
        let name = sheet.unit();
        let _ = write!(
            sheet.out,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"template\" width=\"{w}{name}\" height=\"{h}{name}\" \
             viewBox=\"0 0 {w} {h}\" role=\"img\" aria-label=\"{}\">",
            escape(title)
        );
        sheet
    }

    /// The whole element.
    #[must_use]
    pub fn finish(mut self) -> String {
        self.out.push_str("</svg>");
        self.out
    }

    const fn unit(&self) -> &'static str {
        match self.units {
            UnitSystem::Imperial => "in",
            UnitSystem::Metric => "mm",
        }
    }

    /// Inches as a number of the sheet's units: to a ten-thousandth of an inch, or a thousandth of a millimetre.
    fn number(&self, inches: f64) -> String {
        let text = match self.units {
            UnitSystem::Imperial => format!("{inches:.4}"),
            UnitSystem::Metric => format!("{:.3}", inches * 25.4),
        };
        let short = text.trim_end_matches('0').trim_end_matches('.');
        if short == "-0" { "0".to_owned() } else { short.to_owned() }
    }

    fn path_data(&self, points: &[(f64, f64)], closed: bool) -> String {
        let mut text = String::new();
        for (index, (x, y)) in points.iter().enumerate() {
            let letter = if index == 0 { 'M' } else { 'L' };
            let _ = write!(text, "{letter}{} {}", self.number(*x), self.number(*y));
        }
        if closed {
            text.push('Z');
        }
        text
    }

    fn path(&mut self, classes: &str, pen: Pen, data: &str) {
        let width = self.number(pen.0);
        let dashes: Vec<String> = pen.1.iter().map(|one| self.number(*one)).collect();
        let dashed =
            if dashes.is_empty() { String::new() } else { format!(" stroke-dasharray=\"{}\"", dashes.join(" ")) };
        let _ = write!(self.out, "<path class=\"{classes}\" stroke-width=\"{width}\"{dashed} d=\"{data}\"/>");
    }

    /// A line through points given in inches from the sheet's upper left corner.
    pub fn line(&mut self, class: &str, pen: Pen, points: &[(f64, f64)]) {
        let data = self.path_data(points, false);
        self.path(&format!("{class} line"), pen, &data);
    }

    /// Several separate strokes as one path.
    pub fn strokes(&mut self, class: &str, pen: Pen, strokes: &[Ends]) {
        let data: String = strokes.iter().map(|(from, to)| self.path_data(&[*from, *to], false)).collect();
        self.path(&format!("{class} line"), pen, &data);
    }

    /// A closed outline.
    pub fn outline(&mut self, class: &str, pen: Pen, points: &[(f64, f64)]) {
        let data = self.path_data(points, true);
        self.path(class, pen, &data);
    }

    /// Words, `size` px of letters where 96 px are an inch.
    pub fn text(&mut self, (x, y): (f64, f64), size: f64, anchor: Anchor, says: &str) {
        self.turned_text((x, y), size, anchor, 0.0, says);
    }

    fn turned_text(&mut self, (x, y): (f64, f64), size: f64, anchor: Anchor, turned: f64, says: &str) {
        let anchor = match anchor {
            Anchor::Start => "start",
            Anchor::Middle => "middle",
            Anchor::End => "end",
        };
        let (x, y) = (self.number(x), self.number(y));
        let scale = match self.units {
            UnitSystem::Imperial => 1.0 / PAPER,
            UnitSystem::Metric => 25.4 / PAPER,
        };
        let turn = if turned == 0.0 { String::new() } else { format!(" rotate({turned:.2})") };
        let _ = write!(
            self.out,
            "<text transform=\"translate({x} {y}){turn} scale({scale:.6})\" font-size=\"{size}\" \
             text-anchor=\"{anchor}\">{}</text>",
            escape(says)
        );
    }

    /// A window on a scene: what lies between `low` and `high` of it, its upper left corner at that place of the
    /// sheet, at the same scale, cut off at its edges.
    pub fn window(&mut self, scene: &Scene, (low, high): (Point, Point), (x, y): (f64, f64)) {
        let (wide, tall) = ((high.x - low.x).to_inches(), (high.y - low.y).to_inches());
        let (w, h) = (self.number(wide), self.number(tall));
        let (x, y) = (self.number(x), self.number(y));
        let _ = write!(self.out, "<svg x=\"{x}\" y=\"{y}\" width=\"{w}\" height=\"{h}\" viewBox=\"0 0 {w} {h}\">");
        let view = View { left: low.x.to_inches(), top: high.y.to_inches(), low, high };
        for part in &scene.parts {
            if is_in_sight(part, (low, high)) {
                self.part(part, &view);
            }
        }
        self.out.push_str("</svg>");
    }

    fn part(&mut self, part: &Part, view: &View) {
        let class = part.layer.class();
        match &part.drawn {
            Drawn::Area(outline) => self.outline(class, FINE, &view.places(&outline.corners)),
            Drawn::Hatched(outline) => self.hatched(class, outline, view),
            Drawn::Line(points) => self.line(class, pen(part.layer), &view.places(points)),
            Drawn::Hole(at, diameter) => self.hole(class, part.layer, view.place(*at), diameter.to_inches()),
            Drawn::Text(text) => self.words(text, view),
            // A template says its measures along its lines.
            Drawn::Dimension(_) | Drawn::Span(..) => {}
        }
    }

    fn hatched(&mut self, class: &str, outline: &Polygon, view: &View) {
        let corners = view.places(&outline.corners);
        self.outline(class, FINE, &corners);
        let (wide, tall) = view.size();
        let in_sight = |((ax, ay), (bx, by)): &Ends| {
            ax.min(*bx) <= wide && ax.max(*bx) >= 0.0 && ay.min(*by) <= tall && ay.max(*by) >= 0.0
        };
        let lines: Vec<_> = hatch(&corners, HATCH).into_iter().filter(in_sight).collect();
        self.strokes("hatch", FINE, &lines);
    }

    fn hole(&mut self, class: &str, layer: Layer, (x, y): (f64, f64), diameter: f64) {
        let (cx, cy, r) = (self.number(x), self.number(y), self.number(diameter / 2.0));
        let pen = if diameter >= CENTRED { pen(layer) } else { FINE };
        let width = self.number(pen.0);
        let _ = write!(
            self.out,
            "<circle class=\"{class} line\" stroke-width=\"{width}\" cx=\"{cx}\" cy=\"{cy}\" r=\"{r}\"/>"
        );
        if diameter >= CENTRED {
            let arm = diameter / 2.0 + 0.1;
            self.strokes(class, FINE, &[((x - arm, y), (x + arm, y)), ((x, y - arm), (x, y + arm))]);
        }
    }

    fn words(&mut self, text: &Text, view: &View) {
        let (x, y) = view.place(text.at);
        let at = (x + text.shift.0 / PAPER, y + text.shift.1 / PAPER);
        self.turned_text(at, LETTER, text.anchor, -text.turned, &text.says);
    }
}

/// A window's place in its scene.
struct View {
    left: f64,
    top: f64,
    low: Point,
    high: Point,
}

impl View {
    fn place(&self, point: Point) -> (f64, f64) {
        (point.x.to_inches() - self.left, self.top - point.y.to_inches())
    }

    fn places(&self, points: &[Point]) -> Vec<(f64, f64)> {
        points.iter().map(|point| self.place(*point)).collect()
    }

    fn size(&self) -> (f64, f64) {
        ((self.high.x - self.low.x).to_inches(), (self.high.y - self.low.y).to_inches())
    }
}

/// Words may reach into a window from outside of it.
fn is_in_sight(part: &Part, window: (Point, Point)) -> bool {
    let (low, high) = bounds_of(&part.drawn);
    let reach = if matches!(part.drawn, Drawn::Text(_)) { Length::inches(4.0) } else { Length::inches(0.1) };
    overlaps((low.moved(-reach, -reach), high.moved(reach, reach)), window)
}

const fn pen(layer: Layer) -> Pen {
    match layer {
        Layer::Joint => HEAVY,
        Layer::Reference => MEDIUM,
        Layer::Fold => FOLD,
        Layer::Leader => CARRIED,
        Layer::Hidden => HIDDEN,
        Layer::RunsOn => RUNS_ON,
        _ => FINE,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn scene() -> Scene {
        let mut scene = Scene::default();
        scene.line(Layer::Joint, Point::inches(1.0, 1.0), Point::inches(5.0, 2.0));
        scene
    }

    fn window(units: UnitSystem) -> String {
        let mut sheet = TrueSize::new(units, (Length::inches(10.0), Length::inches(5.0)), "a <seat>");
        sheet.window(&scene(), (Point::inches(0.0, 0.0), Point::inches(6.0, 3.0)), (2.0, 1.0));
        sheet.finish()
    }

    /// One unit is one inch: the line of 4 in across and 1 up keeps its numbers.
    #[test]
    fn one_unit_is_one_inch() {
        let found = window(UnitSystem::Imperial);
        assert!(found.contains("width=\"10in\" height=\"5in\" viewBox=\"0 0 10 5\""), "{found}");
        assert!(found.contains("<svg x=\"2\" y=\"1\" width=\"6\" height=\"3\" viewBox=\"0 0 6 3\">"), "{found}");
        assert!(found.contains("d=\"M1 2L5 1\""), "{found}");
        assert!(found.contains("aria-label=\"a &lt;seat&gt;\""), "{found}");
    }

    /// One unit is one millimetre: the same line is 101.6 mm across.
    #[test]
    fn one_unit_is_one_millimetre() {
        let found = window(UnitSystem::Metric);
        assert!(found.contains("width=\"254mm\" height=\"127mm\" viewBox=\"0 0 254 127\""), "{found}");
        assert!(found.contains("d=\"M25.4 50.8L127 25.4\""), "{found}");
    }

    #[test]
    fn what_is_out_of_sight_is_not_written() {
        let mut sheet = TrueSize::new(UnitSystem::Imperial, (Length::inches(10.0), Length::inches(5.0)), "");
        sheet.window(&scene(), (Point::inches(8.0, 0.0), Point::inches(9.0, 3.0)), (0.0, 0.0));
        assert!(!sheet.finish().contains("<path"));
    }
}
