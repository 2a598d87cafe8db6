//! A joint drawn apart: the stick that goes in stands off along the way it goes, the pegs stand out of their holes, and
//! dashed lines show where each comes home.
use super::eye::Eye;
use super::round::{Shown, Thread, painted};
use super::scene::{Anchor, Layer, Scene, Text};
use crate::joinery::{Alike, Joint, JointKind, StickBody, clipped};
use crate::solid::{Convex, Facet, Outline, Skin, Solid, Surface, Vector, Within};
use crate::tickets::runs;
use crate::units::Angle;

/// How much of each stick is shown beyond the joint, in inches.
const BEYOND: f64 = 14.0;
/// Air between what is drawn apart, in inches.
const AIR: f64 = 5.0;
/// Out of its outer face a peg is driven in.
const OUT: Vector = Vector::inches(0.0, 1.0, 0.0);
/// Nearer than this two places are one, in inches.
const NEAR: f64 = 1e-3;

/// The joint drawn apart; empty where the frame has not its sticks.
#[must_use]
pub fn exploded(bodies: &[StickBody], joint: &Joint) -> Scene {
    let of = |mark: &str| bodies.iter().find(|body| body.mark == mark);
    let Some(goes) = of(&joint.goes) else { return Scene::default() };
    let stays: Vec<&StickBody> = joint.stays.iter().filter_map(|mark| of(mark)).collect();
    let eye = eye(joint.way);
    let by = joint.way * (joint.deep.to_inches() + AIR);
    let mut shown = vec![Shown::moved(goes, &part(goes, &goes.wood, joint), by)];
    shown.extend(stays.iter().map(|body| Shown::part(body, &part(body, &body.wood, joint))));
    let mut threads = ways(goes, &stays, joint, by);
    let n_sticks = shown.len();
    for hole in &joint.pegs {
        let (peg, lines) = peg(hole, eye);
        shown.push(peg);
        threads.extend(lines);
    }
    let mut scene = painted(&shown, &threads, eye);
    // Pegs stand side by side: the last one is named for all.
    let pegs = shown
        .last()
        .filter(|_| shown.len() > n_sticks)
        .map(|last| (last, if joint.pegs.len() > 1 { "pegs" } else { "peg" }));
    for (one, says) in shown[..n_sticks].iter().map(|one| (one, one.mark.as_str())).chain(pegs) {
        name(&mut scene, one, says, eye);
    }
    scene.most_scale = 14.0;
    scene
}

/// What the drawing shows, in a sentence.
#[must_use]
pub fn says(joint: &Joint) -> String {
    let goes = &joint.goes;
    let stays = joint.stays.join(" and ");
    let (x, z) = (joint.way.x, joint.way.z);
    let way = match joint.kind {
        // As the user does it: against the way it is drawn out.
        _ if z < -0.5 => "from below",
        _ if z > 0.5 => "from above",
        _ if x > 0.5 => "from the right",
        _ if x < -0.5 => "from the left",
        _ if joint.way.y < 0.0 => "from the wall’s side",
        _ => "from outside",
    };
    let meets = if joint.kind == JointKind::Tenon { "goes into" } else { "comes onto" };
    let pegs = match joint.pegs.len() {
        0 => String::new(),
        1 => "; one peg, driven from outside".to_owned(),
        n => format!("; {n} pegs, driven from outside"),
    };
    format!("{goes} {meets} {stays} {way}{pegs}.")
}

/// Where else the joint is cut, in a sentence; nothing where it is the only one.
#[must_use]
pub fn also(alike: &Alike) -> String {
    let said = |before: &str, marks: &[String]| (!marks.is_empty()).then(|| format!("{before} {}.", runs(marks)));
    let both = [said("Also at", &alike.like), said("Its mirror image at", &alike.mirrored)];
    both.into_iter().flatten().collect::<Vec<_>>().join(" ")
}

/// A look at the mouth of the joint: from the side the stick is drawn out to.
fn eye(way: Vector) -> Eye {
    let (turn, tip) = if way.z < -0.5 {
        (32.0, -20.0)
    } else if way.x.abs() > 0.5 {
        (48.0 * way.x.signum(), 20.0)
    } else if way.y < -0.5 {
        (148.0, 20.0)
    } else if way.y > 0.5 {
        (32.0, 38.0)
    } else {
        (52.0, 20.0)
    };
    Eye { turn: Angle::degrees(turn), tip: Angle::degrees(tip) }
}

fn part(body: &StickBody, wood: &Solid, joint: &Joint) -> Solid {
    clipped(wood, body.along, &joint.within, BEYOND)
}

