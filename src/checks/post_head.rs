//! A post's head pushed across, out from the wall or toward it: half of the wind on the post, the rafters' seat off its middle,
//! a post out of plumb. The tenon's cheek takes it in the beam's mortise; from there rafters and ledger do.
//!
//! ```text
//!      |beam |      H = P·e/h + 0.005·P + w/2
//!   ---|-|t|-|---   e: rafter's seat off the post's middle; h: shoulder to foot
//!      | | | |<- H
//! ```
use super::beam::BeamChecks;
use super::check::Check;
use super::governing::{hardest, most};
use super::post::off_centre;
use crate::analysis::lean_to;
use crate::geometry::PostShape;
use crate::loads::wind::{Projected, wind_along_wall};
use crate::loads::{ALLOWABLE_WIND, Duration};
use crate::members::{Property, Seat, Verdict, adjusted, check_bearing_across};
use crate::project::Used;
use crate::units::{AreaLoad, Fixed, Force, Length};
use crate::working::{Citation, Step, Worked};

/// Share of a post's load that a post out of plumb asks (as along the wall).
const OUT_OF_PLUMB: f64 = 0.005;

/// The head that is pushed hardest, and each that is not by the rules: its tenon sheared, its cheek pressed.
#[must_use]
pub fn check_post_heads(with: &BeamChecks) -> Vec<Check> {
    let is_by_rules = |post: &PostShape| post.rules == with.project.joinery;
    let own = with.shape.posts.iter().filter(|post| !is_by_rules(post));
    let mut checks = hardest_of(with, &is_by_rules);
    checks.extend(own.flat_map(|own| hardest_of(with, &|post| post.number == own.number)));
    checks
}

/// Of the posts that count the one whose head is pushed hardest.
fn hardest_of(with: &BeamChecks, counts: &dyn Fn(&PostShape) -> bool) -> Vec<Check> {
    let wind = wind(with);
    let heads = || {
        with.strength().flat_map(|(solved, case)| {
            let posts = with.shape.posts.iter().zip(&solved.posts).filter(|(post, _)| counts(post));
            posts.map(move |(post, part)| {
                let push = Push::new(with, post, (part.top, case.duration), wind);
                (push.total().to_pounds(), case.duration, (post, push, solved, case))
            })
        })
    };
    let shears = hardest(heads()).map(|(_, duration, (post, push, solved, case))| {
        let made = sheared(with, post, &push, duration);
        Check::new(
            format!("P{}", post.number),
            "shears its tenon across the wall",
            "at the head",
            with.under(solved, case).no_way().asks("P", push.load),
            made,
        )
        .at_x(post.middle())
    });
    // F_c⊥ knows no load duration.
    let pressed = most(heads(), |(size, ..)| *size).map(|(_, duration, (post, push, solved, case))| {
        let made = pressed(with, post, &push, duration);
        let under = with.under(solved, case).no_way().asks("P", push.load);
        Check::new(format!("P{}", post.number), "presses its tenon's cheek", "in the beam", under, made)
            .at_x(post.middle())
    });
    shears.into_iter().chain(pressed).collect()
}

/// Pressure of the wind on a post; nothing where it is not known, which the loads say.
fn wind(with: &BeamChecks) -> AreaLoad {
    let height = lean_to(with.project, with.shape).mean_roof_height();
    let foot = [Projected { name: "post".to_owned(), area: Length::feet(1.0) * Length::feet(1.0) }];
    wind_along_wall(&with.project.place, height, &foot).map(|worked| worked.value.pressure).unwrap_or_default()
}

/// What pushes one head.
struct Push {
    load: Force,
    off: Length,
    height: Length,
    wind: Force,
}

impl Push {
    fn new(with: &BeamChecks, post: &PostShape, (top, duration): (Force, Duration), wind: AreaLoad) -> Self {
        let face = with.project.frame.timbers.post.sawn.breadth * post.body();
        let wind = if duration == Duration::TenMinutes { wind * face * (ALLOWABLE_WIND / 2.0) } else { Force::ZERO };
        Self { load: top.max(Force::ZERO), off: off_centre(with), height: post.body(), wind }
    }

