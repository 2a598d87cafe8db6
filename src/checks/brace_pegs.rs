//! The pegs of a brace that is pulled, its joints as soft as the project says. Those that give way let the brace go slack, and
//! the frame is worked out with slack braces and with pushed ones alone as well; but a sheared peg is a broken joint.
use super::beam::{BeamChecks, named};
use super::check::Check;
use super::governing::hardest;
use super::head_pegs::PEG_GRAVITY;
use crate::analysis::{BeamCase, BraceModel, Purpose, Solved};
use crate::fastening::{GREEN_PEGS_MISSING, PegJoint, PegRow, peg_group, row_tear_out};
use crate::geometry::{Brace, BraceLine};
use crate::loads::Duration;
use crate::materials::species;
use crate::members::{Property, Verdict, adjusted};
use crate::project::{JoineryRules, Used};
use crate::units::{Angle, Force};
use crate::working::{Citation, Step, Worked};

/// C_D of a connection is at most this (NDS 11.3.2, from memory).
const MOST_DURATION: f64 = 1.6;

/// The brace whose pegs are pulled hardest, and each that has ends of its own, which may hold less.
#[must_use]
pub fn check_brace_pegs(with: &BeamChecks) -> Vec<Check> {
    let (by_rules, own): (Vec<usize>, Vec<usize>) =
        (0..with.shape.braces.len()).partition(|index| is_by_rules(with, *index));
    let own = own.into_iter().filter_map(|index| hardest_pulled(with, &[index]));
    hardest_pulled(with, &by_rules).into_iter().chain(own).collect()
}

fn is_by_rules(with: &BeamChecks, index: usize) -> bool {
    let rules = &with.project.joinery;
    with.shape.braces.get(index).is_none_or(|brace| brace.foot == *rules && brace.head == *rules)
}

/// Of braces with pegs alike the one that is pulled hardest.
fn hardest_pulled(with: &BeamChecks, of: &[usize]) -> Option<Check> {
    // A sunk foot draws on a peg only until the joint has given a little: that pull is not counted.
    let counts =
        |solved: &Solved, case: &BeamCase| !matches!(solved.model, BraceModel::Rigid) && case.purpose != Purpose::Sunk;
    let soft = with.strength().filter(move |(solved, case)| counts(solved, case));
    let pulls = soft.flat_map(|(solved, case)| {
        let each = solved.braces.iter().enumerate().filter(|(index, _)| of.contains(index));
        each.map(move |(index, pull)| (pull.to_pounds().max(0.0), case.duration, (index, *pull, solved, case)))
    });
    let (_, duration, (index, pull, solved, case)) = hardest(pulls)?;
    let brace = with.shape.braces.get(index)?;
    let pull = pull.max(Force::ZERO);
    let made = weaker(with, brace, duration).map(|mut held| {
        held.steps.extend(both_ways(with, held.value / duration.factor().min(MOST_DURATION)));
        Worked::new(Verdict::force(pull, held.value), held.steps)
    });
    let check = Check::new(
        brace.mark(),
        "is held by its pegs",
        "in post and beam",
        with.under(solved, case).asks("T", pull),
        made,
    );
    Some(check.at_x(BraceLine::of(&with.project.frame).head_x(brace, &with.shape.posts)))
}

/// What the end of the brace holds that holds less.
fn weaker(with: &BeamChecks, brace: &Brace, duration: Duration) -> Result<Worked<Force>, String> {
    let foot = held(with, &brace.foot, duration)?;
    if brace.foot == brace.head {
        return Ok(foot);
    }
    let head = held(with, &brace.head, duration)?;
    Ok(if head.value < foot.value { head } else { foot })
}

