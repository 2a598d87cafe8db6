//! The thinnest wood at every joint: from its cuts to the cuts of other joints, and to the faces they do not break.
use super::super::body::{Cut, CutKind, StickBody};
use super::super::own_rules::joint_between;
use crate::project::{JoineryRules, Project, Role};
use crate::solid::{Convex, Facet, Plane, Skin, Vector, between};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// Cuts farther apart than this have nothing to do with each other, in inches.
const FAR: f64 = 8.0;

/// The thinnest wood at one joint of one stick.
#[derive(Clone, Debug, PartialEq)]
pub struct NearWood {
    /// The stick.
    pub stick: String,
    /// The cut of the joint.
    pub cut: String,
    /// What it meets.
    pub mate: String,
    /// What lies on the other side of the wood: another cut, a face by its name, or "the end".
    pub other: String,
    /// How much wood there is.
    pub wood: Length,
    /// The least the rules ask here; nothing where they ask nothing.
    pub least: Option<Length>,
    /// Midway in that wood.
    pub at: Vector,
}

impl NearWood {
    /// In a few words: how much wood, and between what.
    #[must_use]
    pub fn says(&self, units: UnitSystem) -> String {
        format!("{} from {} to {}", length(self.wood, units), self.cut, self.other)
    }

    /// It is less than the rules ask.
    #[must_use]
    pub fn is_thin(&self) -> bool {
        self.least.is_some_and(|least| self.wood < least - Length::inches(1e-6))
    }
}

/// For every cut of every joint, the thinnest wood; and whatever else is thinner than the rules ask.
#[must_use]
pub fn near_wood(project: &Project, bodies: &[StickBody]) -> Vec<NearWood> {
    bodies.iter().flat_map(|body| of_stick(project, body)).collect()
}

fn of_stick(project: &Project, body: &StickBody) -> Vec<NearWood> {
    let mut found: Vec<NearWood> = Vec::new();
    for (index, cut) in body.cuts.iter().enumerate() {
        let Some(mate) = cut.mate.as_ref().filter(|_| is_judged(cut.kind)) else { continue };
        let mut all = to_faces(project, body, cut, mate);
        for (at, other) in body.cuts.iter().enumerate() {
            if at != index
                && other.mate.as_ref() != Some(mate)
                && !matches!(other.kind, CutKind::Chamfer | CutKind::Bored)
            {
                all.extend(to_cut(project, body, (cut, mate), other));
            }
        }
        found.extend(all);
    }
    thinnest(found)
}

/// Shaping and chamfers are no joint of their own.
fn is_judged(kind: CutKind) -> bool {
    matches!(kind, CutKind::Mortise | CutKind::PegHole | CutKind::BirdsMouth | CutKind::Lap)
}

/// Of each cut the thinnest, and all that are too thin; one pair of cuts is told once.
fn thinnest(mut all: Vec<NearWood>) -> Vec<NearWood> {
    crate::units::sort_by_number(&mut all, |near| near.wood.to_inches());
    let mut kept: Vec<NearWood> = Vec::new();
    for wood in all {
        let is_told = kept.iter().any(|known| known.cut == wood.other && known.other == wood.cut);
        let is_first = kept.iter().all(|known| known.cut != wood.cut);
        if !is_told && (is_first || wood.is_thin()) {
            kept.push(wood);
        }
    }
    kept
}

fn to_cut(project: &Project, body: &StickBody, (cut, mate): (&Cut, &str), other: &Cut) -> Option<NearWood> {
    let mut best: Option<(f64, Vector)> = None;
    for (one, two) in cut.tools.iter().flat_map(|one| other.tools.iter().map(move |two| (one, two))) {
        if one.within().gap(&two.within()) < best.map_or(FAR, |(wood, _)| wood) {
            let found = if one.shared(two).is_some() { (0.0, one.within().low) } else { between(one, two) };
            if best.is_none_or(|(wood, _)| found.0 < wood) {
                best = Some(found);
            }
        }
    }
    let (wood, at) = best?;
    Some(NearWood {
        stick: body.mark.clone(),
        cut: cut.what.clone(),
        mate: mate.to_owned(),
        other: other.what.clone(),
        wood: Length::inches(wood),
        least: least_between(&rules_at(project, body, cut), cut.kind, &rules_at(project, body, other), other.kind),
        at,
    })
}

/// The rules of the joint a cut is made for.
fn rules_at(project: &Project, body: &StickBody, cut: &Cut) -> JoineryRules {
    let joint = cut.mate.as_ref().and_then(|mate| joint_between(&body.mark, mate));
    joint.map_or(project.joinery, |joint| project.rules_of(joint))
}

/// What the rules ask between two cuts of different joints.
///
/// Webs and the wood over a pocket are the user's rules. Pegs: a peg's width to another joint's mortise and two between
/// holes, which is three widths from centre to centre (common practice).
fn least_between(rules: &JoineryRules, one: CutKind, others: &JoineryRules, two: CutKind) -> Option<Length> {
    use CutKind::{Lap, Mortise, PegHole};
    match (one, two) {
        (Mortise, Mortise) => Some(rules.least_web),
        (Mortise, Lap) | (Lap, Mortise) => Some(rules.wood_over_pocket),
        (PegHole, Mortise | Lap) => Some(rules.peg),
        (Mortise | Lap, PegHole) => Some(others.peg),
        (PegHole, PegHole) => Some(rules.peg + others.peg),
        _ => None,
    }
}

