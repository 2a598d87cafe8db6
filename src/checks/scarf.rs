//! The scarfs: where the beam would bend, their roots, and whether the load closes them.
use super::beam::BeamChecks;
use super::bored::beside_hole;
use super::check::{Check, Under};
use super::governing::{hardest, most};
use crate::analysis::Solved;
use crate::fastening::{LapAction, ScarfRoot, Sharing, lap_action, scarf_root};
use crate::geometry::{ScarfReport, abutment};
use crate::loads::Duration;
use crate::materials::Section;
use crate::members::{Bracing, Member, NetSection, Property, Verdict, adjusted, bending_strength};
use crate::project::{ScarfKind, Side, Used};
use crate::units::{Force, Length, Moment, Stress};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step, Worked};

/// Name of the check of a lap that is lifted.
pub const LIFTED_OPEN: &str = "is lifted open";

/// Every check of the scarfs.
#[must_use]
pub fn check_scarfs(with: &BeamChecks) -> Vec<Check> {
    with.shape.beam.scarfs.iter().flat_map(|scarf| one(with, scarf)).collect()
}

/// Share of the solid beam's bending a scarf of that kind carries: tests on green oak, as tabled in Heritage Science 8
/// (2020), Table 3. Kinds that were not tested get the least of the tested ones.
const fn share(kind: ScarfKind) -> (f64, Citation) {
    const PAPER: &str = "Heritage Science 8 (2020)";
    match kind {
        ScarfKind::HalvedUnderSquinted => (0.10, Citation::seen(PAPER, "Table 3, under-squinted halved, two pegs")),
        ScarfKind::StopSplayedTabled => (0.28, Citation::seen(PAPER, "Table 3, stop-splayed and tabled with a key")),
        ScarfKind::Halved | ScarfKind::Bladed | ScarfKind::StopSplayed | ScarfKind::StopSplayedUnderSquinted => {
            (0.10, Citation::placeholder(PAPER, "Table 3: this kind was not tested, the least is taken"))
        }
    }
}

fn one(with: &BeamChecks, scarf: &ScarfReport) -> Vec<Check> {
    let centre = scarf.place.centre;
    let gap = |to: Length| (to - centre).abs();
    let stretches = &with.line.model.beam;
    let Some(left) = (0..stretches.len())
        .min_by(|a, b| gap(stretches[*a].to).to_inches().total_cmp(&gap(stretches[*b].to).to_inches()))
    else {
        return Vec::new();
    };
    let mark = format!("scarf {}", scarf.number);
    let kind = scarf.kind;
    let checks = [bends(with, left, kind, &mark), root(with, left, kind, &mark), opens(with, left, scarf, &mark)];
    checks.into_iter().flatten().map(|check| check.at_x(centre)).collect()
}

/// What the beam without the scarf would bend here, against the share such a scarf carries.
fn bends(with: &BeamChecks, left: usize, kind: ScarfKind, mark: &str) -> Option<Check> {
    let moments = with.line.uncut().filter_map(|(uncut, case)| {
        let moment = *uncut.moments.get(left)?;
        Some((moment.to_pound_inches(), case.duration, (moment, uncut, case)))
    });
    let (_, duration, (moment, uncut, case)) = hardest(moments)?;
    let combination = format!("{} ({})", case.name, uncut.model.words());
    let made = with.woods.member(Used::Beam, duration).and_then(|wood| share_of_solid(kind, &wood, moment.abs()));
    let under = Under::from_origin(combination, None, with.line.origin_uncut(uncut, case)).asks("M", moment.abs());
    Some(Check::new(mark, "lies where the beam would bend", "", under, made))
}

