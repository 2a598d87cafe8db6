//! A brace's pocket on two faces: outer face above the fold, the face it is cut in below it.
//!
//! x runs from the corner C (the meeting of the housed lines of post and beam) along the stick toward the brace's
//! nose; drawn so, the template is the post's left face with its head at the left, and the beam right of a post.
//! The other two are its mirror image.
use super::{Stroke, Template};
use crate::design::Shape;
use crate::geometry::{Brace, BraceShape, Pocket, Point, Polygon, beam_housing, post_housing};
use crate::joinery::brace_tenon_thickness;
use crate::project::{JoineryRules, JointName, Project, Side};
use crate::tickets::beam;
use crate::units::{Fineness, Length};
use crate::wording::tape;

/// Wood drawn past the pocket along the stick, past the brace's breadth, and past the mortise's floor.
const STUB: Length = Length::inches(0.9);
const BESIDE: Length = Length::inches(0.4);

/// A template for each face that has pockets, and one for each pocket that is not by the rules.
pub fn templates(project: &Project, shape: &Shape) -> Vec<Template> {
    let rules = &project.joinery;
    let is_foot_by_rules = |brace: &&Brace| brace.foot == *rules;
    let is_head_by_rules = |brace: &&Brace| brace.head == *rules && brace.foot.housing == rules.housing;
    let mut all = Vec::new();
    for side in [Side::Right, Side::Left] {
        let of_side = shape.braces.iter().filter(|brace| brace.side == side && is_foot_by_rules(brace));
        all.extend(in_post(project, &of_side.collect::<Vec<_>>(), (&shape.brace, rules), Length::ZERO));
    }
    for side in [Side::Right, Side::Left] {
        let of_side = shape.braces.iter().filter(|brace| brace.side == side && is_head_by_rules(brace));
        all.extend(in_beam(project, shape, &of_side.collect::<Vec<_>>(), (&shape.brace, rules)));
    }
    for brace in shape.braces.iter().filter(|brace| !is_foot_by_rules(brace)) {
        let above = rules.housing - brace.head.housing;
        let template = in_post(project, &[brace], (&brace.form, &brace.foot), above);
        all.extend(template.map(|one| one.own(project, JointName::BraceFoot(brace.post, brace.side))));
    }
    for brace in shape.braces.iter().filter(|brace| !is_head_by_rules(brace)) {
        let template = in_beam(project, shape, &[brace], (&brace.form, &brace.head));
        all.extend(template.map(|one| one.own(project, JointName::BraceHead(brace.post, brace.side))));
    }
    all
}

/// The pocket of some braces, alike there and on one side, in their posts. The corner may lie above the shoulder.
fn in_post(
    project: &Project,
    braces: &[&Brace],
    (form, rules): (&BraceShape, &JoineryRules),
    above: Length,
) -> Option<Template> {
    let side = braces.first()?.side;
    let face = if side == Side::Left { "left" } else { "right" };
    let pocket = form.post_pocket(rules, post_housing(&project.frame, rules, side));
    let template = Template::new(
        format!("pocket-post-{face}-face"),
        format!("Brace pocket, post's {face} face"),
        braces.iter().map(|brace| format!("P{}", brace.post)).collect(),
        format!("outer face above the fold, {face} face below it; post's head at your {face}"),
    );
    let leg = pocket.leg + above;
    let template = pocketed((project, rules), (&pocket, leg), template, ("the top shoulder", face, "▲"));
    Some(if side == Side::Right { template.mirrored() } else { template })
}

