//! Which joints of a frame are cut alike, so that each is drawn once: by the wood of their own cuts, not by what else
//! stands near them.
use super::body::{Cut, StickBody};
use super::joints::{Joint, JointKind, Met, all_met};
use crate::project::Role;
use crate::solid::{Convex, Solid, Vector, Within};
use crate::units::sort_by_number;

/// Places nearer than this are one, in inches: half of what a fine tape shows.
const NEAR: f64 = 1.0 / 64.0;
/// Wood that differs by less is alike, in cubic inches and as a share of it.
const WOOD: (f64, f64) = (0.05, 1e-4);

/// A joint, and those of the frame that are cut like it.
#[derive(Clone, Debug, PartialEq)]
pub struct Alike {
    /// The one that stands for all of them.
    pub joint: Joint,
    /// Where else it is cut: marks of the sticks that go in, or what is joined.
    pub like: Vec<String>,
    /// Where its mirror image along the wall is cut.
    pub mirrored: Vec<String>,
}

/// Each different joint once, in the order of [`super::joints`]. The ways are looked for only of those.
#[must_use]
pub fn different_joints(bodies: &[StickBody]) -> Vec<Alike> {
    let mut groups: Vec<(Form, Vec<Met>, Vec<String>)> = Vec::new();
    for met in all_met(bodies) {
        let form = Form::of(&met);
        if let Some((_, like, _)) = groups.iter_mut().find(|(known, ..)| known.is_like(&form)) {
            like.push(met);
            continue;
        }
        let mirrored = form.clone().mirrored();
        match groups.iter_mut().find(|(known, ..)| known.is_like(&mirrored)) {
            Some((_, _, others)) => others.push(met.place()),
            None => groups.push((form, vec![met], Vec::new())),
        }
    }
    groups.into_iter().filter_map(|(_, like, mirrored)| group(like, mirrored)).collect()
}

/// The joint with the fewest sticks is the plainest to look at.
fn group(mut like: Vec<Met>, mirrored: Vec<String>) -> Option<Alike> {
    let (plainest, _) = like.iter().enumerate().min_by_key(|(_, met)| met.stays.len())?;
    let joint = like.remove(plainest).joint();
    Some(Alike { joint, like: like.iter().map(Met::place).collect(), mirrored })
}

/// Some wood by how much it is and where it lies about the joint's middle.
#[derive(Clone, Copy, Debug)]
struct Wood {
    volume: f64,
    at: Vector,
}

/// What a joint is cut like, from its own middle.
#[derive(Clone, Debug)]
struct Form {
    kind: JointKind,
    roles: (Role, Role),
    size: Vector,
    /// Wood of the stick that goes in, or what is cut of it; what is cut of those that stay.
    wood: [Wood; 2],
    /// Middles of the pegs' holes, left to right: in the sticks that stay, and in the one that goes in, which is drawn.
    pegs: [Vec<Vector>; 2],
}

impl Form {
    fn of(met: &Met) -> Self {
        let within = met.within();
        let middle = (within.low + within.high) * 0.5;
        let cut_of = |body: &StickBody, marks: &[&str]| -> Vec<Convex> {
            let is_own = |cut: &&Cut| cut.mate.as_deref().is_some_and(|mate| marks.contains(&mate));
            body.cuts.iter().filter(is_own).flat_map(|cut| cut.tools.clone()).collect()
        };
        let stays: Vec<&str> = met.stays.iter().map(|body| body.mark.as_str()).collect();
        let goes = match met.kind {
            JointKind::Lap => Solid::new(cut_of(met.goes, &stays)),
            JointKind::Tenon | JointKind::BirdsMouth => met.goes_within(&within),
        };
        let cut = met.stays.iter().flat_map(|body| cut_of(body, &[&met.goes.mark])).collect();
        let wood = [goes, Solid::new(cut)].map(|wood| Wood {
            volume: wood.volume().to_cubic_inches(),
            at: wood.centre().map_or(Vector::ZERO, |centre| centre - middle),
        });
        let middle_of = |hole: &Convex| {
            let Within { low, high } = hole.within();
            (low + high) * 0.5 - middle
        };
        let pegs = [met.pegs(), met.own_pegs()].map(|holes| {
            let mut middles: Vec<Vector> = holes.iter().map(middle_of).collect();
            sort_by_number(&mut middles, |peg| peg.x);
            middles
        });
        let stays = met.stays.first().map_or(met.goes.role, |body| body.role);
        Self { kind: met.kind, roles: (met.goes.role, stays), size: within.high - within.low, wood, pegs }
    }

