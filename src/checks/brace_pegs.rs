//! The pegs of a brace that is pulled, its joints as soft as the project says. Those that give way let the brace go slack, and
//! the frame is worked out with slack braces and with pushed ones alone as well; but a sheared peg is a broken joint.
//!
//! One rule for strength and sheets ([`brace_peg_holds`]): a peg with all the wood it needs is counted whole, one with less
//! locates the joint. Nothing is then said to hold the brace, and nothing in the frame counts on it.
use super::beam::{BeamChecks, named};
use super::check::Check;
use super::governing::hardest;
use super::head_pegs::PEG_GRAVITY;
use crate::analysis::{BeamCase, BraceModel, Purpose, Solved};
use crate::fastening::{
    GREEN_PEGS_MISSING, PegJoint, PegRow, Refused, SPLITTING_NOT_COVERED, peg_group, peg_needs, peg_room, row_tear_out,
};
use crate::geometry::{Brace, BraceLine};
use crate::joinery::{brace_peg_holds, brace_peg_room, brace_tenon_thickness};
use crate::loads::Duration;
use crate::materials::species;
use crate::members::{Property, Verdict, adjusted};
use crate::project::{JoineryRules, Used};
use crate::units::{Angle, Force};
use crate::working::{Citation, Step, Worked};

/// Name of the check of a peg that has its wood.
const HELD: &str = "is held by its pegs";
/// Name of what is said of one that has not.
const SLACK: &str = "goes slack where it is pulled";
/// C_D of a connection is at most this (NDS 11.3.2, from memory).
pub(super) const MOST_DURATION: f64 = 1.6;

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
    let (name, made) = if [true, false].iter().all(|at_post| brace_peg_holds(with.project, brace, *at_post)) {
        let made = weaker(with, brace, duration).map(|mut held| {
            held.steps.extend(both_ways(with, held.value / duration.factor().min(MOST_DURATION)));
            Worked::new(Verdict::force(pull, held.value), held.steps)
        });
        (HELD, made)
    } else {
        (SLACK, lets_go(with, brace, pull))
    };
    let check = Check::new(brace.mark(), name, "in post and beam", with.under(solved, case).asks("T", pull), made);
    Some(check.at_x(BraceLine::of(&with.project.frame).head_x(brace, &with.shape.posts)))
}

/// The wood around the peg that has least of it, and what follows: the pull is not counted on, so nothing is asked of the peg.
fn lets_go(with: &BeamChecks, brace: &Brace, pull: Force) -> Result<Worked<Verdict>, String> {
    let text = |refused: Refused| refused.to_string();
    let needs = peg_needs(&with.project.frame.species).map_err(text)?;
    let of = |at_post: bool, rules: &JoineryRules| peg_room(rules.peg, brace_peg_room(brace, at_post), needs);
    let (foot, head) = (of(true, &brace.foot).map_err(text)?, of(false, &brace.head).map_err(text)?);
    let mut steps = if head.value < foot.value { head.steps } else { foot.steps };
    let says = format!(
        "less wood around a peg than it needs: it locates the joint, and the wood may split where it is pulled. The {:.0} lb that soft \
         joints would hand it are not counted on: the frame is judged with slack braces and with pushed ones alone as well",
        pull.to_pounds()
    );
    steps.push(Step::new(
        "what the peg holds",
        says,
        Citation::common_practice("braces are counted on in compression"),
    ));
    steps.push(Step::new("splitting", SPLITTING_NOT_COVERED, Citation::from_memory("NDS 2018", "3.8.2")));
    Ok(Worked::new(Verdict::force(Force::ZERO, Force::ZERO), steps))
}

/// What the end of the brace holds that holds less; of ends with the same rules the one with less relish.
fn weaker(with: &BeamChecks, brace: &Brace, duration: Duration) -> Result<Worked<Force>, String> {
    let end = |at_post| brace_peg_room(brace, at_post).end;
    if brace.foot == brace.head {
        return held(with, brace, end(true) < end(false), duration);
    }
    let (foot, head) = (held(with, brace, true, duration)?, held(with, brace, false, duration)?);
    Ok(if head.value < foot.value { head } else { foot })
}

