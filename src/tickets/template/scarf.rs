//! The two halves of a scarf, seen on the outer face: top up.
use super::{Stroke, Template};
use crate::design::Shape;
use crate::geometry::{Point, Polygon, ScarfReport};
use crate::joinery::ScarfShape;
use crate::project::{JointName, Project, ScarfKind, Side};
use crate::units::{Fineness, Length};
use crate::wording::tape;

/// Whole beam drawn past the root, and rough wood past the tip.
const STUB: Length = Length::inches(2.0);
const ROUGH: Length = Length::inches(0.75);
/// How far the reference edges run along the tip.
const AT_TIP: Length = Length::inches(2.5);

/// The halves this beam has: lower and upper, of either hand, and those of each scarf that is not by the rules.
pub fn templates(project: &Project, shape: &Shape) -> Vec<Template> {
    let kind = project.frame.scarfs.kind;
    let (by_rules, own): (Vec<&ScarfReport>, Vec<&ScarfReport>) =
        shape.beam.scarfs.iter().partition(|scarf| scarf.kind == kind);
    let mut all = halves(project, kind, &by_rules);
    for scarf in own {
        let joint = JointName::Scarf(scarf.number);
        all.extend(halves(project, scarf.kind, &[scarf]).into_iter().map(|half| half.own(project, joint)));
    }
    all
}

fn halves(project: &Project, kind: ScarfKind, scarfs: &[&ScarfReport]) -> Vec<Template> {
    let scarf = ScarfShape::new(&project.frame, &project.joinery, kind);
    let mut all = Vec::new();
    for is_lower in [true, false] {
        for lower in [Side::Left, Side::Right] {
            let of_side = scarfs.iter().filter(|known| known.place.lower == lower);
            // The piece at the left of a scarf has its number.
            let has_left = is_lower == (lower == Side::Left);
            let piece = |number: usize| if has_left { number } else { number + 1 };
            let serves: Vec<String> = of_side.map(|known| format!("B{}", piece(known.number))).collect();
            if !serves.is_empty() {
                all.push(half(project, &scarf, is_lower, lower, serves));
            }
        }
    }
    all
}

fn half(project: &Project, scarf: &ScarfShape, is_lower: bool, lower: Side, serves: Vec<String>) -> Template {
    let (half, stays) = if is_lower { ("lower", "bottom") } else { ("upper", "top") };
    let hand = if lower == Side::Left { ("", "") } else { ("-right", ", lower lap at the right") };
    let end = if is_lower == (lower == Side::Left) { "right" } else { "left" };
    let mut template = Template::new(
        format!("scarf-{half}-lap{}", hand.0),
        format!("Scarf, {half} lap{}", hand.1),
        serves,
        format!("beam's outer face in sight, top up; the piece's {end} end; wood stays at the {stays}"),
    );
    let profile = scarf.profile(is_lower);
    template.wood = vec![if is_lower { scarf.lower(STUB) } else { scarf.upper(STUB) }];
    template.waste = vec![waste(scarf, &profile, is_lower)];
    for (pair, says) in profile.windows(2).zip(words(project, scarf, &profile, is_lower)) {
        template.line(Stroke::Cut, pair[0], pair[1], says);
    }
    edges(&mut template, scarf, is_lower);
    notes(project, scarf, &mut template);
    if lower == Side::Right { template.mirrored() } else { template }
}

/// What is cut off the rough end: all of the lap's box, rough wood past the tip included, that does not stay.
fn waste(scarf: &ScarfShape, profile: &[Point], is_lower: bool) -> Polygon {
    let end = if is_lower { scarf.lap + ROUGH } else { -ROUGH };
    let mut corners = profile.to_vec();
    corners.extend([Point::new(end, scarf.depth), Point::new(end, Length::ZERO)]);
    Polygon::new(corners)
}

/// What stands along each cut, from the underside up.
fn words(project: &Project, scarf: &ScarfShape, profile: &[Point], is_lower: bool) -> Vec<String> {
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    if scarf.blade > Length::ZERO {
        return bladed_words(&say, scarf, is_lower);
    }
    let lean = if scarf.squint > Length::ZERO { format!(", leans {}", say(scarf.squint)) } else { String::new() };
    let abutment = |name: &str| format!("{name}: {}{lean}", say(scarf.abutment));
    let (low, high) = if is_lower { ("tip", "root") } else { ("root", "tip") };
    let face = |a: Point, b: Point| format!("lap face: {} in {}", say((b.y - a.y).abs()), say((b.x - a.x).abs()));
    let mut all = vec![abutment(low)];
    if let [_, tip, step_tip, step_root, root, _] = profile {
        all.extend([face(*tip, *step_tip), format!("table {}", say((step_tip.y - step_root.y).abs()))]);
        all.push(face(*step_root, *root));
    } else if let [_, tip, root, _] = profile {
        all.push(face(*tip, *root));
    }
    all.push(abutment(high));
    all
}

/// The same of a half with its tongue and the slot for the other's.
fn bladed_words(say: &dyn Fn(Length) -> String, scarf: &ScarfShape, is_lower: bool) -> Vec<String> {
    let quarter = say(scarf.depth / 4.0);
    let shoulder = format!("shoulder: {quarter}");
    let (tongue, slot) = (format!("tongue: {quarter} by {}", say(scarf.blade)), format!("slot: {quarter} deep"));
    let (low, high) = if is_lower { (tongue, slot) } else { (slot, tongue) };
    let face = format!("lap face, {} from top and underside", say(scarf.depth / 2.0));
    let own = String::new;
    vec![shoulder.clone(), low, own(), face, own(), high, shoulder]
}

