//! What each post hands to its foot, of every case that may govern.
use super::beam::named;
use super::governing::{Asks, may_govern};
use crate::analysis::{BeamCase, BeamLine, Demand, FootForces, PostDemands, Purpose, Solved};
use crate::design::Shape;
use crate::units::Force;

/// Forces at the foot of each post, left to right.
#[must_use]
pub fn post_demands(shape: &Shape, line: &BeamLine) -> Vec<PostDemands> {
    shape.posts.iter().enumerate().map(|(index, post)| of_post(line, index, post.number)).collect()
}

fn of_post(line: &BeamLine, index: usize, number: usize) -> PostDemands {
    let parts = || line.strength().filter_map(|(solved, case)| Some((solved.posts.get(index)?, solved, case)));
    let down = parts().filter(|(part, ..)| !part.foot.is_negative());
    let down = down.map(|(part, solved, case)| ([part.foot.to_pounds()], case.duration, (part.foot, solved, case)));
    let feet = parts().map(|(part, solved, case)| {
        // A sunk foot hangs no more on its post than itself.
        let up = if case.purpose == Purpose::Sunk { Force::ZERO } else { (-part.foot).max(Force::ZERO) };
        let forces = FootForces { up, level: part.level.abs() };
        ([up.to_pounds(), forces.level.to_pounds()], case.duration, (forces, solved, case))
    });
    PostDemands { post: number, down: demands(line, may_govern(down)), feet: demands(line, may_govern(feet)) }
}

/// Only the names of those that may govern are written out.
fn demands<Q, const N: usize>(line: &BeamLine, found: Vec<Asks<(Q, &Solved, &BeamCase), N>>) -> Vec<Demand<Q>> {
    let of = |(_, duration, (value, solved, case))| Demand {
        value,
        combination: named(solved, case),
        duration,
        origin: line.origin(solved, case),
    };
    found.into_iter().map(of).collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::*;
    use crate::evaluate;
    use crate::loads::Duration;
    use crate::project::demo;

    /// Under wind no pair of the barn's feet is made up: each stands in one solved case, and none that asks more is missing.
    #[test]
    fn pull_and_push_are_of_one_case() {
        let design = evaluate(&demo::wool_barn());
        let line = design.strength.as_ref().unwrap().line.as_ref().unwrap();
        let all = post_demands(&design.built.as_ref().unwrap().shape, line);
        assert_eq!(all.len(), 4);
        for (index, demands) in all.iter().enumerate() {
            let solved = || line.strength().filter(|(_, case)| case.duration == Duration::TenMinutes);
            for one in demands.lifted() {
                let is_real = |(solved, case): (&Solved, &BeamCase)| {
                    let part = solved.posts[index];
                    -part.foot == one.value.up
                        && part.level.abs() == one.value.level
                        && named(solved, case) == one.combination
                };
                assert!(solved().any(is_real), "{one:?}");
            }
            let most = |of: &dyn Fn(&FootForces) -> Force| {
                demands.feet.iter().map(|one| of(&one.value)).fold(Force::ZERO, Force::max)
            };
            let hardest = solved().map(|(solved, _)| -solved.posts[index].foot).fold(Force::ZERO, Force::max);
            assert_eq!(most(&|forces| forces.up), hardest, "P{}", index + 1);
            assert!(
                demands.lifted().any(|one| one.value.level > Force::pounds(10.0)),
                "P{} is pushed as well",
                index + 1
            );
        }
    }
}
