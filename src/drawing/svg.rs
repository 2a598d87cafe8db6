//! A scene as SVG: the same for the screen, for export and for golden files.
//!
//! The frame is scaled to the width given; texts and dimension rows keep their size on the sheet, so
//! with less room there are fewer labels, never smaller ones.
use std::fmt::Write;

use super::framing::Framing;
use super::hatch::hatch;
use super::paper::{BAR, bar};
use super::scene::{Anchor, Dimension, Drawn, Part, Scene, Side, Text};
use crate::geometry::{Point, Polygon};
use crate::units::Length;

/// Size of the letters, px.
pub(super) const LETTER: f64 = 13.0;
/// Width of a letter of the drawing's typeface on average, as a share of its size.
const LETTER_WIDTH: f64 = 0.48;
/// Drawing to the first dimension row, and row to row, px.
const FIRST_ROW: f64 = 22.0;
const ROW: f64 = 26.0;
/// Edge of the sheet to what is nearest to it, px.
const EDGE: f64 = 10.0;
/// Spacing of hatch lines, px.
const HATCH: f64 = 7.0;

/// Where the frame lies on the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheet {
    scale: f64,
    left: f64,
    top: f64,
    low: Point,
    high: Point,
    width: f64,
    height: f64,
}

impl Sheet {
    /// The sheet that [`print`] fills with that scene at that width, px.
    #[must_use]
    pub fn of(scene: &Scene, width_px: f64) -> Self {
        Self::new(scene, width_px.max(120.0))
    }

    fn new(scene: &Scene, width_px: f64) -> Self {
        let (low, high) = bounds(scene);
        let margin = |side: Side| {
            EDGE + rows(scene, side) * ROW + if rows(scene, side) > 0.0 { FIRST_ROW - ROW / 2.0 } else { 0.0 }
        };
        let (left, right) = (margin(Side::Left), margin(Side::Right) + scene.margins.right);
        let (top, bottom) = (margin(Side::Above) + scene.margins.above, margin(Side::Below) + scene.margins.below);
        let (wide, tall) = ((high.x - low.x).to_inches().max(1e-6), (high.y - low.y).to_inches().max(1e-6));
        let tallest = (width_px * 0.75).max(420.0);
        let fitted = ((width_px - left - right) / wide).min((tallest - top - bottom) / tall);
        let most = if scene.most_scale > 0.0 { scene.most_scale } else { f64::INFINITY };
        let scale = fitted.min(most).max(scene.least_scale).max(0.01);
        let width = (wide * scale + left + right).max(width_px);
        // What the height leaves over is shared by the two sides.
        let left = left + (width - wide * scale - left - right) / 2.0;
        Self { scale, left, top, low, high, width, height: tall * scale + top + bottom }
    }

    /// At exactly that many px an inch, as large as that makes it, with room for the bar under it.
    fn to_scale(scene: &Scene, scale: f64) -> Self {
        let (low, high) = bounds(scene);
        let margin =
            |side: Side| EDGE + rows(scene, side) * ROW + if rows(scene, side) > 0.0 { FIRST_ROW } else { 0.0 };
        let (left, right) = (margin(Side::Left), margin(Side::Right) + scene.margins.right);
        let (top, bottom) = (margin(Side::Above) + scene.margins.above, margin(Side::Below) + scene.margins.below);
        let (wide, tall) = ((high.x - low.x).to_inches() * scale, (high.y - low.y).to_inches() * scale);
        let width = (wide + left + right).max(BAR.0 + 2.0 * EDGE);
        let left = left + (width - wide - left - right) / 2.0;
        Self { scale, left, top, low, high, width, height: tall + top + bottom + BAR.1 }
    }

    fn framed(framing: &Framing) -> Self {
        let (width, height) = framing.size;
        let (low, high) = (framing.middle, framing.middle);
        Self { scale: framing.scale, left: width / 2.0, top: height / 2.0, low, high, width, height }
    }

    /// Where a point of the frame lies: px right and down from the sheet's top left corner.
    #[must_use]
    pub fn place(&self, point: Point) -> (f64, f64) {
        (
            self.left + (point.x - self.low.x).to_inches() * self.scale,
            self.top + (self.high.y - point.y).to_inches() * self.scale,
        )
    }