fn share_of_solid(kind: ScarfKind, wood: &Member, moment: Moment) -> Result<Worked<Verdict>, String> {
    let (share, citation) = share(kind);
    let strength = bending_strength(wood, Bracing::Held).map_err(|refused| refused.0)?;
    let modulus = NetSection::whole(wood.section()).map_err(|refused| refused.0)?.least_modulus();
    let solid = strength.value * modulus;
    let capacity = solid * share;
    let mut steps = strength.steps;
    let says = format!(
        "M_scarf = {share:.2}·F_b'·S = {share:.2}·{:.0}·{:.1} = {:.0} lb·in; the uncut beam has {:.0} lb·in here",
        strength.value.to_psi(),
        modulus.to_cubic_inches(),
        capacity.to_pound_inches(),
        moment.to_pound_inches()
    );
    steps.push(Step::new("share of the solid beam", says, citation));
    steps.push(Step::new(
        "posts that sink",
        "not counted here: a scarf is a hinge and follows a post that sinks, and its load needs no moment of it; its roots, what \
         opens it and the pieces are judged with each post sunk in turn",
        Citation::common_practice("what a movement forces on stiff wood is no load of a joint that turns"),
    ));
    Ok(Worked::new(Verdict::moment(moment, capacity), steps))
}

/// Shear at a scarf on both sides of its middle: a rafter that stands right there parts them.
fn shears(solved: &Solved, left: usize) -> Option<[Force; 2]> {
    let of_left = solved.beam.get(left)?.end_shears.1;
    Some([of_left, solved.beam.get(left + 1).map_or(of_left, |part| part.end_shears.0)])
}

/// Each half at its root, the shear passing at the tip: the worst place it can.
fn root(with: &BeamChecks, left: usize, kind: ScarfKind, mark: &str) -> Option<Check> {
    let shears = with.strength().filter_map(|(solved, case)| {
        let [a, b] = shears(solved, left)?;
        let shear = if b.abs() > a.abs() { b } else { a };
        Some((shear.to_pounds(), case.duration, (shear, solved, case)))
    });
    let (_, duration, (shear, solved, case)) = hardest(shears)?;
    let made =
        with.woods.member(Used::Beam, duration).and_then(|wood| root_verdict(with, &wood, kind, (shear, duration)));
    Some(Check::new(mark, "is cut thin at its roots", "", with.under(solved, case).asks("V", shear.abs()), made))
}

/// Depth of the wood that is left at a root.
fn left_at_root(with: &BeamChecks, kind: ScarfKind, depth: Length) -> Length {
    match kind {
        ScarfKind::Halved | ScarfKind::HalvedUnderSquinted | ScarfKind::Bladed => depth / 2.0,
        _ => depth - abutment(&with.project.frame, &with.project.joinery, kind),
    }
}

/// The holes of its fasteners stand in the lap, near its root: the whole lap is taken as narrow as they leave it.
fn at_holes(whole: Section, hole: Length) -> (Section, Vec<Step>) {
    let found = beside_hole(whole.breadth, hole);
    let breadth = found.as_ref().map_or(whole.breadth, |(left, _)| *left);
    (Section::new(breadth, whole.depth), found.into_iter().map(|(_, step)| step).collect())
}

fn root_verdict(
    with: &BeamChecks,
    wood: &Member,
    kind: ScarfKind,
    (shear, duration): (Force, Duration),
) -> Result<Worked<Verdict>, String> {
    let (frame, tie) = (&with.project.frame, &with.project.fixings.scarf);
    let (section, net) = at_holes(wood.section(), tie.bored());
    let left = left_at_root(with, kind, section.depth);
    let bending = bending_strength(wood, Bracing::Held).map_err(|refused| refused.0)?;
    let along = adjusted(wood, Property::Shear);
    let (thin, arm) = thinnest(left, section.depth, frame.scarfs.lap);
    let asked = ScarfRoot {
        section,
        left,
        lap: frame.scarfs.lap,
        shear,
        sharing: Sharing::AtTip,
        bending: bending.value,
        shear_strength: along.value,
    };
    let found = scarf_root(&asked).map_err(|refused| refused.to_string())?;
    let mut steps = [bending.steps, along.steps, net, found.steps].concat();
    let along_lap = shear.abs() * arm / (section.breadth * thin * (thin * (1.0 / 6.0)));
    if thin < left {
        steps.push(along_splay(shear, (arm, thin), along_lap));
    }
    let bent = Verdict::stress(found.value.bending_stress.max(along_lap), bending.value);
    let (verdict, says) = if tie.count > 0 {
        let each = tie.pull * duration.factor().min(1.6);
        let all = each * count(tie.count);
        let capacity = all.max(found.value.shear_capacity);
        let says = format!(
            "{} fasteners at each root, by their maker {:.0} lb each with C_D: {:.0} lb; they or the wood alone, the greater, {:.0} lb",
            tie.count,
            each.to_pounds(),
            all.to_pounds(),
            capacity.to_pounds()
        );
        (Verdict::force(shear.abs(), capacity), says)
    } else {
        (Verdict::force(shear.abs(), found.value.shear_capacity), "no screws or bolts at the roots".to_owned())
    };
    steps.push(Step::new(
        "fasteners at the roots",
        says,
        Citation::common_practice("fasteners carry what the root cannot"),
    ));
    Ok(Worked::new(if bent.ratio > verdict.ratio { bent } else { verdict }, steps))
}

