//! What a scarf passes along the beam: a pull, which its fasteners carry sideways, and a push, which its abutments carry.
//!
//! Braces, a post that sinks and a push along the wall put both into the beam. Pegs square to the lap, wedges and the friction
//! of the faces get no credit.
use super::beam::BeamChecks;
use super::beam_pull::LEAST;
use super::brace_pegs::MOST_DURATION;
use super::check::Check;
use super::governing::{hardest, most};
use super::scarf_halves::{count, held_at_root};
use crate::analysis::{BeamCase, BeamLine, Solved};
use crate::geometry::{ScarfReport, lap_height};
use crate::loads::Duration;
use crate::members::{Bracing, NetSection, Property, Verdict, adjusted, bending_strength, check_end_grain, force_text};
use crate::project::Used;
use crate::units::{Area, Force, Length, Moment, Stress, Volume};
use crate::unmade::{Input, Unmade};
use crate::working::{Citation, Step, Worked};

/// Name of the check of a scarf that is pulled.
pub const PULLED_APART: &str = "is pulled apart";

/// How a scarf lies in the line, for what passes along it.
pub(super) struct Along<'a> {
    line: &'a BeamLine,
    /// The stretch in which the upper half leaves its piece: nothing but the lap joins it to the rest there.
    root: Option<usize>,
    /// `F_b'/F_t'`, in which C_D falls out.
    by_tension: f64,
    depth: Length,
}

impl<'a> Along<'a> {
    pub fn new(with: &BeamChecks<'a>, scarf: &ScarfReport) -> Self {
        let root = scarf.number.checked_sub(1).and_then(|index| with.line.model.laps.get(index));
        let ratio = |wood| {
            let bending = bending_strength(&wood, Bracing::Held).ok()?.value;
            Some(bending / adjusted(&wood, Property::Tension).value)
        };
        Self {
            line: with.line,
            root: root.map(|(stretch, ..)| *stretch),
            // Without values the check says what is missing.
            by_tension: with.woods.member(Used::Beam, Duration::TenYears).ok().and_then(ratio).unwrap_or(1.0),
            depth: with.project.frame.timbers.beam.sawn.depth,
        }
    }

    /// Least and largest of what the lap passes.
    fn through(&self, solved: &Solved, case: &BeamCase) -> [Force; 2] {
        self.root.map_or([Force::ZERO; 2], |stretch| solved.along(stretch, case))
    }

    /// What of its fasteners' sideways load the pull takes.
    pub fn share(&self, with: &BeamChecks, solved: &Solved, case: &BeamCase) -> f64 {
        let [_, pull] = self.through(solved, case);
        let is_tied = with.project.fixings.scarf.count > 0 && pull > LEAST;
        if is_tied { pull / held_sideways(with, case.duration) } else { 0.0 }
    }

    /// The pull through the lap; nothing where it is pushed.
    pub fn pull(&self, solved: &Solved, case: &BeamCase) -> Force {
        self.through(solved, case)[1].max(Force::ZERO)
    }

    /// The stretch of the beam at a place.
    pub fn stretch_at(&self, x: Length) -> usize {
        let stretches = &self.line.model.beam;
        stretches.partition_point(|stretch| stretch.to < x).min(stretches.len().saturating_sub(1))
    }

    /// What a pull through the lap, and in the half itself, does to a section of it.
    pub fn drawn(&self, (through, own): (Force, Force), cut: &Cut) -> Drawn {
        let moment = through * (cut.height / 2.0) + (own - through) * ((self.depth - cut.height) / 2.0);
        Drawn { through, own, moment, stress: moment / cut.modulus + own / cut.area * self.by_tension }
    }
}

/// What a section of a half is worth.
pub(super) struct Cut {
    height: Length,
    area: Area,
    pub modulus: Volume,
}

impl Cut {
    pub fn of(net: &NetSection) -> Self {
        Self { height: net.section().depth, area: net.area(), modulus: net.least_modulus() }
    }
}

