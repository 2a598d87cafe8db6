//! Every joint of the frame: which sticks meet, where, and the way in which they go together.
//!
//! Read from the cuts of the sticks. The way is found, not told: of the directions a joint of its kind may be drawn
//! apart in, the first along which the room that one part sweeps over holds no wood of the other.
use super::body::{Cut, CutKind, StickBody};
use crate::project::Role;
use crate::solid::{Convex, Plane, Skin, Solid, Vector, Within, swept};
use crate::units::{Length, Volume};

/// What kind of joint.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum JointKind {
    /// A post's or a brace's tenon in its mortise.
    Tenon,
    /// Two pieces of the beam, or of the ledger, end to end.
    Lap,
    /// A rafter over the beam or the ledger.
    BirdsMouth,
}

/// One joint.
#[derive(Clone, Debug, PartialEq)]
pub struct Joint {
    /// What it is called: "Post P2 in beam B2".
    pub name: String,
    /// Its kind.
    pub kind: JointKind,
    /// The stick that is drawn out.
    pub goes: String,
    /// The sticks that stay.
    pub stays: Vec<String>,
    /// The box around what is cut for it.
    pub within: Within,
    /// The direction in which the first stick is drawn out, of length one.
    pub way: Vector,
    /// How far it must be drawn until it is free.
    pub deep: Length,
    /// The holes of its pegs in the sticks that stay.
    pub pegs: Vec<Convex>,
}

impl Joint {
    /// Its sticks: the one that is drawn out, then those that stay.
    pub fn sticks(&self) -> impl Iterator<Item = &str> {
        std::iter::once(self.goes.as_str()).chain(self.stays.iter().map(String::as_str))
    }
}

/// Wood shared by two parts that are moved past each other and only touch: less than this.
const TOUCH: Volume = Volume::cubic_inches(0.01);

const X: Vector = Vector::inches(1.0, 0.0, 0.0);
const Y: Vector = Vector::inches(0.0, 1.0, 0.0);
const Z: Vector = Vector::inches(0.0, 0.0, 1.0);

/// Every joint, in the order of the sticks that are drawn out: heads of posts, scarfs, braces, rafters, splices.
#[must_use]
pub fn joints(bodies: &[StickBody]) -> Vec<Joint> {
    all_met(bodies).into_iter().map(Met::joint).collect()
}

/// What the joints of that stick are called, or those of all sticks: at once, for the ways are not looked for.
#[must_use]
pub fn joint_names(bodies: &[StickBody], of: Option<&str>) -> Vec<String> {
    let is_of = |met: &Met| of.is_none_or(|mark| met.goes.mark == mark || met.stays.iter().any(|one| one.mark == mark));
    all_met(bodies).iter().filter(|met| is_of(met)).map(Met::name).collect()
}

/// The joint of that name.
#[must_use]
pub fn joint_called(bodies: &[StickBody], name: &str) -> Option<Joint> {
    all_met(bodies).into_iter().find(|met| met.name() == name).map(Met::joint)
}

pub(super) fn all_met(bodies: &[StickBody]) -> Vec<Met<'_>> {
    let mut found: Vec<Met> = Vec::new();
    for body in bodies {
        for cut in &body.cuts {
            for (goes, stays) in met(bodies, body, cut) {
                note(&mut found, cut, goes, stays);
            }
        }
    }
    let mut in_order = Vec::with_capacity(found.len());
    for body in bodies {
        let (own, others) = found.into_iter().partition(|met: &Met| met.goes.mark == body.mark);
        in_order.extend::<Vec<Met>>(own);
        found = others;
    }
    in_order
}

/// Sticks that meet, and what is cut where they do.
pub(super) struct Met<'a> {
    pub(super) kind: JointKind,
    pub(super) goes: &'a StickBody,
    pub(super) stays: Vec<&'a StickBody>,
    cuts: Vec<&'a Cut>,
}

/// Which stick goes and which stays at a cut; none where the cut makes no joint, or where the other stick's cut tells it.
fn met<'a>(bodies: &'a [StickBody], body: &'a StickBody, cut: &Cut) -> Vec<(&'a StickBody, &'a StickBody)> {
    let Some(mate) = &cut.mate else { return Vec::new() };
    let other = bodies.iter().find(|other| other.mark == *mate);
    match cut.kind {
        CutKind::Mortise => other.map(|other| (other, body)).into_iter().collect(),
        // Each lap is told by both pieces: the left one speaks.
        CutKind::Lap => {
            let is_first = |other: &&StickBody| body.zero.x < other.zero.x;
            other.filter(is_first).map(|other| (other, body)).into_iter().collect()
        }
        CutKind::BirdsMouth => {
            // The mate of a bird's mouth is a whole line of pieces: those it lies on are found by their place.
            let line = if mate == "beam" { Role::Beam } else { Role::Ledger };
            let notch = around(&cut.tools);
            let under = bodies.iter().filter(|other| other.role == line);
            under.filter(|other| other.wood.within().meets(&notch)).map(|other| (body, other)).collect()
        }
        _ => Vec::new(),
    }
}