/// What one peg and the wood behind it hold, at the end where the pull stands more across the grain of the mortise.
fn held(with: &BeamChecks, brace: &Brace, at_post: bool, duration: Duration) -> Result<Worked<Force>, String> {
    let rules = if at_post { &brace.foot } else { &brace.head };
    let tenon = brace_tenon_thickness(with.project, rules);
    let timbers = &with.project.frame.timbers;
    let wood = species(&with.project.frame.species).ok_or("the wood has no specific gravity")?;
    let line = BraceLine::of(&with.project.frame);
    // The thinner wall of the mortises in beam and post.
    let behind = timbers.beam.sawn.breadth.min(timbers.post.sawn.depth) - rules.tenon_offset - tenon;
    let wall = rules.tenon_offset.min(behind);
    // At the beam the pull stands at φ to its grain, at the post at 90° − φ.
    let wall_angle = Angle::radians(line.sin.max(line.cos).atan2(line.sin.min(line.cos)));
    let straight = PegJoint::pulled(rules.peg, [PEG_GRAVITY, wood.specific_gravity], tenon, wall);
    let joint = PegJoint { wall_angle, ..straight };
    let group = peg_group(&joint, 1, duration.factor()).map_err(|refused| refused.to_string())?;
    let member = with.woods.member(Used::Brace, duration)?;
    let shear = adjusted(&member, Property::Shear).value;
    let row = PegRow { n: 1, thickness: tenon, end: brace_peg_room(brace, at_post).end, spacing: None };
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
    use super::*;
    use crate::evaluate;
    use crate::project::{Project, demo};
    use crate::units::Length;

    fn pegs(project: &Project) -> Check {
        let strength = crate::checks::strength(project, &evaluate(project).built.unwrap().shape);
        let checks = strength.checks.iter();
        checks
            .filter(|check| [HELD, SLACK].contains(&check.name.as_str()))
            .max_by_key(|check| check.name == HELD)
            .unwrap()
            .clone()
    }

    /// The barn in Douglas fir, which asks for 2D beyond a peg and 2½D to the edge: braces at 45° with tenons of 3 in and pegs of ¾ in,
    /// 1⅞ in from the shoulder.
    fn fir(from_shoulder: f64) -> Project {
        let mut barn = demo::wool_barn();
        "douglas_fir".clone_into(&mut barn.frame.species);
        let inch = Length::inches;
        (barn.frame.brace_along, barn.frame.brace_down) = (inch(36.0), inch(36.0));
        let rules = &mut barn.joinery;
        (rules.brace_tenon, rules.peg, rules.peg_from_shoulder) = (inch(3.0), inch(0.75), inch(from_shoulder));
        (rules.tenon_thickness, rules.tenon_offset) = (inch(2.0), inch(2.0));
        (rules.drawbore, rules.housing) = (inch(0.125), inch(0.5));
        barn
    }

    /// Oak of 0.67 in fir of 0.50: 4850·0.67·0.5^0.75 = 1932 psi, π·0.75²·1932/7 = 488 lb. Relish along the grain (3 − 1⅞)·√2 + ⅛ =
    /// 1.72 in: F_v′·2·1.72.
    #[test]
    fn a_peg_by_hand() {
        let found = pegs(&fir(1.875));
        let step = |gives: &str| found.steps().iter().find(|step| step.gives == gives).unwrap().says.clone();
        assert_eq!(found.name, HELD);
        let shears = step("Z of mode V: the peg shears off");
        assert!(shears.ends_with("488 lb"), "{shears}");
        let tears = step("Z′_RT, row tear-out");
        assert!(tears.contains("·2.00·1.72 = "), "{tears}");
        assert!(found.steps().iter().any(|step| step.gives == "both ways"));
        assert!(found.ratio().is_some_and(|ratio| ratio > 0.0));
    }

    /// An eighth of an inch nearer the shoulder the edge is 1¾ of 1⅞ in: the peg locates, on the brace's sheet too, and nothing is
    /// asked of it.
    #[test]
    fn a_peg_with_too_little_wood_lets_go() {
        let (holds, locates) = (fir(1.875), fir(1.75));
        let found = pegs(&locates);
        assert_eq!((found.name.as_str(), found.ratio()), (SLACK, Some(0.0)));
        let room = found.steps().iter().find(|step| step.gives == "peg to loaded edge").unwrap();
        assert!(room.says.starts_with("1.75 in of 2.50D = 2.50·0.750 = 1.88 in"), "{room:?}");
        let noted = |project: &Project| {
            let built = evaluate(project).built.unwrap();
            let mut marks =
                built.sticks.iter().filter(|stick| stick.mark.starts_with('K')).flat_map(|stick| &stick.marks);
            marks.any(|mark| mark.note.contains("locating, no tension"))
        };
        assert!(noted(&locates) && !noted(&holds));
    }

    /// What is said of it holds: every case of strength is worked out with slack braces too, and pushes with pushed ones alone.
    #[test]
    fn nothing_counts_on_a_peg_that_lets_go() {
        let slack = fir(1.75);
        let strength = crate::checks::strength(&slack, &evaluate(&slack).built.unwrap().shape);
        let line = strength.line.unwrap();
        let strong = |model: fn(&BraceModel) -> bool| line.solved.iter().any(|solved| model(&solved.model));
        assert!(strong(|model| *model == BraceModel::Slack) && strong(|model| *model == BraceModel::PushOnly));
        for case in line.strength().map(|(_, case)| case).filter(|case| case.purpose == Purpose::Strength) {
            let of =
                |(solved, other): (&Solved, &BeamCase)| other.name == case.name && solved.model == BraceModel::Slack;
            assert!(line.strength().any(of), "{}", case.name);
        }
    }
}