    fn total(&self) -> Force {
        self.load * (self.off / self.height + OUT_OF_PLUMB) + self.wind
    }

    fn step(&self) -> Step {
        let says = format!(
            "H = P·e/h + 0.005·P + w/2 = {load}·{}/{} + 0.005·{load} + {} = {} lb",
            Fixed(self.off.to_inches(), 2),
            Fixed(self.height.to_inches(), 1),
            Fixed(self.wind.to_pounds(), 0),
            Fixed(self.total().to_pounds(), 0),
            load = Fixed(self.load.to_pounds(), 0)
        );
        Step::new("push across at the head", says, Citation::from_memory("statics", "a post held at head and foot"))
    }
}

/// Width along the beam, thickness and length of the tenon.
fn tenon(post: &PostShape) -> (Length, Length, Length) {
    (post.tenon.1 - post.tenon.0, post.rules.tenon_thickness, post.tenon_length)
}

fn sheared(with: &BeamChecks, post: &PostShape, push: &Push, duration: Duration) -> Result<Worked<Verdict>, String> {
    let (width, thickness, _) = tenon(post);
    let wood = with.woods.member(Used::Post, duration)?;
    let strength = adjusted(&wood, Property::Shear);
    let stress = push.total() / (width * thickness) * 1.5;
    let says = format!(
        "f_v = 1.5·H/(t·w) = 1.5·{}/({}·{}) = {} psi",
        Fixed(push.total().to_pounds(), 0),
        Fixed(thickness.to_inches(), 2),
        Fixed(width.to_inches(), 2),
        Fixed(stress.to_psi(), 0)
    );
    let step = Step::new("shear of the tenon at its shoulder", says, Citation::from_memory("NDS 2018", "3.4.2"));
    let steps = [push.step()].into_iter().chain(strength.steps).chain([step]).collect();
    Ok(Worked::new(Verdict::stress(stress, strength.value), steps))
}

/// The cheek on the mortise's wall, both across their grain: the weaker wood.
fn pressed(with: &BeamChecks, post: &PostShape, push: &Push, duration: Duration) -> Result<Worked<Verdict>, String> {
    let (width, _, length) = tenon(post);
    let on = |used, along: Length| {
        let wood = with.woods.member(used, duration)?;
        let seat = Seat { area: width * length, length: along, from_end: Length::ZERO };
        check_bearing_across(&wood, push.total(), &seat).map_err(|refused| refused.0)
    };
    let (of_post, of_beam) = (on(Used::Post, length)?, on(Used::Beam, width)?);
    let mut made = if of_post.value.ratio > of_beam.value.ratio { of_post } else { of_beam };
    made.steps.insert(0, push.step());
    Ok(made)
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::project::demo;

    fn found(project: &crate::project::Project, name: &str) -> Check {
        let strength = crate::checks::strength(project, &evaluate(project).built.unwrap().shape);
        strength.checks.iter().find(|check| check.name == name).unwrap().clone()
    }

    fn push() -> Push {
        let (load, off, height) = (Force::pounds(4000.0), Length::inches(1.75), Length::inches(87.5));
        Push { load, off, height, wind: Force::pounds(40.0) }
    }

    /// 4000·1.75/87.5 + 0.005·4000 + 40 = 80 + 20 + 40 lb.
    #[test]
    fn a_push_by_hand() {
        assert!((push().total().to_pounds() - 140.0).abs() < 1e-9);
        assert!(push().step().says.ends_with("= 140 lb"));
    }

    /// A tenon half as thick is sheared twice as hard; its cheek does not mind.
    #[test]
    fn half_the_tenon_twice_the_shear() {
        let barn = demo::wool_barn();
        let mut thin = barn.clone();
        thin.joinery.tenon_thickness = barn.joinery.tenon_thickness / 2.0;
        let (shear, cheek) = ("shears its tenon across the wall", "presses its tenon's cheek");
        let ratio = |project, name| found(project, name).ratio().unwrap();
        assert!((ratio(&thin, shear) / ratio(&barn, shear) - 2.0).abs() < 0.05);
        assert!((ratio(&thin, cheek) / ratio(&barn, cheek) - 1.0).abs() < 0.02);
    }
}
