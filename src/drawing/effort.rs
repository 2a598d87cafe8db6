//! The frame by how hard each stick works: a shade, and the figure beside it.
use super::elevation::elevation;
use super::scene::{Anchor, Drawn, Effort, Scene, Text};
use super::section::section;
use crate::checks::Strength;
use crate::design::Built;
use crate::geometry::{Point, Polygon};
use crate::project::Project;

/// The beam line from outside.
#[must_use]
pub fn effort_elevation(project: &Project, built: &Built, strength: &Strength) -> Scene {
    let mut scene = shaded(elevation(project, built), strength, true);
    scarf_figures(&mut scene, built, strength);
    scene
}

/// The section at the first post.
#[must_use]
pub fn effort_section(project: &Project, built: &Built, strength: &Strength) -> Scene {
    shaded(section(project, built), strength, false)
}

/// The worst check of a stick; rafters, purlins and ledger pieces are checked once for all of them.
fn ratio_of(mark: &str, strength: &Strength) -> Option<Option<f64>> {
    let own = strength.worst_of(mark);
    let kind = mark.chars().next().filter(|kind| "RNL".contains(*kind));
    let of_kind = |kind: char| {
        let is_kind = |member: &str| {
            let mut letters = member.chars();
            letters.next() == Some(kind) && letters.next().is_some_and(|next| next.is_ascii_digit())
        };
        strength.checks.iter().find(|check| is_kind(&check.member))
    };
    own.or_else(|| kind.and_then(of_kind)).map(crate::checks::Check::ratio)
}

fn figure(ratio: Option<f64>) -> String {
    match ratio {
        None => "?".to_owned(),
        Some(ratio) if !ratio.is_finite() || ratio > 9.99 => "over".to_owned(),
        Some(ratio) => format!("{:.0} %", ratio * 100.0),
    }
}

/// Dimensions make room; every stick is shaded, and its name says the figure.
fn shaded(drawn: Scene, strength: &Strength, is_elevation: bool) -> Scene {
    let mut scene = Scene { parts: Vec::new(), ..drawn };
    let mut named: Vec<String> = Vec::new();
    let mut outlines: Vec<(String, Point)> = Vec::new();
    for mut part in drawn.parts {
        if matches!(part.drawn, Drawn::Dimension(_)) {
            continue;
        }
        part.field = None;
        let found = part.stick.as_ref().and_then(|mark| Some((mark.clone(), ratio_of(mark, strength)?)));
        if let Some((mark, ratio)) = found {
            match &mut part.drawn {
                Drawn::Text(text) => {
                    text.says = format!("{} {}", text.says, figure(ratio));
                    named.push(mark);
                }
                Drawn::Area(outline) => {
                    outlines.push((mark, middle(outline)));
                    part.effort = Some(Effort::of(ratio));
                }
                _ => part.effort = Some(Effort::of(ratio)),
            }
        }
        scene.parts.push(part);
    }
    // What has no name in the drawing gets its figure alone, one of each row of like sticks.
    for (mark, at) in outlines {
        let row = |mark: &str| mark.chars().next().filter(|kind| "RNL".contains(*kind));
        let is_said = named.iter().any(|known| *known == mark || (row(known).is_some() && row(known) == row(&mark)));
        if let (false, Some(ratio)) = (is_said, ratio_of(&mark, strength)) {
            let mut text = label(at, format!("{mark} {}", figure(ratio)));
            match mark.chars().next() {
                // Braces say it away from their post, so that two of one post stand side by side.
                Some('K') => text.shift.0 = if mark.ends_with('L') { -14.0 } else { 14.0 },
                Some('R') if is_elevation => (text.anchor, text.shift) = (Anchor::Start, (4.0, -22.0)),
                _ => {}
            }
            scene.words(text).of_stick(&mark);
            named.push(mark);
        }
    }
    scene
}

fn middle(outline: &Polygon) -> Point {
    let (low, high) = outline.bounds();
    Point::new((low.x + high.x) / 2.0, (low.y + high.y) / 2.0)
}

fn label(at: Point, says: String) -> Text {
    Text { at, says, anchor: Anchor::Middle, turned: 0.0, shift: (0.0, 5.0), room: None }
}

fn scarf_figures(scene: &mut Scene, built: &Built, strength: &Strength) {
    for scarf in &built.shape.beam.scarfs {
        let mark = format!("scarf {}", scarf.number);
        let Some(worst) = strength.worst_of(&mark) else { continue };
        let at = Point::new(scarf.place.centre, built.shape.line.beam_seat);
        let mut text = label(at, format!("{mark} {}", figure(worst.ratio())));
        text.shift = (0.0, -26.0);
        scene.words(text);
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::drawing::svg;
    use crate::evaluate;
    use crate::project::demo;

    #[test]
    fn every_stick_of_the_line_is_shaded_and_says_its_figure() {
        let project = demo::wool_barn();
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        let drawn = svg::print(&effort_elevation(&project, &built, &strength), 900.0, "how hard each stick works");
        for mark in ["B1", "B2", "B3", "P1", "P4", "K2L"] {
            let ratio = strength.worst_of(mark).unwrap().ratio();
            assert!(drawn.contains(&format!("{mark} {}", figure(ratio))), "{mark}");
        }
        assert!(drawn.contains("effort-light") && !drawn.contains("dimension__text"));
        assert!(svg::print(&effort_section(&project, &built, &strength), 400.0, "section").contains("effort-"));
    }
}
