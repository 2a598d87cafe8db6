//! Knee braces: pushed along their length, and their ends on post and beam.
use super::beam::{BeamChecks, hardest, named};
use super::check::Check;
use crate::geometry::{Brace, BraceLine, Pocket, beam_housing, post_housing};
use crate::members::{
    ColumnLengths, Member, Seat, Verdict, check_bearing_across, check_compression, end_grain_strength,
};
use crate::project::{Project, Used};
use crate::units::{Area, Force, Length};
use crate::working::{Citation, Step, Worked};

/// Every check of the braces.
#[must_use]
pub fn check_braces(with: &BeamChecks) -> Vec<Check> {
    with.shape.braces.iter().enumerate().flat_map(|(index, brace)| one(with, index, brace)).collect()
}

fn one(with: &BeamChecks, index: usize, brace: &Brace) -> Vec<Check> {
    let pushes = || {
        with.line.strength().filter_map(|(solved, case)| {
            let push = -*solved.braces.get(index)?;
            (push > Force::ZERO).then_some((push.to_pounds(), case.duration, (push, solved, case)))
        })
    };
    let Some((_, duration, (push, solved, case))) = hardest(pushes()) else { return Vec::new() };
    let (project, rules) = (with.project, &with.project.joinery);
    let line = BraceLine::of(&project.frame);
    let wood = |used| with.woods.member(used, duration);
    let buckles = wood(Used::Brace).and_then(|wood| {
        check_compression(&wood, push, &ColumnLengths::pinned(line.length)).map_err(|refused| refused.0)
    });
    let on_beam = Floor::new(project, with.shape.brace.beam_pocket(rules, beam_housing(&project.frame, rules)));
    let housing = post_housing(&project.frame, rules, brace.side);
    let on_post = Floor::new(project, with.shape.brace.post_pocket(rules, housing));
    let in_beam = wood(Used::Beam).and_then(|beam| on_beam.nose(&beam, push * line.cos, "cos"));
    let in_post = wood(Used::Post).and_then(|post| on_post.nose(&post, push * line.sin, "sin"));
    let x = line.head_x(brace, &with.shape.posts);
    let combination = named(solved, case);
    let check =
        |name: &str, at: &str, under: &str, made| Check::new(brace.mark(), name, at, under.to_owned(), made).at_x(x);
    let mut checks = vec![
        check("is pushed along its length", "", &combination, buckles),
        check("presses on the end of its mortise", "in the beam", &combination, in_beam),
        check("presses on the end of its mortise", "in the post", &combination, in_post),
    ];
    // F_c⊥ knows no load duration: the largest push counts.
    if let Some((_, duration, (push, solved, case))) = pushes().max_by(|a, b| a.0.total_cmp(&b.0)) {
        let under = named(solved, case);
        let wood = |used| with.woods.member(used, duration);
        let beam = wood(Used::Beam).and_then(|beam| on_beam.square(&beam, push * line.sin));
        let post = wood(Used::Post).and_then(|post| on_post.square(&post, push * line.cos));
        checks.push(check("presses across the grain", "of the beam", &under, beam));
        checks.push(check("presses across the grain", "of the post", &under, post));
    }
    checks
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
    fn new(project: &Project, pocket: Pocket) -> Self {
        let rules = &project.joinery;
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
