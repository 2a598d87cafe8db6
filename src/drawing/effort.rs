//! The frame by how hard each stick works: a shade, and the figure beside it.
use super::elevation::elevation;
use super::scene::{Anchor, Drawn, Effort, Layer, Scene, Text};
use super::section::section;
use crate::checks::{Check, Strength};
use crate::design::Built;
use crate::geometry::{Point, Polygon};
use crate::project::Project;
use crate::units::Length;

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

/// How hard a stick works: its worst ratio, and whether something about it was not judged. Rafters, purlins and ledger
/// pieces are checked once for all of them.
#[derive(Clone, Copy, PartialEq)]
struct Work {
    ratio: Option<f64>,
    is_open: bool,
}

fn work_of(mark: &str, strength: &Strength) -> Option<Work> {
    let kind = mark.chars().next().filter(|kind| "RNL".contains(*kind));
    let is_own = |member: &str| {
        let mut letters = member.chars();
        let of_kind =
            kind.is_some() && letters.next() == kind && letters.next().is_some_and(|next| next.is_ascii_digit());
        member == mark || of_kind
    };
    let mut own = strength.checks.iter().filter(|check| is_own(&check.member)).peekable();
    own.peek()?;
    let own: Vec<&Check> = own.collect();
    let ratio = own.iter().filter_map(|check| check.effort()).reduce(f64::max);
    Some(Work { ratio, is_open: own.iter().any(|check| check.ratio().is_none()) })
}

impl Work {
    /// `84 %`, with a question mark where something was not judged.
    fn figure(self) -> String {
        let open = if self.is_open { " ?" } else { "" };
        match self.ratio {
            None => "?".to_owned(),
            Some(ratio) if !ratio.is_finite() || ratio > 9.99 => "over".to_owned(),
            Some(ratio) => format!("{:.0} %{open}", ratio * 100.0),
        }
    }
}

/// Room a brace's figure has in the bay: half of a usual one.
const BRACE_ROOM: Length = Length::inches(60.0);

/// Dimensions and rings of joints make room; every stick is shaded, and its name says the figure.
fn shaded(drawn: Scene, strength: &Strength, is_elevation: bool) -> Scene {
    let mut scene = Scene { parts: Vec::new(), steps_aside: true, ..drawn };
    let mut named: Vec<String> = Vec::new();
    let mut outlines: Vec<(String, Point)> = Vec::new();
    for mut part in drawn.parts {
        if matches!(part.drawn, Drawn::Dimension(_)) || part.layer == Layer::Own {
            continue;
        }
        part.field = None;
        let found = part.stick.as_ref().and_then(|mark| Some((mark.clone(), work_of(mark, strength)?)));
        if let Some((mark, work)) = found {
            match &mut part.drawn {
                Drawn::Text(text) => {
                    text.says = format!("{} {}", text.says, work.figure());
                    // The last post says it to its left: higher than its neighbour, which says it to its right.
                    if text.anchor == Anchor::End {
                        text.shift.1 -= 20.0;
                    }
                    named.push(mark);
                }
                Drawn::Area(outline) => {
                    outlines.push((mark, middle(outline)));
                    part.effort = Some(Effort::of(work.ratio));
                }
                _ => part.effort = Some(Effort::of(work.ratio)),
            }
        }
        scene.parts.push(part);
    }
    // What has no name in the drawing gets its figure alone, one of each row of like sticks.
    for (mark, at) in outlines {
        let row = |mark: &str| mark.chars().next().filter(|kind| "RNL".contains(*kind));
        let is_said = named.iter().any(|known| *known == mark || (row(known).is_some() && row(known) == row(&mark)));
        if let (false, Some(work)) = (is_said, work_of(&mark, strength)) {
            let mut text = label(at, format!("{mark} {}", work.figure()));
            match mark.chars().next() {
                // Braces say it away from their post, so that two of one post stand side by side.
                Some('K') => {
                    text.shift.0 = if mark.ends_with('L') { -14.0 } else { 14.0 };
                    text.room = is_elevation.then_some(BRACE_ROOM);
                }
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
        let Some(work) = work_of(&mark, strength) else { continue };
        let at = Point::new(scarf.place.centre, built.shape.line.beam_seat);
        let mut text = label(at, format!("{mark} {}", work.figure()));
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
    use crate::project::{demo, examples};

    /// Its own heads are ringed on the frame; where the shade of a stick is told, they are not.
    #[test]
    fn rings_stay_on_the_frame() {
        let project = examples::wool_barn();
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        let rings = |scene: Scene| scene.parts.iter().filter(|part| part.layer == Layer::Own).count();
        assert_eq!(rings(elevation(&project, &built)), 2 * 4);
        assert_eq!(rings(effort_elevation(&project, &built, &strength)), 0);
    }

    /// In the log store's short bay two braces are told side by side: no two words of a drawing lie on each other, 13 px letters
    /// counted at 0.48 of their size.
    #[test]
    fn words_step_aside() {
        let project = demo::log_store();
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        for width in [328.0, 640.0, 900.0] {
            let drawn = svg::print(&effort_elevation(&project, &built, &strength), width, "effort");
            let mut boxes: Vec<(f64, f64, f64, String)> = Vec::new();
            for part in drawn.split("<text ").skip(1) {
                let value = |name: &str| part.split(&format!(" {name}=\"")).nth(1).unwrap().split('"').next().unwrap();
                let says = part.split('>').nth(1).unwrap().split('<').next().unwrap().to_owned();
                let (x, y) = (value("x").parse::<f64>().unwrap(), value("y").parse::<f64>().unwrap());
                let wide = says.chars().count() as f64 * 13.0 * 0.48;
                let left = match value("text-anchor") {
                    "start" => x,
                    "middle" => x - wide / 2.0,
                    _ => x - wide,
                };
                for (a, b, at, before) in &boxes {
                    let apart = left >= *b - 0.2 || left + wide <= *a + 0.2 || (y - at).abs() > 13.0;
                    assert!(apart, "{width} px: {says} lies on {before}");
                }
                boxes.push((left, left + wide, y, says));
            }
            assert!(boxes.len() > 6);
        }
    }

    #[test]
    fn every_stick_of_the_line_is_shaded_and_says_its_figure() {
        let project = demo::wool_barn();
        let design = evaluate(&project);
        let (built, strength) = (design.built.unwrap(), design.strength.unwrap());
        let drawn = svg::print(&effort_elevation(&project, &built, &strength), 900.0, "how hard each stick works");
        for mark in ["B1", "B2", "B3", "P1", "P4", "K2L"] {
            let work = work_of(mark, &strength).unwrap();
            assert!(drawn.contains(&format!("{mark} {}", work.figure())), "{mark}");
        }
        assert!(drawn.contains("effort-light") && !drawn.contains("dimension__text"));
        assert!(svg::print(&effort_section(&project, &built, &strength), 400.0, "section").contains("effort-"));
    }
}