fn note<'a>(found: &mut Vec<Met<'a>>, cut: &'a Cut, goes: &'a StickBody, stays: &'a StickBody) {
    let kind = match cut.kind {
        CutKind::Lap => JointKind::Lap,
        CutKind::BirdsMouth => JointKind::BirdsMouth,
        _ => JointKind::Tenon,
    };
    // Two pieces of one line that take the same stick are one joint.
    let same = |met: &&mut Met| {
        met.goes.mark == goes.mark && met.kind == kind && met.stays[0].role == stays.role && kind != JointKind::Lap
    };
    match found.iter_mut().find(same) {
        Some(met) => {
            met.stays.push(stays);
            met.cuts.push(cut);
        }
        None => found.push(Met { kind, goes, stays: vec![stays], cuts: vec![cut] }),
    }
}

impl Met<'_> {
    /// The box around what is cut for it.
    pub(super) fn within(&self) -> Within {
        let own = self.cuts.iter().copied().chain(self.taken(CutKind::Housing));
        own.fold(Within::NOTHING, |within, cut| within.with(around(&cut.tools)))
    }

    /// The holes of its pegs in the sticks that stay.
    pub(super) fn pegs(&self) -> Vec<Convex> {
        self.taken(CutKind::PegHole).flat_map(|cut| cut.tools.clone()).collect()
    }

    /// The holes of its pegs in the stick that goes in; a tenon may name the beam as a whole.
    pub(super) fn own_pegs(&self) -> Vec<Convex> {
        let is_here = |mate: &str| {
            self.stays.iter().any(|body| body.mark == mate || body.role == Role::Beam && mate == Role::Beam.name())
        };
        let holes = self.goes.cuts.iter().filter(|cut| cut.kind == CutKind::PegHole && self.kind == JointKind::Tenon);
        holes.filter(|cut| cut.mate.as_deref().is_some_and(is_here)).flat_map(|cut| cut.tools.clone()).collect()
    }

    /// Cuts of that kind in the sticks that stay, for the tenon that goes in.
    fn taken(&self, kind: CutKind) -> impl Iterator<Item = &Cut> {
        let cuts = self.stays.iter().filter(|_| self.kind == JointKind::Tenon).flat_map(|body| &body.cuts);
        cuts.filter(move |cut| cut.kind == kind && cut.mate.as_ref() == Some(&self.goes.mark))
    }

    /// The wood within the box of the stick that goes in.
    pub(super) fn goes_within(&self, within: &Within) -> Solid {
        near(self.goes, within, 0.0)
    }

    /// Where it is, in a word or two: the stick that goes in, or what is joined.
    pub(super) fn place(&self) -> String {
        match self.kind {
            JointKind::Lap => match self.scarf() {
                Some(number) => format!("scarf {number}"),
                None => format!("{} and {}", self.stays[0].mark, self.goes.mark),
            },
            JointKind::Tenon | JointKind::BirdsMouth => self.goes.mark.clone(),
        }
    }

    /// Its number as it stands in the cut's words.
    fn scarf(&self) -> Option<&str> {
        self.cuts[0].what.split(',').next()?.strip_prefix("scarf ")
    }

    pub(super) fn joint(self) -> Joint {
        let (within, pegs) = (self.within(), self.pegs());
        let (goes, stays, way) = self.way(within);
        Joint {
            name: self.name(),
            kind: self.kind,
            goes: goes.mark.clone(),
            stays: stays.iter().map(|body| body.mark.clone()).collect(),
            within,
            way,
            deep: Length::inches((within.high - within.low).dot(Vector::inches(way.x.abs(), way.y.abs(), way.z.abs()))),
            pegs,
        }
    }

    /// Which stick is drawn out and which way; where none is free, straight out from the wall.
    fn way(&self, within: Within) -> (&StickBody, Vec<&StickBody>, Vector) {
        let (goes, stays) = (self.goes, self.stays.clone());
        let far = (within.high - within.low).norm() + 24.0;
        let parts = near(goes, &within, 6.0);
        let fixed: Vec<Solid> = stays.iter().map(|body| near(body, &within, 6.0)).collect();
        let ways: &[Vector] = match self.kind {
            JointKind::Tenon => &[-Z, X, -X, Z, Y, -Y],
            JointKind::Lap => &[Z],
            JointKind::BirdsMouth => &[Z, Y],
        };
        if let Some(way) = ways.iter().find(|way| is_free(&parts, &fixed, **way * far)) {
            return (goes, stays, *way);
        }
        // The other piece of a lap may be the one that lies on top.
        if self.kind == JointKind::Lap && stays.len() == 1 && is_free(&fixed[0], &[parts], Z * far) {
            return (stays[0], vec![goes], Z);
        }
        (goes, stays, Y)
    }

    fn name(&self) -> String {
        let goes = &self.goes.mark;
        let stays = self.stays.iter().map(|body| body.mark.as_str()).collect::<Vec<_>>().join(" and ");
        match self.kind {
            JointKind::Lap => match self.scarf() {
                Some(number) => format!("Scarf {number}: {stays} and {goes}"),
                None => format!("Ledger splice: {stays} and {goes}"),
            },
            JointKind::BirdsMouth => format!("Rafter {goes} over {} {stays}", self.stays[0].role.name()),
            JointKind::Tenon if self.goes.role == Role::Post => format!("Post {goes} in beam {stays}"),
            JointKind::Tenon => format!("Brace {goes} in {} {stays}", self.stays[0].role.name()),
        }
    }
}

