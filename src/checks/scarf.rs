//! The scarfs: where the beam would bend, what is left of their halves, and whether the load closes them.
use super::beam::BeamChecks;
use super::bored::beside_hole;
use super::brace_pegs::MOST_DURATION;
use super::check::{Check, Under};
use super::governing::{hardest, most};
use crate::analysis::{Passed, Solved};
use crate::fastening::{LapAction, lap_action, root_shear};
use crate::geometry::{Brace, ScarfReport, lap_height};
use crate::loads::Duration;
use crate::materials::Section;
use crate::members::{Bracing, Member, NetSection, Property, Verdict, adjusted, bending_strength, shear_area};
use crate::project::{ScarfKind, Used};
use crate::units::{Force, Length, Moment, Stress, Volume};
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
    let checks = [bends(with, left, kind, &mark), thin(with, scarf, &mark), opens(with, scarf, &mark)];
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
        "not counted here: a scarf is a hinge and follows a post that sinks, and its load needs no moment of it; its halves, what \
         opens it and the pieces are judged with each post sunk in turn",
        Citation::common_practice("what a movement forces on stiff wood is no load of a joint that turns"),
    ));
    Ok(Worked::new(Verdict::moment(moment, capacity), steps))
}

/// What the upper half of a scarf brings to the lower one.
fn passed<'a>(solved: &'a Solved, scarf: &ScarfReport) -> Option<&'a Passed> {
    solved.laps.get(scarf.number.checked_sub(1)?)
}

/// Each half as a cantilever that the other one loads.
///
/// Where nothing ties the halves the lap may turn at either tip. The lower half is bent hardest where it turns at its own tip: what
/// comes from the beam beyond the lap presses there, what stands on the lap presses where it stands. The upper half is bent
/// hardest where it turns at its own tip: the lower one holds up both there. Where it turns at its root instead, what stands on
/// it hangs on it. Fasteners at both roots that hold as much as passes keep the halves together: the lap turns in its middle, as
/// the frame is worked out.
fn thin(with: &BeamChecks, scarf: &ScarfReport, mark: &str) -> Option<Check> {
    let sections = sections(with, scarf);
    let places = sections.as_ref().map_or(&[][..], Vec::as_slice);
    // Without a section one case weighs as what passes, and the check says what is wrong.
    let stress = |passed: &Passed, duration: Duration| {
        let turns = turns_at(with, (passed, duration));
        let of = |thin: &Thin| thin.moment(scarf, passed, turns).to_pound_inches() / thin.modulus.to_cubic_inches();
        places.iter().map(of).fold(passed.force().to_pounds().abs() * 1e-6, f64::max)
    };
    let all = with.strength().filter_map(|(solved, case)| {
        let passed = passed(solved, scarf)?;
        Some((stress(passed, case.duration), case.duration, (passed, solved, case)))
    });
    let (_, duration, (passed, solved, case)) = hardest(all)?;
    let under = with.under(solved, case).asks("P", passed.force().abs());
    let made = with.woods.member(Used::Beam, duration);
    let made = sections.and_then(|sections| thin_verdict(with, &made?, scarf, (&sections, passed, duration)));
    let (place, made) = made.map_or_else(|why| (String::new(), Err(why)), |(place, made)| (place, Ok(made)));
    Some(Check::new(mark, "is cut thin", place, under, made))
}

/// What passes between the halves, at one root or the other.
fn passes(passed: &Passed) -> Force {
    passed.force().abs().max(passed.beyond.abs())
}

/// What the fasteners of one root hold.
fn held_at_root(with: &BeamChecks, duration: Duration) -> Force {
    let tie = &with.project.fixings.scarf;
    tie.pull * (count(tie.count) * duration.factor().min(MOST_DURATION))
}

/// How far from a tip the lap turns.
fn turns_at(with: &BeamChecks, (passed, duration): (&Passed, Duration)) -> Length {
    let is_tied = held_at_root(with, duration) >= passes(passed);
    if is_tied { with.project.frame.scarfs.lap / 2.0 } else { Length::ZERO }
}

