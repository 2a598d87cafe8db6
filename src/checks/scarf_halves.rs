//! What is left of a scarf's two halves, from their roots to their tips, under what one brings to the other.
use super::beam::BeamChecks;
use super::bored::beside_hole;
use super::brace_pegs::MOST_DURATION;
use super::check::Check;
use super::governing::{hardest, most};
use super::scarf_pull::{Along, Cut, Drawn};
use crate::analysis::{BeamCase, Passed, Solved};
use crate::fastening::root_shear;
use crate::geometry::{Brace, ScarfReport, lap_height};
use crate::loads::Duration;
use crate::materials::Section;
use crate::members::{Bracing, Member, NetSection, Property, Verdict, adjusted, bending_strength, shear_area};
use crate::project::{ScarfKind, Tie, Used};
use crate::units::{Fixed, Force, Length, Moment, Stress, Volume};
use crate::working::{Citation, Step, Worked};

/// What the upper half of a scarf brings to the lower one.
pub(super) fn passed<'a>(solved: &'a Solved, scarf: &ScarfReport) -> Option<&'a Passed> {
    solved.laps.get(scarf.number.checked_sub(1)?)
}

/// One scarf under one answer of the frame.
#[derive(Clone, Copy)]
struct Asked<'a> {
    scarf: &'a ScarfReport,
    passed: &'a Passed,
    /// What the scarf passes along the beam.
    along: &'a Along<'a>,
    pull: Force,
    solved: &'a Solved,
    case: &'a BeamCase,
    /// How far from a tip the lap turns.
    turns: Length,
}

/// Each half as a cantilever that the other one loads.
///
/// Where nothing ties the halves the lap may turn at either tip. The lower half is bent hardest where it turns at its own tip: what
/// comes from the beam beyond the lap presses there, what stands on the lap presses where it stands. The upper half is bent
/// hardest where it turns at its own tip: the lower one holds up both there. Where it turns at its root instead, what stands on
/// it hangs on it. Fasteners at both roots that hold as much as passes keep the halves together: the lap turns in its middle, as
/// the frame is worked out.
pub(super) fn thin(with: &BeamChecks, (scarf, along): (&ScarfReport, &Along), mark: &str) -> Option<Check> {
    let sections = sections(with, scarf, along);
    let places = sections.as_ref().map_or(&[][..], Vec::as_slice);
    let all = with.strength().filter_map(|(solved, case)| {
        let passed = passed(solved, scarf)?;
        let turns = turns_at(with, (passed, solved, case), along);
        let asked = Asked { scarf, passed, along, pull: along.pull(solved, case), solved, case, turns };
        // Without a section one case weighs as what passes, and the check says what is wrong.
        let least = passed.force().to_pounds().abs() * 1e-6;
        let stress = places.iter().map(|thin| thin.stress(&asked).to_psi()).fold(least, f64::max);
        Some((stress, case.duration, asked))
    });
    let (_, duration, asked) = hardest(all)?;
    let under = with.under(asked.solved, asked.case).asks("P", asked.passed.force().abs());
    let made = with.woods.member(Used::Beam, duration);
    let made = sections.and_then(|sections| thin_verdict(with, &made?, &asked, &sections));
    let (place, made) = made.map_or_else(|why| (String::new(), Err(why)), |(place, made)| (place, Ok(made)));
    Some(Check::new(mark, "is cut thin", place, under, made))
}

/// What passes between the halves, at one root or the other.
fn passes(passed: &Passed) -> Force {
    passed.force().abs().max(passed.beyond.abs())
}

/// What the fasteners of one root hold.
pub(super) fn held_at_root(with: &BeamChecks, duration: Duration) -> Force {
    let tie = &with.project.fixings.scarf;
    tie.pull * (count(tie.count) * duration.factor().min(MOST_DURATION))
}

/// What they hold beside a pull along the beam, which takes its share of each of them.
fn held_beside(with: &BeamChecks, (solved, case): (&Solved, &BeamCase), along: &Along) -> Force {
    held_at_root(with, case.duration) * (1.0 - along.share(with, solved, case)).max(0.0)
}

/// How far from a tip the lap turns.
fn turns_at(with: &BeamChecks, (passed, solved, case): (&Passed, &Solved, &BeamCase), along: &Along) -> Length {
    let is_tied = held_beside(with, (solved, case), along) >= passes(passed);
    if is_tied { with.project.frame.scarfs.lap / 2.0 } else { Length::ZERO }
}

/// A section of a half: how far from its tip, what is left of it, and where that is.
struct Thin {
    is_lower: bool,
    arm: Length,
    net: NetSection,
    cut: Cut,
    /// The stretch of the beam it lies in, where that may pull at it: braces add to the lower half alone.
    stretch: Option<usize>,
    place: String,
}

impl Thin {
    fn new(is_lower: bool, arm: Length, net: NetSection, place: impl Into<String>) -> Self {
        Self { is_lower, arm, cut: Cut::of(&net), net, stretch: None, place: place.into() }
    }