/// What one peg and the wood behind it hold, at the end where the pull stands more across the grain of the mortise.
fn held(with: &BeamChecks, rules: &JoineryRules, duration: Duration) -> Result<Worked<Force>, String> {
    let timbers = &with.project.frame.timbers;
    let wood = species(&with.project.frame.species).ok_or("the wood has no specific gravity")?;
    let line = BraceLine::of(&with.project.frame);
    // The thinner wall of the mortises in beam and post.
    let behind = timbers.beam.sawn.breadth.min(timbers.post.sawn.depth) - rules.tenon_offset - rules.tenon_thickness;
    let wall = rules.tenon_offset.min(behind);
    // At the beam the pull stands at φ to its grain, at the post at 90° − φ.
    let wall_angle = Angle::radians(line.sin.max(line.cos).atan2(line.sin.min(line.cos)));
    let straight = PegJoint::pulled(rules.peg, [PEG_GRAVITY, wood.specific_gravity], rules.tenon_thickness, wall);
    let joint = PegJoint { wall_angle, ..straight };
    let group = peg_group(&joint, 1, duration.factor()).map_err(|refused| refused.to_string())?;
    let member = with.woods.member(Used::Brace, duration)?;
    let shear = adjusted(&member, Property::Shear).value;
    // Along the brace's grain from peg to tenon's end, at the end where that is shorter.
    let end = (rules.brace_tenon - rules.peg_from_shoulder) / line.sin.max(line.cos);
    let row = PegRow { n: 1, thickness: rules.tenon_thickness, end, spacing: None };
    let tear = row_tear_out(shear, row).map_err(|refused| refused.to_string())?;
    let value = group.value.min(tear.value);
    let mut steps = group.steps;
    steps.extend(tear.steps);
    let says = format!("one peg at each end; the lesser of peg and relish: {:.0} lb", value.to_pounds());
    steps.push(Step::new("what the peg holds", says, Citation::from_memory("TFEC 1-10", "pegs in double shear")));
    let moisture = Citation::placeholder("TFEC 1-10", "moisture of pegged joints");
    steps.push(Step::new("moisture", GREEN_PEGS_MISSING, moisture));
    Ok(Worked::new(value, steps))
}

/// For whoever wants the braces to act both ways, with what a peg holds at a load duration of 1.0: half of the hardest push along the wall would then be a pull.
fn both_ways(with: &BeamChecks, lasting: Force) -> Option<Step> {
    let along = with.line.purpose(Purpose::Along);
    let pushes = along.flat_map(|(solved, case)| {
        solved.braces.iter().map(move |force| (-force.to_pounds(), case.duration, (*force, solved, case)))
    });
    let (_, duration, (force, solved, case)) = hardest(pushes.filter(|(push, ..)| *push > 0.0))?;
    let held = lasting * duration.factor().min(MOST_DURATION);
    let pull = -force / 2.0;
    let says = format!(
        "if the braces of a bay shared the push along the wall, {:.0}/2 = {:.0} lb would pull, {:.0} % of what a peg holds \
         under {}; pulled braces are not counted on",
        -force.to_pounds(),
        pull.to_pounds(),
        pull / held * 100.0,
        named(solved, case)
    );
    Some(Step::new("both ways", says, Citation::common_practice("two like braces share alike")))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use crate::checks::Check;
    use crate::evaluate;
    use crate::project::{Project, demo};
    use crate::units::Length;

    fn pegs(project: &Project) -> Check {
        let strength = crate::checks::strength(project, &evaluate(project).built.unwrap().shape);
        let checks = strength.checks.iter();
        checks
            .filter(|check| check.member.starts_with('K'))
            .find(|check| check.name == "is held by its pegs")
            .unwrap()
            .clone()
    }

    /// The barn's braces at 45°: hemlock of 0.41 under a 1 in oak peg of 0.67, tenon 2 in, C_D 1.6 under wind. Shear of the peg:
    /// 4850·0.67·0.41^0.75 = 1664 psi, π·1²·1664/7 = 747 lb; 1·2·F_e∥/(4·1.125) and the walls carry more. The relish is what is left of the tenon.
    #[test]
    fn a_peg_by_hand() {
        let found = pegs(&demo::wool_barn());
        let step = |gives: &str| found.steps().iter().find(|step| step.gives == gives).unwrap().says.clone();
        assert!(
            step("Z of mode V: the peg shears off").ends_with("747 lb"),
            "{}",
            step("Z of mode V: the peg shears off")
        );
        assert!(found.steps().iter().any(|step| step.gives == "both ways"));
        assert!(found.ratio().is_some());
    }

    /// Without relish nothing holds.
    #[test]
    fn a_peg_at_the_tenons_end_holds_nothing() {
        let mut near = demo::wool_barn();
        let whole = pegs(&near).ratio().unwrap();
        near.joinery.peg_from_shoulder = near.joinery.brace_tenon - Length::inches(0.75);
        let found = pegs(&near);
        assert!(found.ratio().is_none_or(|ratio| ratio >= whole), "{found:?}");
    }
}
