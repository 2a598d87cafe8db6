//! Where arrises are chamfered: in the runs between joints.
use crate::geometry::Bulk;
use crate::project::JoineryRules;
use crate::units::Length;

/// The runs of a stick's arrises between its joints: they begin a stop's length from each end and end a quarter of it
/// short of a joint. A run too short to be seen is left out; none where the rules want no chamfer.
#[must_use]
pub fn chamfer_runs(
    rules: &JoineryRules,
    (low, high): (Length, Length),
    joints: &[(Length, Length)],
) -> Vec<(Length, Length)> {
    if rules.chamfer <= Length::ZERO {
        return Vec::new();
    }
    let short = rules.chamfer_stop / 4.0;
    let mut joints: Vec<(Length, Length)> = joints.iter().map(|(from, to)| (*from - short, *to + short)).collect();
    joints.push((high - rules.chamfer_stop, high));
    crate::units::sort_by_number(&mut joints, |joint| joint.0.to_inches());
    let mut from = low + rules.chamfer_stop;
    let mut runs = Vec::new();
    for (start, end) in joints {
        let start = start.min(high - rules.chamfer_stop);
        if start - from >= rules.chamfer_stop {
            runs.push((from, start));
        }
        from = from.max(end);
    }
    runs
}

/// The wood that chamfers along two arrises take: c²/2 over a run that is whole at the arris and 2c shorter at the faces,
/// so L − 4c/3 on the average.
#[must_use]
pub fn chamfer_bulk(rules: &JoineryRules, runs: &[(Length, Length)]) -> Bulk {
    let size = rules.chamfer;
    let long = runs.iter().filter(|(from, to)| *to - *from > size * 2.0);
    long.fold(Bulk::default(), |sum, (from, to)| {
        let ends = size * (2.0 / 3.0);
        sum.with(Bulk::prism(size * size, *from + ends, *to - ends))
    })
}
