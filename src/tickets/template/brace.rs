//! The brace's two ends on two faces: outer face above the fold, long edge below it.
//!
//! Lengths lie along the long edge from the theoretical toe of each end. A curved brace keeps both templates,
//! for its ends stay straight; half of its hollow, which is the same from either end, is a template of its own.
use super::{Stroke, Template, cheeks, grouped};
use crate::design::Shape;
use crate::geometry::{Brace, BraceShape, Point, Polygon};
use crate::joinery::brace_tenon_thickness;
use crate::project::{JoineryRules, JointName, Project, Side};
use crate::tickets::brace::peg;
use crate::units::{Fineness, Length};
use crate::wording::{length, tape};

/// Brace drawn past the short edge's shoulder, and rough wood past the tenon.
const STUB: Length = Length::inches(0.75);
const ROUGH: Length = Length::inches(0.4);

/// Post end and beam end; of both hands where the two are not alike; and each end that is not by the rules.
pub fn templates(project: &Project, shape: &Shape) -> Vec<Template> {
    let alike = grouped(&shape.braces, |brace| [brace.form.hollow_ends().0, brace.form.hollow_ends().1].to_vec());
    let mut all: Vec<Template> = alike.into_iter().filter_map(|group| hollow(project, shape, &group)).collect();
    for at_post in [true, false] {
        let by_rules = shape.braces.iter().filter(|brace| is_by_rules(project, brace, at_post));
        all.extend(ends(project, &by_rules.collect::<Vec<_>>(), at_post));
    }
    // Both ends of one hand, then of the other.
    crate::units::sort_by_number(&mut all, |template| f64::from(u8::from(template.key.contains("-left-hand"))));
    for brace in &shape.braces {
        for at_post in [true, false].into_iter().filter(|at_post| !is_by_rules(project, brace, *at_post)) {
            let name = if at_post { JointName::BraceFoot } else { JointName::BraceHead };
            let joint = name(brace.post, brace.side);
            all.extend(ends(project, &[brace], at_post).into_iter().map(|end| end.own(project, joint)));
        }
    }
    all
}

/// That end is the rules'; a deeper housing at the other one makes only the legs longer, which no end shows.
fn is_by_rules(project: &Project, brace: &Brace, at_post: bool) -> bool {
    let rules = &project.joinery;
    let is_whole =
        brace.form.long_edge().is_near(BraceShape::new(&project.frame, rules).long_edge(), Length::inches(1e-6));
    is_whole && if at_post { brace.foot == *rules } else { brace.head == *rules }
}

/// One end of some braces alike there, of either hand or of both.
fn ends(project: &Project, braces: &[&Brace], at_post: bool) -> Vec<Template> {
    let of = |side: Side| -> Vec<&Brace> { braces.iter().copied().filter(|brace| brace.side == side).collect() };
    let hands = if braces.iter().all(|brace| brace.form.along == brace.form.down) {
        vec![(braces.to_vec(), "", "", false)]
    } else {
        vec![
            (of(Side::Right), "-right-hand", ", right-hand", false),
            (of(Side::Left), "-left-hand", ", left-hand", true),
        ]
    };
    let mut all = Vec::new();
    for (braces, key, hand, is_mirrored) in hands {
        let serves: Vec<String> = braces.iter().map(|brace| brace.mark()).collect();
        if let Some(brace) = braces.first() {
            let at = if at_post { "post" } else { "beam" };
            let left = if at_post == is_mirrored { "right" } else { "left" };
            let lies = format!("brace's outer face above the fold, long edge below it; {at} end at your {left}");
            let template =
                Template::new(format!("brace-{at}-end{key}"), format!("Brace, {at} end{hand}"), serves, lies);
            let template = end(project, brace, at_post, template);
            all.push(if is_mirrored { template.mirrored() } else { template });
        }
    }
    all
}

