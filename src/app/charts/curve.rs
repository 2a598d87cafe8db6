//! One curve as SVG whose colours are the style sheet's.
//!
//! Plotters measures captions, legends and pie labels in the page, so none of them is asked for here: their
//! words stand in HTML around the curve. Its fixed size and its literal colours are taken out afterwards.
use plotters::prelude::*;

/// Size the curve is drawn at, px; it is shown at its place's width.
const SIZE: (u32, u32) = (320, 190);
/// Plotters divides the size of letters by this.
pub(super) const LETTER: f64 = 13.0 * 1.24;

/// Stand-ins: each is found again in the SVG and gives way to a class.
pub(super) const LINE: RGBColor = RGBColor(1, 2, 3);
pub(super) const POINT: RGBColor = RGBColor(1, 2, 4);
pub(super) const OWN: RGBColor = RGBColor(1, 2, 5);
pub(super) const AXIS: RGBColor = RGBColor(1, 2, 6);
pub(super) const MESH: RGBColor = RGBColor(1, 2, 7);
pub(super) const BEHIND: RGBColor = RGBColor(1, 2, 9);
pub(super) const WORDS: RGBColor = RGBColor(1, 2, 8);

const CLASSES: [(RGBColor, &str); 7] = [
    (BEHIND, "chart__behind"),
    (LINE, "chart__line"),
    (POINT, "chart__point"),
    (OWN, "chart__own"),
    (AXIS, "chart__axis"),
    (MESH, "chart__mesh"),
    (WORDS, "chart__words"),
];

/// What is drawn: points from left to right, and which of them is the user's own.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// The points.
    pub points: Vec<(f64, f64)>,
    /// Index of the user's own.
    pub own: Option<usize>,
    /// Decimals of the numbers across.
    pub decimals: usize,
}

/// The curve as a whole `<svg>`; empty where there are not two points. It is hidden from screen readers: the
/// same figures stand in a table beside it.
#[must_use]
pub fn draw(curve: &Curve) -> String {
    let mut svg = String::new();
    if curve.points.len() < 2 || plot(curve, &mut svg).is_none() {
        return String::new();
    }
    dress(&svg, SIZE)
}

fn plot(curve: &Curve, svg: &mut String) -> Option<()> {
    let ends = |of: fn(&(f64, f64)) -> f64| {
        let values = curve.points.iter().map(of);
        let (low, high) = values.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)));
        (low, if high > low { high } else { low + 1.0 })
    };
    let ((left, right), (_, top)) = (ends(|point| point.0), ends(|point| point.1));
    let area = SVGBackend::with_string(svg, SIZE).into_drawing_area();
    // From zero: a curve cut off below would make a small saving look large.
    let mut chart = ChartBuilder::on(&area)
        .margin(8)
        .margin_right(16)
        .x_label_area_size(24)
        .y_label_area_size(46)
        .build_cartesian_2d(left..right, 0.0..top * 1.08)
        .ok()?;
    let words = ("sans-serif", LETTER).into_font().color(&WORDS);
    let decimals = curve.decimals;
    chart
        .configure_mesh()
        .disable_x_mesh()
        .x_labels(7)
        .y_labels(4)
        .bold_line_style(MESH)
        .light_line_style(TRANSPARENT)
        .axis_style(AXIS)
        .label_style(words)
        .x_label_formatter(&|x| format!("{x:.decimals$}"))
        .y_label_formatter(&|y| thousands(*y))
        .draw()
        .ok()?;
    chart.draw_series(LineSeries::new(curve.points.iter().copied(), LINE.stroke_width(2))).ok()?;
    chart.draw_series(curve.points.iter().map(|point| Circle::new(*point, 3, POINT.filled()))).ok()?;
    let own = curve.own.and_then(|own| curve.points.get(own));
    chart.draw_series(own.into_iter().map(|point| Circle::new(*point, 7, OWN.stroke_width(3)))).ok()?;
    area.present().ok()
}

/// 12500 as 12,500.
pub(super) fn thousands(value: f64) -> String {
    let digits = format!("{:.0}", value.abs());
    let mut out = String::from(if value <= -0.5 { "\u{2212}" } else { "" });
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}

/// Takes the fixed size out and puts classes in the place of colours.
pub(super) fn dress(svg: &str, (width, height): (u32, u32)) -> String {
    let mut out = svg.replacen(
        &format!("<svg width=\"{width}\" height=\"{height}\""),
        "<svg class=\"chart__svg\" aria-hidden=\"true\" focusable=\"false\"",
        1,
    );
    for (colour, class) in CLASSES {
        let hex = format!("#{:02X}{:02X}{:02X}", colour.0, colour.1, colour.2);
        for attribute in ["stroke", "fill"] {
            out = out.replace(&format!("{attribute}=\"{hex}\""), &format!("class=\"{class}\""));
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    fn curve(points: &[(f64, f64)]) -> Curve {
        Curve { points: points.to_vec(), own: Some(1), decimals: 0 }
    }

    #[test]
    fn no_colour_and_no_fixed_size_is_left() {
        let svg = draw(&curve(&[(12.0, 5400.0), (24.0, 2800.0), (36.0, 2000.0)]));
        assert!(svg.starts_with("<svg class=\"chart__svg\""), "{svg}");
        assert!(svg.contains("viewBox=\"0 0 320 190\""));
        assert!(!svg.contains("=\"#"), "{svg}");
        assert!(!svg.contains("width=\"320\""));
        for (_, class) in CLASSES.into_iter().filter(|(colour, _)| *colour != BEHIND) {
            assert!(svg.contains(class), "{class} is missing: {svg}");
        }
    }

    #[test]
    fn too_few_points_are_no_curve() {
        assert_eq!(draw(&curve(&[(12.0, 5400.0)])), "");
        assert_eq!(thousands(1_234_567.0), "1,234,567");
        assert_eq!(thousands(950.0), "950");
        assert_eq!(thousands(-12_345.0), "\u{2212}12,345");
    }
}