    /// Its mirror image along the wall. The two pieces of a lap change places.
    fn mirrored(mut self) -> Self {
        let flip = |place: Vector| Vector { x: -place.x, ..place };
        self.wood = self.wood.map(|wood| Wood { at: flip(wood.at), ..wood });
        if self.kind == JointKind::Lap {
            self.wood.reverse();
        }
        self.pegs = self.pegs.map(|pegs| pegs.into_iter().rev().map(flip).collect());
        self
    }

    fn is_like(&self, other: &Self) -> bool {
        let is_near = |a: Vector, b: Vector| (a - b).norm() < NEAR;
        let is_same = |a: &Wood, b: &Wood| {
            is_near(a.at, b.at) && (a.volume - b.volume).abs() < WOOD.0 + WOOD.1 * a.volume.max(b.volume)
        };
        self.kind == other.kind
            && self.roles == other.roles
            && is_near(self.size, other.size)
            && self.wood.iter().zip(&other.wood).all(|(a, b)| is_same(a, b))
            && self
                .pegs
                .iter()
                .zip(&other.pegs)
                .all(|(one, two)| one.len() == two.len() && one.iter().zip(two).all(|(a, b)| is_near(*a, *b)))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::joinery::{bodies, joint_names};
    use crate::lay_out;
    use crate::project::{JointException, JointName, OwnRule, Project, demo};
    use crate::units::Length;

    fn all(project: &Project) -> (Vec<Alike>, usize) {
        let sticks = bodies(project, &lay_out(project).built.unwrap().shape);
        (different_joints(&sticks), joint_names(&sticks, None).len())
    }

    fn check(all: &[Alike], name: &str, like: &[&str], mirrored: &[&str]) {
        let found = all.iter().find(|one| one.joint.name == name);
        let names: Vec<&str> = all.iter().map(|one| one.joint.name.as_str()).collect();
        assert!(found.is_some(), "no {name} among {names:?}");
        let found = found.unwrap();
        assert_eq!((&*found.like, &*found.mirrored), (&*owned(like), &*owned(mirrored)), "{name}");
    }

    fn owned(marks: &[&str]) -> Vec<String> {
        marks.iter().map(|mark| (*mark).to_owned()).collect()
    }

    /// The barn: posts between are alike, end posts are shouldered and their pegs stand as they do; braces at the right and
    /// at the left are mirror images; all rafters are one.
    #[test]
    fn the_barn_has_each_joint_once() {
        let project = demo::wool_barn();
        let (found, n_joints) = all(&project);
        check(&found, "Post P1 in beam B1", &[], &[]);
        check(&found, "Post P2 in beam B1", &["P3"], &[]);
        check(&found, "Brace K1R in post P1", &["K2R", "K3R"], &["K2L", "K3L", "K4L"]);
        check(&found, "Brace K1R in beam B1", &["K2R", "K3R"], &["K2L", "K3L", "K4L"]);
        let told: usize = found.iter().map(|one| 1 + one.like.len() + one.mirrored.len()).sum();
        assert_eq!(told, n_joints, "every joint is told once");
        let rafters = found.iter().filter(|one| one.joint.kind == JointKind::BirdsMouth);
        assert!(rafters.clone().count() == 2 && rafters.clone().all(|one| one.like.len() == 17));
        assert!(rafters.into_iter().all(|one| one.joint.stays.len() == 1));
    }

    /// Whatever a head has of its own parts it from the others, be it only its drawbore; the braces stay alike.
    #[test]
    fn a_joint_of_its_own_is_drawn_by_itself() {
        let n = all(&demo::wool_barn()).0.len();
        for rule in
            [OwnRule::TenonThickness, OwnRule::TenonOffset, OwnRule::TenonLength, OwnRule::Peg, OwnRule::Drawbore]
        {
            let mut project = demo::wool_barn();
            let mut own = JointException::default();
            *rule.of_mut(&mut own) =
                Some(rule.in_rules(&project.joinery, JointName::PostHead(2)) - Length::inches(0.0625));
            project.exceptions.insert("P2".to_owned(), own);
            let (found, _) = all(&project);
            assert_eq!(found.len(), n + 1, "{rule:?}");
            check(&found, "Post P2 in beam B1", &[], &[]);
        }
    }

    /// A longer post has the same joints.
    #[test]
    fn what_is_not_cut_differently_is_no_other_joint() {
        let mut project = demo::wool_barn();
        let n = all(&project).0.len();
        project.frame.posts[1].pier_top -= Length::inches(3.0);
        assert_eq!(all(&project).0.len(), n);
    }
}
