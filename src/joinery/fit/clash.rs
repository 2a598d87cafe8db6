//! Wood that is claimed twice, or left too thin, with the smallest move that clears it.
use super::super::body::{Cut, CutKind, StickBody};
use super::super::own_rules::joint_between;
use super::TOUCH;
use super::fixings::ledger_fixings;
use super::near::{NearWood, WALL_FACE};
use super::screws::screws_at_butts;
use super::ties::tie_holes;
use crate::design::Shape;
use crate::geometry::tenon_for_web;
use crate::project::{JointName, OwnRule, Project, Role, Side};
use crate::solid::{Convex, Solid, Vector, between};
use crate::units::{Length, UnitSystem};
use crate::wording::length;

/// One place where something is in the way.
#[derive(Clone, Debug, PartialEq)]
pub struct Clash {
    /// The stick it is cut in, or the first of two sticks.
    pub stick: String,
    /// The stick it meets there, where there is one.
    pub other: Option<String>,
    /// Where it is in the frame.
    pub at: Vector,
    /// Where it is along the stick, from its zero.
    pub from_zero: Length,
    /// The sentence.
    pub says: String,
    /// The smallest move along the stick of the second cut that clears it, away from zero positive.
    pub clears: Option<Length>,
    /// The rule of the project that clears it, where one does: a caution of that rule says the same, less exactly.
    pub field: Option<String>,
    /// The other places of which the same is true, each in a stick.
    pub alike: Vec<(String, Vector)>,
}

impl Clash {
    /// It is about that stick.
    #[must_use]
    pub fn is_of(&self, mark: &str) -> bool {
        self.stick == mark || self.other.as_deref() == Some(mark) || self.alike.iter().any(|(stick, _)| stick == mark)
    }

    /// Every place of it.
    pub fn places(&self) -> impl Iterator<Item = (&str, Vector)> {
        std::iter::once((self.stick.as_str(), self.at))
            .chain(self.alike.iter().map(|(stick, at)| (stick.as_str(), *at)))
    }
}

/// The rule that a web between opposed mortises follows from.
pub(super) const WEB: &str = "joinery.brace_tenon";
/// How the fields of joints that are not by the rules begin.
pub(super) const OWN: &str = "exceptions.";
/// The rule that the wall of a mortise behind its tenon follows from.
pub(super) const WALL: &str = "joinery.tenon_thickness";

/// What a joint has of its own, as its field is named.
fn own_field(joint: JointName, rule: OwnRule) -> String {
    format!("{OWN}{joint}.{}", rule.key())
}

/// Everything that is in the way of something else.
#[must_use]
pub fn clashes(project: &Project, shape: &Shape, bodies: &[StickBody], near: &[NearWood]) -> Vec<Clash> {
    let mut found = Vec::new();
    for body in bodies {
        found.extend(cuts_that_meet(project, body));
    }
    for thin in near.iter().filter(|wood| wood.is_thin()) {
        found.extend(bodies.iter().find(|body| body.mark == thin.stick).and_then(|body| too_thin(project, body, thin)));
    }
    for (index, one) in bodies.iter().enumerate() {
        found.extend(bodies[index + 1..].iter().filter_map(|two| shared_wood(project, one, two)));
    }
    found.extend(ledger_fixings(project, shape, bodies));
    found.extend(screws_at_butts(project, shape, bodies));
    found.extend(tie_holes(project, shape, bodies));
    found
}

/// Two joints in the same wood: cuts of different joints that share some of it.
fn cuts_that_meet(project: &Project, body: &StickBody) -> Vec<Clash> {
    let mut found = Vec::new();
    for (index, one) in body.cuts.iter().enumerate() {
        for two in body.cuts[index + 1..].iter().filter(|two| are_of_two_joints(one, two)) {
            let Some(at) = shared_by(&one.tools, &two.tools) else { continue };
            let (one, two) = mover_last(one, two);
            let clears = smallest_move(body, one, two, |a, b| a.shared(b).is_none());
            let mut says = format!("{}: {} and {} meet in the same wood", body.mark, one.what, two.what);
            let field = web_of(project, body, one, two);
            says.push_str(&way_out(project, two, clears, field.as_deref()));
            let other = two.mate.clone();
            let from_zero = body.from_zero(at);
            found.push(Clash {
                stick: body.mark.clone(),
                other,
                at,
                from_zero,
                says,
                clears,
                field,
                alike: Vec::new(),
            });
        }
    }
    found
}

