//! Scales a drawing is printed to, and the bar that shows whether the printer kept to them.
use std::fmt::Write;

use super::scene::Scene;
use super::svg::size_to_scale;
use crate::units::UnitSystem;

/// A scale of the trade.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PaperScale {
    /// Inches of the frame to an inch of paper.
    pub ratio: f64,
    /// The scale in words.
    pub words: &'static str,
}

const fn scale(ratio: f64, words: &'static str) -> PaperScale {
    PaperScale { ratio, words }
}

const FOOT_SCALES: [PaperScale; 9] = [
    scale(12.0, "1″ = 1′ (1:12)"),
    scale(16.0, "3⁄4″ = 1′ (1:16)"),
    scale(24.0, "1⁄2″ = 1′ (1:24)"),
    scale(32.0, "3⁄8″ = 1′ (1:32)"),
    scale(48.0, "1⁄4″ = 1′ (1:48)"),
    scale(64.0, "3⁄16″ = 1′ (1:64)"),
    scale(96.0, "1⁄8″ = 1′ (1:96)"),
    scale(192.0, "1⁄16″ = 1′ (1:192)"),
    scale(384.0, "1⁄32″ = 1′ (1:384)"),
];

const METRIC_SCALES: [PaperScale; 9] = [
    scale(5.0, "1:5"),
    scale(10.0, "1:10"),
    scale(20.0, "1:20"),
    scale(25.0, "1:25"),
    scale(50.0, "1:50"),
    scale(75.0, "1:75"),
    scale(100.0, "1:100"),
    scale(200.0, "1:200"),
    scale(500.0, "1:500"),
];

/// The largest scale at which the drawing fits a width and a height in px, 96 to the inch; the smallest
/// there is where none does.
#[must_use]
pub fn fitting_scale(scene: &Scene, units: UnitSystem, (width, height): (f64, f64)) -> PaperScale {
    let [.., smallest] = scales(units);
    let fits = |scale: &&PaperScale| {
        let (wide, tall) = size_to_scale(scene, scale.ratio);
        wide <= width && tall <= height
    };
    *scales(units).iter().find(fits).unwrap_or(smallest)
}

const fn scales(units: UnitSystem) -> &'static [PaperScale; 9] {
    match units {
        UnitSystem::Imperial => &FOOT_SCALES,
        UnitSystem::Metric => &METRIC_SCALES,
    }
}

/// Width and height of the bar with its words, px.
pub(super) const BAR: (f64, f64) = (4.0 * 96.0, 64.0);

/// A bar that measures 4 in along its upper edge and 100 mm along its lower one.
pub(super) fn bar(out: &mut String, left: f64, top: f64) {
    let middle = top + 32.0;
    let mut strokes = format!("M{left:.2} {middle:.2}h{:.2}", BAR.0);
    for quarter in 0..=16 {
        let high = if quarter % 4 == 0 { 12.0 } else { 6.0 };
        let _ = write!(strokes, "M{:.2} {middle:.2}v-{high}", left + 24.0 * f64::from(quarter));
    }
    for centimetre in 0..=10 {
        let low = if centimetre % 5 == 0 { 12.0 } else { 6.0 };
        let _ = write!(strokes, "M{:.2} {middle:.2}v{low}", left + 960.0 / 25.4 * f64::from(centimetre));
    }
    let _ = write!(out, "<path class=\"scale-bar dimension\" d=\"{strokes}\"/>");
    let words = [(middle - 14.0, "must measure 4 in"), (middle + 26.0, "must measure 100 mm")];
    for (y, says) in words {
        let x = left + BAR.0 / 2.0;
        let _ = write!(
            out,
            "<text class=\"label\" x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"middle\" font-size=\"13\">{says}</text>"
        );
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::super::{elevation, plan, section};
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    #[test]
    fn the_examples_fit_the_sheet_and_no_larger_scale_would() {
        let room = (680.0, 640.0);
        for project in [demo::wool_barn(), demo::log_store()] {
            let built = evaluate(&project).built.unwrap();
            for scene in [section(&project, &built), elevation(&project, &built), plan(&project, &built)] {
                let chosen = fitting_scale(&scene, project.units, room);
                let (wide, tall) = size_to_scale(&scene, chosen.ratio);
                assert!(wide <= room.0 && tall <= room.1, "{wide} by {tall}");
                for larger in scales(project.units).iter().take_while(|scale| scale.ratio < chosen.ratio) {
                    let (wide, tall) = size_to_scale(&scene, larger.ratio);
                    assert!(wide > room.0 || tall > room.1, "{}", larger.words);
                }
            }
        }
    }

    /// The bar's ends on the printed sheet, read back from the drawing: 96 px are an inch.
    #[test]
    fn the_bar_measures_what_it_says() {
        let mut out = String::new();
        bar(&mut out, 10.0, 0.0);
        let d = out.split("d=\"").nth(1).unwrap().split('"').next().unwrap();
        let xs: Vec<(f64, bool)> = d
            .split('M')
            .filter(|stroke| stroke.contains('v'))
            .map(|stroke| (stroke.split(' ').next().unwrap().parse().unwrap(), stroke.contains("v-")))
            .collect();
        let span = |is_inch: bool| {
            let of = xs.iter().filter(|(_, inch)| *inch == is_inch).map(|(x, _)| *x);
            of.clone().fold(0.0, f64::max) - of.fold(f64::INFINITY, f64::min)
        };
        assert!((span(true) / 96.0 - 4.0).abs() < 1e-9);
        assert!((span(false) / 96.0 * 25.4 - 100.0).abs() < 0.01);
    }
}