/// What a pull does to a section of a half.
pub(super) struct Drawn {
    /// Through the fasteners, on the lap's face.
    through: Force,
    /// In the half itself.
    own: Force,
    /// For want of an axis of its own.
    moment: Moment,
    /// As bending that asks as much (NDS Eq. 3.9-1).
    pub stress: Stress,
}

impl Drawn {
    /// In words; nothing where nothing pulls.
    pub fn step(&self) -> Option<Step> {
        let says = format!(
            "T = {:.0} lb in the half, {:.0} lb of it by the fasteners on the lap's face, the rest on the beam's axis: M = {:.0} \
             lb·in beside its own axis; M/S + f_t·F_b'/F_t' = {:.0} psi more, as f_t/F_t' + f_b/F_b' has it",
            self.own.to_pounds(),
            self.through.to_pounds(),
            self.moment.to_pound_inches(),
            self.stress.to_psi()
        );
        (self.own > LEAST).then(|| Step::new("pull in the half", says, Citation::from_memory("NDS 2018", "3.9-1")))
    }
}

/// What the fasteners of both roots hold sideways.
fn held_sideways(with: &BeamChecks, duration: Duration) -> Force {
    let tie = &with.project.fixings.scarf;
    tie.sideways * (2.0 * count(tie.count) * duration.factor().min(MOST_DURATION))
}

/// The pull along the beam on the fasteners, with what lifts the lap at once; nothing where no case pulls it.
pub(super) fn pulled_apart(with: &BeamChecks, (scarf, along): (&ScarfReport, &Along), mark: &str) -> Option<Check> {
    let is_tied = with.project.fixings.scarf.count > 0;
    let all = with.strength().filter_map(|(solved, case)| {
        let [_, pull] = along.through(solved, case);
        let passed = solved.laps.get(scarf.number.checked_sub(1)?)?;
        let lift = (-passed.force()).max(Force::ZERO);
        let weight = if is_tied {
            let lifted = if lift > LEAST { lift / held_at_root(with, case.duration) } else { 0.0 };
            along.share(with, solved, case) + lifted
        } else {
            pull.to_pounds() / case.duration.factor()
        };
        (pull > LEAST).then_some((weight, (pull, lift, solved, case)))
    });
    let (_, (pull, lift, solved, case)) = most(all, |(weight, _)| *weight)?;
    let made = held_along(with, along, (pull, lift), (solved, case));
    Some(Check::new(mark, PULLED_APART, "", with.under(solved, case).asks("T", pull), made))
}

fn held_along(
    with: &BeamChecks,
    along: &Along,
    (pull, lift): (Force, Force),
    (solved, case): (&Solved, &BeamCase),
) -> Result<Worked<Verdict>, Unmade> {
    let tie = &with.project.fixings.scarf;
    let missing = |what: &str| Unmade::missing(Input::Scarf, format!("it is pulled along the beam, and {what}"));
    if tie.count == 0 {
        return Err(missing("the screws or bolts that must hold it are missing: pegs and wedges are not counted"));
    }
    if tie.sideways <= Force::ZERO {
        return Err(missing("what one of its fasteners holds sideways is missing"));
    }
    let (sideways, straight) = (held_sideways(with, case.duration), held_at_root(with, case.duration));
    let says = format!(
        "Z = 2 roots · {} · {:.0} lb · C_D {:.2} = {:.0} lb ({})",
        tie.count,
        tie.sideways.to_pounds(),
        case.duration.factor().min(MOST_DURATION),
        sideways.to_pounds(),
        tie.source
    );
    let source = Citation::common_practice("fasteners carry a pull sideways; pegs and wedges are not counted");
    let mut steps = vec![pull_step(along, solved, case), Step::new("what the fasteners hold sideways", says, source)];
    if lift <= LEAST {
        return Ok(Worked::new(Verdict::force(pull, sideways), steps));
    }
    let sum = pull / sideways + lift / straight;
    let says = format!(
        "T/Z + P/W = {:.0}/{:.0} + {:.0}/{:.0} = {sum:.2}, the lap lifted by P at once",
        pull.to_pounds(),
        sideways.to_pounds(),
        lift.to_pounds(),
        straight.to_pounds()
    );
    let source = Citation::from_memory("NDS 2015", "12.4-1, whose shares come to no more than this sum");
    steps.push(Step::new("aside and out at once", says, source));
    Ok(Worked::new(Verdict::sum_of_shares(sum), steps))
}

