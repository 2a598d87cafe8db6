//! Limits of the holes bored for ties. Whether a row keeps clear of ends, sides and other joints is judged on the solids.
use super::validate::Check;
use super::{Problem, Project, Tie};
use crate::units::Length;
use crate::wording::length;

/// Thinnest and thickest drill for a tie.
const DRILLS: (Length, Length) = (Length::inches(1.0 / 16.0), Length::inches(1.5));
/// Highest hole of a post's foot.
const FOOT: Length = Length::inches(24.0);
/// Farthest hole up a rafter from the middle of its seat.
const SEAT: Length = Length::inches(12.0);

/// The holes of every tie.
pub(super) fn bores(check: &mut Check, project: &Project) {
    let (fixings, timbers) = (&project.fixings, &project.frame.timbers);
    let post = timbers.post.sawn.breadth.min(timbers.post.sawn.depth);
    let (beam, rafter) = (timbers.beam.sawn.breadth, timbers.rafter.sawn.breadth);
    for (at, tie, width, room, least) in [
        ("rafter_head", &fixings.rafter_head, rafter, SEAT, 0.0),
        ("rafter_seat", &fixings.rafter_seat, rafter, SEAT, 0.0),
        ("scarf", &fixings.scarf, beam, project.frame.scarfs.lap / 2.0, 1.0),
        ("post_base", &fixings.post_base, post, FOOT, 1.0),
    ] {
        row(check, &format!("fixings.{at}.bores"), tie, (width, room, least));
    }
}

/// One row. `least`: of the first hole, in diameters.
fn row(check: &mut Check, at: &str, tie: &Tie, (width, room, least): (Length, Length, f64)) {
    let Some(bores) = tie.bores.filter(|_| tie.count > 0) else { return };
    let widest = DRILLS.1.min(width / 3.0).max(DRILLS.0);
    check.within(&format!("{at}.diameter"), "The hole", bores.diameter, DRILLS.0, widest);
    check.within(&format!("{at}.first"), "The first hole", bores.first, bores.diameter * least, room);
    if tie.count < 2 {
        return;
    }
    check.within(&format!("{at}.apart"), "One hole to the next", bores.apart, bores.diameter, room.max(bores.diameter));
    let gaps = tie.count as f64 - 1.0;
    let last = bores.first + bores.apart * gaps;
    let is_told = bores.first > room || bores.apart > room.max(bores.diameter);
    let units = check.units;
    check.problems.add_if(!is_told && last > room + Length::inches(1e-6), || {
        let says =
            format!("The last hole would be {} along; {} is the most.", length(last, units), length(room, units));
        let apart = (room - bores.first) / gaps;
        let problem = Problem::stop(format!("{at}.apart"), says);
        if apart >= bores.diameter { problem.nearest(apart) } else { problem }
    });
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test stops at the first surprise")]
mod tests {
    use super::super::{BoreWay, Bores, Nearest, demo, validate};
    use super::*;

    fn found(count: usize, [diameter, first, apart]: [f64; 3]) -> Vec<(String, Option<Nearest>)> {
        let mut barn = demo::wool_barn();
        let inches = Length::inches;
        barn.fixings.scarf.count = count;
        barn.fixings.scarf.bores = Some(Bores {
            diameter: inches(diameter),
            first: inches(first),
            apart: inches(apart),
            way: BoreWay::AlongBeam,
        });
        validate(&barn).into_iter().map(|problem| (problem.field, problem.nearest)).collect()
    }

    /// The barn's lap is 40 in: half of it belongs to each tip. From 5 in, three holes have 15 in for two gaps.
    #[test]
    fn a_row_keeps_to_its_limits() {
        let check = |count, row, field: &str, nearest: f64| {
            let nearest = Some(Nearest::Length(Length::inches(nearest)));
            assert_eq!(found(count, row), [(format!("fixings.scarf.bores.{field}"), nearest)]);
        };
        assert_eq!(found(2, [0.5, 4.0, 3.0]), []);
        assert_eq!(found(0, [9.0, -4.0, 0.0]), [], "nothing is bored");
        check(2, [0.03, 4.0, 3.0], "diameter", 1.0 / 16.0);
        check(2, [2.0, 4.0, 3.0], "diameter", 1.5);
        check(2, [0.5, 0.25, 3.0], "first", 0.5);
        check(2, [0.5, 22.0, 3.0], "first", 20.0);
        check(2, [0.5, 4.0, 0.25], "apart", 0.5);
        check(3, [0.5, 5.0, 8.0], "apart", 7.5);
        assert_eq!(found(1, [0.5, 4.0, 0.0]), [], "one hole has no next one");
    }
}