/// The part meets no wood on its way.
fn is_free(part: &Solid, fixed: &[Solid], by: Vector) -> bool {
    let room = part.bodies().iter().map(|body| Solid::new(vec![swept(body, by)]));
    room.into_iter().all(|room| fixed.iter().all(|body| room.shared(body).volume() < TOUCH))
}

pub(super) fn around(tools: &[Convex]) -> Within {
    tools.iter().map(Convex::within).fold(Within::NOTHING, Within::with)
}

/// A stick's wood around a joint, sawn across so far beyond it; pegs' holes are filled.
fn near(body: &StickBody, within: &Within, beyond: f64) -> Solid {
    clipped(&body.standing(), body.along, within, beyond)
}

/// Wood between two planes across a direction, so far beyond a box.
#[must_use]
pub fn clipped(wood: &Solid, along: Vector, within: &Within, beyond: f64) -> Solid {
    let middle = (within.low + within.high) * 0.5;
    let size = within.high - within.low;
    let half = (size.x * along.x.abs() + size.y * along.y.abs() + size.z * along.z.abs()) / 2.0 + beyond;
    let ends = [along, -along].map(|normal| Plane::through(middle + normal * half, normal));
    let kept = |body: &Convex| ends.iter().try_fold(body.clone(), |body, end| body.cut(end, Skin::End).0);
    Solid::new(wood.bodies().iter().filter_map(kept).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::joinery::bodies;
    use crate::project::{Project, ScarfKind, demo};

    fn all(project: &Project) -> Vec<Joint> {
        let built = crate::lay_out(project).built;
        built.map(|built| joints(&bodies(project, &built.shape))).unwrap_or_default()
    }

    fn check(all: &[Joint], name: &str, goes: &str, way: Vector, n_pegs: usize) {
        let joint = all.iter().find(|joint| joint.name == name);
        let names: Vec<&str> = all.iter().map(|joint| joint.name.as_str()).collect();
        assert!(joint.is_some(), "no {name} among {names:?}");
        let found = joint.map(|joint| (joint.goes.as_str(), joint.way, joint.pegs.len()));
        assert_eq!(found, Some((goes, way, n_pegs)), "{name}");
    }

    /// The barn: 4 posts, 6 braces at both ends, two scarfs, its rafters at beam and ledger, its splices.
    #[test]
    fn the_barn_has_these_joints() {
        let project = demo::wool_barn();
        let all = all(&project);
        check(&all, "Post P1 in beam B1", "P1", -Z, 2);
        check(&all, "Brace K1R in post P1", "K1R", X, 1);
        check(&all, "Brace K1R in beam B1", "K1R", -Z, 1);
        check(&all, "Brace K2L in post P2", "K2L", -X, 1);
        check(&all, "Rafter R5 over ledger L1", "R5", Z, 0);
        let of = |kind: JointKind| all.iter().filter(|joint| joint.kind == kind).count();
        let built = crate::lay_out(&project).built;
        let shape = built.as_ref().map(|built| &built.shape);
        let tenons = shape.map(|shape| shape.posts.len() + 2 * shape.braces.len());
        let laps = shape.map(|shape| shape.beam.scarfs.len() + shape.ledger.len() - 1);
        let mouths = shape.map(|shape| 2 * shape.rafters.len());
        let counts = (Some(of(JointKind::Tenon)), Some(of(JointKind::Lap)), Some(of(JointKind::BirdsMouth)));
        assert_eq!(counts, (tenons, laps, mouths));
    }

    /// A plain half lap is laid on from above; under-squinted ends and tongues let the pieces come together only from the side.
    #[test]
    fn squinted_ends_go_together_from_the_side() {
        for kind in ScarfKind::ALL {
            let mut project = demo::wool_barn();
            project.frame.scarfs.kind = kind;
            project.frame.brace_along = Length::inches(24.0);
            project.frame.brace_down = Length::inches(24.0);
            let all = all(&project);
            let scarf = all.iter().find(|joint| joint.name.starts_with("Scarf 1"));
            let is_held = kind.is_squinted() || kind == ScarfKind::Bladed;
            let expected = if is_held { Y } else { Z };
            assert_eq!(scarf.map(|joint| joint.way), Some(expected), "{kind:?}");
        }
    }
}