fn pull_step(along: &Along, solved: &Solved, case: &BeamCase) -> Step {
    let [least, largest] = along.through(solved, case);
    let says = if case.push == Force::ZERO {
        format!("T = {}, the beam's own where the upper half leaves its piece", force_text(largest))
    } else {
        format!(
            "the push along the wall is {}: let in at one end of the beam or the other it leaves {} or {} in the lap (plus pulls)",
            force_text(case.push.abs()),
            force_text(least),
            force_text(largest)
        )
    };
    Step::new("T along the beam", says, Citation::from_memory("statics", "the upper half cut free"))
}

/// The push along the beam on one abutment; nothing where no case pushes.
pub(super) fn abuts(with: &BeamChecks, (scarf, along): (&ScarfReport, &Along), mark: &str) -> Option<Check> {
    let all = with.strength().filter_map(|(solved, case)| {
        let [least, _] = along.through(solved, case);
        (-least > LEAST).then(|| (-least.to_pounds(), case.duration, (-least, solved, case)))
    });
    let (_, duration, (push, solved, case)) = hardest(all)?;
    let (frame, beam) = (&with.project.frame, with.project.frame.timbers.beam.sawn);
    let height = beam.depth - lap_height(frame, &with.project.joinery, scarf.kind, Length::ZERO);
    let says = format!(
        "A = b·a = {:.2}·{:.2} in: of the two abutments one, since both seldom meet",
        beam.breadth.to_inches(),
        height.to_inches()
    );
    let made = with.woods.member(Used::Beam, duration).and_then(|wood| {
        let mut made = check_end_grain(&wood, push, beam.breadth * height, false).map_err(|refused| refused.0)?;
        let steps = [
            pull_step(along, solved, case),
            Step::new("abutment", says, Citation::common_practice("one of two shoulders meets first")),
        ];
        made.steps.splice(0..0, steps);
        Ok(made)
    });
    Some(Check::new(mark, "bears on its abutments", "", with.under(solved, case).asks("N", push), made))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::Outcome;
    use crate::evaluate;
    use crate::members::Amount;
    use crate::project::{Project, demo};

    fn check(project: &Project, name: &str) -> Check {
        let strength = evaluate(project).strength.unwrap();
        strength.checks.iter().find(|check| check.member == "scarf 2" && check.name == name).unwrap().clone()
    }

    /// The push of a wind let in at either end of the beam pulls no more than all of it; the four fasteners hold 4·400·1.6 lb aside
    /// and two of them 2·800·1.6 lb out.
    #[test]
    fn a_pull_is_carried_sideways() {
        let barn = demo::wool_barn();
        let strength = evaluate(&barn).strength.unwrap();
        let line = strength.line.as_ref().unwrap();
        let root = line.model.laps[1].0;
        let shares = line.strength().filter_map(|(solved, case)| {
            let [least, most] = solved.along(root, case);
            assert!((most - least - case.push.abs()).abs() < Force::pounds(1e-9));
            let long = case.duration.factor().min(1.6);
            let lift = (-solved.laps[1].force()).max(Force::ZERO).to_pounds() / (2.0 * 800.0 * long);
            (most > LEAST).then_some(most.to_pounds() / (4.0 * 400.0 * long) + lift)
        });
        let worst = shares.fold(0.0, f64::max);
        assert!(worst > 0.1, "{worst}");
        assert!((check(&barn, PULLED_APART).ratio().unwrap() - worst).abs() < 1e-9);
    }

    /// Nothing holds an untied scarf together, whatever its kind.
    #[test]
    fn an_untied_scarf_waits_for_its_fasteners() {
        let mut barn = demo::wool_barn();
        barn.fixings.scarf.count = 0;
        let Outcome::NotJudged(not) = check(&barn, PULLED_APART).outcome else { unreachable!() };
        assert!(not.why.contains("it is pulled along the beam, and") && not.why.contains("are missing"), "{}", not.why);
        (barn.fixings.scarf.count, barn.fixings.scarf.sideways) = (2, Force::ZERO);
        let Outcome::NotJudged(not) = check(&barn, PULLED_APART).outcome else { unreachable!() };
        assert!(not.why.ends_with("what one of its fasteners holds sideways is missing"), "{}", not.why);
        // What they hold pulled is not known: aside they are judged all the same, and fail where the lap is lifted at once.
        let tie = &mut barn.fixings.scarf;
        (tie.sideways, tie.pull) = (Force::pounds(400.0), Force::ZERO);
        assert!(!check(&barn, PULLED_APART).passes());
    }

    /// The stop-splayed abutments of a 10 in beam are 2½ in high: 8 by 2½ in are pressed.
    #[test]
    fn a_push_bears_on_one_abutment() {
        let barn = demo::wool_barn();
        let strength = evaluate(&barn).strength.unwrap();
        let line = strength.line.as_ref().unwrap();
        let beam = barn.frame.timbers.beam.sawn;
        let area = beam.breadth.to_inches() * beam.depth.to_inches() / 4.0;
        let root = line.model.laps[1].0;
        let stresses = line.strength().map(|(solved, case)| {
            let [least, _] = solved.along(root, case);
            (-least.to_pounds() / case.duration.factor(), -least.to_pounds() / area)
        });
        let (_, worst) = most(stresses, |(weight, _)| *weight).unwrap();
        let Outcome::Judged(worked) = check(&barn, "bears on its abutments").outcome else { unreachable!() };
        let Amount::Stress(demand) = worked.value.demand else { unreachable!("{worked:?}") };
        assert!((demand.to_psi() - worst).abs() < 1e-6, "{demand:?} {worst}");
    }

    /// 1,000 lb pulled through the fasteners on a half 5 in high and 8 in broad: 1000·2.5 lb·in on 33.3 in³ and 25 psi of pull.
    #[test]
    fn what_a_pull_does_to_a_half() {
        let inches = Length::inches;
        let barn = demo::wool_barn();
        let strength = evaluate(&barn).strength.unwrap();
        let line = strength.line.as_ref().unwrap();
        let along = Along { line, root: Some(0), by_tension: 2.0, depth: inches(10.0) };
        let (solved, case) = line.strength().next().unwrap();
        let (mut solved, mut case) = (solved.clone(), case.clone());
        (solved.beam[0].axial, case.push) = (Force::pounds(1000.0), Force::ZERO);
        let pull = along.pull(&solved, &case);
        assert_eq!(pull, Force::pounds(1000.0));
        let cut = Cut::of(&NetSection::whole(crate::materials::Section::new(inches(8.0), inches(5.0))).unwrap());
        let found = along.drawn((pull, pull), &cut);
        assert!((found.stress.to_psi() - (2500.0 / (8.0 * 25.0 / 6.0) + 2.0 * 25.0)).abs() < 1e-9);
        // 1,500 lb that a brace brings to the lower half alone: on the beam's axis, 2½ in beside its own.
        assert_eq!(along.stretch_at(line.model.beam[0].from + inches(0.1)), 0);
        let found = along.drawn((Force::ZERO, Force::pounds(1500.0)), &cut);
        assert!((found.stress.to_psi() - (1500.0 * 2.5 / (8.0 * 25.0 / 6.0) + 2.0 * 37.5)).abs() < 1e-9);
    }
}
