//! What the holes bored for ties leave of the wood: of a post's foot, of a scarf's root, of a rafter at its seats.
use super::check::{Check, Way};
use super::governing::most;
use super::wood::Woods;
use crate::analysis::{Demand, FootForces, PostDemands};
use crate::fastening::{AlikeRows, PegRow, Refused, torn_out};
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
    let pressed = demands.down.iter().filter(|one| one.value > Force::ZERO);
    let down = most(pressed, |one| one.value.to_pounds() / one.duration.factor())
        .map(|one| Check::new(&member, "is bored at its foot", "", one, pushed(project, one)));
    let asks = |one: &&Demand<FootForces>| one.value.up.to_pounds() / one.duration.factor();
    let torn = |one: &Demand<FootForces>| Check::new(&member, TEARS, "", one, torn(project, one));
    let (up, lift) = (most(demands.pulled(), asks), most(demands.lifted(), asks));
    let up = up
        .map(|one| if lift.is_some_and(|lift| std::ptr::eq(one, lift)) { torn(one).going(Way::Up) } else { torn(one) });
    let lift = lift.filter(|_| up.as_ref().is_some_and(|up| up.way.is_none())).map(|one| torn(one).only(Way::Up));
    [down, up, lift].into_iter().flatten().map(|check| check.at_x(x)).collect()
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
fn torn(project: &Project, foot: &Demand<FootForces>) -> Result<Worked<Verdict>, String> {
    let capacity = tear_out(project, &Woods::new(project).member(Used::Post, foot.duration)?)?;
    Ok(Worked::new(Verdict::force(foot.value.up, capacity.value), capacity.steps))
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
    let rows = AlikeRows { row, n: 1, width, holes: bores.diameter, between: None };
    let torn = torn_out(shear.value, tension.value, rows).map_err(text)?;
    let capacity = torn.least();
    let steps = [tension.steps, torn.net.steps, shear.steps, torn.row.steps].concat();
    Ok(Worked::new(capacity, steps))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::checks::asked::given;
    use crate::evaluate;
    use crate::loads::Duration;
    use crate::project::{Bores, Tie, demo};

    fn barn() -> Project {
        demo::wool_barn()
    }

    fn demands(down: f64, up: f64) -> PostDemands {
        let combination = "case";
        let pushed = given(Force::pounds(down), combination, Duration::TwoMonths);
        let value = FootForces { up: Force::pounds(up), level: Force::ZERO };
        let pulled = given(value, combination, Duration::TenMinutes);
        PostDemands { post: 2, down: vec![pushed], feet: vec![pulled] }
    }

    fn strength(duration: Duration, property: Property) -> f64 {
        adjusted(&Woods::new(&barn()).member(Used::Post, duration).unwrap(), property).value.to_psi()
    }

    fn ratios(project: &Project, (down, up): (f64, f64)) -> Vec<f64> {
        let all = bored_foot(project, &demands(down, up), Length::ZERO);
        all.iter().map(|check| check.ratio().unwrap()).collect()
    }

    fn check(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9 * expected.max(1.0), "{found} is not {expected}");
    }

    /// By hand: 8 in square less a hole of 9/16 in is 7.4375·8 = 59.5 in². Two bolts 3½ in up and 3 in apart shear out
    /// 2·F_v′·8·3 lb, less than F_t′·59.5 lb.
    #[test]
    fn a_foot_by_hand() {
        let found = ratios(&barn(), (20_000.0, 2_000.0));
        check(found[0], 20_000.0 / 59.5 / strength(Duration::TwoMonths, Property::Compression));
        let torn = 2.0 * strength(Duration::TenMinutes, Property::Shear) * 8.0 * 3.0;
        assert!(torn < strength(Duration::TenMinutes, Property::Tension) * 59.5);
        check(found[1], 2_000.0 / torn);
        // Lower, the wood under them is what tears; a single one has no next.
        let mut low = barn();
        low.fixings.post_base.bores =
            Some(Bores { first: Length::inches(2.0), ..low.fixings.post_base.bores.unwrap() });
        check(ratios(&low, (1.0, 2_000.0))[1], 2_000.0 / (torn * 2.0 / 3.0));
        low.fixings.post_base.count = 1;
        check(ratios(&low, (1.0, 2_000.0))[1], 2_000.0 / (torn / 3.0));
        // Nothing pulls, nothing is bored.
        assert_eq!(ratios(&low, (1.0, 0.0)).len(), 1);
        low.fixings.post_base.bores = None;
        assert_eq!(ratios(&low, (1.0, 2_000.0)).len(), 0);
    }

    /// The wood's own strength tells the path of the uplift where it is the weaker: bolts that hold everything in a foot that tears.
    #[test]
    fn a_foot_that_tears_is_in_the_path() {
        let mut barn = barn();
        barn.fixings.post_base.pull = Force::pounds(90_000.0);
        barn.fixings.post_base.sideways = Force::pounds(90_000.0);
        let path = |barn: &Project| {
            let strength = evaluate(barn).strength.unwrap();
            let link = strength.paths[0].links.iter().find(|link| link.name == "post base").unwrap().clone();
            link.ratio.unwrap()
        };
        let good = path(&barn);
        barn.fixings.post_base.bores =
            Some(Bores { first: Length::inches(0.6), ..barn.fixings.post_base.bores.unwrap() });
        assert!(path(&barn) > good * 2.0, "{} and {good}", path(&barn));
    }

    /// A third of a breadth bored away leaves two thirds of what it carried: each in its own words.
    #[test]
    fn a_narrower_stick_carries_in_proportion() {
        let made = |value| Worked::new(value, Vec::new());
        let (breadth, hole) = (Length::inches(3.0), Length::inches(1.0));
        let stress = less_hole(made(Verdict::stress(Stress::psi(400.0), Stress::psi(1000.0))), breadth, hole);
        assert_eq!(stress.value, Verdict::stress(Stress::psi(600.0), Stress::psi(1000.0)));
        let force = less_hole(made(Verdict::force(Force::pounds(400.0), Force::pounds(900.0))), breadth, hole).value;
        check(force.ratio, 400.0 / 600.0);
        assert_eq!(force.demand, Amount::Force(Force::pounds(400.0)));
        let whole = made(Verdict::sum_of_shares(0.5));
        assert_eq!(less_hole(whole.clone(), breadth, Length::ZERO), whole);
    }

    /// Rafters 4 in wide with ½ in holes over both seats, and a scarf 8 in wide with 1 in holes: shares of 3½/4 and 7/8.
    #[test]
    fn seats_and_roots_count_their_holes() {
        let worst = |barn: &Project, name: &str, at: &str| {
            let strength = evaluate(barn).strength.unwrap();
            let mut all = strength.checks.iter().filter(|check| check.name == name && check.at.starts_with(at));
            all.next().and_then(|check| check.ratio()).unwrap()
        };
        let plain = barn();
        let mut bored = barn();
        let row = |diameter: f64| {
            let [first, apart] = [4.0, 3.0].map(Length::inches);
            Some(Bores { diameter: Length::inches(diameter), first, apart, way: BoreWay::AlongBeam })
        };
        let of = |tie: &mut Tie, diameter: f64| tie.bores = row(diameter);
        of(&mut bored.fixings.rafter_head, 0.5);
        of(&mut bored.fixings.rafter_seat, 0.5);
        of(&mut bored.fixings.scarf, 1.0);
        for (name, at, share) in [
            ("shears", "at the bird's mouth on the ledger", 3.5 / 4.0),
            ("shears", "at the tail, on what the notch leaves", 3.5 / 4.0),
            ("bends", "over the beam, on what the notch leaves", 3.5 / 4.0),
        ] {
            check(worst(&bored, name, at), worst(&plain, name, at) / share);
        }
        let root = "is cut thin";
        let (with, without) = (worst(&bored, root, ""), worst(&plain, root, ""));
        // Beside a brace's pocket of 4 in there are 3 in where there were 4.
        assert!(with >= without / (7.0 / 8.0) - 1e-9 && with <= without / (3.0 / 4.0) + 1e-9, "{with} {without}");
    }
}