/// A section of a half: how far from its tip, what is left of it, and where that is.
struct Thin {
    is_lower: bool,
    arm: Length,
    net: NetSection,
    modulus: Volume,
    place: String,
}

impl Thin {
    fn new(is_lower: bool, arm: Length, net: NetSection, place: impl Into<String>) -> Self {
        Self { is_lower, arm, modulus: net.least_modulus(), net, place: place.into() }
    }

    /// What bends it, without sign, where the lap turns that far from its tip. What stands between tip and turn is carried by the
    /// other half there; past it, it hangs on this one or presses on it.
    fn moment(&self, scarf: &ScarfReport, passed: &Passed, turns: Length) -> Moment {
        let tip = if self.is_lower { scarf.upper_root() } else { scarf.lower_root() };
        let past = |from: Length| (self.arm - from).max(Length::ZERO);
        let from_tip = |x: Length| (x - tip).abs();
        let on_lap = || passed.on_lap.iter().map(|(x, force)| (from_tip(*x), *force));
        let near: Force = on_lap().filter(|(from, _)| *from <= turns).map(|(_, force)| force).sum();
        let hung: Moment = on_lap().filter(|(from, _)| *from > turns).map(|(from, force)| force * past(from)).sum();
        if self.is_lower {
            return ((passed.beyond + near) * past(turns) + hung).abs();
        }
        let bent = ((passed.force() - near) * past(turns) - hung).abs();
        // Untied it may turn at its root as well.
        if turns > Length::ZERO { bent } else { bent.max((near * self.arm + hung).abs()) }
    }
}

/// Even steps in which a lap is looked at beside the places where its face breaks.
const STEPS: usize = 24;

/// Sections of both halves, root to tip; the brace's pocket is in the lower one.
fn sections(with: &BeamChecks, scarf: &ScarfReport) -> Result<Vec<Thin>, String> {
    let (frame, rules, kind) = (&with.project.frame, &with.project.joinery, scarf.kind);
    let lap = frame.scarfs.lap;
    let (breadth, _) = at_holes(frame.timbers.beam.sawn.breadth, with.project.fixings.scarf.bored());
    let pockets: Vec<_> = with.shape.braces.iter().filter_map(|brace| pocket_in(with, scarf, brace)).collect();
    let step = lap / 2.0 + rules.scarf_wedge / 2.0;
    let is_tabled = kind == ScarfKind::StopSplayedTabled;
    let mut places: Vec<Length> = (0..STEPS).map(|n| lap * (n as f64 / STEPS as f64)).collect();
    places.extend(is_tabled.then_some(step));
    places.extend(pockets.iter().flat_map(|(near, far, _)| [*near, *far]));
    let word = |from_root: Length| {
        if from_root == Length::ZERO {
            "at its roots"
        } else if is_tabled && from_root == step {
            "at the step of its table"
        } else {
            "along its lap"
        }
    };
    let whole = |section: Section| NetSection::whole(section).map_err(|refused| refused.0);
    let mut found = Vec::with_capacity(places.len() * 2 + 1);
    for from_root in places {
        let section = Section::new(breadth, lap_height(frame, rules, kind, from_root));
        let cut = pockets.iter().find(|(near, far, _)| from_root >= *near && from_root <= *far);
        let (net, place) = match cut {
            Some((.., brace)) => (with.at_pocket(brace, section)?, format!("at the pocket of {}", brace.mark())),
            None => (whole(section)?, word(from_root).to_owned()),
        };
        let arm = lap - from_root;
        found.push(Thin::new(true, arm, net, place));
        found.push(Thin::new(false, arm, whole(section)?, word(from_root)));
    }
    if kind == ScarfKind::Bladed {
        let net = whole(Section::new(breadth, frame.timbers.beam.sawn.depth / 4.0))?;
        for is_lower in [true, false] {
            found.push(Thin::new(is_lower, rules.scarf_blade, net.clone(), "at its tongues"));
        }
    }
    Ok(found)
}