fn are_of_two_joints(one: &Cut, two: &Cut) -> bool {
    if one.kind == CutKind::Bored || two.kind == CutKind::Bored {
        // Where fixings stand is judged by their own rules.
        return false;
    }
    let is_shaping = |cut: &Cut| cut.kind == CutKind::Shaping;
    let are_chamfers = one.kind == CutKind::Chamfer && two.kind == CutKind::Chamfer;
    let is_same = one.mate.is_some() && one.mate == two.mate;
    !(is_same || are_chamfers || is_shaping(one) && is_shaping(two))
}

/// The pair with the one that is more easily moved at the end: a hole before a mortise, a mortise before a lap.
fn mover_last<'a>(one: &'a Cut, two: &'a Cut) -> (&'a Cut, &'a Cut) {
    let fixed = |cut: &Cut| match cut.kind {
        CutKind::Shaping | CutKind::Lap => 3,
        CutKind::BirdsMouth => 2,
        CutKind::Housing | CutKind::Mortise => 1,
        CutKind::PegHole | CutKind::Bored | CutKind::Chamfer => 0,
    };
    if fixed(two) > fixed(one) { (two, one) } else { (one, two) }
}

/// Wood that is thinner than the rules ask; cuts that run into each other are told as such.
fn too_thin(project: &Project, body: &StickBody, thin: &NearWood) -> Option<Clash> {
    let say = |value: Length| length(value, project.units);
    let least = thin.least.unwrap_or_default();
    let cut = |what: &str| body.cuts.iter().find(|cut| cut.what == what);
    let pair = cut(&thin.other).zip(cut(&thin.cut)).map(|(one, two)| mover_last(one, two));
    if pair.is_some() && thin.wood <= Length::ZERO {
        return None;
    }
    let wide = least.to_inches() - 1e-6;
    let apart = |a: &Convex, b: &Convex| a.shared(b).is_none() && between(a, b).0 >= wide;
    let clears = pair.and_then(|(one, two)| smallest_move(body, one, two, apart));
    let mut says = format!(
        "{}: only {} of wood between {} and {}; {} is the least",
        body.mark,
        say(thin.wood.max(Length::ZERO)),
        thin.cut,
        thin.other,
        say(least)
    );
    let field = match pair {
        Some((one, two)) => web_of(project, body, one, two),
        None => cut(&thin.cut).filter(|cut| cut.kind == CutKind::Mortise && thin.other == WALL_FACE).map(|cut| {
            own_joint(project, body, cut).map_or(WALL.to_owned(), |own| own_field(own, OwnRule::TenonThickness))
        }),
    };
    if let Some((_, two)) = pair {
        says.push_str(&way_out(project, two, clears, field.as_deref()));
    } else {
        says.push('.');
    }
    Some(Clash {
        stick: body.mark.clone(),
        other: Some(thin.mate.clone()),
        at: thin.at,
        from_zero: body.from_zero(thin.at),
        says,
        clears,
        field,
        alike: Vec::new(),
    })
}

/// The rule that asks a web between the mortises of two braces in one post; the left one's own first, where they have any.
fn web_of(project: &Project, body: &StickBody, one: &Cut, two: &Cut) -> Option<String> {
    let are_mortises = one.kind == CutKind::Mortise && two.kind == CutKind::Mortise;
    if body.role != Role::Post || !are_mortises {
        return None;
    }
    let own = [one, two].into_iter().filter_map(|cut| own_joint(project, body, cut));
    let first = own.min_by_key(|joint| matches!(joint, JointName::BraceFoot(_, Side::Right)));
    Some(first.map_or(WEB.to_owned(), |joint| own_field(joint, OwnRule::TenonLength)))
}

