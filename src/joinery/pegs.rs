//! Where pegs go.
use crate::fastening::{PegRoom, peg_needs};
use crate::geometry::{Brace, Point, Polygon, PostShape};
use crate::project::{JoineryRules, Project};
use crate::units::Length;

/// Tenon and mortise share a thickness; a brace no thicker than offset and tenon is bare-faced.
#[must_use]
pub fn brace_tenon_thickness(project: &Project, rules: &JoineryRules) -> Length {
    let breadth = project.frame.timbers.brace.sawn.breadth;
    rules.tenon_thickness.min(breadth - rules.tenon_offset)
}

/// Centres of the head's pegs from the post's left face, one or two.
#[must_use]
pub fn head_peg_places(post: &PostShape) -> Vec<Length> {
    let (low, high) = (post.tenon.0 - post.left, post.tenon.1 - post.left);
    if high - low >= post.rules.two_pegs_from - Length::inches(1e-6) {
        let quarter = (high - low) / 4.0;
        vec![low + quarter, high - quarter]
    } else {
        vec![(low + high) / 2.0]
    }
}

/// Height of a head peg above the shoulder: the second is half a peg higher, off the first one's grain.
#[must_use]
pub fn head_peg_height(post: &PostShape, index: usize) -> Length {
    post.rules.peg_from_shoulder + post.rules.peg * (0.5 * index as f64)
}

/// The wood around a head peg as it is bored: in the tenon, whose hole is a drawbore nearer the shoulder, to its end; in the
/// beam to the shoulder, the edge a lifted beam presses toward; and to the other peg.
#[must_use]
pub fn head_peg_room(post: &PostShape, index: usize) -> PegRoom {
    let edge = head_peg_height(post, index);
    let spacing = match head_peg_places(post)[..] {
        [one, other] => {
            let up = head_peg_height(post, 1) - head_peg_height(post, 0);
            Some(Length::inches((other - one).to_inches().hypot(up.to_inches())))
        }
        _ => None,
    };
    PegRoom { end: post.tenon_length - edge + post.rules.drawbore, edge, spacing }
}

/// Whether a head peg may be pulled on, or locates the joint and no more: sheets and strength follow this one rule.
#[must_use]
pub fn head_peg_holds(project: &Project, post: &PostShape, index: usize) -> bool {
    peg_needs(&project.frame.species).is_ok_and(|needs| head_peg_room(post, index).holds(post.rules.peg, needs))
}

/// The hole in a brace's tenon, in the stick's own coordinates: a peg's distance from the shoulder, midway along the
/// mortise, then moved along the brace away from the nose by the drawbore, so that the peg drives the nose into its
/// bearing.
#[must_use]
pub fn brace_peg(brace: &Brace, at_post: bool) -> Point {
    let rules = if at_post { &brace.foot } else { &brace.head };
    let brace = &brace.form;
    let pocket =
        if at_post { brace.post_pocket(rules, rules.housing) } else { brace.beam_pocket(rules, rules.housing) };
    let long_edge = brace.long_edge();
    let (sin, cos) = (brace.along / long_edge, brace.down / long_edge);
    let (sin, cos) = if at_post { (sin, cos) } else { (cos, sin) };
    let leg = if at_post { brace.down } else { brace.along };
    // From the housed line, and from the corner along it.
    let deep = rules.peg_from_shoulder - rules.drawbore * sin;
    let along = pocket.peg() - rules.drawbore * cos;
    let (x, z) = (-deep, leg - along);
    let place = Point::new(x * sin + z * cos, z * sin - x * cos);
    if at_post { place } else { Point::new(long_edge - place.x, place.y) }
}

/// The wood around a brace's peg as it is bored, the brace pulled out along its own grain: in the tenon from its hole to the
/// tenon's end that way; in post or beam from the mortise's hole to the housed line, the edge the peg then presses toward.
#[must_use]
pub fn brace_peg_room(brace: &Brace, at_post: bool) -> PegRoom {
    let (rules, tenon) =
        if at_post { (&brace.foot, brace.form.post_tenon()) } else { (&brace.head, brace.form.beam_tenon()) };
    let hole = brace_peg(brace, at_post);
    let half = rules.peg / 2.0;
    let beyond = |y| beyond(&tenon, hole.x, y, if at_post { -1.0 } else { 1.0 });
    // Both plugs beside the hole, where the tenon's end does not cut one of them off.
    let plugs = (beyond(hole.y - half) + beyond(hole.y + half)) / 2.0;
    PegRoom { end: plugs.min(beyond(hole.y)), edge: rules.peg_from_shoulder, spacing: None }
}

