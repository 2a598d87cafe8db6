//! Over a post its two braces push the beam's halves apart: pull and bending together, on what the mortise leaves.
use super::beam::BeamChecks;
use super::check::Check;
use super::governing::most;
use crate::analysis::{BeamCase, Solved};
use crate::geometry::PostShape;
use crate::members::{Property, adjusted, check_bending_and_tension};
use crate::project::Used;
use crate::units::{Force, Moment};

/// Less is noise of the arithmetic.
pub(super) const LEAST: Force = Force::pounds(1.0);

/// The post over which pull and bending together ask most; nothing where no brace pulls the beam.
#[must_use]
pub fn check_pull(with: &BeamChecks) -> Option<Check> {
    let made = with.shape.posts.iter().enumerate().filter_map(|(index, post)| over(with, index, post));
    Check::worst_of(made)
}

fn over(with: &BeamChecks, index: usize, post: &PostShape) -> Option<Check> {
    let wood = with.woods.member(Used::Beam, crate::loads::Duration::TenYears).ok()?;
    let (tension, bending) = (adjusted(&wood, Property::Tension).value, adjusted(&wood, Property::Bending).value);
    let net = with.over_post(post, &wood).ok()?;
    let (area, modulus) = (net.area(), net.least_modulus());
    let sides = with.beside_post(index);
    let loads = with.strength().filter_map(|(solved, case)| {
        let (pull, moment) = beside(sides, solved, case)?;
        // The ratio itself, of Eq. 3.9-1 and of Eq. 3.9-2 with its C_L.
        let (ft, fb, long) = (pull / area, moment / modulus, case.duration.factor());
        let less = (fb - ft).to_psi() / with.bent.of(case.duration, true);
        Some((((ft / tension + fb / bending) / long).max(less), (pull, moment, solved, case)))
    });
    let (_, (pull, moment, solved, case)) = most(loads, |(share, _)| *share)?;
    let made = with.woods.member(Used::Beam, case.duration).and_then(|wood| {
        let net = with.over_post(post, &wood)?;
        check_bending_and_tension(&wood, pull, moment, &net, with.bracing(true)).map_err(|refused| refused.0)
    });
    let place = format!("over P{}", post.number);
    let under = with.under(solved, case).asks("T", pull).asks("M", moment.abs());
    let check = Check::new(with.piece_at(post.middle()), "is pulled and bent", place, under, made);
    Some(check.at_x(post.middle()))
}

/// Pull and bending at the post, on the side that is pulled more; nothing where neither is.
fn beside((left, right): (Option<usize>, Option<usize>), solved: &Solved, case: &BeamCase) -> Option<(Force, Moment)> {
    let at = |part: Option<usize>, end: fn((Moment, Moment)) -> Moment| {
        let index = part?;
        let part = solved.beam.get(index)?;
        let [_, pull] = solved.along(index, case);
        (pull > LEAST).then(|| (pull, end(part.end_moments).abs()))
    };
    let sides = [at(left, |ends| ends.1), at(right, |ends| ends.0)];
    most(sides.into_iter().flatten(), |(pull, _)| pull.to_pounds())
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use crate::checks::Outcome;
    use crate::evaluate;
    use crate::members::{Amount, Verdict};
    use crate::project::demo;

    /// f_t/F_t' + f_b/F_b' asks more than bending alone, and the pull itself is small.
    #[test]
    fn the_barn_is_pulled_a_little() {
        let strength = evaluate(&demo::wool_barn()).strength.unwrap();
        let check = strength.checks.iter().find(|check| check.name == "is pulled and bent").unwrap();
        let Outcome::Judged(worked) = &check.outcome else { unreachable!("{check:?}") };
        let Verdict { demand: Amount::Ratio(sum), ratio, .. } = worked.value else { unreachable!("{check:?}") };
        assert!(sum == ratio && ratio > 0.1 && ratio < 1.2, "{ratio}");
        assert!(worked.steps.iter().any(|step| step.says.contains("f_t/F_t'")), "{:?}", worked.steps);
    }
}