/// The same in the beam.
fn in_beam(
    project: &Project,
    shape: &Shape,
    braces: &[&Brace],
    (form, rules): (&BraceShape, &JoineryRules),
) -> Option<Template> {
    let side = braces.first()?.side;
    let to = if side == Side::Left { "left" } else { "right" };
    let pocket = form.beam_pocket(rules, beam_housing(&project.frame, rules));
    let serves = beam::pieces_with_pockets(project, shape, braces);
    let template = Template::new(
        format!("pocket-beam-{to}-of-post"),
        format!("Brace pocket, beam, {to} of its post"),
        serves,
        format!("outer face above the fold, underside below it; the nose points to your {to}, away from the post"),
    );
    let from = ("the post's housed line", "under", "△");
    let template = pocketed((project, rules), (&pocket, pocket.leg), template, from);
    Some(if side == Side::Left { template.mirrored() } else { template })
}

fn pocketed(
    (project, rules): (&Project, &JoineryRules),
    (pocket, leg): (&Pocket, Length),
    mut template: Template,
    (from, face, reference): (&str, &str, &str),
) -> Template {
    let (start, end) = (pocket.corner - STUB, pocket.leg + STUB);
    let below = project.frame.timbers.brace.sawn.breadth + BESIDE;
    let above = pocket.housing + pocket.mortise_depth.max(rules.peg_from_shoulder) + BESIDE;
    outer_face((project, rules), pocket, &mut template, (start, end, above));
    cut_face((project, rules), pocket, &mut template, (start, end, below));
    let arris = |x: Length| Point::new(x, Length::ZERO);
    template.line(Stroke::Fold, arris(start), arris(end), format!("fold over the arris to the outer face {reference}"));
    for x in [start, end] {
        template.line(Stroke::RunsOn, Point::new(x, -below), Point::new(x, above), "");
    }
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    template.line(
        Stroke::Carried,
        Point::new(pocket.leg, -below),
        Point::new(pocket.leg, above),
        format!("leg line: {} from {from}", say(leg)),
    );
    let face = if face == "under" { "underside".to_owned() } else { format!("{face} face") };
    template.words.push((Point::new(pocket.corner, -below + BESIDE * 0.35), face));
    template.note(format!("Set the leg line by the tape: {} from {from}, along the reference face.", say(leg)));
    template.note(format!(
        "Housing {} deep, mortise {} below its floor. The slope at the nose bears: keep it clean, no wider.",
        say(pocket.housing),
        say(pocket.mortise_depth)
    ));
    template
}

/// The housing as it breaks through the outer face, the mortise inside, the peg's hole.
fn outer_face(
    (project, rules): (&Project, &JoineryRules),
    pocket: &Pocket,
    template: &mut Template,
    (start, end, above): (Length, Length, Length),
) {
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    let at = Point::new;
    let (zero, deep) = (Length::ZERO, pocket.housing);
    let cut = [
        at(pocket.corner, zero),
        at(pocket.corner, deep),
        at(pocket.nose_on_floor, deep),
        at(pocket.nose_on_face, zero),
    ];
    let mut wood = vec![at(start, zero)];
    wood.extend(cut);
    wood.extend([at(end, zero), at(end, above), at(start, above)]);
    template.wood.push(Polygon::new(wood));
    template.waste.push(Polygon::new(cut.to_vec()));
    for (pair, says) in cut.windows(2).zip(["", "floor of the housing", ""]) {
        template.line(Stroke::Cut, pair[0], pair[1], says);
    }
    let (near, far, floor) = (pocket.mortise.0, pocket.mortise.1, deep + pocket.mortise_depth);
    for (a, b, says) in [
        (at(near, deep), at(near, floor), ""),
        (at(near, floor), at(far, floor), "mortise's floor, inside"),
        (at(far, floor), at(far, deep), ""),
    ] {
        template.line(Stroke::Hidden, a, b, says);
    }
    template.holes.push(super::Bore {
        at: at(pocket.peg(), deep + rules.peg_from_shoulder),
        diameter: rules.peg,
        says: format!("{} hole, {} from the floor", say(rules.peg), say(rules.peg_from_shoulder)),
    });
    template.words.push((at(pocket.corner, above - BESIDE * 0.4), "outer face".to_owned()));
}