/// Half of a curved brace's hollow, from its end to its middle, to be turned over for the other half.
fn hollow(project: &Project, shape: &Shape, braces: &[&Brace]) -> Option<Template> {
    let one = *braces.first()?;
    let brace = &one.form;
    let outline = brace.hollow()?;
    let (low, high) = brace.hollow_ends();
    let middle = (low + high) / 2.0;
    let half: Vec<Point> =
        outline.corners.iter().copied().filter(|corner| corner.x <= middle + Length::inches(1e-6)).collect();
    let at = |x: Length, y: Length| Point::new(x, y);
    let serves = braces.iter().map(|brace| brace.mark()).collect();
    let lies = "brace's outer face, long edge down; turned over for the other half".to_owned();
    let mut template = Template::new("brace-hollow", "Brace, half of its hollow", serves, lies);
    if brace.hollow_ends() != shape.brace.hollow_ends() {
        template.key = format!("brace-hollow-of-{}", one.mark().to_lowercase());
        template.name = format!("{}: {} alone", template.name, one.mark());
    }
    let mut goes = half.clone();
    goes.push(at(middle, Length::ZERO));
    template.waste.push(Polygon::new(goes));
    let mut stays = half.clone();
    stays.extend([at(middle, brace.width), at(low, brace.width)]);
    template.wood.push(Polygon::new(stays));
    for pair in half.windows(2) {
        template.line(Stroke::Cut, pair[0], pair[1], "");
    }
    let say = |value: Length| tape(value, project.units, Fineness::ThirtySecond);
    let ends = [low - STUB, low];
    template.line(Stroke::Reference, at(ends[0], Length::ZERO), at(ends[1], Length::ZERO), "long edge");
    template.line(Stroke::Carried, at(middle, Length::ZERO), at(middle, brace.width), "middle: turn over here");
    template.line(Stroke::Edge, at(low, brace.width), at(middle, brace.width), "short edge");
    template.note(format!(
        "The hollow begins {} from the toe and is {} deep at its middle.",
        say(low),
        say(brace.rise)
    ));
    Some(template)
}

/// One end in the stick's coordinates, its toe brought to x = 0.
struct End {
    /// Nose on the long edge; nose on the shoulder; shoulder on the short edge.
    body: [Point; 3],
    /// Nose, tip, end on the short edge side, corner.
    tenon: Vec<Point>,
    /// Direction of the body from the toe.
    inward: f64,
    peg: Point,
}

impl End {
    fn new(project: &Project, one: &Brace, at_post: bool) -> Self {
        let brace = &one.form;
        let corners = brace.corners();
        let (body, tenon, toe, inward) = if at_post {
            ([corners[0], corners[5], corners[4]], brace.post_tenon(), Length::ZERO, 1.0)
        } else {
            ([corners[1], corners[2], corners[3]], brace.beam_tenon(), brace.long_edge(), -1.0)
        };
        let shift = |point: Point| point.moved(-toe, Length::ZERO);
        let hole = peg(project, one, at_post, "");
        let across = hole.across.map_or(Length::ZERO, |(near, _)| near);
        Self {
            body: body.map(shift),
            tenon: tenon.corners.into_iter().map(shift).collect(),
            inward,
            peg: shift(Point::new(hole.near, across)),
        }
    }

    /// Rough wood's end, and where the template ends.
    fn reach(&self) -> (Length, Length) {
        let out = |point: &Point| point.x * self.inward;
        let tip = self.tenon.iter().map(out).fold(Length::ZERO, Length::min);
        ((tip - ROUGH) * self.inward, (out(&self.body[2]).max(out(&self.body[0])) + STUB) * self.inward)
    }
}

fn end(project: &Project, brace: &Brace, at_post: bool, mut template: Template) -> Template {
    let (end, form) = (End::new(project, brace, at_post), &brace.form);
    let rules = if at_post { &brace.foot } else { &brace.head };
    let (rough, stub) = end.reach();
    outer_face(project, (form, rules), &end, &mut template);
    long_edge(project, rules, &end, &mut template);
    let arris = |x: Length| Point::new(x, Length::ZERO);
    template.line(Stroke::Fold, arris(rough), arris(stub), "▲△ fold over the reference arris: outer face, long edge");
    let (rise, run) = if at_post { (form.along, form.down) } else { (form.down, form.along) };
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    template.note(format!(
        "Toe to toe along the long edge: {}. Bevel {} : {}.",
        tape(form.long_edge(), project.units, Fineness::ThirtySecond),
        say(rise),
        say(run)
    ));
    template.note("Excess width goes to the short edge. Bore last, through the sawn tenon.");
    template
}

