//! Knee braces: pushed along their length, and their ends on post and beam.
use super::beam::BeamChecks;
use super::check::{Check, Under};
use super::governing::{hardest, most, worst};
use crate::geometry::{Brace, BraceLine, Pocket};
use crate::members::{
    BeamColumn, Bracing, ColumnLengths, Member, NetSection, Seat, UnbracedCase, Verdict, check_bearing_across,
    check_bending_and_compression, check_compression, end_grain_strength,
};
use crate::project::{JoineryRules, Project, Used};
use crate::units::{Area, Fixed, Force, Length, Moment};
use crate::working::{Citation, Step, Worked};

/// Every check of the braces.
#[must_use]
pub fn check_braces(with: &BeamChecks) -> Vec<Check> {
    with.shape.braces.iter().enumerate().flat_map(|(index, brace)| one(with, index, brace)).collect()
}

fn one(with: &BeamChecks, index: usize, brace: &Brace) -> Vec<Check> {
    let pushes = || {
        with.strength().filter_map(|(solved, case)| {
            let push = -*solved.braces.get(index)?;
            (push > Force::ZERO).then_some((push.to_pounds(), case.duration, (push, solved, case)))
        })
    };
    let Some((_, duration, (push, solved, case))) = hardest(pushes()) else { return Vec::new() };
    let project = with.project;
    let line = BraceLine::of(&project.frame);
    let wood = |used| with.woods.member(used, duration);
    let on_beam = Floor::new(project, &brace.head, brace.beam_pocket(&project.frame));
    let on_post = Floor::new(project, &brace.foot, brace.post_pocket(&project.frame));
    let in_beam = wood(Used::Beam).and_then(|beam| on_beam.nose(&beam, push * line.cos, "cos"));
    let in_post = wood(Used::Post).and_then(|post| on_post.nose(&post, push * line.sin, "sin"));
    let x = line.head_x(brace, &with.shape.posts);
    let combination = with.under(solved, case).asks("N", push);
    let check =
        |name: &str, at: &str, under: &Under, made| Check::new(brace.mark(), name, at, under.clone(), made).at_x(x);
    // A slender brace gains less from C_D than its ends on end grain do.
    let buckles = worst(pushes().map(|(push, duration, of)| ([push], duration, of)), |(_, duration, found)| {
        let (push, solved, case) = found;
        let made = with.woods.member(Used::Brace, duration).and_then(|wood| buckled(with, &wood, push, line.length));
        check("is pushed along its length", "", &with.under(solved, case).asks("N", push), made)
    });
    let mut checks: Vec<Check> = buckles.into_iter().collect();
    checks.push(check("presses on the end of its mortise", "in the beam", &combination, in_beam));
    checks.push(check("presses on the end of its mortise", "in the post", &combination, in_post));
    // F_c⊥ knows no load duration: the largest push counts.
    if let Some((_, duration, (push, solved, case))) = most(pushes(), |(size, ..)| *size) {
        let under = with.under(solved, case).asks("N", push);
        let wood = |used| with.woods.member(used, duration);
        let beam = wood(Used::Beam).and_then(|beam| on_beam.square(&beam, push * line.sin));
        let post = wood(Used::Post).and_then(|post| on_post.square(&post, push * line.cos));
        checks.push(check("presses across the grain", "of the beam", &under, beam));
        checks.push(check("presses across the grain", "of the post", &under, post));
    }
    checks
}

fn buckled(with: &BeamChecks, wood: &Member, push: Force, length: Length) -> Result<Worked<Verdict>, String> {
    let rise = with.shape.brace.rise;
    if rise > Length::ZERO {
        return curved(wood, push, length, rise);
    }
    check_compression(wood, push, &ColumnLengths::pinned(length)).map_err(|refused| refused.0)
}

