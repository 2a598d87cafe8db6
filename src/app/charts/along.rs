//! A band along the beam as SVG: its edges, the curve of the uncut beam behind it, and what stands where.
use super::curve::{AXIS, BEHIND, LETTER, LINE, MESH, OWN, WORDS, dress, thousands};
use plotters::prelude::*;
use std::fmt::Write;

/// What stands at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// A post.
    Post,
    /// The head of a brace.
    Brace,
    /// The middle of a scarf.
    Scarf,
}

/// A band: place, least and greatest value.
pub type Band = Vec<(f64, f64, f64)>;

/// What is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct AlongCurve {
    /// The beam as it is.
    pub band: Band,
    /// The beam without its scarfs.
    pub uncut: Option<Band>,
    /// Where the uncut beam hardly bends, left to right: each is ringed and told.
    pub notes: Vec<(f64, f64)>,
    /// What stands where.
    pub marks: Vec<(f64, Mark)>,
}

/// Size it is laid out for; the style sheet stretches it.
const SIZE: (u32, u32) = (340, 220);

/// The chart; nothing where there is too little to draw.
#[must_use]
pub fn draw_along(curve: &AlongCurve) -> String {
    let mut svg = String::new();
    let noted = if curve.band.len() < 2 { None } else { plot(curve, &mut svg) };
    let Some(noted) = noted else { return String::new() };
    let told = tell(&noted);
    dress(&svg, SIZE).replace("</svg>", &format!("{told}</svg>"))
}

/// What is said at a note, its width, and its rows from the top, px.
const SAYS: &str = "hardly bends";
const WIDE: i32 = 84;
const ROW: i32 = 16;

/// Each note's ring, and its words over the curves with a line down to it: in the row below where they would touch those before.
fn tell(noted: &[(i32, i32)]) -> String {
    let mut out = String::new();
    let mut ends = [i32::MIN; 2];
    for (x, y) in noted {
        let middle = (*x).clamp(WIDE / 2, SIZE.0 as i32 - WIDE / 2);
        let row = usize::from(ends[0] > middle - WIDE / 2);
        if ends[row] <= middle - WIDE / 2 {
            ends[row] = middle + WIDE / 2;
            let top = 8 + ROW * (row as i32 + 1);
            let _ = write!(
                out,
                "<line class=\"chart__note\" x1=\"{x}\" y1=\"{}\" x2=\"{x}\" y2=\"{}\"/>\
                 <text class=\"chart__words\" x=\"{middle}\" y=\"{top}\" text-anchor=\"middle\" font-size=\"13\">{SAYS}</text>",
                top + 4,
                y - 5
            );
        }
        let _ = write!(out, "<circle class=\"chart__note\" cx=\"{x}\" cy=\"{y}\" r=\"5\"/>");
    }
    out
}

/// Draws it, and says where its notes lie, px.
fn plot(curve: &AlongCurve, svg: &mut String) -> Option<Vec<(i32, i32)>> {
    let all = || curve.band.iter().chain(curve.uncut.iter().flatten());
    let low = all().map(|(_, low, _)| *low).fold(0.0, f64::min);
    let high = all().map(|(.., high)| *high).fold(0.0, f64::max);
    let reach = (high - low).max(1e-9);
    // What is told of the curves stands over them.
    let (bottom, top) = (low - reach * 0.06, high + reach * if curve.notes.is_empty() { 0.12 } else { 0.28 });
    let (left, right) = (curve.band.first()?.0, curve.band.last()?.0);
    let area = SVGBackend::with_string(svg, SIZE).into_drawing_area();
    let mut chart = ChartBuilder::on(&area)
        .margin(8)
        .margin_right(16)
        .x_label_area_size(24)
        .y_label_area_size(56)
        .build_cartesian_2d(left..right, bottom..top)
        .ok()?;
    let words = ("sans-serif", LETTER).into_font().color(&WORDS);
    let decimals = if reach < 1.0 { 2 } else { usize::from(reach < 20.0) };
    chart
        .configure_mesh()
        .disable_x_mesh()
        .x_labels(7)
        .y_labels(5)
        .bold_line_style(MESH)
        .light_line_style(TRANSPARENT)
        .axis_style(AXIS)
        .label_style(words)
        .x_label_formatter(&|x| format!("{x:.0}"))
        .y_label_formatter(&|y| if decimals == 0 { thousands(*y) } else { format!("{y:.decimals$}") })
        .draw()
        .ok()?;
    for (x, mark) in &curve.marks {
        let (pen, width) = match mark {
            Mark::Post => (AXIS, 2),
            Mark::Brace => (MESH, 1),
            Mark::Scarf => (OWN, 2),
        };
        chart.draw_series([PathElement::new(vec![(*x, bottom), (*x, top)], pen.stroke_width(width))]).ok()?;
    }
    chart.draw_series([PathElement::new(vec![(left, 0.0), (right, 0.0)], AXIS.stroke_width(1))]).ok()?;
    if let Some(uncut) = &curve.uncut {
        for edge in edges(uncut) {
            chart.draw_series(DashedLineSeries::new(edge, 5, 4, BEHIND.stroke_width(2))).ok()?;
        }
    }
    for edge in edges(&curve.band) {
        chart.draw_series(LineSeries::new(edge, LINE.stroke_width(2))).ok()?;
    }
    let noted = curve.notes.iter().map(|note| chart.backend_coord(note)).collect();
    area.present().ok()?;
    Some(noted)
}

fn edges(band: &Band) -> [Vec<(f64, f64)>; 2] {
    [band.iter().map(|(x, low, _)| (*x, *low)).collect(), band.iter().map(|(x, _, high)| (*x, *high)).collect()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_with_its_marks() {
        let curve = AlongCurve {
            band: vec![(0.0, -1.0, 2.0), (10.0, -3000.0, 500.0), (20.0, 0.0, 0.0)],
            uncut: Some(vec![(0.0, 0.0, 0.0), (20.0, -10.0, 10.0)]),
            notes: Vec::new(),
            marks: vec![(10.0, Mark::Post), (5.0, Mark::Scarf), (7.0, Mark::Brace)],
        };
        let svg = draw_along(&curve);
        assert!(svg.contains("chart__line") && svg.contains("chart__own") && !svg.contains("=\"#"), "{svg}");
        assert_eq!(draw_along(&AlongCurve { band: Vec::new(), ..curve }), "");
    }

    /// Words 84 px wide: the second, 60 px on, goes a row of 16 px down; the third has room in the first row again; a fourth
    /// close by both is ringed and not told.
    #[test]
    fn notes_never_lie_on_each_other() {
        let told = tell(&[(100, 90), (160, 80), (190, 95), (170, 85)]);
        assert_eq!(told.matches("<circle").count(), 4);
        assert_eq!(told.matches(SAYS).count(), 3);
        for (x, y) in [(100, 24), (160, 40), (190, 24)] {
            assert!(told.contains(&format!("x=\"{x}\" y=\"{y}\"")), "{told}");
        }
        assert!(tell(&[(10, 50)]).contains("x=\"42\""), "words stay on the chart");
    }
}