    fn in_stretch(self, stretch: usize) -> Self {
        Self { stretch: self.is_lower.then_some(stretch), ..self }
    }

    /// What bends it, without sign, where the lap turns that far from its tip. What stands between tip and turn is carried by the
    /// other half there; past it, it hangs on this one or presses on it.
    fn moment(&self, (scarf, passed): (&ScarfReport, &Passed), turns: Length) -> Moment {
        let tip = if self.is_lower { scarf.upper_root() } else { scarf.lower_root() };
        let past = |from: Length| (self.arm - from).max(Length::ZERO);
        let (mut near, mut hung) = (Force::ZERO, Moment::ZERO);
        for (x, force) in &passed.on_lap {
            let from = (*x - tip).abs();
            if from <= turns {
                near += *force;
            } else {
                hung += *force * past(from);
            }
        }
        if self.is_lower {
            return ((passed.beyond + near) * past(turns) + hung).abs();
        }
        let bent = ((passed.force() - near) * past(turns) - hung).abs();
        // Untied it may turn at its root as well.
        if turns > Length::ZERO { bent } else { bent.max((near * self.arm + hung).abs()) }
    }

    /// What bends it with what pulls at it.
    fn stress(&self, asked: &Asked) -> Stress {
        self.moment((asked.scarf, asked.passed), asked.turns) / self.cut.modulus + self.drawn(asked).stress
    }

    /// What a pull along the beam does to it.
    fn drawn(&self, asked: &Asked) -> Drawn {
        let own = self.stretch.map(|stretch| asked.solved.along(stretch, asked.case)[1].max(asked.pull));
        asked.along.drawn((asked.pull, own.unwrap_or(asked.pull)), &self.cut)
    }
}

/// Even steps in which a lap is looked at beside the places where its face breaks.
const STEPS: usize = 24;