fn outer_face(project: &Project, (form, rules): (&BraceShape, &JoineryRules), end: &End, template: &mut Template) {
    let width = form.width;
    let (rough, stub) = end.reach();
    let [nose, floor, short] = end.body;
    let at = |x: Length, y: Length| Point::new(x, y);
    template.wood.push(Polygon::new(vec![nose, at(stub, Length::ZERO), at(stub, width), short, floor]));
    template.wood.push(Polygon::new(end.tenon.clone()));
    let mut goes = vec![at(rough, Length::ZERO), nose];
    goes.extend(end.tenon.iter().take(3).copied());
    goes.extend([short, at(rough, width)]);
    template.waste.push(Polygon::new(without_spike(goes)));
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    template.line(Stroke::Cut, nose, floor, "");
    template.line(Stroke::Cut, floor, short, "shoulder");
    if let [foot, tip, far, corner] = end.tenon[..] {
        template.line(Stroke::Cut, foot, tip, "nose");
        template.line(Stroke::Cut, tip, far, format!("tenon's end, {} out", length(rules.brace_tenon, project.units)));
        template.line(Stroke::Cut, far, corner, "");
    }
    template.line(Stroke::Edge, at(rough, width), at(stub, width), "short edge");
    template.line(Stroke::RunsOn, at(stub, Length::ZERO), at(stub, width), "the brace runs on");
    template.holes.push(super::Bore { at: end.peg, diameter: rules.peg, says: format!("{} hole", say(rules.peg)) });
    template.words.push((
        at((short.x + nose.x) / 2.0 + STUB * (end.inward * 0.6), width / 3.0),
        format!("tenon {} below this face", say(rules.tenon_offset)),
    ));
}

/// A corner that lies on the line between its neighbours, met twice, makes a spike: it is left out.
fn without_spike(mut corners: Vec<Point>) -> Vec<Point> {
    let hair = Length::inches(1e-6);
    let n = corners.len();
    if n >= 3 {
        let (far, short, last) = (corners[n - 3], corners[n - 2], corners[n - 1]);
        if (far.y - short.y).abs() < hair && (short.y - last.y).abs() < hair {
            corners.remove(n - 2);
        }
    }
    corners
}