/// The wood to each face of the real stock that the cut would not break through in one as sawn.
fn to_faces(project: &Project, body: &StickBody, cut: &Cut, mate: &str) -> Vec<NearWood> {
    if cut.kind == CutKind::Lap || body.role == Role::Brace {
        return Vec::new();
    }
    let mut found = Vec::new();
    for facet in faces_beside(body, cut) {
        let reach = cut.tools.iter().map(|tool| tool.reach(&facet.plane).1).fold(f64::NEG_INFINITY, f64::max);
        let corners = cut.tools.iter().flat_map(Convex::corners);
        let nearest: Vec<Vector> = corners.filter(|corner| facet.plane.outside(*corner) > reach - 1e-6).collect();
        let middle = nearest.iter().fold(Vector::ZERO, |sum, corner| sum + *corner) * (1.0 / nearest.len() as f64);
        let half = facet.plane.normal * (-reach / 2.0);
        let at = middle + half;
        let as_sawn = reach + over_sawn(project, body, facet.plane.normal, at).to_inches();
        if !(-FAR * 2.0..=-1e-6).contains(&as_sawn) {
            continue;
        }
        // Where its housing took all the wood, a mortise is open; a peg's hole through the wall opens nothing.
        let is_open = || !nearest.iter().any(|corner| body.wood.holds((*corner + middle) * 0.5 + half));
        if reach < 0.0 && is_open() {
            continue;
        }
        let is_end = facet.skin == Skin::End;
        found.push(NearWood {
            stick: body.mark.clone(),
            cut: cut.what.clone(),
            mate: mate.to_owned(),
            other: if is_end { "the end" } else { face_name(facet.plane.normal) }.to_owned(),
            wood: Length::inches(-reach),
            least: least_to_face(&rules_at(project, body, cut), cut.kind, is_end),
            at,
        });
    }
    found
}

/// The face that looks at the wall.
pub(super) const WALL_FACE: &str = "the wall face";

/// Faces of the stock beside a cut: of a stick that was measured in several places those of the parts the cut lies in, and
/// both its ends.
fn faces_beside<'a>(body: &'a StickBody, cut: &Cut) -> Vec<&'a Facet> {
    let along = Plane::through(body.zero, body.along);
    let grown = |(low, high): (f64, f64), body: &Convex| {
        let (from, to) = body.reach(&along);
        (low.min(from), high.max(to))
    };
    let nothing = (f64::INFINITY, f64::NEG_INFINITY);
    let (low, high) = cut.tools.iter().fold(nothing, grown);
    let (first, last) = body.stock.iter().fold(nothing, grown);
    let mut faces = Vec::new();
    for part in &body.stock {
        let (from, to) = part.reach(&along);
        let is_beside = from < high - 1e-6 && to > low + 1e-6;
        let is_end = |facet: &Facet| {
            let looks = facet.plane.normal.dot(body.along);
            (looks > 0.0 && to > last - 1e-6) || (looks < 0.0 && from < first + 1e-6)
        };
        faces.extend(part.facets().iter().filter(|facet| match facet.skin {
            Skin::End => is_end(facet),
            _ => is_beside,
        }));
    }
    faces
}

/// A face by the way it looks.
fn face_name(normal: Vector) -> &'static str {
    let Vector { x, y, z } = normal;
    match () {
        () if y > 0.7 => "the outer face",
        () if y < -0.7 => WALL_FACE,
        () if z > 0.7 => "the top",
        () if z < -0.7 => "the underside",
        () if x > 0.0 => "the right face",
        () => "the left face",
    }
}

/// How much more wood than sawn lies toward that face, where the real stick was measured: joints are laid out from the
/// reference faces, so all of it lies on the other side. Posts: wall and right face; beam and ledger: wall face.
fn over_sawn(project: &Project, body: &StickBody, normal: Vector, at: Vector) -> Length {
    let is_post = body.role == Role::Post;
    if !is_post && !matches!(body.role, Role::Beam | Role::Ledger) {
        return Length::ZERO;
    }
    let sawn = project.frame.timbers.of(body.role).sawn;
    let real = project.progress.size_at(&body.mark, sawn, body.from_zero(at));
    match () {
        () if normal.y < -0.7 && is_post => real.depth - sawn.depth,
        () if normal.y < -0.7 || normal.x > 0.7 && is_post => real.breadth - sawn.breadth,
        () => Length::ZERO,
    }
}

/// A mortise's wall is as thick as its tenon, or 1½ in (common practice); the ends have rules of their own.
fn least_to_face(rules: &JoineryRules, kind: CutKind, is_end: bool) -> Option<Length> {
    (kind == CutKind::Mortise && !is_end).then(|| rules.tenon_thickness.min(Length::inches(1.5)))
}