/// Top and underside: references where a cut meets them, plain edges between.
fn edges(template: &mut Template, scarf: &ScarfShape, is_lower: bool) {
    let (root, tip) = if is_lower { (Length::ZERO, scarf.lap) } else { (scarf.lap, Length::ZERO) };
    let out = if is_lower { 1.0 } else { -1.0 };
    let at_tip = AT_TIP.min(scarf.lap / 3.0);
    let stub = root - STUB * out;
    for (y, says) in [(scarf.depth, "▲ top: lay to the top arris"), (Length::ZERO, "underside")] {
        let place = |x: Length| Point::new(x, y);
        template.line(Stroke::Reference, place(stub), place(root + at_tip * out), says);
        template.line(Stroke::Edge, place(root + at_tip * out), place(tip - at_tip * out), "");
        template.line(Stroke::Reference, place(tip - at_tip * out), place(tip + ROUGH * out), says);
    }
    template.line(Stroke::RunsOn, Point::new(stub, Length::ZERO), Point::new(stub, scarf.depth), "the beam runs on");
}

fn notes(project: &Project, scarf: &ScarfShape, template: &mut Template) {
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    template
        .note(format!("Lap {}: check it by tape over all sheets before you prick; snap the lap face.", say(scarf.lap)));
    template.note("Mark both faces from the top. Cut first, bore its pegs last.");
    if let Some((_, gap)) = scarf.table {
        template.note(format!("The wedges' gap, {}, lies between the two steps.", say(gap)));
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    fn cuts(template: &Template) -> Vec<(Point, Point)> {
        let cut = template.lines.iter().filter(|line| line.stroke == Stroke::Cut);
        cut.map(|line| (line.from, line.to)).collect()
    }

    fn check(found: Point, x: f64, y: f64) {
        let off = found.distance(Point::inches(x, y)).to_inches();
        assert!(off < 1e-9, "{found:?} is not {x}, {y}");
    }

    fn of_barn(kind: ScarfKind, is_lower: bool) -> Template {
        let mut project = demo::wool_barn();
        project.frame.scarfs.kind = kind;
        let scarf = ScarfShape::new(&project.frame, &project.joinery, kind);
        half(&project, &scarf, is_lower, Side::Left, vec!["B1".to_owned()])
    }

    /// By hand, beam 10 deep, lap 40, tongues of 3 in: every cut of the half is there, the tongue from 2½ to 5 in at its end.
    #[test]
    fn a_blade_by_hand() {
        let lower = cuts(&of_barn(ScarfKind::Bladed, true));
        assert_eq!(lower.len(), 7);
        check(lower[0].1, 37.0, 2.5);
        check(lower[2].0, 40.0, 2.5);
        check(lower[3].0, 40.0, 5.0);
        check(lower[6].1, 3.0, 10.0);
    }

    /// By hand, beam 10 deep, lap 40: abutments a quarter of the depth, 2½, each leaning ½; the lap face falls
    /// from 7½ at the root to 2½ at the tip.
    #[test]
    fn abutments_and_squint_by_hand() {
        let lower = cuts(&of_barn(ScarfKind::StopSplayedUnderSquinted, true));
        assert_eq!(lower.len(), 3);
        check(lower[0].0, 39.5, 0.0);
        check(lower[0].1, 40.0, 2.5);
        check(lower[1].1, 0.0, 7.5);
        check(lower[2].1, 0.5, 10.0);
    }

    /// By hand, with a table of 1¼ and a gap of 1: the face falls (10 − 5 + 1¼)/40 = 0.15625 in an inch; the lower
    /// piece's step stands ½ in past mid-lap, 20½ from the root: 7½ − 20½·0.15625 = 4.2969 below it and 1¼ more above;
    /// the upper piece's at 19½: 4.4531.
    #[test]
    fn the_table_by_hand() {
        let lower = cuts(&of_barn(ScarfKind::StopSplayedTabled, true));
        check(lower[2].0, 20.5, 4.296_875 + 1.25);
        check(lower[2].1, 20.5, 4.296_875);
        let upper = cuts(&of_barn(ScarfKind::StopSplayedTabled, false));
        check(upper[2].1, 19.5, 4.453_125);
    }

    /// Stub, lap and rough wood past the tip: what stays and what goes make up the whole stick.
    #[test]
    fn wood_and_waste_fill_the_stick() {
        for kind in ScarfKind::ALL {
            for is_lower in [true, false] {
                let template = of_barn(kind, is_lower);
                let sum: f64 =
                    template.wood.iter().chain(&template.waste).map(|one| one.area().to_square_inches()).sum();
                assert!((sum - 10.0 * (40.0 + 2.0 + 0.75)).abs() < 1e-9, "{kind:?} {is_lower}: {sum}");
            }
        }
    }

    #[test]
    fn each_half_serves_the_pieces_that_have_it() {
        let project = demo::wool_barn();
        let shape = evaluate(&project).built.unwrap().shape.clone();
        for template in templates(&project, &shape) {
            for mark in &template.serves {
                let number: usize = mark[1..].parse().unwrap();
                let piece = shape.beam.pieces[number - 1];
                let is_lower = template.key.contains("lower");
                assert!([piece.left, piece.right].into_iter().flatten().any(|(_, lower)| lower == is_lower), "{mark}");
            }
        }
    }
}