/// Both edges of the housing and of the mortise, measured from the outer face at the fold.
fn cut_face(
    (project, rules): (&Project, &JoineryRules),
    pocket: &Pocket,
    template: &mut Template,
    (start, end, below): (Length, Length, Length),
) {
    let breadth = project.frame.timbers.brace.sawn.breadth;
    let say = |value: Length| tape(value, project.units, Fineness::Sixteenth);
    let at = |x: Length, across: Length| Point::new(x, -across);
    let zero = Length::ZERO;
    template.wood.push(Polygon::rectangle(at(start, zero), at(end, below)));
    template.waste.push(Polygon::rectangle(at(pocket.corner, zero), at(pocket.nose_on_face, breadth)));
    for (x, says) in [(pocket.corner, "corner side"), (pocket.nose_on_face, "nose")] {
        template.line(Stroke::Cut, at(x, zero), at(x, breadth), says);
    }
    let across = format!("housing, {} from the outer face", say(breadth));
    template.line(Stroke::Cut, at(pocket.corner, breadth), at(pocket.nose_on_face, breadth), across);
    template.line(
        Stroke::Carried,
        at(pocket.nose_on_floor, zero),
        at(pocket.nose_on_floor, breadth),
        "nose on the floor",
    );
    let (near, far) = (rules.tenon_offset, rules.tenon_offset + brace_tenon_thickness(project, rules));
    for x in [pocket.mortise.0, pocket.mortise.1] {
        template.line(Stroke::Cut, at(x, near), at(x, far), "");
    }
    for cheek in [near, far] {
        let is_edge = cheek.is_near(breadth, Length::inches(1e-6));
        let says = if is_edge { String::new() } else { format!("mortise cheek, {} in", say(cheek)) };
        template.line(Stroke::Cut, at(pocket.mortise.0, cheek), at(pocket.mortise.1, cheek), says);
    }
    template.words.push((at((pocket.mortise.0 + pocket.mortise.1) / 2.0, (near + far) / 2.0), "mortise".to_owned()));
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    /// By hand for 36 in legs and a 6 in brace at 45°: the housing runs from 26.765 (its ¼ in clearance included) to
    /// 35½ on the face, the nose slopes to 35 on the floor ½ in down; mortise 27.265 to 35; the peg's hole midway,
    /// 31.132 from C, 1½ + ½ = 2 in from the face.
    #[test]
    fn the_post_pocket_by_hand() {
        let project = demo::wool_barn();
        let all = templates(&project, &evaluate(&project).built.unwrap().shape);
        let left = all.iter().find(|template| template.key == "pocket-post-left-face").unwrap();
        let xs: Vec<f64> = left
            .lines
            .iter()
            .filter(|line| line.stroke == Stroke::Cut && line.from.x == line.to.x && line.from.y <= Length::ZERO)
            .filter(|line| line.to.y < Length::ZERO)
            .map(|line| (line.from.x.to_inches() * 1e3).round() / 1e3)
            .collect();
        assert_eq!(xs, [26.765, 35.5, 27.265, 35.0]);
        assert!(left.holes[0].at.distance(Point::inches(31.1324, 2.0)).to_inches() < 1e-3);
        assert_eq!(left.serves, ["P2", "P3", "P4"]);
        // The right face is the mirror image, head at the right.
        let right = all.iter().find(|template| template.key == "pocket-post-right-face").unwrap();
        assert!(right.holes[0].at.distance(Point::inches(-31.1324, 2.0)).to_inches() < 1e-3);
    }

    #[test]
    fn the_beam_template_names_the_pieces_that_hold_the_pockets() {
        let project = demo::wool_barn();
        let built = evaluate(&project).built.unwrap();
        for template in templates(&project, &built.shape).iter().filter(|one| one.key.contains("beam")) {
            for mark in &template.serves {
                let marks = &built.stick(mark).unwrap().marks;
                assert!(marks.iter().any(|mark| mark.what.starts_with("housing of K")), "{mark}");
            }
        }
    }
}