/// From the root to both edges of a brace's pocket, where it is in the lap.
fn pocket_in<'a>(with: &BeamChecks, scarf: &ScarfReport, brace: &'a Brace) -> Option<(Length, Length, &'a Brace)> {
    let (low, high) = brace.on_beam(&brace.beam_pocket(&with.project.frame));
    let (low, high) = (low.max(scarf.low), high.min(scarf.high));
    let root = scarf.lower_root();
    let (a, b) = ((low - root).abs(), (high - root).abs());
    (low < high).then(|| (a.min(b), a.max(b), brace))
}

/// The holes of its fasteners stand in the lap, near its root: the whole lap is taken as narrow as they leave it.
fn at_holes(breadth: Length, hole: Length) -> (Length, Vec<Step>) {
    let found = beside_hole(breadth, hole);
    let left = found.as_ref().map_or(breadth, |(left, _)| *left);
    (left, found.into_iter().map(|(_, step)| step).collect())
}

fn thin_verdict(
    with: &BeamChecks,
    wood: &Member,
    scarf: &ScarfReport,
    (sections, passed, duration): (&[Thin], &Passed, Duration),
) -> Result<(String, Worked<Verdict>), String> {
    let (frame, tie) = (&with.project.frame, &with.project.fixings.scarf);
    let (breadth, holes) = at_holes(wood.section().breadth, tie.bored());
    let bending = bending_strength(wood, Bracing::Held).map_err(|refused| refused.0)?;
    let along = adjusted(wood, Property::Shear);
    let (force, turns) = (passes(passed), turns_at(with, (passed, duration)));
    let left = lap_height(frame, &with.project.joinery, scarf.kind, Length::ZERO);
    let root = root_shear(Section::new(breadth, wood.section().depth), left, along.value);
    let Worked { value: root, steps: at_notch } = root.map_err(|refused| refused.to_string())?;
    let stress = |thin: &Thin| thin.moment(scarf, passed, turns) / thin.modulus;
    let worst = most(sections.iter(), |thin| stress(thin).to_psi()).ok_or("a scarf without a lap")?;
    let bent = Verdict::stress(stress(worst), bending.value);
    let mut best = (bent, worst.place.clone());
    let mut steps = [vec![passed_step(passed)], bending.steps, holes].concat();
    steps.push(bent_step(worst, (scarf, passed, turns), stress(worst)));
    steps.extend(along.steps);
    steps.extend(at_notch);
    let ties = held_at_root(with, duration);
    let capacity = ties.max(root);
    let says = if tie.count > 0 {
        let turns = if turns > Length::ZERO { "the lap turns in its middle" } else { "the lap may turn at either tip" };
        format!(
            "{} fasteners at each root, by their maker {:.0} lb each: {:.0} lb with C_D, of {:.0} lb that passes: {turns}",
            tie.count,
            tie.pull.to_pounds(),
            ties.to_pounds(),
            force.to_pounds()
        )
    } else {
        "no screws or bolts at the roots: the lap may turn at either tip".to_owned()
    };
    let source = Citation::common_practice("fasteners carry what the root cannot, and keep the halves together");
    steps.push(Step::new("fasteners at the roots", says, source));
    let at_root = Verdict::force(force, capacity);
    if at_root.ratio > best.0.ratio {
        best = (at_root, "at its roots".to_owned());
    }
    // The wood a pocket leaves of a half is sheared by the same force.
    for thin in sections.iter().filter(|thin| !thin.net.pockets().is_empty()) {
        let area = shear_area(&thin.net).map_err(|refused| refused.0)?;
        let sheared = Verdict::stress(force / area, along.value);
        if sheared.ratio > best.0.ratio {
            best = (sheared, thin.place.clone());
            let (area, stress) = (area.to_square_inches(), (force / area).to_psi());
            let says =
                format!("f_v = P/A_v = {:.0}/{area:.1} = {stress:.0} psi on what the pocket leaves", force.to_pounds());
            steps.push(Step::new("f_v at the pocket", says, Citation::from_memory("statics", "largest Q/(I·t)")));
        }
    }
    Ok((best.1, Worked::new(best.0, steps)))
}