    /// Pixels to an inch of the frame.
    #[must_use]
    pub const fn scale(&self) -> f64 {
        self.scale
    }

    /// As wide as the sheet is, px.
    pub(super) const fn width(&self) -> f64 {
        self.width
    }

    /// Which x of the frame lies that many px right of the sheet's left edge; nothing for no number.
    #[must_use]
    pub fn x_at(&self, px: f64) -> Option<Length> {
        Some(self.low.x + Length::try_inches((px - self.left) / self.scale)?)
    }
}

/// The scene as an `<svg>` element `width_px` wide, named for those who cannot see it.
#[must_use]
pub fn print(scene: &Scene, width_px: f64, title: &str) -> String {
    let sheet = Sheet::of(scene, width_px);
    let mut out = String::new();
    whole(&mut out, scene, &sheet, title);
    out.push_str("</svg>");
    out
}

/// The scene as it lies in a frame; what reaches beyond it is the style sheet's to hide.
#[must_use]
pub fn print_framed(scene: &Scene, framing: &Framing, title: &str) -> String {
    let mut out = String::new();
    whole(&mut out, scene, &Sheet::framed(framing), title);
    out.push_str("</svg>");
    out
}

/// The scene as large as a frame of that size lets it be, px.
#[must_use]
pub fn print_within(scene: &Scene, size: (f64, f64), title: &str) -> String {
    let (low, high) = bounds(scene);
    let fit = |room: f64, reach: Length| (room - 2.0 * EDGE).max(1.0) / reach.to_inches().max(1e-6);
    let scale = fit(size.0, high.x - low.x).min(fit(size.1, high.y - low.y));
    let middle = Point::new((low.x + high.x) / 2.0, (low.y + high.y) / 2.0);
    print_framed(scene, &Framing { size, scale, middle }, title)
}

/// The scene at 1 : `ratio` where 96 px are an inch of paper, with a bar to check the printer by.
#[must_use]
pub fn print_to_scale(scene: &Scene, ratio: f64, title: &str) -> String {
    let sheet = Sheet::to_scale(scene, PAPER / ratio);
    let mut out = String::new();
    whole(&mut out, scene, &sheet, title);
    bar(&mut out, (sheet.width - BAR.0) / 2.0, sheet.height - BAR.1);
    out.push_str("</svg>");
    out
}

/// Width and height of what [`print_to_scale`] makes, px.
#[must_use]
pub fn size_to_scale(scene: &Scene, ratio: f64) -> (f64, f64) {
    let sheet = Sheet::to_scale(scene, PAPER / ratio);
    (sheet.width, sheet.height)
}

/// Pixels to an inch of paper (CSS Values and Units, "1in = 96px").
const PAPER: f64 = 96.0;

/// Everything but the closing tag.
fn whole(out: &mut String, scene: &Scene, sheet: &Sheet, title: &str) {
    let (width, height) = (sheet.width, sheet.height);
    let _ = write!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"drawing\" viewBox=\"0 0 {width:.1} {height:.1}\" \
         width=\"{width:.1}\" height=\"{height:.1}\" role=\"img\" aria-label=\"{title}\">",
        title = escape(title)
    );
    let mut said = Said { steps_aside: scene.steps_aside, boxes: Vec::new() };
    for part in &scene.parts {
        element(out, sheet, part, &mut said);
    }
    if let Some(chain) = &scene.chain {
        super::chain::print(out, chain, sheet);
    }
}

/// The box around everything drawn but words and dimensions.
fn bounds(scene: &Scene) -> (Point, Point) {
    let mut all = Vec::new();
    for part in &scene.parts {
        match &part.drawn {
            Drawn::Area(outline) | Drawn::Hatched(outline) => all.extend(outline.corners.iter().copied()),
            Drawn::Line(points) => all.extend(points.iter().copied()),
            Drawn::Hole(at, _) => all.push(*at),
            Drawn::Text(_) | Drawn::Dimension(_) | Drawn::Span(..) => {}
        }
    }
    Polygon { corners: all }.bounds()
}