/// Sections of both halves, root to tip; the brace's pocket is in the lower one.
fn sections(with: &BeamChecks, scarf: &ScarfReport, along: &Along) -> Result<Vec<Thin>, String> {
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
    let tip = scarf.upper_root();
    let at = |arm: Length| if scarf.lower_root() > tip { tip + arm } else { tip - arm };
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
        found.push(Thin::new(true, arm, net, place).in_stretch(along.stretch_at(at(arm))));
        found.push(Thin::new(false, arm, whole(section)?, word(from_root)));
    }
    if kind == ScarfKind::Bladed {
        let net = whole(Section::new(breadth, frame.timbers.beam.sawn.depth / 4.0))?;
        for is_lower in [true, false] {
            let tongue = Thin::new(is_lower, rules.scarf_blade, net.clone(), "at its tongues");
            found.push(tongue.in_stretch(along.stretch_at(at(rules.scarf_blade))));
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
    asked: &Asked,
    sections: &[Thin],
) -> Result<(String, Worked<Verdict>), String> {
    let (frame, tie, scarf) = (&with.project.frame, &with.project.fixings.scarf, asked.scarf);
    let (breadth, holes) = at_holes(wood.section().breadth, tie.bored());
    let bending = bending_strength(wood, Bracing::Held).map_err(|refused| refused.0)?;
    let shear = adjusted(wood, Property::Shear);
    let force = passes(asked.passed);
    let left = lap_height(frame, &with.project.joinery, scarf.kind, Length::ZERO);
    let root = root_shear(Section::new(breadth, wood.section().depth), left, shear.value);
    let Worked { value: root, steps: at_notch } = root.map_err(|refused| refused.to_string())?;
    let worst = most(sections.iter(), |thin| thin.stress(asked).to_psi()).ok_or("a scarf without a lap")?;
    let bent = Verdict::stress(worst.stress(asked), bending.value);
    let mut best = (bent, worst.place.clone());
    let mut steps = [vec![passed_step(asked.passed)], bending.steps, holes].concat();
    steps.push(bent_step(worst, asked));
    steps.extend(worst.drawn(asked).step());
    steps.extend(shear.steps);
    steps.extend(at_notch);
    let ties = held_beside(with, (asked.solved, asked.case), asked.along);
    let capacity = ties.max(root);
    steps.push(ties_step(tie, (ties, force, asked.turns)));
    let at_root = Verdict::force(force, capacity);
    if at_root.ratio > best.0.ratio {
        best = (at_root, "at its roots".to_owned());
    }
    // The wood a pocket leaves of a half is sheared by the same force.
    for thin in sections.iter().filter(|thin| !thin.net.pockets().is_empty()) {
        let area = shear_area(&thin.net).map_err(|refused| refused.0)?;
        let sheared = Verdict::stress(force / area, shear.value);
        if sheared.ratio > best.0.ratio {
            best = (sheared, thin.place.clone());
            let (area, stress) = (area.to_square_inches(), (force / area).to_psi());
            let says =
                format!("f_v = P/A_v = {:.0}/{area:.1} = {stress:.0} psi on what the pocket leaves", force.to_pounds());
            steps.push(Step::new("f_v at the pocket", says, Citation::from_memory("statics", "largest Q/(I·t)")));
        }
    }
    if !best.0.passes() {
        steps.push(other_joints(wood.section(), frame.scarfs.lap, force, (bending.value, shear.value)));
    }
    Ok((best.1, Worked::new(best.0, steps)))
}

fn ties_step(tie: &Tie, (ties, force, turns): (Force, Force, Length)) -> Step {
    let says = if tie.count > 0 {
        let turns = if turns > Length::ZERO { "the lap turns in its middle" } else { "the lap may turn at either tip" };
        format!(
            "{} fasteners at each root, by their maker {} lb each: {} lb with C_D and less what pulls along the beam, of \
             {} lb that passes: {turns}",
            tie.count,
            Fixed(tie.pull.to_pounds(), 0),
            Fixed(ties.to_pounds(), 0),
            Fixed(force.to_pounds(), 0)
        )
    } else {
        "no screws or bolts at the roots: the lap may turn at either tip".to_owned()
    };
    let source = Citation::common_practice("fasteners carry what the root cannot, and keep the halves together");
    Step::new("fasteners at the roots", says, source)
}

/// What a framer would look at where a lap of halves one over the other does not hold.
fn other_joints(beam: Section, lap: Length, force: Force, (bending, shear): (Stress, Stress)) -> Step {
    let half = beam.breadth / 2.0;
    let moment = force * (lap / 2.0);
    let modulus: Volume = half * beam.depth * (beam.depth / 6.0);
    let says = format!(
        "laps side by side, each half {:.2} in broad and the full {:.2} in deep, bolted through at both ends of the lap: M = P·l/2 = \
         {:.0} lb·in on S = {:.1} in³ is {:.0} % of F_b', f_v = 1.5·P/(b·d) {:.0} % of F_v', and no notch; or a bolster bolted \
         under the beam, past both tips. Neither is drawn here: it needs a prop until its bolts are in",
        half.to_inches(),
        beam.depth.to_inches(),
        moment.to_pound_inches(),
        modulus.to_cubic_inches(),
        moment / modulus / bending * 100.0,
        force / (half * beam.depth) * 1.5 / shear * 100.0
    );
    Step::new("other joints to think of", says, Citation::common_practice("laps side by side, or a bolster"))
}

fn passed_step(passed: &Passed) -> Step {
    let on_lap = passed.force() - passed.beyond;
    let says = format!(
        "P = {} from the beam beyond the lap + {} that stands on the lap = {} lb, plus presses it shut",
        Fixed(passed.beyond.to_pounds(), 0),
        Fixed(on_lap.to_pounds(), 0),
        Fixed(passed.force().to_pounds(), 0)
    );
    let source = Citation::from_memory("statics", "the upper half cut free");
    Step::new("P, what the upper half brings to the lower one", says, source)
}

fn bent_step(worst: &Thin, asked: &Asked) -> Step {
    let Thin { is_lower, arm, net, cut, place, .. } = worst;
    let left = net.section();
    let half = if *is_lower { "lower" } else { "upper" };
    let pocket = if net.pockets().is_empty() { "" } else { " less the pocket" };
    let moment = worst.moment((asked.scarf, asked.passed), asked.turns);
    let says = format!(
        "the {half} half {place}, {} in from its tip, the lap turning {} in from it: M = {} lb·in on {} x {} in{pocket}, \
         S = {} in³: {} psi",
        Fixed(arm.to_inches(), 1),
        Fixed(asked.turns.to_inches(), 1),
        Fixed(moment.to_pound_inches(), 0),
        Fixed(left.breadth.to_inches(), 2),
        Fixed(left.depth.to_inches(), 2),
        Fixed(cut.modulus.to_cubic_inches(), 1),
        Fixed((moment / cut.modulus).to_psi(), 0)
    );
    let source = Citation::common_practice("a lap as a cantilever of what is left of it");
    Step::new("f_b where a half is bent hardest", says, source)
}

pub(super) fn count(n: usize) -> f64 {
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
        thin.map_or(f64::NAN, |thin| thin.moment((&scarf, &passed), Length::inches(turns)).to_pound_inches())
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

    /// 8 by 10 in, 40 in of lap, 1,000 lb: 20,000 lb·in on 4·100/6 = 66.7 in³ are 300 psi; 1.5·1000/40 = 37.5 psi.
    #[test]
    fn what_else_could_be_cut() {
        let section = Section::new(Length::inches(8.0), Length::inches(10.0));
        let step = other_joints(
            section,
            Length::inches(40.0),
            Force::pounds(1000.0),
            (Stress::psi(600.0), Stress::psi(150.0)),
        );
        let says = "M = P·l/2 = 20000 lb·in on S = 66.7 in³ is 50 % of F_b', f_v = 1.5·P/(b·d) 25 % of F_v'";
        assert!(step.says.contains(says), "{}", step.says);
    }
}
