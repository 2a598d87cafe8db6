//! Where pegs go.
use crate::fastening::{PegRoom, peg_needs};
use crate::geometry::{Brace, Point, PostShape};
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