/// From a place of a stick along its grain until the outline ends; nothing where the line misses it.
fn beyond(outline: &Polygon, from: Length, y: Length, way: f64) -> Length {
    let corners = &outline.corners;
    let next = corners.iter().cycle().skip(1);
    let mut nearest = None;
    for (a, b) in corners.iter().zip(next) {
        let (low, high) = (a.y.min(b.y), a.y.max(b.y));
        if y < low || y > high || low == high {
            continue;
        }
        let found = (a.x + (b.x - a.x) * ((y - a.y) / (b.y - a.y)) - from) * way;
        if found > Length::ZERO && nearest.is_none_or(|known| found < known) {
            nearest = Some(found);
        }
    }
    nearest.unwrap_or_default()
}

/// Whether the peg of a brace's end may be pulled on, or locates the joint and no more: sheets and strength follow this one rule.
#[must_use]
pub fn brace_peg_holds(project: &Project, brace: &Brace, at_post: bool) -> bool {
    let peg = if at_post { brace.foot.peg } else { brace.head.peg };
    peg_needs(&project.frame.species).is_ok_and(|needs| brace_peg_room(brace, at_post).holds(peg, needs))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    fn room(tenon: f64, peg: f64, from_shoulder: f64, legs: (f64, f64)) -> [PegRoom; 2] {
        let mut barn = demo::wool_barn();
        let inch = Length::inches;
        (barn.frame.brace_along, barn.frame.brace_down) = (inch(legs.0), inch(legs.1));
        let rules = &mut barn.joinery;
        (rules.brace_tenon, rules.peg, rules.peg_from_shoulder) = (inch(tenon), inch(peg), inch(from_shoulder));
        (rules.drawbore, rules.housing) = (inch(0.125), inch(0.5));
        let shape = evaluate(&barn).built.unwrap().shape.clone();
        [true, false].map(|at_post| brace_peg_room(&shape.braces[0], at_post))
    }

    /// At 45° the hole is a drawbore nearer the shoulder along the brace: from there to the tenon's end (3 − 1½)·√2 + ⅛ in along the
    /// grain; both plugs as long on the average. Steeper, at 3 in 4, the end in the post is (3 − 1½)/0.6 + ⅛ in away, that in the
    /// beam (3 − 1½)/0.8 + ⅛.
    #[test]
    fn the_relish_of_a_brace_by_hand() {
        let close =
            |found: Length, expected: f64| assert!((found.to_inches() - expected).abs() < 1e-9, "{found:?} {expected}");
        for found in room(3.0, 1.0, 1.5, (36.0, 36.0)) {
            close(found.end, 1.5 * 2.0_f64.sqrt() + 0.125);
            assert_eq!((found.edge, found.spacing), (Length::inches(1.5), None));
        }
        let [post, beam] = room(3.0, 1.0, 1.5, (27.0, 36.0));
        close(post.end, 1.5 / 0.6 + 0.125);
        close(beam.end, 1.5 / 0.8 + 0.125);
    }

    /// Douglas fir asks for 2D of relish and 2½D to the edge (TFEC 1, from memory): ¾ in pegs 1⅞ in deep in a tenon of 3 in have 1.71
    /// of 1.5 in and all of the edge; 1¾ in deep they locate, and so do those of a tenon of 2¾ in. Hemlock, not tested, asks for 4D.
    #[test]
    fn a_brace_holds_by_one_rule() {
        let holds = |species: &str, tenon: f64, from_shoulder: f64| {
            let [end, _] = room(tenon, 0.75, from_shoulder, (36.0, 36.0));
            end.holds(Length::inches(0.75), peg_needs(species).unwrap())
        };
        assert!(holds("douglas_fir", 3.0, 1.875));
        assert!(!holds("douglas_fir", 3.0, 1.75) && !holds("douglas_fir", 2.75, 1.875));
        assert!(!holds("eastern_hemlock", 3.0, 1.875));
    }
}
