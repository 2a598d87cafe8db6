//! Knee braces: pushed along their length, and their ends on post and beam.
use super::beam::{BeamChecks, hardest, named};
use super::check::Check;
use crate::analysis::BraceLine;
use crate::geometry::{Brace, beam_housing};
use crate::members::{
    ColumnLengths, Member, Seat, Verdict, check_bearing_across, check_compression, end_grain_strength,
};
use crate::project::Used;
use crate::units::{Area, Force, Length};
use crate::working::{Citation, Step, Worked};

/// Every check of the braces.
#[must_use]
pub fn check_braces(with: &BeamChecks) -> Vec<Check> {
    with.shape.braces.iter().enumerate().flat_map(|(index, brace)| one(with, index, brace)).collect()
}

fn one(with: &BeamChecks, index: usize, brace: &Brace) -> Vec<Check> {
    let loads = with.line.strength().filter_map(|(solved, case)| {
        let push = -*solved.braces.get(index)?;
        (push > Force::ZERO).then_some((push.to_pounds(), case.duration, (push, solved, case)))
    });
    let Some((_, duration, (push, solved, case))) = hardest(loads) else { return Vec::new() };
    let line = BraceLine::of(with.project);
    let wood = |used| with.woods.member(used, duration);
    let buckles = wood(Used::Brace).and_then(|wood| {
        check_compression(&wood, push, &ColumnLengths::pinned(line.length)).map_err(|refused| refused.0)
    });
    let rules = &with.project.joinery;
    let pocket = with.shape.brace.beam_pocket(rules, beam_housing(&with.project.frame, rules));
    let across = with.project.frame.timbers.brace.sawn.breadth;
    let floor = Floor {
        length: (pocket.nose_on_floor - pocket.corner).abs(),
        across,
        depth: rules.housing,
        tenon: (rules.tenon_thickness, rules.brace_tenon),
    };
    let on_beam = wood(Used::Beam).and_then(|beam| floor.square(&beam, push * line.sin));
    let on_post = wood(Used::Post).and_then(|post| floor.square(&post, push * line.cos));
    let in_beam = wood(Used::Beam).and_then(|beam| floor.nose(&beam, push * line.cos, "cos"));
    let in_post = wood(Used::Post).and_then(|post| floor.nose(&post, push * line.sin, "sin"));
    let combination = named(solved, case);
    let x = line.head_x(brace, &with.shape.posts);
    let check = |name: &str, at: &str, made| Check::new(brace.mark(), name, at, combination.clone(), made).at_x(x);
    vec![
        check("is pushed along its length", "", buckles),
        check("presses across the grain", "of the beam", on_beam),
        check("presses across the grain", "of the post", on_post),
        check("presses on the end of its mortise", "in the beam", in_beam),
        check("presses on the end of its mortise", "in the post", in_post),
    ]
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
            "f_c = P·{share} φ/(b·housing + t·tenon) = {:.0}/({:.2}·{:.2} + {:.2}·{:.2}) = {:.0} psi",
            push.to_pounds(),
            self.across.to_inches(),
            self.depth.to_inches(),
            self.tenon.0.to_inches(),
            self.tenon.1.to_inches(),
            stress.to_psi()
        );
        steps.push(Step::new(
            "end of the housing",
            says,
            Citation::common_practice("the housed nose and the tenon's square end take the push along"),
        ));
        Ok(Worked::new(Verdict::stress(stress, strength.value), steps))
    }
}