/// How many dimension rows stand on that side.
fn rows(scene: &Scene, side: Side) -> f64 {
    let of_side = scene.parts.iter().filter_map(|part| match &part.drawn {
        Drawn::Dimension(dimension) if dimension.side == side => Some(f64::from(dimension.row) + 1.0),
        _ => None,
    });
    of_side.fold(0.0, f64::max)
}

fn element(out: &mut String, sheet: &Sheet, part: &Part, said: &mut Said) {
    let mut classes = part.layer.class().to_owned();
    let mut links = String::new();
    if let Some(stick) = &part.stick {
        let _ = write!(links, " data-stick=\"{}\"", escape(stick));
        classes.push_str(" tappable");
    }
    if let Some(effort) = part.effort {
        classes.push(' ');
        classes.push_str(effort.class());
    }
    if let Some(field) = &part.field {
        let _ = write!(links, " data-field=\"{}\"", escape(field));
        classes.push_str(" set");
    }
    match &part.drawn {
        Drawn::Area(outline) => {
            let _ = write!(out, "<path class=\"{classes}\"{links} d=\"{}\"/>", path(sheet, &outline.corners, true));
        }
        Drawn::Hatched(outline) => hatched(out, sheet, outline, &classes, &links),
        Drawn::Line(points) => {
            let _ = write!(out, "<path class=\"{classes} line\"{links} d=\"{}\"/>", path(sheet, points, false));
        }
        Drawn::Hole(at, diameter) => {
            let (x, y) = sheet.place(*at);
            let radius = (diameter.to_inches() * sheet.scale / 2.0).max(1.5);
            let _ = write!(out, "<circle class=\"{classes}\"{links} cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"{radius:.1}\"/>");
        }
        Drawn::Text(text) => words(out, (sheet, said), text, &classes, &links),
        Drawn::Dimension(dimension) => dimensioned(out, sheet, dimension, &classes, &links),
        Drawn::Span(from, to, says) => span(out, (sheet.place(*from), sheet.place(*to)), says, &classes),
    }
}

fn path(sheet: &Sheet, points: &[Point], closed: bool) -> String {
    let mut text = String::new();
    for (index, point) in points.iter().enumerate() {
        let (x, y) = sheet.place(*point);
        let _ = write!(text, "{}{x:.1} {y:.1}", if index == 0 { 'M' } else { 'L' });
    }
    if closed {
        text.push('Z');
    }
    text
}

fn hatched(out: &mut String, sheet: &Sheet, outline: &Polygon, classes: &str, links: &str) {
    let corners: Vec<(f64, f64)> = outline.corners.iter().map(|point| sheet.place(*point)).collect();
    let mut lines = String::new();
    for ((ax, ay), (bx, by)) in hatch(&corners, HATCH) {
        let _ = write!(lines, "M{ax:.1} {ay:.1}L{bx:.1} {by:.1}");
    }
    let _ = write!(
        out,
        "<path class=\"{classes}\"{links} d=\"{}\"/><path class=\"hatch\" d=\"{lines}\"/>",
        path(sheet, &outline.corners, true)
    );
}

/// Width of a text on the sheet, px.
pub(super) fn text_width(says: &str) -> f64 {
    says.chars().count() as f64 * LETTER * LETTER_WIDTH
}

/// Where words stand, of drawings whose words step aside: left, right and middle height, px.
struct Said {
    steps_aside: bool,
    boxes: Vec<(f64, f64, f64)>,
}

/// A line of words to the next, px.
const TEXT_LINE: f64 = 17.0;

impl Said {
    /// How far down words between these edges go to lie on none before: by as few lines as do.
    fn aside(&mut self, (left, right): (f64, f64), y: f64) -> f64 {
        if !self.steps_aside {
            return 0.0;
        }
        let is_free = |shift: &f64| {
            let lies_on =
                |(a, b, at): &(f64, f64, f64)| left < *b && right > *a && (y + shift - at).abs() < TEXT_LINE - 0.5;
            !self.boxes.iter().any(lies_on)
        };
        let shift = [0.0, 1.0, -1.0, 2.0, -2.0].map(|lines| lines * TEXT_LINE).into_iter().find(is_free).unwrap_or(0.0);
        self.boxes.push((left, right, y + shift));
        shift
    }
}

