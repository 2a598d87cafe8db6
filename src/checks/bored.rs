//! What the holes bored for ties leave of the wood: of a post's foot, of a scarf's root, of a rafter at its seats.
use super::check::Check;
use super::purlin::most;
use super::wood::Woods;
use crate::analysis::{Demand, PostDemands};
use crate::fastening::{PegRow, Refused, net_tension, row_tear_out};
use crate::members::{Amount, Member, Property, Verdict, adjusted};
use crate::project::{BoreWay, Project, Used};
use crate::units::{Force, Length, Stress};
use crate::working::{Citation, Step, Worked};

/// Name of the check against uplift: the path of the uplift finds it by this.
pub(super) const TEARS: &str = "is torn at the holes of its foot";

/// What is left of a breadth beside a hole as deep as the stick, with its step; nothing where none is bored. The net section is
/// the gross one less all that is bored (NDS 2015 3.1.2, from memory), a lead hole with its screw in it too.
pub(super) fn beside_hole(breadth: Length, hole: Length) -> Option<(Length, Step)> {
    (hole > Length::ZERO).then(|| {
        let left = (breadth - hole).max(Length::ZERO);
        let says = format!(
            "b − D = {:.2} − {:.3} = {:.3} in beside the hole bored for its tie",
            breadth.to_inches(),
            hole.to_inches(),
            left.to_inches()
        );
        (left, Step::new("net breadth", says, Citation::from_memory("NDS 2015", "3.1.2")))
    })
}

/// A verdict on a stick of that breadth, for what the hole leaves of it: it carries in proportion to its breadth.
pub(super) fn less_hole(made: Worked<Verdict>, breadth: Length, hole: Length) -> Worked<Verdict> {
    let Some((left, step)) = beside_hole(breadth, hole) else { return made };
    let share = left / breadth;
    let value = match (made.value.demand, made.value.capacity) {
        (Amount::Stress(asked), Amount::Stress(allowed)) => Verdict::stress(asked * (1.0 / share), allowed),
        (Amount::Force(asked), Amount::Force(allowed)) => Verdict::force(asked, allowed * share),
        (demand, capacity) => Verdict { demand, capacity, ratio: made.value.ratio / share },
    };
    let mut steps = made.steps;
    steps.push(step);
    Worked::new(value, steps)
}

/// A post's foot at its holes: pushed on what they leave of its section, and pulled until it tears there. Nothing where none
/// is bored.
pub(super) fn bored_foot(project: &Project, demands: &PostDemands, x: Length) -> Vec<Check> {
    if project.fixings.post_base.bored() <= Length::ZERO {
        return Vec::new();
    }
    let member = format!("P{}", demands.post);
    let hardest = |all: &'_ [Demand<Force>]| {
        let pressed = all.iter().filter(|one| one.value > Force::ZERO).cloned();
        most(pressed, |one| one.value.to_pounds() / one.duration.factor())
    };
    let down = hardest(&demands.down)
        .map(|one| Check::new(&member, "is bored at its foot", "", one.combination.clone(), pushed(project, &one)));
    let up =
        hardest(&demands.up).map(|one| Check::new(&member, TEARS, "", one.combination.clone(), torn(project, &one)));
    [down, up].into_iter().flatten().map(|check| check.at_x(x)).collect()
}

/// Across the hole's face, and along the hole.
fn sides(project: &Project) -> (Length, Length) {
    let sawn = project.frame.timbers.post.sawn;
    match project.fixings.post_base.bores.map(|bores| bores.way) {
        Some(BoreWay::Outward) => (sawn.breadth, sawn.depth),
        _ => (sawn.depth, sawn.breadth),
    }
}

/// The foot is held there and cannot buckle: F_c* on the net section (NDS 2015 3.6.3).
fn pushed(project: &Project, down: &Demand<Force>) -> Result<Worked<Verdict>, String> {
    let post = Woods::new(project).member(Used::Post, down.duration)?;
    let strength = adjusted(&post, Property::Compression);
    let (width, through) = sides(project);
    let (left, step) = beside_hole(width, project.fixings.post_base.bored()).ok_or("nothing is bored")?;
    let net = left * through;
    let stress = Stress::try_psi(down.value.to_pounds() / net.to_square_inches());
    let stress = stress.ok_or("its holes leave nothing of the foot")?;
    let mut steps = strength.steps;
    steps.push(step);
    let says = format!(
        "f_c = P/A_net = {:.0}/{:.1} = {:.0} psi; F_c* = {:.0} psi",
        down.value.to_pounds(),
        net.to_square_inches(),
        stress.to_psi(),
        strength.value.to_psi()
    );
    steps.push(Step::new("f_c at the holes", says, Citation::from_memory("NDS 2015", "3.6.3")));
    Ok(Worked::new(Verdict::stress(stress, strength.value), steps))
}

/// Tension on what the holes leave, or the plugs under them sheared out, the lesser.
fn torn(project: &Project, up: &Demand<Force>) -> Result<Worked<Verdict>, String> {
    let capacity = tear_out(project, &Woods::new(project).member(Used::Post, up.duration)?)?;
    Ok(Worked::new(Verdict::force(up.value, capacity.value), capacity.steps))
}

fn tear_out(project: &Project, post: &Member) -> Result<Worked<Force>, String> {
    let text = |refused: Refused| refused.to_string();
    let tie = &project.fixings.post_base;
    let bores = tie.bores.ok_or("nothing is bored")?;
    let (width, through) = sides(project);
    let (tension, shear) = (adjusted(post, Property::Tension), adjusted(post, Property::Shear));
    let row = PegRow {
        n: u32::try_from(tie.count).unwrap_or(u32::MAX),
        thickness: through,
        end: bores.first,
        spacing: (tie.count > 1).then_some(bores.apart),
    };
    let net = net_tension(tension.value, width, bores.diameter, through).map_err(text)?;
    let torn = row_tear_out(shear.value, row).map_err(text)?;
    let steps = [tension.steps, net.steps, shear.steps, torn.steps].concat();
    Ok(Worked::new(net.value.min(torn.value), steps))
}