/// Lines from where corners of one stick lie on edges of the other to where they are when it is drawn out.
fn ways(goes: &StickBody, stays: &[&StickBody], joint: &Joint, by: Vector) -> Vec<Thread> {
    let own = Surface::of(&part(goes, &goes.standing(), joint)).edges;
    let mut places: Vec<Vector> = Vec::new();
    for body in stays {
        let other = Surface::of(&part(body, &body.standing(), joint)).edges;
        for (corners, edges) in [(&own, &other), (&other, &own)] {
            for corner in corners.iter().flat_map(|edge| [edge.ends.0, edge.ends.1]) {
                let is_known = places.iter().any(|known| (*known - corner).norm() < NEAR);
                if !is_known && edges.iter().any(|edge| lies_on(corner, edge)) {
                    places.push(corner);
                }
            }
        }
    }
    places.into_iter().map(|place| Thread { ends: (place, place + by), layer: Layer::Travel }).collect()
}

fn lies_on(place: Vector, edge: &Outline) -> bool {
    let (from, to) = edge.ends;
    let (along, away) = (to - from, place - from);
    let share = away.dot(along) / along.dot(along).max(NEAR * NEAR);
    (-NEAR..=1.0 + NEAR).contains(&share) && (away - along * share).norm() < NEAR
}

/// A peg before its hole, the line along which it is driven, and its outline.
fn peg(hole: &Convex, eye: Eye) -> (Shown, Vec<Thread>) {
    let Within { low, high } = hole.within();
    let long = high.y - low.y;
    let by = OUT * (long + AIR / 2.0);
    let middle = (low + high) * 0.5;
    let mouth = middle + OUT * (long / 2.0);
    let peg = hole.moved(by);
    let mut threads = vec![Thread { ends: (mouth, mouth + OUT * (AIR / 2.0)), layer: Layer::Travel }];
    threads.extend(outline(&peg, eye).map(|ends| Thread { ends, layer: Layer::Arris }));
    (Shown::thing(&Solid::new(vec![peg])), threads)
}

/// Where the round of a peg turns away from the eye: edges of one facet that is seen and one that is not.
fn outline(peg: &Convex, eye: Eye) -> impl Iterator<Item = (Vector, Vector)> {
    let is_seen = |facet: &&Facet| facet.skin == Skin::Round && facet.plane.normal.dot(eye.toward()) > 0.0;
    let seen: Vec<&Facet> = peg.facets().iter().filter(is_seen).collect();
    let sides = |facet: &Facet| {
        let corners = facet.corners.clone();
        (0..corners.len()).map(move |index| (corners[index], corners[(index + 1) % corners.len()])).collect::<Vec<_>>()
    };
    let all: Vec<(Vector, Vector)> = seen.into_iter().flat_map(sides).collect();
    let known = all.clone();
    let is_alone = move |side: &(Vector, Vector)| {
        !known.iter().any(|other| (other.0 - side.1).norm() < NEAR && (other.1 - side.0).norm() < NEAR)
    };
    // The rims of the two ends are edges of their own.
    let is_long = |(from, to): &(Vector, Vector)| (to.y - from.y).abs() > NEAR;
    all.into_iter().filter(is_long).filter(is_alone)
}

fn name(scene: &mut Scene, one: &Shown, says: &str, eye: Eye) {
    let corners = one.surface.patches.iter().flat_map(|patch| patch.corners.iter().copied());
    let within = corners.fold(Within::NOTHING, Within::and);
    let is_peg = one.mark.is_empty();
    // A peg's name stands beyond its head.
    let at = (within.low + within.high) * 0.5;
    let at = if is_peg { Vector { y: within.high.y, ..at } } else { at };
    let shift = if is_peg { (-10.0, 18.0) } else { (0.0, 4.0) };
    let text =
        Text { at: eye.place(at), says: says.to_owned(), anchor: Anchor::Middle, turned: 0.0, shift, room: None };
    scene.words(text);
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::joinery::{bodies, different_joints};
    use crate::lay_out;
    use crate::project::demo;

    #[test]
    fn a_joint_says_where_else_it_is() {
        let project = demo::wool_barn();
        let all = different_joints(&bodies(&project, &lay_out(&project).built.unwrap().shape));
        let words = |name: &str| also(all.iter().find(|one| one.joint.name == name).unwrap());
        assert_eq!(words("Post P1 in beam B1"), "");
        assert_eq!(words("Post P2 in beam B1"), "Also at P3.");
        let both = "Also at K2R, K3R. Its mirror image at K2L, K3L, K4L.";
        assert_eq!(words("Brace K1R in post P1"), both);
    }
}