fn words(out: &mut String, (sheet, said): (&Sheet, &mut Said), text: &Text, classes: &str, links: &str) {
    if text.room.is_some_and(|room| room.to_inches() * sheet.scale < text_width(&text.says)) {
        return;
    }
    let (x, y) = sheet.place(text.at);
    let anchor = match text.anchor {
        Anchor::Start => "start",
        Anchor::Middle => "middle",
        Anchor::End => "end",
    };
    // A word that would run off the sheet is pushed back onto it.
    let half = text_width(&text.says) / 2.0;
    let x = x + text.shift.0;
    let x = match text.anchor {
        Anchor::Middle if text.turned == 0.0 => {
            x.clamp(half.min(sheet.width / 2.0), (sheet.width - half).max(sheet.width / 2.0))
        }
        _ => x,
    };
    let left = match text.anchor {
        Anchor::Start => x,
        Anchor::Middle => x - half,
        Anchor::End => x - 2.0 * half,
    };
    let y = y + text.shift.1;
    let y = if text.turned == 0.0 { y + said.aside((left, left + 2.0 * half), y) } else { y };
    label(out, (x, y), -text.turned, anchor, &text.says, &format!("label {classes}"), links);
}

fn label(out: &mut String, (x, y): (f64, f64), turned: f64, anchor: &str, says: &str, classes: &str, links: &str) {
    let turn = if turned == 0.0 { String::new() } else { format!(" transform=\"rotate({turned:.1} {x:.1} {y:.1})\"") };
    let _ = write!(
        out,
        "<text class=\"{classes}\"{links} x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\" font-size=\"{LETTER}\"{turn}>{}</text>",
        escape(says)
    );
}

fn dimensioned(out: &mut String, sheet: &Sheet, dimension: &Dimension, classes: &str, links: &str) {
    let (from, to) = (sheet.place(dimension.from), sheet.place(dimension.to));
    let away = FIRST_ROW + f64::from(dimension.row) * ROW;
    let (low, high) = (sheet.place(sheet.low), sheet.place(sheet.high));
    let is_level = matches!(dimension.side, Side::Above | Side::Below);
    let line = match dimension.side {
        Side::Above => high.1 - away,
        Side::Below => low.1 + away,
        Side::Left => low.0 - away,
        Side::Right => high.0 + away,
    };
    let at = |point: (f64, f64)| if is_level { (point.0, line) } else { (line, point.1) };
    let (a, b) = (at(from), at(to));
    let mut strokes = String::new();
    for (point, end) in [(from, a), (to, b)] {
        // Extension line, from near the drawing to a little past the dimension line, and the stroke.
        let toward = |value: f64, end: f64| end + (end - value).signum() * 4.0;
        let past = if is_level { (end.0, toward(point.1, end.1)) } else { (toward(point.0, end.0), end.1) };
        let _ = write!(strokes, "M{:.1} {:.1}L{:.1} {:.1}", point.0, point.1, past.0, past.1);
    }
    let _ = write!(out, "<path class=\"extension\" d=\"{strokes}\"/>");
    let _ = write!(out, "<path class=\"dimension\" d=\"{}\"/>", ticked(a, b));
    let length = if is_level { (a.0 - b.0).abs() } else { (a.1 - b.1).abs() };
    if length < text_width(&dimension.says) + 4.0 {
        return;
    }
    let middle = ((a.0 + b.0) / 2.0, (a.1 + b.1) / 2.0);
    let (place, turned) =
        if is_level { ((middle.0, middle.1 - 5.0), 0.0) } else { ((middle.0 - 5.0, middle.1), -90.0) };
    label(out, place, turned, "middle", &dimension.says, &format!("label dimension__text {classes}"), links);
}