/// A curved brace: what is left at its middle carries the push, which runs half of the hollow beside the middle of that
/// section. Taken as that far off over its whole length, on the safe side.
fn curved(wood: &Member, push: Force, length: Length, rise: Length) -> Result<Worked<Verdict>, String> {
    let mut left = wood.clone();
    left.timber.sawn.depth -= rise;
    let lengths = ColumnLengths::pinned(length);
    let asked = BeamColumn {
        push,
        moment_depthwise: Moment::ZERO,
        moment_breadthwise: Moment::ZERO,
        off_centre_depthwise: rise / 2.0,
        off_centre_breadthwise: Length::ZERO,
        net: NetSection::whole(left.section()).map_err(|refused| refused.0)?,
        lengths,
        bracing: Bracing::Free { length, case: UnbracedCase::Other },
    };
    check_bending_and_compression(&left, &asked).map_err(|refused| refused.0)
}

/// The floor of a brace's housing.
struct Floor {
    length: Length,
    across: Length,
    depth: Length,
    /// Thickness and length of the tenon past the floor.
    tenon: (Length, Length),
}

impl Floor {
    fn new(project: &Project, rules: &JoineryRules, pocket: Pocket) -> Self {
        Self {
            length: (pocket.nose_on_floor - pocket.corner).abs(),
            across: project.frame.timbers.brace.sawn.breadth,
            depth: rules.housing,
            tenon: (rules.tenon_thickness, rules.brace_tenon),
        }
    }

    /// The part of the push square to the timber, on the shoulder beside the tenon: half of the floor, since the tenon's
    /// mortise takes the other half in a stick of the usual proportions.
    fn square(&self, wood: &Member, push: Force) -> Result<Worked<Verdict>, String> {
        let area = self.length * self.across * 0.5;
        let seat = Seat { area, length: self.length, from_end: self.length };
        check_bearing_across(wood, push, &seat).map_err(|refused| refused.0)
    }

    /// The part along the timber: the nose on the end of the housing and the tenon's square end in its mortise, both on end
    /// grain.
    fn nose(&self, wood: &Member, push: Force, share: &str) -> Result<Worked<Verdict>, String> {
        let area: Area = self.across * self.depth + self.tenon.0 * self.tenon.1;
        let strength = end_grain_strength(wood);
        if area <= Area::ZERO {
            return Err("the brace has no housed nose to take its push along the timber".to_owned());
        }
        let stress = push / area;
        let mut steps = strength.steps;
        let says = format!(
            "f_c = P·{share} φ/(b·housing + t·tenon) = {}/({}·{} + {}·{}) = {} psi",
            Fixed(push.to_pounds(), 0),
            Fixed(self.across.to_inches(), 2),
            Fixed(self.depth.to_inches(), 2),
            Fixed(self.tenon.0.to_inches(), 2),
            Fixed(self.tenon.1.to_inches(), 2),
            Fixed(stress.to_psi(), 0)
        );
        steps.push(Step::new(
            "end of the housing",
            says,
            Citation::common_practice("the housed nose and the tenon's square end take the push along"),
        ));
        Ok(Worked::new(Verdict::stress(stress, strength.value), steps))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::materials::{Section, Timber};
    use crate::members::{Conditions, Grade};

    /// By hand, a 4x6 hollowed to 4x4½ under 3,000 lb: f_c = 3000/18 = 166.7 psi. The deeper the hollow, the harder it works.
    #[test]
    fn a_hollow_brace_works_harder() {
        let size = Section::new(Length::inches(4.0), Length::inches(6.0));
        let timber = Timber { ordered: size, sawn: size };
        let wood = Member::listed("Eastern Hemlock-Tamarack", Grade::No2, timber, Conditions::default()).unwrap();
        let (push, length) = (Force::pounds(3000.0), Length::inches(50.0));
        let ratio = |rise: f64| curved(&wood, push, length, Length::inches(rise)).unwrap().value.ratio;
        let straight = check_compression(&wood, push, &ColumnLengths::pinned(length)).unwrap().value.ratio;
        // As the hollow goes to nothing the push alone is left: (f_c/F_c')² of Eq. 3.9-3, or its share of Euler's stress.
        assert!(ratio(1e-9) >= straight * straight - 1e-9 && ratio(1e-9) <= straight);
        assert!(ratio(1.5) > ratio(0.75) && ratio(0.75) > ratio(1e-9));
        let made = curved(&wood, push, length, Length::inches(1.5)).unwrap();
        let says: String = made.steps.iter().map(|step| step.says.clone()).collect();
        assert!(says.contains("166.7") || says.contains("167"), "{says}");
    }
}
