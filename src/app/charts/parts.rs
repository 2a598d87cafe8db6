//! Bars lying one above the other, each with its name.
use super::curve::{AXIS, LETTER, MESH, POINT, WORDS, dress, thousands};
use plotters::prelude::*;

/// Width, and height of one bar with its room, px.
const WIDTH: u32 = 320;
const EACH: u32 = 30;

/// The bars as a whole `<svg>`, the first on top; empty where nothing is above zero. Hidden from screen readers: the same
/// figures stand in a table beside it.
#[must_use]
pub fn draw_parts(bars: &[(&str, f64)]) -> String {
    let most = bars.iter().map(|bar| bar.1).fold(0.0, f64::max);
    let mut svg = String::new();
    if most <= 0.0 || plot(bars, most, &mut svg).is_none() {
        return String::new();
    }
    dress(&svg, size(bars.len()))
}

const fn size(n_bars: usize) -> (u32, u32) {
    (WIDTH, n_bars as u32 * EACH + 40)
}

fn plot(bars: &[(&str, f64)], most: f64, svg: &mut String) -> Option<()> {
    let n_bars = bars.len() as f64;
    let area = SVGBackend::with_string(svg, size(bars.len())).into_drawing_area();
    let mut chart = ChartBuilder::on(&area)
        .margin(6)
        .margin_right(18)
        .x_label_area_size(24)
        .y_label_area_size(76)
        .build_cartesian_2d(0.0..most, 0.0..n_bars)
        .ok()?;
    let name = |y: &f64| {
        let from_top = n_bars - 0.5 - *y;
        let bar = (from_top.fract().abs() < 1e-6).then(|| bars.get(from_top.round() as usize)).flatten();
        bar.map_or_else(String::new, |bar| bar.0.to_owned())
    };
    chart
        .configure_mesh()
        .disable_y_mesh()
        .x_labels(5)
        .y_labels(2 * bars.len() + 1)
        .bold_line_style(MESH)
        .light_line_style(TRANSPARENT)
        .axis_style(AXIS)
        .label_style(("sans-serif", LETTER).into_font().color(&WORDS))
        .x_label_formatter(&|x| thousands(*x))
        .y_label_formatter(&name)
        .draw()
        .ok()?;
    let bars = bars.iter().enumerate().filter(|(_, bar)| bar.1 > 0.0);
    chart
        .draw_series(bars.map(|(index, (_, value))| {
            let low = n_bars - 1.0 - index as f64;
            Rectangle::new([(0.0, low + 0.15), (*value, low + 0.85)], POINT.filled())
        }))
        .ok()?;
    area.present().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_part_has_its_bar_and_its_name() {
        let svg = draw_parts(&[("timber", 3000.0), ("roof", 1200.0), ("finish", 0.0)]);
        assert_eq!(svg.matches("<rect").count(), 2);
        assert!(["timber", "roof", "finish", "3,000"].iter().all(|word| svg.contains(word)), "{svg}");
        assert_eq!(draw_parts(&[("timber", 0.0)]), "");
    }
}