fn along_splay(shear: Force, (arm, thin): (Length, Length), stress: Stress) -> Step {
    let says = format!(
        "M = V·a = {:.0}·{:.1} lb·in on {:.2} in left there: {:.0} psi",
        shear.abs().to_pounds(),
        arm.to_inches(),
        thin.to_inches(),
        stress.to_psi()
    );
    Step::new("f_b along the splay", says, Citation::common_practice("a splayed lap as a cantilever that tapers"))
}

/// Where a lap that tapers from `left` at its root to d − `left` at its tip is bent hardest by a force at the tip: depth
/// and distance from the tip. M/S ∝ a/h² is greatest at h = 2·(d − left), where that is still in the lap; a level lap and
/// a steep one are worst at the root.
fn thinnest(left: Length, depth: Length, lap: Length) -> (Length, Length) {
    let tip = (depth - left).max(Length::ZERO);
    let taper = left - tip;
    if tip > Length::ZERO && tip * 2.0 < left { (tip * 2.0, lap * (tip / taper)) } else { (left, lap) }
}

/// Whether the shear presses the upper lap on the lower one in every case; if not, what must hold it shut.
fn opens(with: &BeamChecks, left: usize, scarf: &ScarfReport, mark: &str) -> Option<Check> {
    let toward_lower = |solved: &Solved| {
        let [a, b] = shears(solved, left)?;
        Some(if scarf.place.lower == Side::Left { a.min(b) } else { (-a).min(-b) })
    };
    let all: Vec<_> =
        with.strength().filter_map(|(solved, case)| Some((toward_lower(solved)?, solved, case))).collect();
    let forces: Vec<Force> = all.iter().map(|(force, ..)| *force).collect();
    let tie = &with.project.fixings.scarf;
    // The case that asks most of the fasteners, with its own force and duration.
    let (hardest, solved, case) = most(all.iter(), |(force, _, case)| -force.to_pounds() / case.duration.factor())?;
    let made = match lap_action(&forces) {
        Err(why) => Err(why.into()),
        Ok(LapAction::Opens(force)) if tie.count == 0 => {
            let says = format!(
                "the lap is lifted open by {:.0} lb and the screws or bolts that must hold it are missing",
                force.to_pounds()
            );
            Err(Unmade::missing(Input::Scarf, says))
        }
        Ok(LapAction::Opens(_)) => {
            let force = -*hardest;
            let capacity = tie.pull * (count(tie.count) * case.duration.factor().min(1.6));
            let says = format!(
                "lifted by {:.0} lb; {} fasteners at {:.0} lb with C_D = {:.2}: {:.0} lb ({})",
                force.to_pounds(),
                tie.count,
                tie.pull.to_pounds(),
                case.duration.factor(),
                capacity.to_pounds(),
                tie.source
            );
            let step = Step::new(
                "what holds the lap shut",
                says,
                Citation::common_practice("pegs and wedges are not counted"),
            );
            Ok(Worked::new(Verdict::force(force, capacity), vec![step]))
        }
        Ok(LapAction::Closes | LapAction::Idle) => {
            let step = Step::new(
                "lap",
                "the shear presses the lap shut in every case",
                Citation::common_practice("level laps"),
            );
            Ok(Worked::new(Verdict::force(Force::ZERO, Force::pounds(1.0)), vec![step]))
        }
    };
    Some(Check::new(mark, LIFTED_OPEN, "", with.under(solved, case).asks("V that shuts it", *hardest), made))
}

fn count(n: usize) -> f64 {
    u32::try_from(n).map_or(f64::MAX, f64::from)
}