/// A dimension's line with a stroke at each end.
fn ticked(a: (f64, f64), b: (f64, f64)) -> String {
    let mut ticks = format!("M{:.1} {:.1}L{:.1} {:.1}", a.0, a.1, b.0, b.1);
    for end in [a, b] {
        let _ = write!(ticks, "M{:.1} {:.1}l8 -8", end.0 - 4.0, end.1 + 4.0);
    }
    ticks
}

/// A dimension within the drawing; one too short for its words goes without them.
fn span(out: &mut String, (a, b): ((f64, f64), (f64, f64)), says: &str, classes: &str) {
    let _ = write!(out, "<path class=\"span {classes}\" d=\"{}\"/>", ticked(a, b));
    if (a.0 - b.0).abs() >= text_width(says) + 4.0 {
        let middle = ((a.0 + b.0) / 2.0, a.1 - 5.0);
        label(out, middle, 0.0, "middle", says, &format!("label span__text {classes}"), "");
    }
}

/// Text as it may stand in XML: reserved characters escaped, control characters dropped.
#[must_use]
pub fn escape(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\t' | '\n' => out.push(letter),
            control if control.is_control() => {}
            '\u{fffe}' | '\u{ffff}' => {}
            other => out.push(other),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hostile_words_stay_words() {
        assert_eq!(escape("<b a=\"1\">&'\u{1}\n"), "&lt;b a=&quot;1&quot;&gt;&amp;&#39;\n");
    }

    #[test]
    fn a_drawing_fills_its_width_and_keeps_its_proportions() {
        let mut scene = Scene::default();
        scene.rectangle(
            super::super::Layer::Wood,
            (Length::ZERO, Length::inches(100.0)),
            (Length::ZERO, Length::inches(10.0)),
        );
        let sheet = Sheet::new(&scene, 420.0);
        assert!((sheet.scale - 4.0).abs() < 1e-9);
        assert!((sheet.height - 60.0).abs() < 1e-9);
        assert_eq!(sheet.place(Point::inches(0.0, 10.0)), (10.0, 10.0));
        // And back again.
        assert_eq!(sheet.x_at(sheet.place(Point::inches(37.0, 3.0)).0), Some(Length::inches(37.0)));
        assert_eq!(sheet.x_at(f64::NAN), None);
    }

    /// 100 by 10 in within 120 by 220 px less 10 px at each edge is 1 px an inch, in the middle of the height.
    #[test]
    fn a_drawing_fills_its_frame() {
        let mut scene = Scene::default();
        scene.rectangle(
            super::super::Layer::Wood,
            (Length::ZERO, Length::inches(100.0)),
            (Length::ZERO, Length::inches(10.0)),
        );
        let printed = print_within(&scene, (120.0, 220.0), "a stick");
        assert!(printed.contains("d=\"M10.0 115.0L110.0 115.0L110.0 105.0L10.0 105.0Z\""), "{printed}");
        assert!(printed.contains("viewBox=\"0 0 120.0 220.0\""), "{printed}");
    }

    /// A frame of 100 by 10 in at 1:24 is 400 by 40 px on the sheet, 96 of them to the inch.
    #[test]
    fn on_paper_the_frame_is_the_model_over_the_ratio() {
        let mut scene = Scene::default();
        scene.rectangle(
            super::super::Layer::Wood,
            (Length::ZERO, Length::inches(100.0)),
            (Length::ZERO, Length::inches(10.0)),
        );
        let printed = print_to_scale(&scene, 24.0, "a stick");
        assert!(printed.contains("d=\"M10.0 50.0L410.0 50.0L410.0 10.0L10.0 10.0Z\""), "{printed}");
        let (width, height) = size_to_scale(&scene, 24.0);
        assert!(printed.contains(&format!("width=\"{width:.1}\" height=\"{height:.1}\"")));
        // A dimension row beside the frame moves it and never scales it.
        scene.dimension(Side::Left, 0, Point::inches(0.0, 0.0), Point::inches(0.0, 10.0), "10");
        assert!((size_to_scale(&scene, 24.0).0 - (400.0 + 20.0 + ROW + FIRST_ROW)).abs() < 1e-9);
    }
}