/// The long edge below the fold: nose, cheeks and the toe that lengths are measured from.
fn long_edge(project: &Project, rules: &JoineryRules, end: &End, template: &mut Template) {
    let breadth = project.frame.timbers.brace.sawn.breadth;
    let (rough, stub) = end.reach();
    let nose = end.body[0].x;
    let at = |x: Length, across: Length| Point::new(x, -across);
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    template.wood.push(Polygon::rectangle(at(nose, Length::ZERO), at(stub, breadth)));
    template.waste.push(Polygon::rectangle(at(rough, Length::ZERO), at(nose, breadth)));
    template.line(Stroke::Cut, at(nose, Length::ZERO), at(nose, breadth), "nose, square across");
    let near = rules.tenon_offset;
    let far = near + brace_tenon_thickness(project, rules);
    for cheek in cheeks(near, far, breadth) {
        template.line(Stroke::Cut, at(rough, cheek), at(nose, cheek), format!("cheek, {} in", say(cheek)));
    }
    for (from, to, says) in [(Length::ZERO, near, "toe: 0"), (near, breadth, "")] {
        template.line(Stroke::Carried, at(Length::ZERO, from), at(Length::ZERO, to), says);
    }
    template.line(Stroke::Edge, at(rough, breadth), at(stub, breadth), "arris to the wall face");
    template.line(Stroke::RunsOn, at(stub, Length::ZERO), at(stub, breadth), "");
    template.words.push((at((nose + stub) / 2.0, breadth / 2.0), "long edge".to_owned()));
    if far >= breadth {
        template.note("The tenon is bare-faced: no wood behind it.");
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    fn of(project: &Project) -> Vec<Template> {
        templates(project, &evaluate(project).built.unwrap().shape)
    }

    fn check(found: Point, x: f64, y: f64) {
        let off = found.distance(Point::inches(x, y)).to_inches();
        assert!(off < 1e-3, "{found:?} is not {x}, {y}");
    }

    /// By hand: the hollow of a 36 in brace begins at 4.707; its middle, 1½ in deep, lies at 25.456.
    #[test]
    fn a_hollow_by_hand() {
        let mut project = demo::wool_barn();
        assert!(of(&project).iter().all(|template| template.key != "brace-hollow"));
        project.frame.brace_rise = Length::inches(1.5);
        let all = of(&project);
        let hollow = all.iter().find(|template| template.key == "brace-hollow").unwrap();
        let cuts: Vec<&super::super::TemplateLine> =
            hollow.lines.iter().filter(|line| line.stroke == Stroke::Cut).collect();
        assert_eq!(cuts.len(), 8);
        check(cuts[0].from, 4.707, 0.0);
        check(cuts[7].to, 25.456, 1.5);
    }

    /// By hand at 45°, brace 6 wide, housing ½, tenon 2½: the nose stands ½·√2 = 0.7071 in from the toe and is as
    /// high, the shoulder runs from there to 6 in on the short edge; the tenon's tip lies (−2½ + 1)·0.7071 = −1.0607
    /// along and (2½ + 1)·0.7071 = 2.4749 across; on the short edge side it ends at 6 − 2½·√2 = 2.4645.
    #[test]
    fn the_post_end_by_hand() {
        let all = of(&demo::wool_barn());
        let end = all.iter().find(|template| template.key == "brace-post-end").unwrap();
        let cut: Vec<(Point, Point)> =
            end.lines.iter().filter(|line| line.stroke == Stroke::Cut).map(|line| (line.from, line.to)).collect();
        let nose = 0.5 * 2.0_f64.sqrt();
        check(cut[0].0, nose, 0.0);
        check(cut[0].1, nose, nose);
        check(cut[1].1, 6.0, 6.0);
        check(cut[2].1, -1.0607, 2.4749);
        check(cut[3].1, 2.4645, 6.0);
        // Peg: pocket 27.265 to 35 below C, its middle 31.1326; 1½ deep; both less ⅛·0.7071. Along the brace
        // (−1.4116 + 4.9558)·0.7071 = 2.5061, across (4.9558 + 1.4116)·0.7071 = 4.5024.
        check(end.holes[0].at, 2.5061, 4.5024);
    }

    /// Two ends alike are each other's mirror image on the paper.
    #[test]
    fn the_beam_end_mirrors_the_post_end() {
        let all = of(&demo::wool_barn());
        let other = all[0].clone().mirrored();
        for (a, b) in all[1].lines.iter().zip(&other.lines) {
            check(a.from, b.from.x.to_inches(), b.from.y.to_inches());
            check(a.to, b.to.x.to_inches(), b.to.y.to_inches());
        }
        assert_eq!(all[1].serves, all[0].serves);
    }

    #[test]
    fn unequal_legs_make_two_hands() {
        let mut project = demo::wool_barn();
        project.frame.brace_along = Length::inches(30.0);
        let all = of(&project);
        let keys: Vec<&str> = all.iter().map(|template| template.key.as_str()).collect();
        assert_eq!(
            keys,
            [
                "brace-post-end-right-hand",
                "brace-beam-end-right-hand",
                "brace-post-end-left-hand",
                "brace-beam-end-left-hand"
            ]
        );
        assert_eq!(all[0].serves, ["K1R", "K2R", "K3R"]);
        assert_eq!(all[2].serves, ["K2L", "K3L", "K4L"]);
    }
}