/// The joint a cut is made for, where it is not by the rules.
fn own_joint(project: &Project, body: &StickBody, cut: &Cut) -> Option<JointName> {
    let joint = joint_between(&body.mark, cut.mate.as_deref()?)?;
    (project.rules_of(joint) != project.joinery).then_some(joint)
}

fn way_out(project: &Project, cut: &Cut, clears: Option<Length>, field: Option<&str>) -> String {
    let units = project.units;
    // Rounded to what a rule shows, so that the move or the tenon as told is enough.
    let step = if units == UnitSystem::Metric { Length::millimetres(1.0) } else { Length::inches(0.0625) };
    let mut says = match clears {
        Some(by) => {
            let way = if by > Length::ZERO { "away from" } else { "toward" };
            format!(
                "; {} clears it, moved {} {way} the stick's zero",
                cut.what,
                length(by.abs().round_up_to(step), units)
            )
        }
        None => String::new(),
    };
    if field == Some(WEB) {
        let tenon = -(-tenon_for_web(&project.frame, &project.joinery)).round_up_to(step);
        says.push_str(&format!("; so do brace tenons of {}", length(tenon, units)));
    }
    says.push('.');
    says
}

/// The middle of the wood that two cuts share; nothing where they only touch.
pub(super) fn shared_by(one: &[Convex], two: &[Convex]) -> Option<Vector> {
    let bodies = one.iter().flat_map(|a| two.iter().filter_map(move |b| a.shared(b))).collect();
    let shared = Solid::new(bodies);
    shared.centre().filter(|_| shared.volume().to_cubic_inches() > TOUCH)
}

/// The smallest move of the second cut along the stick after which every pair of their bodies is `clear`: by halving, for
/// convex bodies are in each other's way over one stretch of the way only. Nothing where none within three feet does.
pub(super) fn smallest_move(
    body: &StickBody,
    one: &Cut,
    two: &Cut,
    clear: impl Fn(&Convex, &Convex) -> bool,
) -> Option<Length> {
    const LONGEST: f64 = 36.0;
    let is_clear = |by: f64| {
        let moved: Vec<Convex> = two.tools.iter().map(|tool| tool.moved(body.along * by)).collect();
        one.tools.iter().all(|a| moved.iter().all(|b| clear(a, b)))
    };
    let toward = |sign: f64| {
        if !is_clear(sign * LONGEST) {
            return None;
        }
        let (mut low, mut high) = (0.0, LONGEST);
        while high - low > 1.0 / 256.0 {
            let middle = f64::midpoint(low, high);
            if is_clear(sign * middle) { high = middle } else { low = middle }
        }
        Some(sign * high)
    };
    let ways = [toward(1.0), toward(-1.0)].into_iter().flatten();
    ways.min_by(|a, b| a.abs().total_cmp(&b.abs())).map(Length::inches)
}

/// Two sticks in the same place.
fn shared_wood(project: &Project, one: &StickBody, two: &StickBody) -> Option<Clash> {
    let shared = one.wood.shared(&two.wood);
    let volume = shared.volume().to_cubic_inches();
    let at = shared.centre().filter(|_| volume > TOUCH)?;
    let within = shared.within();
    let size = within.high - within.low;
    // The least of its three sizes is the shortest way out, square to the frame.
    let depth = Length::inches(size.x.min(size.y).min(size.z));
    let says = format!(
        "{} and {} stand {} in each other; a joint between them is missing or cut too small.",
        one.mark,
        two.mark,
        length(depth, project.units)
    );
    let from_zero = one.from_zero(at);
    Some(Clash {
        stick: one.mark.clone(),
        other: Some(two.mark.clone()),
        at,
        from_zero,
        says,
        clears: None,
        field: None,
        alike: Vec::new(),
    })
}