fn passed_step(passed: &Passed) -> Step {
    let on_lap = passed.force() - passed.beyond;
    let says = format!(
        "P = {:.0} from the beam beyond the lap + {:.0} that stands on the lap = {:.0} lb, plus presses it shut",
        passed.beyond.to_pounds(),
        on_lap.to_pounds(),
        passed.force().to_pounds()
    );
    let source = Citation::from_memory("statics", "the upper half cut free");
    Step::new("P, what the upper half brings to the lower one", says, source)
}

fn bent_step(worst: &Thin, (scarf, passed, turns): (&ScarfReport, &Passed, Length), stress: Stress) -> Step {
    let Thin { is_lower, arm, net, modulus, place } = worst;
    let left = net.section();
    let half = if *is_lower { "lower" } else { "upper" };
    let pocket = if net.pockets().is_empty() { "" } else { " less the pocket" };
    let says = format!(
        "the {half} half {place}, {:.1} in from its tip, the lap turning {:.1} in from it: M = {:.0} lb·in on {:.2} x {:.2} in{pocket}, \
         S = {:.1} in³: {:.0} psi",
        arm.to_inches(),
        turns.to_inches(),
        worst.moment(scarf, passed, turns).to_pound_inches(),
        left.breadth.to_inches(),
        left.depth.to_inches(),
        modulus.to_cubic_inches(),
        stress.to_psi()
    );
    let source = Citation::common_practice("a lap as a cantilever of what is left of it");
    Step::new("f_b where a half is bent hardest", says, source)
}

/// Whether the upper half presses on the lower one in every case; if not, what must hold the lap shut.
fn opens(with: &BeamChecks, scarf: &ScarfReport, mark: &str) -> Option<Check> {
    let pressed = |solved: &Solved| Some(passed(solved, scarf)?.force());
    let all: Vec<_> = with.strength().filter_map(|(solved, case)| Some((pressed(solved)?, solved, case))).collect();
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
            let capacity = held_at_root(with, case.duration);
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
                "the upper half presses on the lower one in every case",
                Citation::common_practice("level laps"),
            );
            Ok(Worked::new(Verdict::force(Force::ZERO, Force::pounds(1.0)), vec![step]))
        }
    };
    Some(Check::new(mark, LIFTED_OPEN, "", with.under(solved, case).asks("P that shuts it", *hardest), made))
}

fn count(n: usize) -> f64 {
    u32::try_from(n).map_or(f64::MAX, f64::from)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::project::{ScarfPlace, Side};

    /// A lap from 100 to 140 in whose lower half comes from the left; 400 lb from beyond it on the right, 300 lb on it at 110 in.
    fn moments(is_lower: bool, arm: f64, turns: f64) -> f64 {
        let [low, centre, high] = [100.0, 120.0, 140.0].map(Length::inches);
        let place = ScarfPlace { centre, lower: Side::Left };
        let scarf = ScarfReport { number: 1, place, kind: ScarfKind::StopSplayed, low, high, judged: None };
        let on_lap = vec![(Length::inches(110.0), Force::pounds(300.0))];
        let passed = Passed { beyond: Force::pounds(400.0), on_lap };
        let net = NetSection::whole(Section::new(low, low));
        let thin = net.map(|net| Thin::new(is_lower, Length::inches(arm), net, ""));
        thin.map_or(f64::NAN, |thin| thin.moment(&scarf, &passed, Length::inches(turns)).to_pound_inches())
    }

    /// Lower: 400·25; 400·40 + 300·10. Upper: 700·25 − 300·15; 700·40 − 300·30. Turning in the middle, lower: 400·20 + 300·10;
    /// upper: what stands on its tip is carried there, (700 − 300)·20.
    #[test]
    fn what_bends_the_halves_by_hand() {
        assert_eq!([moments(true, 25.0, 0.0), moments(true, 40.0, 0.0)], [10_000.0, 19_000.0]);
        assert_eq!([moments(false, 25.0, 0.0), moments(false, 40.0, 0.0)], [13_000.0, 19_000.0]);
        assert_eq!([moments(true, 40.0, 20.0), moments(false, 40.0, 20.0)], [11_000.0, 8_000.0]);
        assert_eq!([moments(true, 15.0, 20.0), moments(false, 15.0, 20.0)], [0.0, 0.0]);
    }
}
